namespace Compat;

/// <summary>Names a rule: ids joined by dots, the first part saying where the rule is kept, for example <c>display-coated.alcohol</c>.</summary>
/// <remarks>Equal when the texts are equal. Immutable and safe to share between threads.</remarks>
public sealed record RuleId : IComparable<RuleId>
{
    /// <summary>Makes a rule id from its text.</summary>
    /// <param name="value">Ids joined by single dots.</param>
    /// <exception cref="ArgumentException">The text has not that form.</exception>
    public RuleId(string value)
    {
        if (!IsWellFormed(value))
            throw new ArgumentException($"`{value}` is no rule id: expected ids joined by dots", nameof(value));
        Value = value;
    }

    /// <summary>The text of the id.</summary>
    public string Value { get; }

    /// <summary>Whether a text has the form of a rule id: at most 200 characters, ids joined by single dots.</summary>
    public static bool IsWellFormed(string? text) =>
        text is { Length: > 0 and <= 200 } && text.Split('.').All(Id.IsWellFormed);

    /// <summary>Orders rule ids by their text, character by character.</summary>
    public int CompareTo(RuleId? other) => string.CompareOrdinal(Value, other?.Value);

    /// <summary>The text of the id.</summary>
    public override string ToString() => Value;
}
