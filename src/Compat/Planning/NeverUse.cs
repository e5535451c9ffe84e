namespace Compat.Planning;

/// <summary>Why a product is never used on a part.</summary>
public enum NeverReason
{
    /// <summary>It harms the part: <see cref="NeverUse.Damage"/> says how.</summary>
    HarmsThePart,

    /// <summary>The device's instructions forbid it, or do not list it; <see cref="NeverUse.Damage"/> is what is on record besides.</summary>
    Instructions,

    /// <summary>Its residue or vapour harms people: <see cref="NeverUse.Harm"/> says how.</summary>
    HarmsPeople,

    /// <summary>It is only used wetter than the part stands.</summary>
    TooWet,

    /// <summary>What it leaves could not be taken off.</summary>
    ResidueStays,
}

/// <summary>A product that is never used on a part, however it is brought on.</summary>
/// <param name="Product">The product.</param>
/// <param name="Part">The part.</param>
/// <param name="Reason">Why: of several the first in the order of the members.</param>
public sealed record NeverUse(ProductId Product, DevicePartId Part, NeverReason Reason)
{
    /// <summary>What then happens to the part, by every rule that forbids it, the worst consequence first; empty where none names a damage.</summary>
    public IReadOnlyList<Damage> Damage { get; init; } = [];

    /// <summary>What then happens to people, in the words of the rules that forbid it; empty where none does.</summary>
    public IReadOnlyList<string> Harm { get; init; } = [];
}

/// <summary>The wettest method that parts stand: nothing wetter is ever used on them, whatever the product.</summary>
/// <param name="Wettest">The method.</param>
/// <param name="Parts">The parts, in the order of the device.</param>
public sealed record NeverWetter(ApplicationMethod Wettest, IReadOnlyList<DevicePartId> Parts);

/// <summary>An act that parts never stand, whatever the product.</summary>
/// <param name="Act">The act.</param>
/// <param name="Parts">The parts, in the order of the device.</param>
public sealed record NeverAct(Act Act, IReadOnlyList<DevicePartId> Parts);

/// <summary>A product of the plan and one of the shelf that never meet, on a part, a cloth or in a bucket.</summary>
/// <param name="One">The one that the plan uses; of two that it uses the first by id.</param>
/// <param name="Other">The other.</param>
/// <param name="Hazards">What then happens, by id; at least one.</param>
public sealed record NeverTogether(ProductId One, ProductId Other, IReadOnlyList<MixingHazard> Hazards);
