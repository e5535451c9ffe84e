using System.Diagnostics.CodeAnalysis;

namespace Compat.Model;

/// <summary>Names a person rule, for example <c>phenolic.newborn</c>.</summary>
public sealed record PersonRuleId : DottedId
{
    /// <summary>Makes the id of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of an id.</exception>
    public PersonRuleId(string value) : base(value) { }

    /// <summary>Makes the id of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="id">The id, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out PersonRuleId? id) => (id = IsWellFormed(text) ? new PersonRuleId(text!) : null) is not null;
}
