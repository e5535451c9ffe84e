namespace Compat.Tests.Evaluation;

/// <summary>A small invented knowledge base, made in code, that holds every kind of record.</summary>
internal static class EyeWorkshop
{
    public static CalendarDate Day { get; } = new(2026, 11, 25);

    public static Damage Clouding { get; } = new()
    {
        Mechanism = Mechanism.CoatingClouding,
        Onset = Onset.FirstUse,
        Lasting = true,
        Consequence = Consequence.Legibility,
        LookFor = "haze",
        WithdrawIf = "unreadable",
    };

    public static ExposureBox Wipe(AxisLimit strength) => new()
    {
        Strength = strength,
        ExposureTime = AxisLimit.Within(Interval.AtMost(120m)),
        Temperature = AxisLimit.Within(Interval.Closed(10m, 40m)),
        Ph = AxisLimit.Any,
        Uses = AxisLimit.Within(Interval.AtMost(5000m)),
        Methods = MethodLimit.Within(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe),
    };

    public static KnowledgeData Data { get; } = new()
    {
        Version = "workshop-1",
        Conventions = Enum.GetValues<ConventionKey>().Select(Convention).ToArray(),
        Materials =
        [
            new() { Id = Material.Root, Name = "any material" },
            new() { Id = new("glass"), Name = "glass", Under = Material.Root, DeclaredOnlySuffices = true, AlsoCalled = ["pane"] },
            new() { Id = new("thin-coating"), Name = "thin coating", Under = Material.Root, Delicate = Delicacy.Coating, Note = "invented" },
            new() { Id = new("foam"), Name = "foam", Under = Material.Root },
        ],
        Parts =
        [
            new() { Id = PartType.Root, Name = "any part", Never = [Act.HeatDrying] },
            new()
            {
                Id = new("window"),
                Name = "window",
                Under = PartType.Root,
                Materials = [new(new MaterialId("glass"))],
                Wettest = ApplicationMethod.WetWipe,
                Geometry = Geometry.Open,
                TouchedBy = TouchedBy.Hand,
            },
            new()
            {
                Id = new("coated-window"),
                Name = "coated window",
                Under = new("window"),
                Materials = [new(new MaterialId("glass")), new(new MaterialId("thin-coating"))],
                MaterialsKnown = true,
                Patients = [Compat.Model.PatientGroup.Eye],
            },
            new()
            {
                Id = new("pad"),
                Name = "pad",
                Under = PartType.Root,
                Materials = [new(new MaterialId("foam"))],
                Wettest = ApplicationMethod.WetWipe,
                Geometry = Geometry.Porous,
                Duties = [new() { Kind = DutyKind.NoPooling }],
            },
            new() { Id = new("socket"), Name = "socket", Under = PartType.Root },
        ],
        Agents =
        [
            new() { Id = AgentClass.Root, Name = "any agent" },
            new() { Id = new("water"), Name = "water", Under = AgentClass.Root, Leaves = Residue.Nothing, Cas = ["7732-18-5"] },
            new()
            {
                Id = new("alcohol"),
                Name = "alcohol",
                Under = AgentClass.Root,
                Basis = Unit("% v/v"),
                Leaves = Residue.Nothing,
                Density = 0.79m,
                Hazards = [Hazard.Flammable],
                Usual = new()
                {
                    Strength = Interval.Closed(60m, 80m),
                    Ph = Interval.Closed(6m, 8m),
                    Temperature = Interval.Closed(15m, 30m),
                    Sources = [new("seen")],
                },
            },
            new() { Id = new("ethanol"), Name = "ethanol", Under = new("alcohol"), Cas = ["64-17-5"] },
            new() { Id = new("isopropanol"), Name = "isopropanol", Under = new("alcohol"), Cas = ["67-63-0"], InactivatedBy = [new("water")] },
            new()
            {
                Id = new("soap"),
                Name = "soap",
                Under = AgentClass.Root,
                Basis = Unit("% w/w"),
                Leaves = Residue.Film,
                Nature = [Nature.Anionic],
                BoundBy = ["hard water"],
                Duties = [new() { Kind = DutyKind.Protect, Note = "gloves" }],
            },
        ],
        Sources =
        [
            new()
            {
                Id = new("seen"),
                Kind = SourceKind.Paper,
                Title = "An invented paper",
                Edition = "2020",
                Section = "table 1",
                Publisher = "nobody",
                Address = "https://example.invalid",
                Note = "invented",
            },
            new() { Id = new("habit"), Kind = SourceKind.CommonPractice, Title = "Habit", Recalled = true, Trust = Trust.Weak },
        ],
        Rules =
        [
            Allowed("glass.alcohol", RuleTarget.On(new MaterialId("glass")), "alcohol", Wipe(AxisLimit.Within(Interval.AtMost(80m)))) with
            {
                WholeClass = true,
                CountsTowards = Mechanism.LegendWear,
            },
            new()
            {
                Id = new("thin-coating.alcohol"),
                Target = RuleTarget.On(new MaterialId("thin-coating")),
                Agent = new("alcohol"),
                Allows = false,
                Damage = Clouding,
                Why = "it clouds",
                Sources = [new("seen")],
                Reviewed = Day,
                When = new() { Strength = AxisLimit.Within(Interval.AtLeast(5m)) },
            },
            Allowed("thin-coating.alcohol-weak", RuleTarget.On(new MaterialId("thin-coating")), "alcohol", Wipe(AxisLimit.Within(Interval.Below(5m)))) with
            {
                SeenWith = [new("ethanol"), new("isopropanol")],
            },
            Allowed("glass.soap", RuleTarget.On(new MaterialId("glass")), "soap", Wipe(AxisLimit.Within(Interval.AtMost(10m)))) with
            {
                Duties = [new()
                {
                    Kind = DutyKind.TakeOff,
                    Ways = [new() { Method = ApplicationMethod.DampWipe, Water = WaterGrade.Purified, Times = 2, Seconds = 30m, Litres = 0.1m }],
                    Within = 300m,
                    Note = "twice",
                }],
            },
            Allowed("foam.soap", RuleTarget.On(new MaterialId("foam")), "soap", Wipe(AxisLimit.Within(Interval.AtMost(10m)))) with
            {
                KnownBy = KnownBy.Test,
                Tested = new()
                {
                    On = TestPiece.Coupon,
                    Strained = true,
                    Exposure = new() { ExposureTime = AxisLimit.Within(Interval.AtMost(120m)), Uses = AxisLimit.Any },
                },
            },
        ],
        StandingRules = [new()
        {
            Id = new("no-strong-alcohol-on-coating"),
            Material = new("thin-coating"),
            Agent = new("alcohol"),
            When = new() { Strength = AxisLimit.Within(Interval.AtLeast(50m)) },
            Reason = "it clouds for good",
            Sources = [new("seen")],
        }],
    };

