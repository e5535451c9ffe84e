namespace Compat.Curation.Checking;

/// <summary>Tries what was proposed: a mend is kept only where it removes the contradiction and makes no other fault.</summary>
/// <remarks>Each trial is a whole check, so only so many are made; what was not tried is kept.</remarks>
internal sealed class MendTrial(KnowledgeData data, IReadOnlyList<Site> sites, IReadOnlyCollection<Finding> findings)
{
    private const int MostRules = 20_000;
    private readonly HashSet<string> _known = [.. findings.Where(finding => finding.IsFault).Select(Key)];
    private int _left = MostRules / Math.Max(1, data.Rules.Count + sites.Sum(site => site.Rules.Count));

    /// <summary>The finding with the mends that hold.</summary>
    public Finding Sift(Finding finding) => finding.Kind != FindingKind.Contradiction ? finding : finding with
    {
        Mends = finding.Mends.Where(mend => _left-- <= 0 || Holds(finding, mend)).ToArray(),
    };

    private bool Holds(Finding finding, Mend mend)
    {
        var mended = data with { Rules = data.Rules.Select(rule => rule.Id == mend.Rule ? mend.ApplyTo(rule) : rule).ToArray() };
        var over = sites.Select(site => site with { Rules = site.Rules.Select(rule => rule.Id == mend.Rule ? mend.ApplyTo(rule) : rule).ToArray() }).ToArray();
        var left = DataCheck.Faults(mended, over);
        return left is not null && left.All(fault => Key(fault) != Key(finding) && _known.Contains(Key(fault)));
    }

    /// <summary>What a fault is about, however it is worded.</summary>
    private static string Key(Finding finding) =>
        finding.Kind is FindingKind.Contradiction or FindingKind.BrokenStandingRule
            ? $"{finding.Kind} {string.Join(" ", finding.Involved.Select(one => one.Place.Id))}"
            : $"{finding.Kind} {finding.Involved[0].Place.Id}";
}
