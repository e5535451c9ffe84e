using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation;

/// <summary>Builds a knowledge base from what was read, and brings what is wrong in meaning to its place in the files.</summary>
internal static class KnowledgeLoader
{
    /// <summary>Checks the data, then each site over it.</summary>
    public static ReadResult Build(ReadResult read, string directory, IReadOnlyList<GivenFile> siteFiles)
    {
        var faults = read.Diagnostics.ToList();
        KnowledgeBase? built = null;
        var problems = read.Gaps.Count == 0 ? KnowledgeBase.TryBuild(read.Data, out built) : KnowledgeValidation.Check(read.Data)
            .Where(problem => IsSure(problem, read.Gaps)).ToArray();
        Add(problems, read.Diagnostics, read.Places, directory, faults);
        if (faults.Count > 0) built = null;

        return LayOver(read with { Diagnostics = faults, KnowledgeBase = built }, siteFiles);
    }

    /// <summary>Reads each site, checks it over the ones before it, and lays it over what was read.</summary>
    public static ReadResult LayOver(ReadResult read, IReadOnlyList<GivenFile> siteFiles)
    {
        var faults = read.Diagnostics.ToList();
        var places = read.Places;
        var sites = read.Sites.ToList();
        var built = read.KnowledgeBase;
        foreach (var file in siteFiles)
        {
            var site = SiteFile.Read(file, read.Data);
            faults.AddRange(site.Diagnostics);
            places = places.With(site.Places);
            if (site.Site is null) continue;
            sites.Add(site.Site);
            if (built is null || site.HasGaps) continue;
            var problems = built.TryWith(site.Site, out var overlaid);
            Add(problems, site.Diagnostics, site.Places, file.Path, faults, places);
            if (overlaid is not null) built = overlaid;
        }

        faults.Sort();
        return read with { Sites = sites, Diagnostics = faults, Places = places, KnowledgeBase = faults.Count == 0 ? built : null };
    }

    private static void Add(
        IReadOnlyList<Problem> problems, IReadOnlyList<Diagnostic> known, SourceMap places, string shownAs, List<Diagnostic> faults, SourceMap? wider = null)
    {
        var faulty = places.IdsOf(record => IsKnown(known, record));
        foreach (var problem in problems)
        {
            if (faulty.Any(id => problem.Message.Contains($"`{id}`", StringComparison.Ordinal))) continue;
            var place = places.Find(problem.Place) ?? wider?.Find(problem.Place);
            if (place is not null && places.FindRecord(problem.Place) is { } record && IsKnown(known, record)
                && (!NamesNothing(problem) || IsKnown(known, place))) continue;
            var diagnostic = ProblemDiagnostic.Of(problem, place, wider ?? places, shownAs);
            if (!faults.Contains(diagnostic)) faults.Add(diagnostic);
        }
    }

    /// <summary>Whether an id is that of no record: a slip of its own, whatever else is wrong beside it.</summary>
    private static bool NamesNothing(Problem problem) => problem.Code.StartsWith("unknown-", StringComparison.Ordinal);

    /// <summary>Whether something was said of a record when it was read: what follows from it, there or elsewhere, is not said again.</summary>
    private static bool IsKnown(IReadOnlyList<Diagnostic> known, SourcePlace record) =>
        known.Any(one => one.Place is { } place && place.Source == record.Source && Touches(record.Span, place.Span));

    private static bool Touches(TextSpan record, TextSpan fault) => fault.Start >= record.Start && fault.Start <= record.End;

    /// <summary>
    /// Whether a problem can be told although records are missing: an id given twice, and one that no record has, where no record of its kind is missing.
    /// </summary>
    private static bool IsSure(Problem problem, IReadOnlySet<RecordKind> gaps) => problem.Code == "duplicate-id"
        || (NamesNothing(problem) && Words.TryParse<RecordKind>(problem.Code["unknown-".Length..], out var kind) && !gaps.Contains(kind));
}
