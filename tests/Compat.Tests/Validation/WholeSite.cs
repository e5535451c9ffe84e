using Compat.Tests.Evaluation;

namespace Compat.Tests.Validation;

/// <summary>An invented site over the invented knowledge base, with something stated in every field.</summary>
internal static class WholeSite
{
    public static ClaimBox Wet { get; } = new()
    {
        ContactTime = AxisLimit.Within(Interval.AtLeast(60m)),
        Temperature = AxisLimit.Within(Interval.Closed(15m, 30m)),
        Ph = AxisLimit.Any,
        Methods = MethodLimit.Within(ApplicationMethod.WetWipe, ApplicationMethod.Immerse),
    };

    public static LabelClaim Claim { get; } = new()
    {
        Id = new("low"),
        When = Wet with { Dilution = AxisLimit.Within(Interval.Closed(0.01m, 0.02m)) },
        Reaches = Level.Low,
        Kills = [OrganismTarget.Of(new OrganismId("invented-virus"))],
        DoesNotKill = [OrganismTarget.Of(OrganismGroup.Spores)],
        For = [new("window")],
        Needs = [ClaimNeed.Activation],
        StandsSoil = [SoilKind.Dust],
        ShownBy = [EveryKind.Test.Code],
    };

    /// <summary>The same claim, on a registration whose tests are not known.</summary>
    public static LabelClaim Registered { get; } = Claim with { Id = new("registered"), ShownBy = [], Registration = new("an office", "1") };

    public static Product Stock { get; } = EyeWorkshop.Mixture("stock", StrengthOf.Concentrate, ("soap", 10m, 20m)) with
    {
        Dilution = Interval.Closed(0.01m, 0.05m),
        NeedsActivation = true,
        Methods = MethodSet.Of(ApplicationMethod.WetWipe, ApplicationMethod.Immerse),
        LabelClaims = [Claim],
        ContactTimes = [new(ApplicationMethod.WetWipe, Interval.Closed(30m, 60m))],
        Removes = [SoilKind.Dust],
        OneStep = true,
        Life = new() { Activated = 86400m, Diluted = 3600m, Opened = 172800m, MayBeRefilled = true },
        Bath = new() { Agent = new("soap"), Use = new() { Minimum = Interval.AtLeast(1m), Reuse = 86400m, Test = "a strip" } },
        MostHardness = 300m,
        BoundByCloths = ["cotton"],
    };

    public static InstructedLevel Reached { get; } = new()
    {
        Parts = [new("pane")],
        Agent = new("alcohol"),
        When = Wet with { Strength = AxisLimit.Within(Interval.Closed(60m, 80m)) },
        Reaches = Level.High,
        Kills = [OrganismTarget.Of(OrganismGroup.Spores)],
        Needs = [ClaimNeed.CleanFirst],
    };

    public static InstructionsEdition Edition { get; } = new()
    {
        Id = new("first"),
        Source = new("manual"),
        Says = [new() { Words = "mild soap", How = ["gentle soap"], Parts = [new("pane")] }, new() { Words = "hospital grade" }],
        Reaches = [Reached],
    };

    public static DevicePart Pane { get; } = new()
    {
        Id = new("pane"),
        OneOfTypes = [new("window")],
        TouchedBy = TouchedBy.Nobody,
        Because = "it lies behind a cover",
        Soil = [SoilKind.Dust],
        WhenDismantled = new() { Geometry = Geometry.Open, Wettest = ApplicationMethod.Rinse, From = new("first"), How = "pull it out" },
    };

    public static Device Device { get; } = new()
    {
        Id = new("viewer"),
        Name = "viewer",
        Parts = [Pane],
        Patients = [PatientGroup.Eye],
        Instructions = [Edition],
    };

    public static LevelDecision Decision { get; } = new()
    {
        Device = new("viewer"),
        Part = new("pane"),
        Level = Level.Cleaned,
        DecidedBy = "infection prevention",
        Because = "it is covered",
        Sources = [new("manual")],
    };

    public static Site Site { get; } = new()
    {
        Id = new("workshop"),
        Name = "workshop",
        Sources = [new() { Id = new("manual"), Kind = SourceKind.DeviceInstructions, Title = "An invented manual", Trust = Trust.Strong }],
        Here = new()
        {
            Temperature = Interval.Closed(18m, 26m),
            Hardness = Interval.Closed(80m, 120m),
            Water = [WaterGrade.Running],
            Cloths = ["cotton"],
            Gloves = ["nitrile"],
            DryingAir = false,
        },
        Levels = [Decision],
        Products = [Stock],
        Devices = [Device],
    };

    public static Site With(Product product) => Site with { Products = [product] };

    public static Site With(Device device) => Site with { Devices = [device] };

    public static Site With(DevicePart part) => With(Device with { Parts = [part] });

    public static Site With(InstructionsEdition edition) => With(Device with { Instructions = [edition] });
}
