using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>Names an agent class, for example <c>isopropanol</c>.</summary>
public sealed record AgentId : Id
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public AgentId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out AgentId? id) => (id = IsWellFormed(text) ? new AgentId(text!) : null) is not null;
}
