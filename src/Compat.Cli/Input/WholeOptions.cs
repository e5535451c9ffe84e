using System.CommandLine;

namespace Compat.Cli.Input;

/// <summary>The options by which kill and people are judged beside the part.</summary>
public sealed record WholeOptions
{
    /// <summary>What touches the part.</summary>
    public Option<string?>? TouchedBy { get; init; }

    /// <summary>The kinds of patient.</summary>
    public Option<string[]>? Patients { get; init; }

    /// <summary>Whether a patient is in the device or in reach.</summary>
    public Option<string?>? Occupied { get; init; }

    /// <summary>What was on the part.</summary>
    public Option<string[]>? Soil { get; init; }

    /// <summary>Whether soil may be said of single parts too: <c>PART=SOIL</c>.</summary>
    public bool SoilOnParts { get; init; }

    /// <summary>A level to reach at least.</summary>
    public Option<string?>? Level { get; init; }

    /// <summary>What must be killed beside what the level includes.</summary>
    public Option<string[]>? Against { get; init; }

    /// <summary>What the cloth is made of.</summary>
    public Option<string?>? Cloth { get; init; }
}
