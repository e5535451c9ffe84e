namespace Compat.Tests.RandomCases;

/// <summary>What is needed, what kills and what reaches people.</summary>
internal sealed partial class CaseMaker
{
    private const string Cloth = "cotton";
    private static readonly OrganismGroup[] Groups = Enum.GetValues<OrganismGroup>().Where(g => g != OrganismGroup.Prions).ToArray();
    private static readonly OrganismTarget[] AllTargets =
        [.. Groups.Select(OrganismTarget.Of), OrganismTarget.Of(new OrganismId("o-1")), OrganismTarget.Of(new OrganismId("o-2"))];
    private static readonly PatientGroup[] SomePatients = [PatientGroup.Newborn, PatientGroup.MucousMembrane, PatientGroup.Wound, PatientGroup.Skin];

    private void MakeWhole()
    {
        MakeNeeds();
        MakeAgentsBind();
        _data = _data with { Claims = Enumerable.Range(1, One(2, 3, 4, 5)).Select(i => RandomClaim(new("claim." + i))).ToArray() };
        _data = _data with { PersonRules = Enumerable.Range(1, One(0, 0, 1, 2)).Select(i => RandomPersonRule(new("person-" + i))).ToArray() };
        if (Chance(20)) _data = _data with { StandingRules = [RandomNeverAbove()] };
        foreach (var standing in _data.StandingRules) _data = _data with
        {
            Claims = _data.Claims.Where(c => c.Refuted is not null || !(_trees.Below(c.Agent, standing.Agent) || _trees.Below(standing.Agent, c.Agent)))
                .ToArray(),
        };
        if (_site is not null) MakeSiteWhole();
        if (Chance(75)) MakeSpared();
        _question = _question with
        {
            OnlyPart = false,
            TouchedBy = Chance(35) ? One(TouchedBy.Hand, TouchedBy.IntactSkin, TouchedBy.MucousMembrane, TouchedBy.BrokenSkin) : null,
            Patients = Chance(20) ? [One(SomePatients)] : [],
            Occupied = Chance(20),
            Soil = Chance(60) ? [] : Chance(50) ? [One(SoilKind.Blood, SoilKind.Dust)] : null,
            Level = Chance(25) ? One(Level.Low, Level.Intermediate, Level.High) : null,
            Against = Chance(70) ? [] : Chance(3) ? [OrganismTarget.Of(new OrganismId("o-3"))] : Shuffled(AllTargets).Take(One(1, 2)).ToArray(),
            Cloth = Chance(25) ? Cloth : null,
        };
        if (!_question.JudgesKillAndPeople) _question = _question with { Soil = [] };
    }

    private void MakeNeeds()
    {
        Level? Asks(TouchedBy contact) => contact switch
        {
            TouchedBy.Nobody or TouchedBy.Internal => null,
            TouchedBy.Floor => Level.Cleaned,
            TouchedBy.Hand or TouchedBy.IntactSkin => Level.Low,
            TouchedBy.SterileTissue => Level.Sterile,
            _ => Level.High,
        };
        var first = Groups.ToDictionary(g => g, _ => One(Level.Low, Level.Intermediate, Level.High, Level.Sterile));
        _data = _data with
        {
            Organisms =
            [
                new() { Id = new("o-1"), Name = "one", Group = One(Groups), Sources = [new("s-read")] },
                new() { Id = new("o-2"), Name = "two", Group = One(Groups), OwnClaim = true, Sources = [new("s-read")] },
                new() { Id = new("o-3"), Name = "three", Group = OrganismGroup.Prions, Sources = [new("s-read")] },
            ],
            Levels = [
                .. Enum.GetValues<Level>().Where(l => l > Level.Cleaned)
                .Select(l => new LevelMeaning { Level = l, Includes = [.. Groups.Where(g => first[g] <= l)], Sources = [new("s-read")] })],
            TestStandards = [.. Enumerable.Range(1, 5).Select(i => RandomTest(new("EN " + i)))],
            Needs =
            [
                .. Enum.GetValues<TouchedBy>().Select(c => new NeedRule
                {
                    Id = new("need-" + Words.Of(c)),
                    TouchedBy = [c],
                    Level = Asks(c),
                    Sources = [new("s-read")],
                }),
                new()
                {
                    Id = new("need-blood"),
                    TouchedBy = [TouchedBy.Hand, TouchedBy.IntactSkin],
                    Soil = [SoilKind.Blood],
                    Level = Level.Intermediate,
                    CleanFirst = true,
                    Sources = [new("s-read")],
                },
            ],
            Parts = _data.Parts.Select((p, at) => at == 0 ? p : p with
            {
                TouchedBy = Chance(70) ? One(Enum.GetValues<TouchedBy>()) : null,
                Soil = Chance(25) ? [One(SoilKind.Blood, SoilKind.Dust)] : null,
                Patients = Chance(30) ? [One(SomePatients)] : [],
            }).ToArray(),
        };
    }

