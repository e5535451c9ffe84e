using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>Names one edition of a device's instructions; unique within that device only.</summary>
public sealed record EditionId : Id
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public EditionId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out EditionId? id) => (id = IsWellFormed(text) ? new EditionId(text!) : null) is not null;
}
