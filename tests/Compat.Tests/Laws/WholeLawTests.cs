using Compat.Tests.RandomCases;

namespace Compat.Tests.Laws;

/// <summary>What may be added where kill and people are judged, without ever permitting more.</summary>
/// <remarks>
/// Whether it is refused, or for want of a claim not established, may change either way: something more that is asked may be silent where before something said
/// no,
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
        var added = like with
        {
            Id = new("claim.added"),
            DoesNotKill = [],
            Refuted = null,
            With = [],
            Reaches = random.Next(2) == 0 ? like.Reaches ?? Level.Low : Level.Low,
        };
        var changed = c with { Data = c.Data with { Claims = [.. c.Data.Claims, added] } };
        if (changed.Build(out _) is not { } kb || c.Build().Ask(c.Question).Kill is not { } before) return;
        var after = kb.Ask(c.Question).Kill!;
        Assert.True(!Permits(before.Verdict) || Permits(after.Verdict), $"{before.Verdict} became {after.Verdict} ({after.Reasons[0].Code}) with\n{changed}");
    }, share: 10);

    /// <summary>A claim that holds in a machine only may be named; what is answered stays.</summary>
    [Fact]
    public void AMachineClaim_Added_ChangesNoVerdict() => RandomRun.ForAll(Shape.Whole, c =>
    {
        if (c.Data.Claims.Count == 0) return;
        var added = c.Data.Claims[c.Seed % c.Data.Claims.Count] with { Id = new("claim.added"), Where = ClaimWhere.Machine, DoesNotKill = [], Refuted = null };
        var changed = c with { Data = c.Data with { Claims = [.. c.Data.Claims, added] } };
        if (changed.Build(out _) is not { } kb || !c.Question.JudgesKillAndPeople) return;
        var (before, after) = (c.Build().Ask(c.Question), kb.Ask(c.Question));
        Assert.True(
            (before.Verdict, before.Kill?.Verdict) == (after.Verdict, after.Kill?.Verdict),
            $"{before.Kill?.Verdict} became {after.Kill?.Verdict} with\n{changed}");
    }, share: 10);

    /// <summary>Stronger on one axis is enough: less than is asked, shorter, colder or drier was refuted.</summary>
    [Fact]
    public void ARefutedClaim_AtAStrongerExposure_ChangesNoAnswer() => OfRefuted((asked, basis, random) => random.Next(4) switch
    {
        0 when asked.Strength is { } strength
            && strength.Unit.Basis == basis => Weak with { Strength = AxisLimit.Within(Interval.Closed(0m, strength.Percent.Lower!.Value / 2m)) },
        1 => Weak with { Temperature = AxisLimit.Within(Interval.Closed(-40m, asked.Temperature!.Value.Lower!.Value - 1m)) },
        2 when asked.ExposureTime!.Value.Upper is { } exposureTime and not Interval.WithoutEnd =>
            Weak with { ContactTime = AxisLimit.Within(new Interval(0m, false, exposureTime / 2m, true)) },
        _ => asked.Method is ApplicationMethod.DampWipe ? null : Weak with { Methods = MethodLimit.Within(ApplicationMethod.DampWipe) },
    }, (before, after) => (before.Verdict, before.Kill!.Verdict) == (after.Verdict, after.Kill!.Verdict));

    /// <summary>What was refuted is wetter, warmer and longer than what is asked, and at least as strong: nothing is left open any more.</summary>
    [Fact]
    public void ARefutedClaim_AtAWeakerExposure_Binds()
    {
        var bound = 0;
        OfRefuted(
            (asked, _, _) => asked.Agent is null || asked.ExposureTime!.Value.Upper is not { } exposureTime || exposureTime == Interval.WithoutEnd
            || asked.Method == ApplicationMethod.Chamber ? null : Weak with
            {
                Temperature = AxisLimit.Within(Interval.Exactly(asked.Temperature!.Value.Upper!.Value + 1m)),
                ContactTime = AxisLimit.Within(Interval.Closed(exposureTime + 1m, exposureTime + 2m)),
                Methods = MethodLimit.Within(ApplicationMethod.Immerse),
            }, (before, after) =>
            {
                var kill = before.Kill!;
                var known = kill.Reasons[0].Code is not (KillReasonCode.ContactNotKnown or KillReasonCode.NothingToKill)
                    && kill.Reasons.All(reason => reason.Code != KillReasonCode.OutsideClaims || reason.Arguments.Count > 1);
                if (Permits(kill.Verdict) || !known) return kill.Verdict == after.Kill!.Verdict;
                if (kill.Verdict == Verdict.NotEstablished) bound++;
                return after.Kill!.Verdict == Verdict.NotAllowed;
            });
        Assert.True(bound > 0, "no refuted claim decided");
    }

    private static ClaimBox Weak => new()
    {
        Strength = AxisLimit.Any,
        ContactTime = AxisLimit.Within(Interval.Above(0m)),
        Temperature = AxisLimit.Any,
        Ph = AxisLimit.Any,
        Methods = MethodLimit.Any,
    };

    /// <summary>Adds a claim on any agent, refuted of everything, to a question that states every axis, and compares the answers.</summary>
    private static void OfRefuted(Func<Question, StrengthBasis?, Random, ClaimBox?> box, Func<Answer, Answer, bool> holds) =>
        RandomRun.ForAll(Shape.WholePoint, c =>
    {
        if (!c.Question.JudgesKillAndPeople) return;
        var agent = c.Question.Agent ?? AgentClass.Root;
        var unit = c.Data.Agents.Any(one => one.Id == agent && agent != AgentClass.Root) ? c.Build().Compiled.Agent(agent).Basis : null;
        if (box(c.Question, unit?.Basis, new Random(c.Seed)) is not { } when) return;
        var basis = unit is not null;
        var added = new Claim
        {
            Id = new("claim.added"),
            Agent = agent,
            When = when with { Strength = basis ? when.Strength : default },
            Reaches = Level.Low,
            Kills = [
                .. Enum.GetValues<OrganismGroup>().Where(group => group != OrganismGroup.Prions)
                .Select(OrganismTarget.Of), OrganismTarget.Of(new OrganismId("o-1")), OrganismTarget.Of(new OrganismId("o-2"))],
            Refuted = "an outbreak",
            Kind = ClaimKind.Guideline,
            Why = "made at random",
            Sources = [new("s-read")],
            Reviewed = new(2026, 1, 1),
        };
        var changed = c with { Data = c.Data with { Claims = [.. c.Data.Claims, added] } };
        if (changed.Build(out _) is not { } kb || (!basis && when.Strength.Statement == AxisStatement.Within)) return;
        var (before, after) = (c.Build().Ask(c.Question), kb.Ask(c.Question));
        Assert.True(
            holds(before, after),
            $"{before.Kill!.Verdict} ({before.Kill.Reasons[0].Code}) became {after.Kill!.Verdict} ({after.Kill.Reasons[0].Code}) with\n{changed}");
    }, share: 5);

    [Fact]
    public void AddingATargetNeverPermitsMore() => NeverPermitsMore((c, random) =>
    {
        OrganismTarget[] all = [
            .. Enum.GetValues<OrganismGroup>().Where(group => group != OrganismGroup.Prions)
            .Select(OrganismTarget.Of), OrganismTarget.Of(new OrganismId("o-1")), OrganismTarget.Of(new OrganismId("o-2"))];
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
                        Id = new("person-added"), Agent = agents[random.Next(agents.Count)].Id, Patients = Enum.GetValues<PatientGroup>(), Harm = "harm",
                            Why = "made at random", Sources = [new("s-read")], Reviewed = new(2026, 1, 1),
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

    /// <remarks>What a label says is not killed is left out: with its claim goes what it says, too.</remarks>
    [Fact]
    public void TakingATestAway_NeverPermitsMoreNorMakesItPlain() => RandomRun.ForAll(Shape.Whole, c =>
    {
        var random = new Random(c.Seed);
        var given = Claiming(c, claim => claim with { DoesNotKill = [] });
        var taken = Claiming(given, claim => claim with { ShownBy = claim.ShownBy.Where(_ => random.Next(2) == 0).ToArray() });
        if (!c.Question.JudgesKillAndPeople || given.Build(out _) is not { } all || taken.Build(out _) is not { } fewer) return;
        if (!all.TryAsk(c.Question, out var before, out _) || !fewer.TryAsk(c.Question, out var after, out _)) return;
        Assert.True(Permits(before.Verdict) || !Permits(after.Verdict), $"{before.Verdict} became {after.Verdict} with\n{taken}");
        Assert.True(
            before.Kill!.Verdict == Verdict.Allowed
            || after.Kill!.Verdict != Verdict.Allowed, $"kill {before.Kill.Verdict} became {after.Kill!.Verdict} with\n{taken}");
    }, share: 2);

    [Fact]
    public void TestsOfAnotherField_ShowNothingOnADevice() => RandomRun.ForAll(Shape.Whole, c =>
    {
        var households = c with
        {
            Data = c.Data with
            {
                TestStandards = c.Data.TestStandards.Select(test => test with { Field = TestField.FoodAndHousehold, Step = TestStep.Practical }).ToArray(),
            },
        };
        if (Claiming(households, claim => claim with { Registration = null }).Build(out _) is not { } kb || !kb.TryAsk(c.Question, out var answer, out _))
            return;
        Assert.DoesNotContain(answer.Kill?.Claims ?? [], claim => claim.Origin == Compat.Answers.ClaimOrigin.Label);
    }, share: 4);

    private static Case Claiming(Case c, Func<LabelClaim, LabelClaim> change) => c with
    {
        Site = c.Site is not { } site ? null : site with
        {
            Products = site.Products.Select(product => product with { LabelClaims = product.LabelClaims.Select(change).ToArray() }).ToArray(),
        },
    };

    private static void NeverPermitsMore(Func<Case, Random, Case?> change) => RandomRun.ForAll(Shape.Whole, c =>
    {
        if (!c.Question.JudgesKillAndPeople || change(c, new Random(c.Seed)) is not { } changed || changed.Build(out _) is not { } kb) return;
        if (!kb.TryAsk(changed.Question, out var after, out _)) return;
        var before = c.Build().Ask(c.Question);
        Assert.True(Permits(before.Verdict) || !Permits(after!.Verdict), $"{before.Verdict} became {after!.Verdict} with\n{changed}");
    }, share: 10);

    private static bool Permits(Verdict verdict) => verdict >= Verdict.AllowedWithinLimits;
}
