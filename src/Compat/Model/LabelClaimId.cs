using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>Names one claim of a product's label, unique within the product.</summary>
public sealed record LabelClaimId : Id
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public LabelClaimId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out LabelClaimId? id) => (id = IsWellFormed(text) ? new LabelClaimId(text!) : null) is not null;
}
