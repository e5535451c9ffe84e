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
