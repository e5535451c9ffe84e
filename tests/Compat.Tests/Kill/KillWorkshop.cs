using Compat.Tests.Windows;

namespace Compat.Tests.Kill;

/// <summary>A lid that stands everything, and a shelf with one product: what the claims say is all there is to judge.</summary>
internal sealed record KillWorkshop
{
    public static readonly AgentId Spirit = WindowWorkshop.Agent, Soap = WindowWorkshop.Other;
    public static readonly ProductId Mix = new("mix");
    public static readonly DeviceId Device = new("box");
    public static readonly DevicePartId Lid = new("lid");
    public static readonly OrganismTarget Viruses = OrganismTarget.Of(OrganismGroup.NonEnvelopedViruses), Spores = OrganismTarget.Of(OrganismGroup.Spores);
    public static readonly OrganismTarget Tough = OrganismTarget.Of(new OrganismId("tough-virus")), Known = OrganismTarget.Of(new OrganismId("known-virus"));
    private static readonly CalendarDate Day = new(2026, 1, 1);

    public IReadOnlyList<Claim> Claims { get; init; } = [];

    public IReadOnlyList<StandingRule> Standing { get; init; } = [];

    public IReadOnlyList<TestStandard> Tests { get; init; } = [];

    public IReadOnlyList<string> SpiritBoundBy { get; init; } = [];

    /// <summary>What strengths of the soap are counted in; null where it has none.</summary>
    public StrengthUnit? SoapBasis { get; init; }

    public Product Product { get; init; } = Liquid(Spirit);

    public IReadOnlyList<InstructionsEdition> Editions { get; init; } = [];

    public SiteConditions Here { get; init; } = new();

    public Question Question { get; init; } = new() { Part = WindowWorkshop.Part, Product = Mix, Soil = [], Method = ApplicationMethod.WetWipe };

    /// <summary>The question on the part of the device, so that instructions speak.</summary>
    public KillWorkshop OnDevice => this with { Question = Question with { Part = null, Device = Device, DevicePart = Lid } };

    public Answer Ask(Func<Question, Question>? change = null) => Build().Ask(change is null ? Question : change(Question));

    public static Product Liquid(params AgentId[] agents) => new()
    {
        Id = Mix,
        Name = "mix",
        Composition = Composition.Full,
        StrengthOf = StrengthOf.Liquid,
        Ingredients = agents.Select(agent => new Ingredient { Agent = agent }).ToArray(),
    };

    public static Claim Claim(string id, AgentId agent, Level? reaches, params OrganismTarget[] kills) => new()
    {
        Id = new(id),
        Agent = agent,
        Reaches = reaches,
        Kills = kills,
        Kind = ClaimKind.Guideline,
        When = new() { ContactTime = AxisLimit.Within(Interval.AtLeast(60m)), Temperature = AxisLimit.Any, Ph = AxisLimit.Any, Methods = MethodLimit.Any },
        Why = "invented",
        Sources = [WindowWorkshop.Read.Id],
        Reviewed = Day,
    };

    public static LabelClaim Label(string id, Level? reaches, params OrganismTarget[] kills) => new()
    {
        Id = new(id),
        Reaches = reaches,
        Kills = kills,
        When = new() { ContactTime = AxisLimit.Within(Interval.AtLeast(60m)), Temperature = AxisLimit.Any, Methods = MethodLimit.Any },
        ShownBy = [Wiped.Code],
    };

    /// <summary>A test of surfaces, wiped, that shows all there is.</summary>
    public static TestStandard Wiped { get; } = new()
    {
        Code = new("EN 1"),
        Name = "an invented test",
        Field = TestField.Medical,
        Step = TestStep.Practical,
        On = [TestedOn.Surfaces, TestedOn.Instruments],
        Shows = [.. Enum.GetValues<OrganismGroup>().Where(group => group != OrganismGroup.Prions).Select(OrganismTarget.Of), Tough],
        Sources = [WindowWorkshop.Read.Id],
    };

    public static StandingRule NeverAbove(AgentId agent, Level level) =>
        new() { Id = new("never-above"), Agent = agent, NeverAbove = level, Reason = "invented", Sources = [WindowWorkshop.Read.Id] };

    private KnowledgeBase Build()
    {
        var shop = new WindowWorkshop().Data();
        var data = shop with
        {
            Claims = Claims,
            StandingRules = Standing,
            TestStandards = [Wiped, .. Tests],
            Agents = shop.Agents.Select(agent => agent.Id == Spirit ? agent with { BoundBy = SpiritBoundBy }
                : agent.Id == Soap ? agent with { Basis = SoapBasis } : agent).ToArray(),
            Organisms =
            [
                new() { Id = Known.Organism!, Name = "known", Group = OrganismGroup.NonEnvelopedViruses, Sources = [WindowWorkshop.Read.Id] },
                new() { Id = Tough.Organism!, Name = "tough", Group = OrganismGroup.NonEnvelopedViruses, OwnClaim = true, Sources = [WindowWorkshop.Read.Id] },
            ],
            Levels =
            [
                Includes(Level.Low, OrganismGroup.VegetativeBacteria),
                Includes(Level.Intermediate, OrganismGroup.VegetativeBacteria, OrganismGroup.Fungi),
                Includes(Level.High, OrganismGroup.VegetativeBacteria, OrganismGroup.Fungi, OrganismGroup.NonEnvelopedViruses),
                Includes(Level.Sterile, OrganismGroup.VegetativeBacteria, OrganismGroup.Fungi, OrganismGroup.NonEnvelopedViruses, OrganismGroup.Spores),
            ],
        };
        var problems = KnowledgeBase.TryBuild(data, out var kb);
        if (kb is null) throw new InvalidOperationException(string.Join("\n", problems));
        problems = kb.TryWith(
            new Site
            {
                Id = new("shelf"),
                Name = "shelf",
                Here = Here,
                Products = [Product],
                Devices = [new() { Id = Device, Name = "box", Parts = [new() { Id = Lid, OneOfTypes = [WindowWorkshop.Part] }], Instructions = Editions }],
            },
            out var with);
        return with ?? throw new InvalidOperationException(string.Join("\n", problems));
    }

    private static LevelMeaning Includes(Level level, params OrganismGroup[] groups) =>
        new() { Level = level, Includes = groups, Sources = [WindowWorkshop.Read.Id] };
}
