using System.Collections;
using System.Reflection;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>All records that differ between two knowledge bases, ids that were renamed brought to their later names first.</summary>
internal sealed class EditList
{
    private EditList(IReadOnlyList<RecordEdit> edits, KnowledgeData before, Renames renames) => (All, Before, Renames) = (edits, before, renames);

    /// <summary>The edits, by kind and id.</summary>
    public IReadOnlyList<RecordEdit> All { get; }

    /// <summary>The records of BASE under their later ids.</summary>
    public KnowledgeData Before { get; }

    /// <summary>What was renamed.</summary>
    public Renames Renames { get; }

    /// <summary>The edits that lead from one knowledge base to another.</summary>
    public static EditList Between(KnowledgeData before, KnowledgeData after)
    {
        var later = new Dictionary<object, object>();
        var former = new Dictionary<string, string>();
        var renamed = before;
        // What names a renamed record is alike only once that name is known: so again, until nothing more is found.
        while (RenameSearch.Find(renamed, after) is { Count: > 0 } found)
        {
            foreach (var one in found) later[one.Before] = one.After;
            foreach (var one in found)
                former[Key(one.Kind, one.After.ToString()!)] = former.GetValueOrDefault(Key(one.Kind, one.Before.ToString()!), one.Before.ToString()!);
            renamed = new Renames(found.ToDictionary(one => one.Before, one => one.After)).In(renamed);
        }

        var edits = RecordSet.All.SelectMany(set => Between(set, renamed, after, former)).ToArray();
        return new(edits, renamed, new Renames(later));
    }

    private static string Key(Validation.RecordKind kind, string id) => $"{kind} {id}";

    private static IEnumerable<RecordEdit> Between(RecordSet set, KnowledgeData before, KnowledgeData after, Dictionary<string, string> former)
    {
        var was = set.Of(before).ToDictionary(pair => pair.Key, pair => pair.Value);
        var now = set.Of(after).ToDictionary(pair => pair.Key, pair => pair.Value);
        foreach (var id in was.Keys.Union(now.Keys).Order(StringComparer.Ordinal))
        {
            was.TryGetValue(id, out var one);
            now.TryGetValue(id, out var other);
            var earlier = former.GetValueOrDefault(Key(set.Kind, id));
            if (earlier is not null) yield return new(set.Kind, id, EditAction.Renamed) { FormerId = earlier, IsWording = true, Before = one, After = other };
            if (one is null || other is null)
            {
                yield return new(set.Kind, id, one is null ? EditAction.Added : EditAction.Removed) { FormerId = earlier, Before = one, After = other };
                continue;
            }

            var fields = RecordDifference.Fields(one, other).Where(field => field != "id").ToArray();
            if (fields.Length == 0) continue;
            yield return new(set.Kind, id, EditAction.Changed)
            {
                FormerId = earlier,
                Fields = fields,
                IsWording = fields.All(set.IsWording),
                Before = one,
                After = other,
            };
        }
    }
}

/// <summary>A record that has another id.</summary>
/// <param name="Kind">The kind of record.</param>
/// <param name="Before">Its id in BASE.</param>
/// <param name="After">Its id in HEAD.</param>
internal sealed record Rename(RecordKind Kind, object Before, object After);

/// <summary>Tells renames from removals: a record that is gone and one that came, of the same content or the one called by the other's id.</summary>
internal static class RenameSearch
{
    /// <summary>The renames that can be seen; of records of which several are alike, none.</summary>
    public static IReadOnlyList<Rename> Find(KnowledgeData before, KnowledgeData after) => RecordSet.All.SelectMany(set => Find(set, before, after)).ToArray();

