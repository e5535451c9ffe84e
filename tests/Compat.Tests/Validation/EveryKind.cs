using Compat.Tests.Evaluation;

namespace Compat.Tests.Validation;

/// <summary>The invented knowledge base with records of the kinds that speak of killing, mixing, people and words.</summary>
internal static class EveryKind
{
    public static Claim Claim { get; } = new()
    {
        Id = new("alcohol.low"),
        Agent = new("alcohol"),
        With = [new(new("soap"), AxisLimit.Within(Interval.Closed(0.5m, 1m))), new(new("water"), default)],
        When = new()
        {
            Strength = AxisLimit.Within(Interval.Closed(60m, 80m)),
            ContactTime = AxisLimit.Within(Interval.AtLeast(60m)),
            Temperature = AxisLimit.Unstated,
            Ph = AxisLimit.Any,
            Methods = MethodLimit.Within(ApplicationMethod.WetWipe, ApplicationMethod.Immerse),
        },
        Reaches = Level.Low,
        Kills = [OrganismTarget.Of(OrganismGroup.Tuberculosis), OrganismTarget.Of(new OrganismId("invented-virus"))],
        For = [new("window")],
        Where = ClaimWhere.Machine,
        DoesNotKill = [OrganismTarget.Of(OrganismGroup.Spores)],
        Needs = [ClaimNeed.CleanFirst],
        StandsSoil = [SoilKind.Dust],
        Bath = new() { Minimum = Interval.AtLeast(60m), Reuse = 86400m, Test = "daily" },
        Kind = ClaimKind.Guideline,
        Why = "seen",
        Sources = [new("seen")],
        Reviewed = EyeWorkshop.Day,
    };

    public static MixingHazard Hazard { get; } = new()
    {
        Id = new("soap.alcohol"),
        Agent = new("soap"),
        WithAgent = new("alcohol"),
        OnlyWhere = "concentrated",
        Strength = Interval.AtLeast(2m),
        WithStrength = Interval.Above(5m),
        AgentRestsOn = MemberGround.OwnChemistry,
        WithAgentRestsOn = MemberGround.SourceNamesIt,
        Effects = [MixingEffect.Precipitate],
        Forms = ["flakes"],
        Severity = MixingSeverity.Avoid,
        SeparatedBy = [Separation.Rinse, Separation.OtherCloth],
        How = "rinse",
        Why = "seen",
        Sources = [new("seen")],
        Reviewed = EyeWorkshop.Day,
    };

    /// <summary>The hazard at every strength.</summary>
    private static MixingHazard Lasting { get; } = Hazard with { Strength = null, WithStrength = null, AgentRestsOn = null, WithAgentRestsOn = null };

    public static HarmlessMeeting Harmless { get; } = new()
    {
        Id = new("soap.water"),
        Agent = new("soap"),
        WithAgent = new("water"),
        Why = "seen",
        Sources = [new("seen")],
        Reviewed = EyeWorkshop.Day,
    };

    public static PersonRule Forbids { get; } = new()
    {
        Id = new("alcohol.eye"),
        Agent = new("alcohol"),
        Patients = [PatientGroup.Eye, PatientGroup.Newborn],
        When = new() { Strength = AxisLimit.Within(Interval.AtLeast(5m)) },
        Verdict = PersonVerdict.NotAllowed,
        Harm = "it burns the cornea",
        Why = "seen",
        Sources = [new("seen")],
        Reviewed = EyeWorkshop.Day,
    };

    public static PersonRule WithDuties { get; } = Forbids with
    {
        Id = new("soap.eye"),
        Agent = new("soap"),
        When = ExposureBox.Unbounded,
        Verdict = PersonVerdict.WithDuties,
        Duties = [new() { Kind = DutyKind.TakeOff, Ways = [DutyWay.By(ApplicationMethod.DampWipe)] }],
        For = [new("window")],
    };

    public static PersonRule Occupied { get; } = Forbids with { Id = new("alcohol.occupied"), Patients = [], Occupied = true };

    public static Protection Protection { get; } = new()
    {
        Id = new("alcohol"),
        Agent = new("alcohol"),
        Gloves = [new() { Material = "nitrile", Holds = 1800m }],
        GlovesFail = ["latex"],
        Eyes = "goggles",
        Breathing = "none",
        Ventilation = "open a window",
        Limits = [new() { Kind = LimitKind.EightHours, Value = new(0.5m, "ppm"), By = "an invented office", Source = new("seen") }],
        Fire = "no flame",
        FlashPoint = 12m,
        Oxygen = "none near it",
        Energised = "switch off first",
        Disposal = "as solvent",
        FirstAid = "rinse",
        NotFor = "nobody with a latex allergy",
        Sources = [new("seen")],
        Reviewed = EyeWorkshop.Day,
    };

    public static InstructionWord Word { get; } = new()
    {
        Id = new("mild-soap"),
        Phrases = ["mild soap", "gentle soap"],
        Permits = new() { Agents = [new("soap")], When = new() { Strength = AxisLimit.Within(Interval.AtMost(2m)) } },
        Forbids = new() { Agents = [new("soap")] },
        Act = new()
        {
            Methods = MethodSet.Of(ApplicationMethod.DampWipe),
            ExposureTime = AxisLimit.Any,
            Duties = [new() { Kind = DutyKind.WipeDry, Ways = [DutyWay.Air] }],
        },
        Reason = "read narrow",
        Sources = [new("habit")],
    };

