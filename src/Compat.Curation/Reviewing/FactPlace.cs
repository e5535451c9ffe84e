namespace Compat.Curation.Reviewing;

/// <summary>Where a statement beside the rules on parts reaches: an agent, a part type or a material, and what meets it.</summary>
/// <param name="Subject">The id of the agent; of a trait that of the part type or material; of a need the contact.</param>
/// <param name="With">What meets it: an agent, a soil or a material, a kind of patient, an act; null where nothing need.</param>
/// <param name="Part">The part type on which they meet; null where none is asked.</param>
public sealed record FactPlace(string Subject, string? With = null, string? Part = null)
{
    private const int MostNames = 6;

    /// <summary>Several places in one line, those that meet the same together; of many the first, and how many more.</summary>
    internal static string Line(IReadOnlyList<FactPlace> places)
    {
        var bySubject = places.GroupBy(place => place.Subject).Select(group => (Subject: group.Key, Beside: Beside(group.ToArray())));
        var lines = bySubject.GroupBy(one => one.Beside, one => one.Subject).Select(group => Names(group) + group.Key).ToArray();
        return string.Join("; ", lines.Take(MostNames)) + (lines.Length > MostNames ? $"; and {lines.Skip(MostNames).Count()} more" : "");
    }

    private static string Beside(IReadOnlyList<FactPlace> places)
    {
        var with = places.Select(place => place.With).OfType<string>().Distinct().ToArray();
        var parts = places.Any(place => place.Part is null) ? [] : places.Select(place => place.Part!).Distinct().ToArray();
        return (with.Length == 0 ? "" : $" with {Names(with)}") + (parts.Length == 0 ? "" : $" on {Names(parts)}");
    }

    private static string Names(IEnumerable<string> names)
    {
        var all = names.Distinct().ToArray();
        return string.Join(", ", all.Take(MostNames).Select(name => $"`{name}`")) + (all.Length > MostNames ? $" and {all.Length - MostNames} more" : "");
    }
}
