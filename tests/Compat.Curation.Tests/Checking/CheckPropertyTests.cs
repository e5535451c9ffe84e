using Compat.Curation.Checking;
using Compat.Tests.RandomCases;
using Compat.Validation;

namespace Compat.Curation.Tests.Checking;

/// <summary>The check against a walk over every point of the grid of boundaries.</summary>
public class CheckPropertyTests
{
    private const int Sites = 5, Devices = 20, Mended = 80;
    private static readonly CheckOptions Options = new() { Today = new CalendarDate(2026, 11, 25), WithRefinements = true };

    [Fact]
    public void Contradictions_and_refinements_are_found_if_and_only_if_a_point_shows_them() => RandomData.ForAll(12, random =>
    {
        var naive = new NaiveCheck(random.Data);
        var report = Run(random.Data);
        Assert.Equal(Names(naive.Contradictions), Names(Pairs(report, FindingKind.Contradiction)));
        Assert.Equal(Names(naive.Refinements), Names(Pairs(report, FindingKind.Refinement).Select(pair => (pair.Item2, pair.Item1))));
        Assert.Equal(
            naive.Broken.Select(id => id.Value).Order(), report.Findings.Where(f => f.Kind == FindingKind.BrokenStandingRule)
            .Select(f => f.Involved[^1].Place.Id).Distinct().Order());
        Assert.Equal(naive.Dead.Select(id => id.Value).Order(), Of(report, FindingKind.DeadRule));
        Assert.Equal(naive.Redundant.Select(id => id.Value).Order(), Of(report, FindingKind.RedundantRule));
    });

    /// <summary>A site has devices with several editions of their instructions, products of which not all is declared, and rules of its own on both.</summary>
    [Fact]
    public void What_a_site_adds_contradicts_or_decides_if_and_only_if_a_point_shows_it()
    {
        int meeting = 0, idle = 0, superseded = 0;
        RandomData.ForAll(Sites, random =>
        {
            Site[] sites = [random.Site!];
            var naive = new NaiveCheck(random.Data, sites);
            var report = DataCheck.Run(random.Data, sites, Options, out var problems)!;
            Assert.Empty(problems);
            Assert.Equal(Names(naive.Contradictions), Names(Pairs(report, FindingKind.Contradiction)));
            Assert.Equal(Names(naive.Refinements), Names(Pairs(report, FindingKind.Refinement).Select(pair => (pair.Item2, pair.Item1))));
            Assert.Equal(naive.Dead.Select(id => id.Value).Order(), Of(report, FindingKind.DeadRule));
            Assert.Equal(naive.Redundant.Select(id => id.Value).Order(), Of(report, FindingKind.RedundantRule));
            Assert.Equal(naive.Superseded.Select(id => id.Value).Order(), Of(report, FindingKind.SupersededEdition));
            var own = random.Site!.Rules.Select(rule => rule.Id).ToHashSet();
            meeting += naive.Contradictions.Concat(naive.Refinements).Count(pair => own.Contains(pair.Item1) || own.Contains(pair.Item2));
            idle += naive.Dead.Concat(naive.Redundant).Count(own.Contains);
            superseded += naive.Superseded.Count();
        }, withSite: true);
        Assert.True(
            meeting >= RandomSize.Telling(2, Sites) && idle >= RandomSize.Telling(1, Sites),
            $"of the site's rules {meeting} meet others, {idle} decide nothing, {superseded} cite an edition that is replaced");
    }

    /// <summary>
    /// Devices with several editions of their instructions and rules of their own; products, of which the walk knows nothing, may break more.
    /// </summary>
    [Fact]
    public void A_standing_rule_is_broken_on_devices_if_and_only_if_a_point_shows_it()
    {
        int broken = 0, kept = 0;
        RandomData.ForAll(Devices, random =>
        {
            Site[] sites = [random.Site!];
            var naive = NaiveCheck.BrokenOnDevices(random.Data, sites).Select(id => id.Value).ToHashSet();
            var found = DataCheck.Run(random.Data, sites, Options, out var problems)!.Findings
                .Where(f => f.Kind is FindingKind.BrokenStandingRule or FindingKind.InstructionsDepart && f.Involved[^1].Place.Kind == RecordKind.StandingRule)
                    .ToArray();
            Assert.Empty(problems);
            Assert.Subset(found.Select(f => f.Involved[^1].Place.Id).ToHashSet(), naive);
            Assert.Subset(naive, found.Where(f => f.Witness is { Device: not null, Product: null }).Select(f => f.Involved[^1].Place.Id).ToHashSet());
            broken += naive.Count;
            kept += random.Data.StandingRules.Count - naive.Count;
        }, withSite: true);
        Assert.True(broken >= RandomSize.Telling(2, Devices) && kept >= RandomSize.Telling(3, Devices), $"{broken} broken, {kept} kept");
    }

