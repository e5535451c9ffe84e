using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>Names a device of a site.</summary>
public sealed record DeviceId : Id
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public DeviceId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out DeviceId? id) => (id = IsWellFormed(text) ? new DeviceId(text!) : null) is not null;
}