    public static Occasion Outbreak { get; } = new()
    {
        Id = new("after-outbreak"),
        Name = "after an outbreak",
        Parts = [TouchedBy.Hand, TouchedBy.Floor],
        AtLeast = Level.Low,
        NeedsAgainst = true,
        Adds = ["change the curtains", "count the keys"],
        Papers = [Paper.StepSheet],
        Sources = [new("seen")],
        Note = "invented",
    };

    public static Occasion Held { get; } = new() { Id = new("held"), Name = "held", Hold = true, Papers = [Paper.HoldLabel], Sources = [new("seen")] };

    public static TestStandard Test { get; } = new()
    {
        Code = new("EN 1"),
        Name = "invented test",
        Field = TestField.Medical,
        Step = TestStep.Practical,
        On = [TestedOn.Surfaces],
        Wiping = true,
        Shows = [OrganismTarget.Of(OrganismGroup.VegetativeBacteria), OrganismTarget.Of(new OrganismId("invented-virus"))],
        Sources = [new("seen")],
        Note = "invented",
    };

    public static KnowledgeData Data { get; } = EyeWorkshop.Data with
    {
        Parts = EyeWorkshop.Data.Parts.Select(part => part.Id.Value != "window" ? part : part with
        {
            Soil = [SoilKind.Dust, SoilKind.Grease],
            WayOut = [],
            FunctionCheck = "look through it",
            DryBeforePower = 1800m,
            WaterIngress = new() { Numeral = 4, Means = "splashes do not enter" },
        }).ToArray(),
        Organisms =
        [
            new()
            {
                Id = new("invented-virus"),
                Name = "invented virus",
                AlsoCalled = ["IV"],
                Group = OrganismGroup.NonEnvelopedViruses,
                OwnClaim = true,
                Sources = [new("seen")],
                Note = "invented",
            },
        ],
        Levels =
        [
            new() { Level = Level.Low, Includes = [OrganismGroup.VegetativeBacteria], Sources = [new("seen")], Note = "invented" },
            new() { Level = Level.Intermediate, Includes = [OrganismGroup.VegetativeBacteria, OrganismGroup.Tuberculosis], Sources = [new("seen")] },
            new()
            {
                Level = Level.High,
                Includes = [OrganismGroup.VegetativeBacteria, OrganismGroup.Tuberculosis, OrganismGroup.Fungi],
                Sources = [new("seen")],
            },
            new()
            {
                Level = Level.Sterile,
                Includes = [OrganismGroup.VegetativeBacteria, OrganismGroup.Tuberculosis, OrganismGroup.Fungi, OrganismGroup.Spores],
                Sources = [new("seen")],
            },
        ],
        Needs =
        [
            new() { Id = new("nothing"), TouchedBy = [TouchedBy.Nobody, TouchedBy.Internal], Sources = [new("seen")] },
            new()
            {
                Id = new("something"),
                TouchedBy = [TouchedBy.Floor, TouchedBy.Hand, TouchedBy.IntactSkin, TouchedBy.BrokenSkin, TouchedBy.MucousMembrane, TouchedBy.SterileTissue],
                Level = Level.Low,
                Sources = [new("seen")],
                Note = "invented",
            },
            new()
            {
                Id = new("hand-with-blood"),
                TouchedBy = [TouchedBy.Hand],
                Soil = [SoilKind.Blood],
                Level = Level.Intermediate,
                CleanFirst = true,
                Sources = [new("seen")],
            },
        ],
        Claims = [Claim],
        TestStandards = [Test, Test with { Code = new("EN 2.1"), Step = TestStep.Suspension, Wiping = false, Shows = [], Note = null }],
        Occasions = [Outbreak, Held],
        MixingHazards =
        [
            Hazard,
            Lasting with { Id = new("alcohol.soap"), Agent = new("alcohol"), WithAgent = new("soap") },
            Lasting with { Id = new("soap.blood"), WithAgent = null, WithSoil = SoilKind.Blood },
            Lasting with { Id = new("soap.foam"), WithAgent = null, WithMaterial = new("foam") },
        ],
        HarmlessMeetings = [Harmless],
        PersonRules = [Forbids, WithDuties, Occupied],
        Protections = [Protection],
        InstructionWords = [Word, Word with
        {
            Id = new("hospital-grade"),
            Phrases = ["hospital grade"],
            Permits = null,
            Forbids = null,
            Act = null,
            ListsNothing = true,
        }],
        StandingRules =
        [
            .. EyeWorkshop.Data.StandingRules,
            Standing("no-high-level") with { NeverAbove = Level.Low, When = new() { Strength = AxisLimit.Within(Interval.AtMost(90m)) } },
            Standing("not-in-eyes") with { Patient = PatientGroup.Eye, When = new() { Strength = AxisLimit.Within(Interval.AtLeast(5m)) } },
            Standing("hard-water") with { Agent = new("soap"), BoundBy = "hard water" },
            Standing("mixing") with { Agent = new("isopropanol"), MixingWith = new("soap") },
            Standing("mixing-blood") with { Agent = new("soap"), MixingWithSoil = SoilKind.Blood },
        ],
    };

    public static StandingRule Standing(string id) => new() { Id = new(id), Agent = new("alcohol"), Reason = "for good" };
}
