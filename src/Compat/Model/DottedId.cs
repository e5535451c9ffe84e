namespace Compat;

/// <summary>A stable name made of ids joined by dots, the first part saying where the record is kept, for example <c>display-coated.alcohol</c>.</summary>
/// <remarks>Equal when kind and text are equal. Immutable and safe to share between threads.</remarks>
public abstract record DottedId : IComparable<DottedId>
{
    /// <summary>The longest text such an id may have, in characters.</summary>
    public const int MaximumLength = 200;

    private protected DottedId(string value)
    {
        if (!IsWellFormed(value))
            throw new ArgumentException($"`{value}` is no id: expected ids joined by dots", nameof(value));
        Value = value;
    }

    /// <summary>The text of the id.</summary>
    public string Value { get; }

    /// <summary>Whether a text has the form: at most <see cref="MaximumLength"/> characters, ids joined by single dots.</summary>
    public static bool IsWellFormed(string? text) =>
        text is { Length: > 0 and <= MaximumLength } && text.Split('.').All(Id.IsWellFormed);

    /// <summary>Orders ids by their text, character by character.</summary>
    public int CompareTo(DottedId? other) => string.CompareOrdinal(Value, other?.Value);

    /// <summary>The text of the id.</summary>
    public sealed override string ToString() => Value;
}
