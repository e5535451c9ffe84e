using Compat.Validation;

namespace Compat.Model;

/// <summary>A record with an id of its own, which is its first field.</summary>
/// <param name="kind">Its kind.</param>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class RecordAttribute(RecordKind kind) : Attribute
{
    public RecordKind Kind { get; } = kind;
}

/// <summary>A list of records whose order means nothing: they are stored in the order of their keys.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class UnorderedAttribute : Attribute;

/// <summary>What the field is called in a file, where that is not its name in kebab-case.</summary>
/// <param name="key">The key.</param>
[AttributeUsage(AttributeTargets.Property | AttributeTargets.Parameter)]
internal sealed class KeyAttribute(string key) : Attribute
{
    public string Key { get; } = key;

    /// <summary>The key of the braces in which it stands there; null where it stands among the keys of the record.</summary>
    public string? Within { get; set; }
}

/// <summary>The words that a file has for a truth.</summary>
/// <param name="no">What stands for false; null where the key is left out.</param>
/// <param name="yes">What stands for true.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class TruthAttribute(string? no, string yes) : Attribute
{
    public string? No { get; } = no;

    public string Yes { get; } = yes;
}

/// <summary>What a figure or a range measures, and so in which units a file states it.</summary>
/// <param name="quantity">A measure of Compat.Curation, or <c>Strength</c>: in the unit of the agent that the record speaks of.</param>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class MeasuredAttribute(string quantity) : Attribute
{
    public string Quantity { get; } = quantity;

    /// <summary>Of a strength: the key of another agent in whose unit it is stated.</summary>
    public string? Of { get; set; }

    /// <summary>Of a strength: whether a bare figure stands for itself.</summary>
    public bool TakesBare { get; set; }
}
