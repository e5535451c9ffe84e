using Compat.Curation.Checking;
using Compat.Tests.RandomCases;
using Compat.Tests.Reference;
using FsCheck;
using FsCheck.Fluent;

namespace Compat.Curation.Tests.Standing;

/// <summary>The shipped standing rules as properties, beside the check: an edit of a rule that breaks one fails both ways.</summary>
public class StandingPropertyTests
{
    /// <summary>So many edits of shipped rules are tried, of either kind.</summary>
    private const int Edits = 30;

    /// <summary>So many at most against one standing rule.</summary>
    private const int EditsOfOne = 4;
    private static readonly KnowledgeData Data = DataFolder.Read(Repository.PathOf("data")).Data;

    [Fact]
    public void Every_standing_rule_that_speaks_of_rules_is_stated_here() => Assert.Equal(
        Data.StandingRules.Where(rule => rule.SpeaksOfRules).Select(rule => rule.Id.Value).Order(), ShippedStanding.All.Select(stand => stand.Id).Order());

    [Fact]
    public void No_part_type_and_agent_below_breaks_one_at_random_exposures()
    {
        var kb = Built(Data);
        var config = Config.QuickThrowOnFailure.WithMaxTest(RandomSize.Checks(3)).WithQuietOnSuccess(true);
        Check.One(config, Prop.ForAll(Arb.From(Gen.Choose(0, int.MaxValue - 1)), seed =>
        {
            foreach (var stand in ShippedStanding.All)
                if (stand.Broken(Data, kb, new Random(seed)) is { } question) Assert.Fail($"seed {seed}: `{stand.Id}` is broken: {WitnessLine.Of(question)}");
        }));
    }

    [Fact]
    public void An_edit_of_a_shipped_rule_that_breaks_one_is_caught_both_ways()
    {
        var broken = new HashSet<DutyKind?>();
        var caught = 0;
        foreach (var (stand, edited, box) in Edited(false).Concat(Edited(true)))
        {
            if (DataCheck.Faults(edited, []) is not { } faults) continue;
            var found = faults.Where(fault => fault.Kind == FindingKind.BrokenStandingRule && fault.Involved[^1].Place.Id == stand.Id).ToArray();
            var kb = Built(edited);
            var drawn = Enumerable.Range(0, 8).Select(seed => stand.Broken(edited, kb, new Random(seed), seed < 2 ? null : box))
                .FirstOrDefault(question => question is not null);
            if (drawn is not null) Assert.True(found.Length > 0, $"the check finds nothing against `{stand.Id}`, but {WitnessLine.Of(drawn)}");
            if (found.Length == 0) continue;
            Assert.All(
                found, fault =>
                    Assert.True(kb.Ask(fault.Witness! with { OnlyPart = true }).PartVerdict >= Verdict.AllowedWithinLimits, WitnessLine.Of(fault.Witness!)));
            if (drawn is null) continue;
            caught++;
            broken.Add(stand.With);
        }

        Assert.True(caught >= 10 && broken.Count > 1, $"{caught} edits were caught both ways, against demands of {broken.Count} kinds");
    }

    private static IEnumerable<(Stand Stand, KnowledgeData Edited, ExposureBox Box)> Edited(bool withDuty) =>
        ShippedStanding.All.Where(stand => stand.With is not null == withDuty).SelectMany(stand => EditsAgainst(stand).Take(EditsOfOne)).Take(Edits);

    /// <summary>Edits of one shipped rule each: a prohibition turned into a permission of everything, or a duty dropped from a permission.</summary>
    private static IEnumerable<(Stand Stand, KnowledgeData Edited, ExposureBox Box)> EditsAgainst(Stand stand)
    {
        var trees = new ReferenceTrees(Data, []);
        foreach (var rule in Data.Rules)
        {
            var isSame = rule.Target.Part == stand.Part && rule.Target.Material == stand.Material;
            if (stand.With is null && isSame && !rule.Allows && rule.Agent!.Value == stand.Agent)
                yield return (stand, With(rule with { Allows = true, KnownBy = KnownBy.Practice, WholeClass = true, When = Everything }), Everything);
            else if (stand.With is { } duty && rule.Allows && rule.Duties.Any(one => one.Kind == duty) && (isSame || Lies(rule, stand)))
                yield return (stand, With(rule with { Duties = rule.Duties.Where(one => one.Kind != duty).ToArray() }), rule.When);
        }

        bool Lies(Rule rule, Stand of) => rule.Agent is { } agent && trees.Below(agent, new AgentId(of.Agent))
            && ((of.Part is { } part && rule.Target.Part is { } own && trees.Below(own, part))
                || (of.Material is { } material && rule.Target.Material is { } made && trees.Below(made, material)));

        KnowledgeData With(Rule edited) => Data with { Rules = Data.Rules.Select(rule => rule.Id == edited.Id ? edited : rule).ToArray() };
    }

    private static ExposureBox Everything { get; } = new()
    {
        Strength = AxisLimit.Any,
        ExposureTime = AxisLimit.Any,
        Temperature = AxisLimit.Any,
        Ph = AxisLimit.Any,
        Uses = AxisLimit.Any,
        Methods = MethodLimit.Any,
    };

    /// <summary>A knowledge base of rules alone: nothing refuses an edit before it is asked.</summary>
    private static KnowledgeBase Built(KnowledgeData data)
    {
        var problems = KnowledgeBase.TryBuild(data with { StandingRules = [] }, out var kb);
        return kb ?? throw new InvalidOperationException(string.Join("\n", problems));
    }
}