    private static IEnumerable<Rename> Find(RecordSet set, KnowledgeData before, KnowledgeData after)
    {
        var was = set.Of(before).ToDictionary(pair => pair.Key, pair => pair.Value);
        var now = set.Of(after).ToDictionary(pair => pair.Key, pair => pair.Value);
        var gone = was.Where(pair => !now.ContainsKey(pair.Key)).ToArray();
        var came = now.Where(pair => !was.ContainsKey(pair.Key)).ToArray();
        if (gone.Length == 0 || came.Length == 0) yield break;
        var pairs = gone.SelectMany(one => came.Where(other => IsCalled(other.Value, one.Key) || IsAlike(set, one.Value, other.Value))
            .Select(other => (Gone: one, Came: other))).ToArray();
        foreach (var (one, other) in pairs)
        {
            var called = IsCalled(other.Value, one.Key);
            var rivals = pairs.Where(pair => (pair.Gone.Key == one.Key) != (pair.Came.Key == other.Key)).ToArray();
            if (called ? rivals.Any(pair => IsCalled(pair.Came.Value, pair.Gone.Key)) : rivals.Length > 0) continue;
            if (IdOf(one.Value) is { } from && IdOf(other.Value) is { } to) yield return new(set.Kind, from, to);
        }
    }

    /// <summary>Whether a record keeps a retired id among its everyday names.</summary>
    internal static bool IsCalled(object? record, string id) => record switch
    {
        Material material => material.AlsoCalled.Contains(id),
        PartType part => part.AlsoCalled.Contains(id),
        AgentClass agent => agent.AlsoCalled.Contains(id),
        Model.Organism organism => organism.AlsoCalled.Contains(id),
        _ => false,
    };

    /// <summary>Whether two records say the same under two ids. One of another name or title is another thing that happens to be alike.</summary>
    private static bool IsAlike(RecordSet set, object one, object other) =>
        RecordDifference.Fields(one, other).All(field => set.IsWording(field) && field is not ("name" or "title"));

    private static object? IdOf(object record) => record.GetType().GetProperty("Id")?.GetValue(record);
}

/// <summary>Gives ids their later names wherever they stand in records, so that a record and what names it are recognised after a rename.</summary>
internal sealed class Renames(IReadOnlyDictionary<object, object> ids)
{
    private static readonly MethodInfo Clone = typeof(object).GetMethod("MemberwiseClone", BindingFlags.NonPublic | BindingFlags.Instance)!;

    /// <summary>The value with later ids; the same object where none of its ids has one.</summary>
    public T In<T>(T value) where T : class => (T)Of(value)!;

    private object? Of(object? value)
    {
        switch (value)
        {
            case null or string or ValueType: return value;
            case Id or DottedId: return ids.TryGetValue(value, out var later) ? later : value;
            case IList list: return OfList(list);
        }

        object? copy = null;
        foreach (var field in FieldsOf(value.GetType()))
        {
            var (was, now) = (field.GetValue(value), Of(field.GetValue(value)));
            if (ReferenceEquals(was, now) || field.FieldType.IsValueType) continue;
            field.SetValue(copy ??= Clone.Invoke(value, null)!, now);
        }

        return copy ?? value;
    }

    private object OfList(IList list)
    {
        Array? copy = null;
        for (var i = 0; i < list.Count; i++)
        {
            var now = Of(list[i]);
            if (ReferenceEquals(now, list[i]) || list[i] is ValueType) continue;
            if (copy is null)
            {
                copy = Array.CreateInstance(list[i]!.GetType(), list.Count);
                for (var j = 0; j < list.Count; j++) copy.SetValue(list[j], j);
            }

            copy.SetValue(now, i);
        }

        return copy ?? (object)list;
    }

    private static FieldInfo[] FieldsOf(Type type) => type.GetFields(BindingFlags.NonPublic | BindingFlags.Instance);
}

/// <summary>The records of one kind in a knowledge base: how they are listed, named and put back.</summary>
internal sealed class RecordSet
{
    private readonly Type _type;

