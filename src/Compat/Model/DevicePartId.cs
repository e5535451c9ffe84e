using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>Names one part of a device; unique within that device only.</summary>
public sealed record DevicePartId : Id
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public DevicePartId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out DevicePartId? id) => (id = IsWellFormed(text) ? new DevicePartId(text!) : null) is not null;
}