    private TestStandard RandomTest(TestCode code)
    {
        var step = Chance(6) ? TestStep.Basic : One(TestStep.Suspension, TestStep.Practical);
        return new()
        {
            Code = code,
            Name = "a test",
            Field = step == TestStep.Basic ? TestField.Development : Chance(75) ? TestField.Medical
                : One(TestField.AnySurface, TestField.FoodAndHousehold, TestField.Veterinary),
            Step = step,
            On = Chance(60) ? [TestedOn.Surfaces, TestedOn.Instruments] : [One(TestedOn.Surfaces, TestedOn.Surfaces, TestedOn.Instruments, TestedOn.Skin)],
            Wiping = step == TestStep.Practical && Chance(40),
            Shows = AllTargets.Where(_ => Chance(65)).ToArray(),
            Sources = [new("s-read")],
        };
    }

    private void MakeAgentsBind()
    {
        var agents = _data.Agents.Skip(1).Select(a => a.Id).ToArray();
        _data = _data with
        {
            Agents = _data.Agents.Select((a, at) => at == 0 ? a : a with
            {
                BoundBy = Chance(12) ? [Cloth] : [],
                InactivatedBy = Chance(10) ? agents.Where(x => x != a.Id).Take(1).ToArray() : [],
            }).ToArray(),
        };
        _trees = new(_data, []);
    }

    /// <summary>One 'allowed' of the part or device for every agent, so that windows are often open.</summary>
    private void MakeSpared()
    {
        var id = new RuleId(_question.Device is null ? "base.spared" : "site.spared");
        var rule = RandomRule(
            id, _question.Device is not null ? RuleTarget.On(DeviceName)
            : RuleTarget.On(_question.Part ?? PartType.Root), AgentClass.Root, true, site: false) with
        {
            When = new()
            {
                Strength = default,
                ExposureTime = Chance(20) ? AxisLimit.Any : AxisLimit.Within(RandomStretch(SparedEnd(), true, Chance(50))),
                Temperature = Limit(Axis.Temperature, true),
                Ph = AxisLimit.Any,
                Uses = AxisLimit.Any,
                Methods = Methods(true),
            },
            SeenWith = [],
            WholeClass = true,
            CountsTowards = null,
            Duties = Chance(15) ? [RandomDuty()] : [],
        };
        if (Chance(70))
        {
            _data = _data with { Rules = _data.Rules.Where(r => r.Allows).Select(r => r with { Overrides = [] }).ToArray() };
            if (_site is not null) _site = _site with { Rules = _site.Rules.Where(r => r.Allows).Select(r => r with { Overrides = [] }).ToArray() };
        }

        if (_question.Device is null) _data = _data with { Rules = [.. _data.Rules, rule] };
        else _site = _site! with { Rules = [.. _site.Rules, rule] };
    }

    /// <summary>Where an 'allowed' ends; one time in three just where the margin beyond a contact time is met.</summary>
    private decimal SparedEnd()
    {
        var time = One(_pool[Axis.ExposureTime]);
        return Chance(33) ? time + Math.Max(time * WindowShare, WindowLeast) : time;
    }

    private StandingRule RandomNeverAbove()
    {
        var agent = RandomAgentOfRule();
        return new()
        {
            Id = new("never-above-1"),
            Agent = agent,
            NeverAbove = One(Level.Cleaned, Level.Low, Level.Intermediate),
            When = Chance(50)
                && _trees.Basis(agent) is not null ? new() { Strength = AxisLimit.Within(Interval.Below(One(_pool[Axis.Strength]))) } : ExposureBox.Unbounded,
            Reason = "made at random",
            Sources = [new("s-read")],
        };
    }

    private PersonRule RandomPersonRule(PersonRuleId id)
    {
        var agent = RandomAgentOfRule();
        var forbids = Chance(60);
        return new()
        {
            Id = id,
            Agent = agent,
            Patients = Shuffled(SomePatients).Take(2).ToArray(),
            Occupied = Chance(20),
            Verdict = forbids ? PersonVerdict.NotAllowed : PersonVerdict.WithDuties,
            Duties = forbids ? [] : [RandomDuty()],
            For = Chance(20) ? [One(_data.Parts).Id] : [],
            When = new()
            {
                Strength = Chance(40) && _trees.Basis(agent) is not null ? AxisLimit.Within(RandomRange(Axis.Strength)) : default,
                Temperature = Chance(15) ? AxisLimit.Within(RandomRange(Axis.Temperature)) : default,
                ExposureTime = Chance(20) ? AxisLimit.Within(RandomStretch(One(_pool[Axis.ExposureTime]), false, Chance(50))) : default,
                Methods = Chance(25) ? MethodLimit.Within(ApplicationMethod.Spray, ApplicationMethod.Immerse) : default,
            },
            Harm = "harm",
            Why = "made at random",
            Sources = [new("s-read")],
            Reviewed = Day,
        };
    }
}
