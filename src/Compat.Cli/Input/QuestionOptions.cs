using System.CommandLine;

namespace Compat.Cli.Input;

/// <summary>The options that make up a question; one that a command does not offer is null.</summary>
public sealed record QuestionOptions
{
    /// <summary>The part type, or the part of the device.</summary>
    public Option<string?>? Part { get; init; }

    /// <summary>Materials.</summary>
    public Option<string[]>? Materials { get; init; }

    /// <summary>Whether the materials are all.</summary>
    public Option<string?>? MaterialsKnown { get; init; }

    /// <summary>The device.</summary>
    public Option<string?>? Device { get; init; }

    /// <summary>Its serial number.</summary>
    public Option<string?>? Serial { get; init; }

    /// <summary>The agent class.</summary>
    public Option<string?>? Agent { get; init; }

    /// <summary>The product.</summary>
    public Option<string?>? Product { get; init; }

    /// <summary>The product's dilution.</summary>
    public Option<string?>? Dilution { get; init; }

    /// <summary>The agent's strength.</summary>
    public Option<string?>? Strength { get; init; }

    /// <summary>The method.</summary>
    public Option<string?>? Method { get; init; }

    /// <summary>The exposure time.</summary>
    public Option<string?>? ExposureTime { get; init; }

    /// <summary>The exposure time of what is kept wet for a time and then taken off.</summary>
    public Option<string?>? ContactTime { get; init; }

    /// <summary>The temperature.</summary>
    public Option<string?>? Temperature { get; init; }

    /// <summary>The pH.</summary>
    public Option<string?>? Ph { get; init; }

    /// <summary>The uses.</summary>
    public Option<string?>? Uses { get; init; }

    /// <summary>Acts.</summary>
    public Option<string[]>? Acts { get; init; }

    /// <summary>What alone is to be judged.</summary>
    public Option<string?>? Only { get; init; }

    /// <summary>What kill and people are judged by; null where the command does not offer it.</summary>
    public WholeOptions? Whole { get; init; }
}
