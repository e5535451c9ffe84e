namespace Compat.Model;

/// <summary>How it is known that a part stands an agent.</summary>
public enum KnownBy
{
    /// <summary>A test; <see cref="Rule.Tested"/> says of what.</summary>
    Test,

    /// <summary>The device's instructions.</summary>
    Instructions,

    /// <summary>A publication.</summary>
    Published,

    /// <summary>Practice.</summary>
    Practice,
}

/// <summary>Why the evidence of an 'allowed' is thinner than its sources look.</summary>
public enum ThinGround
{
    /// <summary>No damage was reported; nobody looked for it.</summary>
    Absence,

    /// <summary>It was seen of another agent class.</summary>
    OtherAgent,

    /// <summary>It was seen of a formulated product, and the rule speaks of its bare ingredient.</summary>
    FormulatedProduct,
}

/// <summary>What a test was made on.</summary>
public enum TestPiece
{
    /// <summary>A piece of the material.</summary>
    Coupon,

    /// <summary>The part.</summary>
    Part,

    /// <summary>The device.</summary>
    Device,
}

/// <summary>What was tested.</summary>
public sealed record TestEvidence
{
    /// <summary>What it was made on.</summary>
    public required TestPiece On { get; init; }

    /// <summary>Whether the piece was under strain.</summary>
    public bool Strained { get; init; }

    /// <summary>
    /// The exposure that was tested; the rule's box may not exceed it. An axis not named was not controlled and is not compared; an exposure time without uses
    /// was one exposure.
    /// </summary>
    public ExposureBox Exposure { get; init; } = ExposureBox.Unbounded;
}

/// <summary>What a rule is written on: exactly one of a part type, a material, or a device (or one part of it).</summary>
public sealed record RuleTarget
{
    private RuleTarget() { }

    /// <summary>The part type, or null.</summary>
    public PartId? Part { get; private init; }

    /// <summary>The material, or null.</summary>
    public MaterialId? Material { get; private init; }

    /// <summary>The device, or null.</summary>
    public DeviceId? Device { get; private init; }

    /// <summary>One part of the device; null for the whole device.</summary>
    public DevicePartId? DevicePart { get; private init; }

    /// <summary>A rule on a part type.</summary>
    public static RuleTarget On(PartId part) => new() { Part = part ?? throw new ArgumentNullException(nameof(part)) };

    /// <summary>A rule on a material.</summary>
    public static RuleTarget On(MaterialId material) => new() { Material = material ?? throw new ArgumentNullException(nameof(material)) };

    /// <summary>A rule on a device.</summary>
    public static RuleTarget On(DeviceId device) => new() { Device = device ?? throw new ArgumentNullException(nameof(device)) };

    /// <summary>A rule on one part of a device.</summary>
    public static RuleTarget On(DeviceId device, DevicePartId part) =>
        On(device) with { DevicePart = part ?? throw new ArgumentNullException(nameof(part)) };

    /// <summary>The ids, as a reader names the target.</summary>
    public override string ToString() => Part?.Value ?? Material?.Value ?? (DevicePart is null ? Device!.Value : Device!.Value + "/" + DevicePart.Value);
}

/// <summary>A box of exposures of one target to one agent class or product: allowed or not allowed.</summary>
[Record(Validation.RecordKind.Rule)]
public sealed record Rule
{
    /// <summary>Its id.</summary>
    public required RuleId Id { get; init; }

    /// <summary>What it is written on.</summary>
    public required RuleTarget Target { get; init; }

    /// <summary>The agent class it speaks of; exactly one of this and <see cref="Product"/>.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The product it speaks of (site files only).</summary>
    public ProductId? Product { get; init; }

    /// <summary>The formulation of the product it was seen with; it is silent on another.</summary>
    public CalendarDate? CompositionDated { get; init; }

    /// <summary>The exposures it speaks of.</summary>
    public ExposureBox When { get; init; } = ExposureBox.Unbounded;

    /// <summary>True for an 'allowed', false for a 'not allowed'.</summary>
    [Key("verdict")]
    [Truth("not-allowed", "allowed")]
    public required bool Allows { get; init; }

    /// <summary>Of an 'allowed' on a class: the members it was seen with; it passes to these and below.</summary>
    public IReadOnlyList<AgentId> SeenWith { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Of an 'allowed' on a class: the source speaks of the whole class.</summary>
    public bool WholeClass { get; init; }

    /// <summary>The rules it sets aside where both apply.</summary>
    public IReadOnlyList<RuleId> Overrides { get; init => field = Frozen.Of(value); } = [];

    /// <summary>The damage to expect: what a 'not allowed' prevents; what an 'allowed' costs over time.</summary>
    public Damage? Damage { get; init; }

    /// <summary>The mechanism towards which the uses of an 'allowed' count.</summary>
    public Mechanism? CountsTowards { get; init; }

    /// <summary>What must accompany the use.</summary>
    public IReadOnlyList<Duty> Duties { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Why, in one sentence.</summary>
    [Remark]
    public required string Why { get; init; }

    /// <summary>How it is known; null for a 'not allowed' that does not say.</summary>
    public KnownBy? KnownBy { get; init; }

    /// <summary>What was tested, where it is known by test.</summary>
    public TestEvidence? Tested { get; init; }

    /// <summary>Why its evidence is thinner than it looks; empty where it is not. A remark for who reviews it: no answer changes by it.</summary>
    [Remark]
    public IReadOnlyList<ThinGround> RestsOn { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether it is kept, as a second source, although other rules say as much. A remark for who reviews it: no answer changes by it.</summary>
    [Key("keep")]
    [Truth(null, "second-source")]
    [Remark]
    public bool IsSecondSource { get; init; }

    /// <summary>Of a device's rule that speaks for its instructions: the edition.</summary>
    public EditionId? Edition { get; init; }

    /// <summary>Its sources; at least one.</summary>
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>When it was last looked at.</summary>
    [Remark]
    public required CalendarDate Reviewed { get; init; }
}
