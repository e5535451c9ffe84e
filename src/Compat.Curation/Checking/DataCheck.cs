using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Proves that a set of rules cannot contradict itself, over every question that can be asked, or shows where it does.</summary>
/// <remarks>Safe to call from several threads.</remarks>
public static class DataCheck
{
    /// <summary>Checks records.</summary>
    /// <param name="data">The records.</param>
    /// <param name="sites">Sites laid over them.</param>
    /// <param name="options">What to look at.</param>
    /// <param name="problems">
    /// What keeps them from being checked at all; empty where nothing does. Wrong overrides and the like are findings, not problems.
    /// </param>
    /// <returns>What was found; null where there are problems.</returns>
    /// <exception cref="TooManyBoxesException">One pair of part and agent needs more than 100,000 boxes.</exception>
    public static CheckReport? Run(KnowledgeData data, IReadOnlyList<Site> sites, CheckOptions options, out IReadOnlyList<Problem> problems)
    {
        var all = Problems(data, sites);
        problems = all.Where(problem => !LoadFaults.IsOne(problem)).ToArray();
        return problems.Count > 0 ? null : Run(data, sites, options, all);
    }

    /// <summary>The faults alone; null where the records cannot be checked.</summary>
    internal static IReadOnlyList<Finding>? Faults(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        var problems = Problems(data, sites);
        if (problems.Any(problem => !LoadFaults.IsOne(problem))) return null;
        return FaultsOf(new Ground(data, sites), problems, new CheckOptions { Today = default }).Where(finding => finding.IsFault).ToArray();
    }

    private static List<Problem> Problems(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        var all = KnowledgeValidation.Check(data).ToList();
        for (var i = 0; i < sites.Count; i++) all.AddRange(SiteValidation.Check(data, sites.Take(i).ToArray(), sites[i]));
        return all;
    }

    private static CheckReport Run(KnowledgeData data, IReadOnlyList<Site> sites, CheckOptions options, List<Problem> overrides)
    {
        var ground = new Ground(data, sites);

        // Notes need nothing of the faults: both are looked for at once, on two cores.
        var notes = Task.Run(() => (Found: Notes(ground, options, out var gaps), Gaps: gaps));
        var findings = FaultsOf(ground, overrides, options);
        if (findings.Any(finding => finding.Kind == FindingKind.Contradiction))
        {
            options.Progress?.Invoke("mends");
            var trial = new MendTrial(data, sites, findings);
            findings = findings.Select(trial.Sift).ToList();
        }

        findings.AddRange(new RecordFaults(data, sites).Find(options.Today));
        options.Progress?.Invoke("notes");
        findings.AddRange(notes.GetAwaiter().GetResult().Found);
        return new CheckReport
        {
            Gaps = notes.Result.Gaps,
            Findings = findings.OrderBy(finding => !finding.IsFault).ThenBy(finding => finding.Kind).ThenBy(finding => finding.Message, StringComparer.Ordinal)
                .ToArray(),
            Rules = ground.Kb.Rules.Length,
            Subjects = ground.All.Count,
            Agents = ground.Kb.Agents.Count,
        };
    }

    private static List<Finding> Notes(Ground ground, CheckOptions options, out IReadOnlyList<PartGaps> gaps)
    {
        var notes = new ThinEvidence(ground).Find().Concat(new StaleRules(ground).Find(options)).ToList();
        notes.AddRange(new ClosedWindows(ground).Find());
        gaps = new Gaps(ground).Find();
        var count = gaps.Sum(part => part.Agents.Count);
        if (count > options.GapsAtMost) notes.Add(Gaps.TooMany(gaps, count, options.GapsAtMost.Value));
        return notes;
    }

    private static List<Finding> FaultsOf(Ground ground, List<Problem> overrides, CheckOptions options)
    {
        var findings = overrides.Select(LoadFaults.Of).ToList();
        Step("contradictions", () => new Contradictions(ground).Find(options.WithRefinements));
        Step("overrides", () => new OverrideFaults(ground).Find(findings.ToArray()));
        Step("standing rules", () => new StandingRules(ground).Find());
        Step("claims", () => new LooserClaims(ground).Find());
        Step("duties", () => new ImpossibleAnswers(ground).Find());
        Step("mixing", () => new MixingRecords(ground.Kb).Find());
        Step("label claims", () => new ClaimsBeyondTests(ground).Find());
        Step("dead rules", () => new DeadRules(ground).Find());
        return findings;

        void Step(string what, Func<IEnumerable<Finding>> find)
        {
            options.Progress?.Invoke(what);
            findings.AddRange(find());
        }
    }
}

/// <summary>Faults of meaning that loading finds already; they do not keep the rest from being checked.</summary>
internal static class LoadFaults
{
    private static readonly Dictionary<string, FindingKind> Kinds = new()
    {
        ["override-misses"] = FindingKind.OverrideMisses,
        ["override-cycle"] = FindingKind.OverrideCycle,
        ["override-reach"] = FindingKind.OverrideReach,
        ["overrides-instructions"] = FindingKind.OverridesInstructions,
        ["breaks-standing-rule"] = FindingKind.BrokenStandingRule,
        ["exceeds-test"] = FindingKind.ThinEvidence,
        ["rests-on-absence"] = FindingKind.ThinEvidence,
        ["mark-too-weak"] = FindingKind.ThinEvidence,
    };

    /// <summary>Whether a problem is one of them.</summary>
    public static bool IsOne(Problem problem) => Kinds.ContainsKey(problem.Code);

    /// <summary>The problem as a finding.</summary>
    public static Finding Of(Problem problem) => new()
    {
        Kind = Kinds[problem.Code],
        IsFault = true,
        Message = problem.Message,
        Involved = [new(problem.Place, "stands here")],
        Help = problem.Help,
    };
}
