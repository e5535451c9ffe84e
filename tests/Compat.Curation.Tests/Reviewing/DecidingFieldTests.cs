using System.Collections;
using System.Reflection;
using Compat.Curation.Reviewing;

namespace Compat.Curation.Tests.Reviewing;

/// <summary>A field decides unless it is marked as a remark: no list of names stands between a field that is added to a record and the review.</summary>
public class DecidingFieldTests
{
    private static readonly MethodInfo Clone = typeof(object).GetMethod("MemberwiseClone", BindingFlags.NonPublic | BindingFlags.Instance)!;

    [Fact]
    public void Field_ChangedAlone_IsNoticedUnlessItIsARemark()
    {
        var (tried, noticed) = (new HashSet<string>(), new HashSet<string>());
        for (var seed = RandomReach.First; seed < RandomReach.First + 4; seed++)
        {
            var data = RandomReach.Make(seed).Before;
            foreach (var set in RecordSet.All)
            {
                var records = set.Of(data).Select(pair => pair.Value).ToArray();
                foreach (var (property, record, head) in records.Take(3).SelectMany(record => Edits(set, data, records, record)))
                {
                    var name = $"{set.Kind}.{property.Name}";
                    if (noticed.Contains(name) || KnowledgeBase.TryBuild(head, out _).Count > 0) continue;
                    var isRemark = property.IsDefined(typeof(RemarkAttribute));
                    var report = DataReview.Run(data, [], head, []);
                    Assert.True(report.Edits.All(edit => edit.IsWording == isRemark), $"{name} is {(isRemark ? "" : "no ")}remark");
                    if (isRemark) Assert.True(report.IsWithoutChange && report.Compared == 0, $"{name} is a remark, and changes something");
                    else tried.Add(name);
                    if (!report.IsWithoutChange || report.Compared > 0) noticed.Add(name);
                }
            }
        }

        Assert.Equal([], tried.Except(noticed).Order());
        Assert.True(tried.Count > 60, $"only {tried.Count} fields could be changed alone");
    }

    /// <summary>The base with one field of one record written otherwise, in each way that other records and the type of the field show.</summary>
    private static IEnumerable<(PropertyInfo Property, object Record, KnowledgeData Head)> Edits(RecordSet set, KnowledgeData data, object[] records,
        object record)
    {
        foreach (var property in record.GetType().GetProperties()
            .Where(one => one.SetMethod is not null && one.Name is not ("Id" or "Key" or "Code") && one.DeclaringType != typeof(object)))
        {
            var was = property.GetValue(record);
            // What names the record is no field of it, and a convention has those that its key asks for.
            if (record is LevelMeaning && property.Name == nameof(LevelMeaning.Level)) continue;
            if (record is Convention && property.Name == nameof(Convention.Methods) && ((MethodSet)was!).IsEmpty) continue;
            var others = records.Select(property.GetValue).Concat(Others(property, was)).Where(other => !RecordDifference.AreSame(was, other)).Take(6);
            foreach (var other in others.ToArray())
            {
                var copy = Clone.Invoke(record, null)!;
                property.SetValue(copy, other);
                yield return (property, record, set.With(data, records.Select(one => ReferenceEquals(one, record) ? copy : one)));
            }
        }
    }

    private static IEnumerable<object?> Others(PropertyInfo property, object? was)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        if (new NullabilityInfoContext().Create(property).WriteState == NullabilityState.Nullable) yield return null;
        if (type == typeof(bool)) foreach (var other in new object[] { true, false }) yield return other;
        if (type == typeof(string)) yield return was + " and more";
        if (type == typeof(decimal)) yield return ((decimal?)was ?? 0m) + 0.5m;
        if (type == typeof(CalendarDate)) yield return new CalendarDate(2025, 2, 3);
        if (type.IsEnum) foreach (var other in Enum.GetValues(type)) yield return other;
        if (!type.IsGenericType || type.GetGenericTypeDefinition() != typeof(IReadOnlyList<>)) yield break;
        var item = type.GetGenericArguments()[0];
        yield return Array.CreateInstance(item, 0);
        object[] items = item.IsEnum ? [.. Enum.GetValues(item).Cast<object>().Take(3)] : item == typeof(string) ? ["cotton", "silk"] : [];
        foreach (var one in items)
        {
            var list = Array.CreateInstance(item, 1);
            list.SetValue(one, 0);
            yield return list;
        }

        if (was is IList { Count: > 1 } all) yield return Shorter(all, item);
    }

    private static Array Shorter(IList all, Type item)
    {
        var list = Array.CreateInstance(item, all.Count - 1);
        for (var i = 1; i < all.Count; i++) list.SetValue(all[i], i - 1);
        return list;
    }
}
