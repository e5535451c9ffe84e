namespace Compat.Tests.Windows;

/// <summary>
/// Small hand-made knowledge bases: one part that hands touch, one agent, one 'allowed' up to an exposure time, one claim from a contact time on.
/// </summary>
internal sealed record WindowWorkshop
{
    private static readonly CalendarDate Day = new(2026, 1, 1);
    public static readonly PartId Part = new("lid");
    public static readonly AgentId Agent = new("spirit"), Other = new("soap");

    public decimal Stands { get; init; } = 600;

    /// <summary>Whether the part stands that time itself.</summary>
    public bool StandsIncluded { get; init; } = true;

    public decimal Kills { get; init; } = 60;

    public TouchedBy TouchedBy { get; init; } = TouchedBy.Hand;

    public Level? Reaches { get; init; } = Level.Intermediate;

    public IReadOnlyList<OrganismTarget> KillsAlso { get; init; } = [];

    public IReadOnlyList<PartId> ClaimFor { get; init; } = [];

    public MethodLimit StandsBy { get; init; } = MethodLimit.Any;

    public MethodLimit KillsBy { get; init; } = MethodLimit.Any;

    public AxisLimit StandsAt { get; init; } = AxisLimit.Any;

    public AxisLimit KillsAt { get; init; } = AxisLimit.Any;

    public bool ByMaterial { get; init; }

    public bool HarmsSkin { get; init; }

    public Geometry Geometry { get; init; }

    public string? Refuted { get; init; }

    public Question Question { get; init; } = new() { Part = Part, Agent = Agent, Soil = [] };

    public static Source Read { get; } = new() { Id = new("s-1"), Kind = SourceKind.Handbook, Title = "invented" };

    public KnowledgeBase Build()
    {
        var problems = KnowledgeBase.TryBuild(Data(), out var kb);
        return kb ?? throw new InvalidOperationException(string.Join("\n", problems));
    }

    public KnowledgeData Data() => RandomCases.CaseMaker.Make(1, RandomCases.Shape.Whole).Data with
    {
        Sources = [Read, new() { Id = new("s-read"), Kind = SourceKind.Handbook, Title = "read" }],
        StandingRules = [],
        Materials = [new() { Id = Material.Root, Name = "root" }, new() { Id = new("glass"), Name = "glass", Under = Material.Root }],
        Agents =
        [
            new() { Id = AgentClass.Root, Name = "root" },
            new()
            {
                Id = Agent,
                Name = "spirit",
                Under = AgentClass.Root,
                Usual = new() { Temperature = Interval.Closed(10, 30), Sources = [Read.Id] },
                Leaves = Residue.Nothing,
            },
            new() { Id = Other, Name = "soap", Under = AgentClass.Root, Leaves = Residue.Film },
        ],
        Parts =
        [
            new() { Id = PartType.Root, Name = "root" },
            new()
            {
                Id = Part,
                Name = "lid",
                Under = PartType.Root,
                Materials = [new MaterialSlot(new MaterialId("glass"))],
                MaterialsKnown = true,
                Wettest = ApplicationMethod.Immerse,
                TouchedBy = TouchedBy,
                Geometry = Geometry,
                Patients = [PatientGroup.Skin],
            },
        ],
        Rules =
        [
            new()
            {
                Id = new("lid.spared"), Target = ByMaterial ? RuleTarget.On(new MaterialId("glass"))
                    : RuleTarget.On(Part), Agent = AgentClass.Root, WholeClass = true, Allows = true, KnownBy = KnownBy.Published,
                When = new()
                {
                    ExposureTime = AxisLimit.Within(new(null, false, Stands, StandsIncluded)),
                    Temperature = StandsAt,
                    Ph = AxisLimit.Any,
                    Uses = AxisLimit.Any,
                    Methods = StandsBy,
                },
                Why = "invented", Sources = [Read.Id], Reviewed = Day,
            },
        ],
        Claims =
        [
            new()
            {
                Id = new("spirit.kills"), Agent = Agent, Reaches = Reaches, Kills = KillsAlso, For = ClaimFor, Refuted = Refuted, Kind = ClaimKind.Guideline,
                When = new() { ContactTime = AxisLimit.Within(Interval.AtLeast(Kills)), Temperature = KillsAt, Ph = AxisLimit.Any, Methods = KillsBy },
                Why = "invented", Sources = [Read.Id], Reviewed = Day,
            },
        ],
        PersonRules = !HarmsSkin ? [] :
        [
            new()
            {
                Id = new("skin"),
                Agent = Agent,
                Patients = [PatientGroup.Skin],
                Verdict = PersonVerdict.NotAllowed,
                Harm = "invented",
                Why = "invented",
                Sources = [Read.Id],
                Reviewed = Day,
            },
        ],
    };
}
