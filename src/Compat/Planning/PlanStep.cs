namespace Compat.Planning;

/// <summary>What a step does. The members stand in working order: no step of a later kind comes before one of an earlier kind.</summary>
public enum StepOrder
{
    /// <summary>
    /// Switch the device off, disconnect it from the mains and from the patient, and let it cool: before any liquid, and before anything that burns.
    /// </summary>
    PowerOff,

    /// <summary>Protect oneself and the room: gloves, eyes, breathing, ventilation. Holds until <see cref="Dry"/> is done.</summary>
    Protect,

    /// <summary>Take off covers and single-use items, and dismantle what comes apart, so that what lies below is reached.</summary>
    TakeOffCovers,

    /// <summary>Take gel and loose soil off with a dry cloth, so that no product is used up by it and none fixes it.</summary>
    DryWipe,

    /// <summary>Clean with a product. Where a label says that the product cleans and disinfects at once, there is only <see cref="Disinfect"/>.</summary>
    Clean,

    /// <summary>Take off what the cleaner leaves, so that it does not bind or meet the disinfectant.</summary>
    TakeCleanerOff,

    /// <summary>Disinfect with a product and keep the contact time.</summary>
    Disinfect,

    /// <summary>Take off what the disinfectant leaves, as soon as its contact time is over.</summary>
    TakeDisinfectantOff,

    /// <summary>Dry, and wait as long as it takes before power.</summary>
    Dry,

    /// <summary>Look for the damage to expect, and withdraw the part where it is found.</summary>
    Inspect,

    /// <summary>Check that what was wet still does what it is for.</summary>
    CheckFunction,

    /// <summary>Put away so that it stays clean.</summary>
    Store,

    /// <summary>Label with what was done, and what was not.</summary>
    Label,
}

/// <summary>Where two that exclude each other would meet.</summary>
public enum MeetingPlace
{
    /// <summary>On a part that both steps serve.</summary>
    Part,

    /// <summary>On a cloth, a glove, in a bucket or bottle.</summary>
    ClothGloveOrContainer,

    /// <summary>The product and the soil on the part.</summary>
    Soil,

    /// <summary>The product and what a former product left.</summary>
    FormerResidue,
}

/// <summary>A hazard to be kept from at a step.</summary>
/// <param name="Found">The hazard, and the two it was found for.</param>
/// <param name="Where">Where they would meet.</param>
/// <param name="Other">The other product; null where it is soil.</param>
public sealed record StepHazard(FoundHazard Found, MeetingPlace Where, ProductId? Other);

/// <summary>A duty of a step, and the parts that ask it.</summary>
/// <param name="Duty">The duty; its ways are those that the parts stand and that are at hand.</param>
/// <param name="Parts">The parts.</param>
public sealed record StepDuty(Duty Duty, IReadOnlyList<DevicePartId> Parts);

/// <summary>What to look for on parts.</summary>
/// <param name="Damage">The damage to expect.</param>
/// <param name="Parts">The parts.</param>
public sealed record ExpectedDamage(Damage Damage, IReadOnlyList<DevicePartId> Parts);

/// <summary>What a step was judged by on one part, so that it can be asked again.</summary>
/// <param name="Part">The part.</param>
/// <param name="Question">The question.</param>
/// <param name="PartVerdict">What the part stands.</param>
/// <param name="Verdict">The verdict: of a cleaning step that of the part alone.</param>
public sealed record StepAnswer(DevicePartId Part, Question Question, Verdict PartVerdict, Verdict Verdict);

/// <summary>What to keep to with a product.</summary>
public sealed record StepSetting
{
    /// <summary>The method.</summary>
    public required ApplicationMethod Method { get; init; }

    /// <summary>The dilution to make, as a share of volume; 1 is undiluted.</summary>
    public required decimal Dilution { get; init; }

    /// <summary>How long the surface is kept visibly wet, in seconds; 0 where nothing is to be killed.</summary>
    public required decimal ContactTime { get; init; }

    /// <summary>From first wetting until it is off, in seconds: never shorter than the contact time.</summary>
    public required Interval ExposureTime { get; init; }

    /// <summary>The temperatures in °C.</summary>
    public required Interval Temperature { get; init; }

    /// <summary>Whether the temperatures at hand reach beyond <see cref="Temperature"/>: measure it.</summary>
    public bool MeasureTemperature { get; init; }

    /// <summary>How the contact time is reached.</summary>
    public ContactTimeReached Reached { get; init; }
}

/// <summary>One step of a plan. What is null or empty does not concern it.</summary>
public sealed record PlanStep
{
    /// <summary>Its number on the sheet, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What it does.</summary>
    public required StepOrder Order { get; init; }

    /// <summary>The parts it serves, in the order of the device; empty where it is the whole device.</summary>
    public IReadOnlyList<DevicePartId> Parts { get; init; } = [];

    /// <summary>The product.</summary>
    public ProductId? Product { get; init; }

    /// <summary>What to keep to with the product; null where the step brings none.</summary>
    public StepSetting? Setting { get; init; }

    /// <summary>Whether the product is a concentrate, to be diluted.</summary>
    public bool Dilute { get; init; }

    /// <summary>Whether it cleans and disinfects at once, by its label.</summary>
    public bool OneStep { get; init; }

    /// <summary>The cloth, of those at hand at the site; null where any will do or the product is one.</summary>
    public string? Cloth { get; init; }

    /// <summary>What accompanies the step.</summary>
    public IReadOnlyList<StepDuty> Duties { get; init; } = [];

    /// <summary>The gloves on record for it of which the material is at hand; empty where none are on record or none are stated to be at hand.</summary>
    public IReadOnlyList<string> Gloves { get; init; } = [];

    /// <summary>How staff are protected at it.</summary>
    public IReadOnlyList<Protection> Protection { get; init; } = [];

    /// <summary>What must not meet at it.</summary>
    public IReadOnlyList<StepHazard> Hazards { get; init; } = [];

    /// <summary>What is on record of the step's product and others of the plan at strengths they do not have: a note, nothing to keep from.</summary>
    public IReadOnlyList<StepHazard> AtOtherStrengths { get; init; } = [];

    /// <summary>What to look for, of an <see cref="StepOrder.Inspect"/>.</summary>
    public IReadOnlyList<ExpectedDamage> LookFor { get; init; } = [];

    /// <summary>What is checked on which part, of a <see cref="StepOrder.CheckFunction"/>, as the part type says it.</summary>
    public IReadOnlyList<KeyValuePair<DevicePartId, string>> Checks { get; init; } = [];

    /// <summary>How long to wait before power, in seconds, of a <see cref="StepOrder.Dry"/>; null where nothing is on record.</summary>
    public decimal? BeforePower { get; init; }

    /// <summary>What it was judged by on each part.</summary>
    public IReadOnlyList<StepAnswer> Answers { get; init; } = [];
}