    public static KnowledgeBase Base { get; } = Build(Data);

    public static StrengthUnit Unit(string text) => StrengthUnit.TryParse(text, out var unit) ? unit : throw new ArgumentException(text);

    public static Strength Percent(decimal value, string unit = "% v/v") => new(Interval.Exactly(value), Unit(unit));

    public static KnowledgeBase Build(KnowledgeData data)
    {
        var problems = KnowledgeBase.TryBuild(data, out var kb);
        Assert.Empty(problems);
        return kb!;
    }

    public static Rule Allowed(string id, RuleTarget target, string agent, ExposureBox box) => new()
    {
        Id = new(id),
        Target = target,
        Agent = new(agent),
        Allows = true,
        KnownBy = KnownBy.Published,
        When = box,
        Why = "seen",
        Sources = [new("seen")],
        Reviewed = Day,
    };

    public static Product Mixture(string id, StrengthOf of, params (string Agent, decimal Low, decimal High)[] ingredients) => new()
    {
        Id = new(id),
        Name = id,
        Composition = Composition.Full,
        StrengthOf = of,
        Ingredients = ingredients.Select(
            i => new Ingredient { Agent = new(i.Agent), Strength = new Strength(Interval.Closed(i.Low, i.High), Unit(i.Agent == "soap" ? "% w/w" : "% v/v")) })
            .ToArray(),
    };

    public static KnowledgeBase With(params Product[] products) => Base.With(new Site { Id = new("shelf"), Name = "shelf", Products = products });

    private static Convention Convention(ConventionKey key) => new()
    {
        Key = key,
        Reason = "invented",
        Methods = Compat.Model.Convention.NamesMethods(key) ? MethodSet.Of(ApplicationMethod.DampWipe) : MethodSet.None,
        Consequences = key == ConventionKey.DamageOrder ? Enum.GetValues<Consequence>() : [],
        Hazards = key == ConventionKey.HazardOrder ? Enum.GetValues<Hazard>() : [],
        Range = key switch
        {
            ConventionKey.DamageOrder or ConventionKey.HazardOrder or ConventionKey.UnstatedMethods or ConventionKey.ClaimMethods => Interval.Whole,
            ConventionKey.UnstatedExposureTime => Interval.AtMost(60m),
            ConventionKey.UnstatedUses => Interval.AtMost(1000m),
            ConventionKey.UnstatedDilution => Interval.Exactly(1m),
            ConventionKey.DryingTime => Interval.AtMost(300m),
            ConventionKey.SolutionDensity => Interval.Closed(0.7m, 1.5m),
            ConventionKey.UnstatedPh => Interval.Closed(6m, 8m),
            ConventionKey.WaterPh => Interval.Closed(6.5m, 9.5m),
            ConventionKey.PurifiedWaterPh => Interval.Closed(5m, 7.5m),
            ConventionKey.IngressWetWipe => Interval.Closed(1m, 8m),
            ConventionKey.IngressSpray => Interval.Closed(4m, 6m),
            ConventionKey.IngressRinse => Interval.Closed(5m, 6m),
            ConventionKey.IngressImmerse => Interval.Closed(7m, 8m),
            _ => Interval.Closed(15m, 30m),
        },
    };
}
