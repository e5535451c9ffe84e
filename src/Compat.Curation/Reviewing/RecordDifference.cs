using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;

namespace Compat.Curation.Reviewing;

/// <summary>Compares two records by what they say. A field that is added to a record later is compared without further ado.</summary>
/// <remarks>The order of a list means nothing.</remarks>
internal static class RecordDifference
{
    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> Properties = [], Decisive = [];

    /// <summary>The fields that differ, as a file spells them, one step deep: <c>when.strength</c>.</summary>
    public static IReadOnlyList<string> Fields(object one, object other)
    {
        var fields = new List<string>();
        foreach (var property in Of(one.GetType()))
        {
            var (a, b) = (property.GetValue(one), property.GetValue(other));
            if (AreSame(a, b)) continue;
            var name = Spelled(property.Name);
            if (a is null || b is null || !IsRecord(a)) fields.Add(name);
            else fields.AddRange(Of(a.GetType()).Where(inner => !AreSame(inner.GetValue(a), inner.GetValue(b)))
                .Select(inner => name + "." + Spelled(inner.Name)));
        }

        return fields;
    }

    /// <summary>Whether a field of a record, as <see cref="Fields"/> spells it, changes no answer.</summary>
    public static bool IsRemark(Type type, string field)
    {
        var (name, inner) = field.Split('.', 2) is [var first, var rest] ? (first, rest) : (field, null);
        if (Of(type).FirstOrDefault(one => Spelled(one.Name) == name) is not { } property) return false;
        return property.IsDefined(typeof(RemarkAttribute)) || (inner is not null && IsRemark(property.PropertyType, inner));
    }

    /// <summary>Whether two values say the same.</summary>
    public static bool AreSame(object? one, object? other)
    {
        if (ReferenceEquals(one, other)) return true;
        if (one is null || other is null || (one.GetType() != other.GetType() && one is not IEnumerable)) return false;
        if (one is string or ValueType or Id or DottedId) return one.Equals(other);
        if (one is IEnumerable list) return other is IEnumerable others && AreSame(list, others);
        foreach (var property in Of(one.GetType()))
            if (!AreSame(property.GetValue(one), property.GetValue(other))) return false;
        return true;
    }

    /// <summary>Whether one record says in every property that decides the same as another, or leaves it out, which narrows nothing.</summary>
    /// <param name="one">The one.</param>
    /// <param name="other">The other.</param>
    /// <param name="except">The properties that are compared in their own way. All others are, those that are added later too.</param>
    public static bool IsSameOrUnset(object one, object other, params string[] except) =>
        Deciding(one.GetType(), except).All(property => property.GetValue(one) is var value && (IsUnset(value) || AreSame(value, property.GetValue(other))));

    /// <summary>Whether two records say the same in every property that decides, but some.</summary>
    public static bool AreSameBut(object one, object other, params string[] except) =>
        Deciding(one.GetType(), except).All(property => AreSame(property.GetValue(one), property.GetValue(other)));

    /// <summary>The properties that decide and differ, as a file spells them, but for some.</summary>
    public static IEnumerable<string> FieldsBut(object one, object other, params string[] except) =>
        Deciding(one.GetType(), except).Where(property => !AreSame(property.GetValue(one), property.GetValue(other)))
            .Select(property => Spelled(property.Name));

    /// <summary>The properties of a record that decide, but for some: neither its id nor a remark.</summary>
    public static IEnumerable<PropertyInfo> Deciding(Type type, params string[] except) =>
        Decisive.GetOrAdd(type, one => Of(one).Where(property => property.Name != nameof(Rule.Id) && !property.IsDefined(typeof(RemarkAttribute))).ToArray())
            .Where(property => !except.Contains(property.Name));

    /// <summary>Whether a value says nothing.</summary>
    private static bool IsUnset(object? value) => value switch
    {
        null or false => true,
        string => false,
        IEnumerable list => !list.Cast<object?>().Any(),
        ValueType => value.Equals(Activator.CreateInstance(value.GetType())),
        ExposureBox box => AreSame(box, ExposureBox.Unbounded),
        _ => false,
    };

    /// <summary>All ids that a value names, itself included.</summary>
    public static IEnumerable<object> Names(object? value) => value switch
    {
        null or string or ValueType => [],
        Id or DottedId => [value],
        IEnumerable list => list.Cast<object?>().SelectMany(Names),
        _ => Of(value.GetType()).SelectMany(property => Names(property.GetValue(value))),
    };

    /// <summary>The properties of a record.</summary>
    public static PropertyInfo[] Of(Type type) => Properties.GetOrAdd(type, one =>
        one.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0).ToArray());

    private static bool AreSame(IEnumerable one, IEnumerable other)
    {
        var left = other.Cast<object?>().ToList();
        foreach (var item in one)
        {
            var at = left.FindIndex(candidate => AreSame(item, candidate));
            if (at < 0) return false;
            left.RemoveAt(at);
        }

        return left.Count == 0;
    }

    private static bool IsRecord(object value) =>
        value is not (string or ValueType or Id or DottedId or IEnumerable) && value.GetType() != typeof(StrengthUnit);

    /// <summary>A property as a file spells it.</summary>
    public static string Spelled(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(c) : c.ToString()));
}