    private RecordSet(
        RecordKind kind,
        Type type,
        Func<KnowledgeData, IEnumerable<KeyValuePair<string, object>>> of,
        Func<KnowledgeData, IEnumerable<object>, KnowledgeData> with) =>
        (Kind, _type, Of, With) = (kind, type, of, with);

    /// <summary>All kinds of record.</summary>
    public static IReadOnlyList<RecordSet> All { get; } =
    [
        Make(RecordKind.Source, data => data.Sources, one => one.Id.Value, (data, all) => data with { Sources = all }),
        Make(RecordKind.Material, data => data.Materials, one => one.Id.Value, (data, all) => data with { Materials = all }),
        Make(RecordKind.Part, data => data.Parts, one => one.Id.Value, (data, all) => data with { Parts = all }),
        Make(RecordKind.Agent, data => data.Agents, one => one.Id.Value, (data, all) => data with { Agents = all }),
        Make(RecordKind.Rule, data => data.Rules, one => one.Id.Value, (data, all) => data with { Rules = all }),
        Make(RecordKind.Convention, data => data.Conventions, one => Space.Words.Of(one.Key), (data, all) => data with { Conventions = all }),
        Make(RecordKind.StandingRule, data => data.StandingRules, one => one.Id.Value, (data, all) => data with { StandingRules = all }),
        Make(RecordKind.Organism, data => data.Organisms, one => one.Id.Value, (data, all) => data with { Organisms = all }),
        Make(RecordKind.Level, data => data.Levels, one => Space.Words.Of(one.Level), (data, all) => data with { Levels = all }),
        Make(RecordKind.TestStandard, data => data.TestStandards, one => one.Code.Value, (data, all) => data with { TestStandards = all }),
        Make(RecordKind.Need, data => data.Needs, one => one.Id.Value, (data, all) => data with { Needs = all }),
        Make(RecordKind.Claim, data => data.Claims, one => one.Id.Value, (data, all) => data with { Claims = all }),
        Make(RecordKind.Mixing, data => data.MixingHazards, one => one.Id.Value, (data, all) => data with { MixingHazards = all }),
        Make(RecordKind.PersonRule, data => data.PersonRules, one => one.Id.Value, (data, all) => data with { PersonRules = all }),
        Make(RecordKind.Protection, data => data.Protections, one => one.Id.Value, (data, all) => data with { Protections = all }),
        Make(RecordKind.InstructionWord, data => data.InstructionWords, one => one.Id.Value, (data, all) => data with { InstructionWords = all }),
        Make(RecordKind.Occasion, data => data.Occasions, one => one.Id.Value, (data, all) => data with { Occasions = all }),
        Make(RecordKind.HarmlessMeeting, data => data.HarmlessMeetings, one => one.Id.Value, (data, all) => data with { HarmlessMeetings = all }),
    ];

    /// <summary>The kind.</summary>
    public RecordKind Kind { get; }

    /// <summary>The records with their ids, as a file names them.</summary>
    public Func<KnowledgeData, IEnumerable<KeyValuePair<string, object>>> Of { get; }

    /// <summary>The data with other records of the kind.</summary>
    public Func<KnowledgeData, IEnumerable<object>, KnowledgeData> With { get; }

    /// <summary>The set of a kind.</summary>
    public static RecordSet For(RecordKind kind) => All.First(set => set.Kind == kind);

    /// <summary>Whether a difference in a field, as a file spells it, changes no answer: it is the id, or a remark.</summary>
    public bool IsWording(string field) => field == "id" || RecordDifference.IsRemark(_type, field);

    private static RecordSet Make<T>(
        RecordKind kind, Func<KnowledgeData, IReadOnlyList<T>> of, Func<T, string> id, Func<KnowledgeData, T[], KnowledgeData> with) where T : class =>
        new(
            kind,
            typeof(T),
            data => of(data).Select(one => new KeyValuePair<string, object>(id(one), one)),
            (data, all) => with(data, all.Cast<T>().ToArray()));
}
