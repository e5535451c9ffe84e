using Compat.Knowledge;
using Compat.Mixing;
using Compat.People;
using Compat.Windows;

namespace Compat.Plans;

/// <summary>Where two that exclude each other would meet.</summary>
public enum MeetingPlace
{
    /// <summary>On a part that both steps serve.</summary>
    Part,

    /// <summary>On a cloth.</summary>
    Cloth,

    /// <summary>On a glove.</summary>
    Glove,

    /// <summary>In a bucket or bottle.</summary>
    Container,

    /// <summary>The product and the soil on the part.</summary>
    Soil,

    /// <summary>The product and what a former product left.</summary>
    FormerResidue,
}

/// <summary>A hazard to be kept from at a step.</summary>
/// <param name="Found">The hazard, and the two it was found for.</param>
/// <param name="Where">Where they would meet.</param>
/// <param name="FormerStep">The number of the step before that brings the other one; null where no step does.</param>
public sealed record StepHazard(FoundHazard Found, MeetingPlace Where, int? FormerStep);

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

    /// <summary>What to keep to with the product: method, dilution, wet time, residence, temperature, pH.</summary>
    public WindowBox? Within { get; init; }

    /// <summary>The cloth, of those at hand at the site.</summary>
    public string? Cloth { get; init; }

    /// <summary>What accompanies the step, the strictest of all its parts.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>How staff are protected at it.</summary>
    public IReadOnlyList<Protection> Protection { get; init; } = [];

    /// <summary>What must not meet at it.</summary>
    public IReadOnlyList<StepHazard> Hazards { get; init; } = [];

    /// <summary>What to look for, of an <see cref="StepOrder.Inspect"/>.</summary>
    public IReadOnlyList<Damage> LookFor { get; init; } = [];

    /// <summary>What is checked, of a <see cref="StepOrder.CheckFunction"/>, as the part type says it.</summary>
    public IReadOnlyList<string> Checks { get; init; } = [];

    /// <summary>How long to wait before power, in seconds, of a <see cref="StepOrder.Dry"/>; null where nothing is on record.</summary>
    public decimal? BeforePower { get; init; }
}
