using Compat.Curation.Diagnostics;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Offers the id that was meant where something else was typed: a name, capitals, spaces.</summary>
internal static class IdHelp
{
    /// <summary>Puts the nearest id into the help of each fault of that kind.</summary>
    /// <param name="faults">The faults.</param>
    /// <param name="data">The records whose ids and names are known.</param>
    public static void Offer(List<Diagnostic> faults, KnowledgeData data)
    {
        if (!faults.Exists(IsOne)) return;
        (string Id, IEnumerable<string> Names)[] records =
        [
            .. data.Agents.Select(one => (one.Id.Value, one.AlsoCalled.Prepend(one.Name))),
            .. data.Materials.Select(one => (one.Id.Value, one.AlsoCalled.Prepend(one.Name))),
            .. data.Parts.Select(one => (one.Id.Value, one.AlsoCalled.Prepend(one.Name))),
            .. data.Organisms.Select(one => (one.Id.Value, one.AlsoCalled.Prepend(one.Name))),
            .. data.Sources.Select(one => (one.Id.Value, Enumerable.Repeat(one.Title, 1))),
        ];
        for (var i = 0; i < faults.Count; i++)
        {
            if (!IsOne(faults[i]) || faults[i].Place is not { } place) continue;
            var typed = place.Source.Excerpt(place.Span).Trim('"', '\'').Trim();
            var called = records.Where(one => one.Names.Contains(typed, StringComparer.OrdinalIgnoreCase)).Select(one => $"`{one.Id}`").Distinct().ToArray();
            var help = called.Length > 0 ? $"did you mean {string.Join(" or ", called.Take(3))}?"
                : NearestNames.Help(typed.ToLowerInvariant().Replace(' ', '-'), records.Select(one => one.Id));
            if (help is not null) faults[i] = faults[i] with { Help = help };
        }
    }

    private static bool IsOne(Diagnostic fault) => fault.Code == "id";
}
