using Compat.Knowledge;
using Compat.Sites;

namespace Compat;

/// <summary>One question: may this agent or product be used on this part? An axis that is null is left out and treated as the design states.</summary>
/// <remarks>Exactly one of <see cref="Agent"/> and <see cref="Product"/>; and a <see cref="Part"/>, a <see cref="Device"/> with <see cref="DevicePart"/>, or <see cref="Materials"/>.</remarks>
public sealed record Question
{
    /// <summary>The part type asked about.</summary>
    public PartId? Part { get; init; }

    /// <summary>Materials asked about: alone, or in place of the part's own list.</summary>
    public IReadOnlyList<MaterialSlot> Materials { get; init; } = [];

    /// <summary>The device whose part is asked about.</summary>
    public DeviceId? Device { get; init; }

    /// <summary>The part of the device.</summary>
    public DevicePartId? DevicePart { get; init; }

    /// <summary>The device's serial number; null where it is not known.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The agent class asked about.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The product asked about.</summary>
    public ProductId? Product { get; init; }

    /// <summary>Strength of the agent; a range is uncertain: its worst value counts.</summary>
    public Strength? Strength { get; init; }

    /// <summary>Dilution of the product as a share of volume, above 0 to 1; a range is uncertain.</summary>
    public Interval? Dilution { get; init; }

    /// <summary>The method.</summary>
    public ApplicationMethod? Method { get; init; }

    /// <summary>Residence in seconds; a range is uncertain; <see cref="Interval.WithoutEnd"/> for one without end.</summary>
    public Interval? Residence { get; init; }

    /// <summary>Temperature in °C; a range is uncertain.</summary>
    public Interval? Temperature { get; init; }

    /// <summary>pH; a range is uncertain.</summary>
    public Interval? Ph { get; init; }

    /// <summary>Uses over the part's life.</summary>
    public int? Uses { get; init; }

    /// <summary>Acts that go with it.</summary>
    public IReadOnlyList<Act> Acts { get; init; } = [];

    /// <summary>Whether only the part is to be judged, not kill and people.</summary>
    public bool OnlyPart { get; init; }
}
