using System.Diagnostics.CodeAnalysis;

namespace Compat;

/// <summary>Names a rule, for example <c>display-coated.alcohol</c>.</summary>
public sealed record RuleId : DottedId
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public RuleId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out RuleId? id) => (id = IsWellFormed(text) ? new RuleId(text!) : null) is not null;
}
