using Compat.Validation;

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

/// <summary>Gathers what was found place by place: the same of several places is one change, with the edits that made it.</summary>
internal sealed class FactList(ReachSides sides)
{
    private const int Many = 12;

    private readonly Dictionary<(RecordKind About, ChangeKind Kind, string Text), Entry> _found = [];

    /// <summary>Adds what is so at a place.</summary>
    /// <param name="about">What kind of statement reaches the place.</param>
    /// <param name="kind">In which way it changed.</param>
    /// <param name="text">What it means.</param>
    /// <param name="place">The place.</param>
    /// <param name="causes">The edits that may have made it so: those of the statement itself, else those of what stands above the place.</param>
    /// <param name="evidence">How well it is known now; null where it asks rather than permits.</param>
    public void Add(RecordKind about, ChangeKind kind, string text, FactPlace place, IEnumerable<RecordEdit> causes, EvidenceWeight? evidence = null)
    {
        if (!_found.TryGetValue((about, kind, text), out var entry)) _found[(about, kind, text)] = entry = new([], new(ReferenceEqualityComparer.Instance),
            evidence);
        entry.Places.Add(place);
        entry.Causes.UnionWith(causes);
    }

    /// <summary>The edits of some records; where none of them was edited, of the agent, and of the part, and of all above these.</summary>
    public IEnumerable<RecordEdit> Causes(RecordKind kind, IEnumerable<string> ids, IEnumerable<string> agents, string? part = null)
    {
        var own = ids.Select(id => sides.EditOf(kind, id)).OfType<RecordEdit>().ToArray();
        return own.Length > 0 ? own
            : agents.SelectMany(agent => sides.EditsAbove(RecordKind.Agent, agent)).Concat(part is null ? [] : sides.EditsAbove(RecordKind.Part, part));
    }

    /// <summary>All that was found, each change under every edit that may have made it.</summary>
    public IEnumerable<(RecordEdit? Cause, FactChange Change)> All()
    {
        foreach (var ((about, kind, text), entry) in _found)
        {
            var change = new FactChange(kind, $"{text}: {FactPlace.Line(entry.Places)}{(entry.Places.Count > Many ? $" ({entry.Places.Count} in all)" : "")}",
                entry.Evidence) { About = about, Reaches = entry.Places };
            if (entry.Causes.Count == 0) yield return (null, change);
            foreach (var cause in entry.Causes.OrderBy(edit => edit.Kind).ThenBy(edit => edit.Id, StringComparer.Ordinal)) yield return (cause, change);
        }
    }

    private sealed record Entry(List<FactPlace> Places, HashSet<RecordEdit> Causes, EvidenceWeight? Evidence);
}
