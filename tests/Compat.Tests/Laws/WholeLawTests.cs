using Compat.Efficacy;
using Compat.People;
using Compat.Tests.RandomCases;

namespace Compat.Tests.Laws;

/// <summary>What may be added where kill and people are judged, without ever permitting more.</summary>
/// <remarks>
/// Whether it is refused, or for want of a claim not established, may change either way: something more that is asked may be silent where before something said no,
/// and a claim that would meet what is needed, but does not reach into the bore, says no where before nothing spoke.
/// </remarks>
public sealed class WholeLawTests
{
    [Fact]
    public void AddingAClaimNeverTakesAKillAway() => RandomRun.ForAll(Shape.Whole, c =>
    {
        if (c.Data.Claims.Count == 0) return;
        var random = new Random(c.Seed);
        var like = c.Data.Claims[random.Next(c.Data.Claims.Count)];
        var added = like with { Id = new("claim.added"), DoesNotKill = [], Refuted = null, With = [], Reaches = random.Next(2) == 0 ? like.Reaches ?? Level.Low : Level.Low };
        var changed = c with { Data = c.Data with { Claims = [.. c.Data.Claims, added] } };
        if (changed.Build(out _) is not { } kb || c.Build().Ask(c.Question).Kill is not { } before) return;
        var after = kb.Ask(c.Question).Kill!;
        Assert.True(!Permits(before.Verdict) || Permits(after.Verdict), $"{before.Verdict} became {after.Verdict} ({after.Reasons[0].Code}) with\n{changed}");
    }, share: 10);

    [Fact]
    public void AddingATargetNeverPermitsMore() => NeverPermitsMore((c, random) =>
    {
        OrganismTarget[] all = [.. Enum.GetValues<OrganismGroup>().Where(group => group != OrganismGroup.Prions).Select(OrganismTarget.Of), OrganismTarget.Of(new OrganismId("o-1")), OrganismTarget.Of(new OrganismId("o-2"))];
        return c with { Question = c.Question with { Against = [.. c.Question.Against, all[random.Next(all.Length)]] } };
    });

    [Fact]
    public void RaisingTheLevelNeverPermitsMore() => NeverPermitsMore((c, _) =>
        c.Question.Level is { } level && level < Level.Sterile ? c with { Question = c.Question with { Level = level + 1 } } : null);

    [Fact]
    public void AddingAPersonRuleNeverPermitsMore() => NeverPermitsMore((c, random) =>
    {
        var forbids = random.Next(2) == 0;
        var agents = c.Data.Agents;
        return c with
        {
            Data = c.Data with
            {
                PersonRules =
                [
                    .. c.Data.PersonRules,
                    new()
                    {
                        Id = new("person-added"), Agent = agents[random.Next(agents.Count)].Id, Patients = Enum.GetValues<PatientGroup>(), Harm = "harm", Why = "made at random", Sources = [new("s-read")], Reviewed = new(2026, 1, 1),
                        Verdict = forbids ? PersonVerdict.NotAllowed : PersonVerdict.WithDuties,
                        Duties = forbids ? [] : [new() { Kind = DutyKind.TakeOff, Ways = [DutyWay.By(ApplicationMethod.Rinse)] }],
                    },
                ],
            },
        };
    });

    [Fact]
    public void AddingAPatientNeverPermitsMore() => NeverPermitsMore((c, random) => c.Question.Patients.Count == 0 ? null
        : c with { Question = c.Question with { Patients = [.. c.Question.Patients, Enum.GetValues<PatientGroup>()[random.Next(4)]] } });

    private static void NeverPermitsMore(Func<Case, Random, Case?> change) => RandomRun.ForAll(Shape.Whole, c =>
    {
        if (!c.Question.JudgesKillAndPeople || change(c, new Random(c.Seed)) is not { } changed || changed.Build(out _) is not { } kb) return;
        if (!kb.TryAsk(changed.Question, out var after, out _)) return;
        var before = c.Build().Ask(c.Question);
        Assert.True(Permits(before.Verdict) || !Permits(after!.Verdict), $"{before.Verdict} became {after!.Verdict} with\n{changed}");
    }, share: 10);

    private static bool Permits(Verdict verdict) => verdict >= Verdict.AllowedWithinLimits;
}