    [Fact]
    public void What_is_found_does_not_depend_on_the_order_of_rules() => RandomData.ForAll(60, random =>
    {
        var turned = random.Data with
        {
            Rules = random.Data.Rules.Reverse().ToArray(),
            Parts = random.Data.Parts.Reverse().ToArray(),
            Materials = random.Data.Materials.Reverse().ToArray(),
            Agents = random.Data.Agents.Reverse().ToArray(),
            StandingRules = random.Data.StandingRules.Reverse().ToArray(),
        };
        var (one, other) = (Run(random.Data), Run(turned));
        Assert.Equal(one.Findings.Where(f => f.IsFault).Select(f => f.Message), other.Findings.Where(f => f.IsFault).Select(f => f.Message));
    });

    [Fact]
    public void Each_witness_asked_shows_the_fault() => RandomData.ForAll(100, random =>
    {
        KnowledgeBase.TryBuild(random.Data, out var kb);
        foreach (var finding in Run(random.Data).Findings.Where(f => f.Witness is not null))
        {
            var answer = kb!.Ask(finding.Witness!);
            switch (finding.Kind)
            {
                case FindingKind.Contradiction:
                    Assert.Equal(Verdict.NotAllowed, answer.Verdict);
                    Assert.True(
                        NaiveCheck.Shows(random.Data, finding.Witness!, new(finding.Involved[0].Place.Id), new(finding.Involved[1].Place.Id)), finding.Message);
                    break;
                case FindingKind.BrokenStandingRule:
                    Assert.True(answer.Verdict >= Verdict.AllowedWithinLimits, WitnessLine.Of(finding.Witness!));
                    break;
                default:
                    Assert.NotEqual(Verdict.Allowed, answer.Verdict);
                    break;
            }
        }
    });

    [Fact]
    public void A_mend_removes_its_contradiction_and_makes_no_other_fault()
    {
        int contradictions = 0, mended = 0;
        RandomData.ForAll(Mended, random =>
        {
            var before = Run(random.Data);
            foreach (var finding in before.Findings.Where(f => f.Kind == FindingKind.Contradiction))
            {
                contradictions++;
                if (finding.Mends.Count > 0) mended++;
                foreach (var mend in finding.Mends.Take(2))
                {
                    var data = random.Data with { Rules = random.Data.Rules.Select(rule => rule.Id == mend.Rule ? mend.ApplyTo(rule) : rule).ToArray() };
                    var after = Run(data);
                    Assert.True(
                        mend.When is null || random.Data.Rules.Single(rule => rule.Id == mend.Rule).Allows, $"a prohibition would be narrowed: {mend.Text}");
                    Assert.DoesNotContain(after.Findings, f => f.Kind == FindingKind.Contradiction && f.Message == finding.Message);
                    Assert.Subset(Faults(before), Faults(after));
                }
            }
        });
        Assert.True(
            contradictions >= RandomSize.Telling(8, Mended) && mended >= contradictions * 2 / 3, $"{mended} of {contradictions} contradictions have a mend");
    }

    private static HashSet<string> Faults(CheckReport report) =>
        [.. report.Faults.Select(
            f => f.Kind + " " + (
                f.Kind is FindingKind.Contradiction or FindingKind.BrokenStandingRule ? string.Join(" ", f.Involved.Select(i => i.Place.Id))
                : f.Involved[0].Place.Id))];

    private static CheckReport Run(KnowledgeData data)
    {
        var report = DataCheck.Run(data, [], Options, out var problems);
        Assert.Empty(problems);
        return report!;
    }

    private static IEnumerable<string> Of(CheckReport report, FindingKind kind) => report.Findings.Where(f => f.Kind == kind)
        .Select(f => f.Involved[0].Place.Id).Order();

    private static IEnumerable<(RuleId, RuleId)> Pairs(CheckReport report, FindingKind kind) =>
        report.Findings.Where(f => f.Kind == kind).Select(f => (new RuleId(f.Involved[0].Place.Id), new RuleId(f.Involved[1].Place.Id)));

    private static IEnumerable<string> Names(IEnumerable<(RuleId, RuleId)> pairs) => pairs.Select(pair => $"{pair.Item1} {pair.Item2}").Order();
}
