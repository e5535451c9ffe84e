using System.Diagnostics.CodeAnalysis;

namespace Compat.Model;

/// <summary>Names an organism, for example <c>mycobacterium-tuberculosis</c>.</summary>
public sealed record OrganismId : Id
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public OrganismId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out OrganismId? id) => (id = IsWellFormed(text) ? new OrganismId(text!) : null) is not null;
}
