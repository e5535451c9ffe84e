namespace Compat;

/// <summary>A stable name of one record: lower-case words joined by single hyphens, for example <c>keypad-membrane</c>.</summary>
/// <remarks>Ids are equal when their kind and their text are equal. They are immutable and safe to share between threads.</remarks>
public abstract record Id : IComparable<Id>
{
    /// <summary>The longest text an id may have, in characters.</summary>
    public const int MaximumLength = 100;

    private protected Id(string value)
    {
        if (!IsWellFormed(value))
            throw new ArgumentException($"`{value}` is no id: expected lower-case words joined by hyphens", nameof(value));
        Value = value;
    }

    /// <summary>The text of the id.</summary>
    public string Value { get; }

    /// <summary>Whether a text has the form of an id: 1 to <see cref="MaximumLength"/> characters, a-z, 0-9, single hyphens between words.</summary>
    public static bool IsWellFormed(string? text)
    {
        if (string.IsNullOrEmpty(text) || text!.Length > MaximumLength || text[0] == '-' || text[text.Length - 1] == '-')
            return false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c is not ((>= 'a' and <= 'z') or (>= '0' and <= '9') or '-')) return false;
            if (c == '-' && text[i - 1] == '-') return false;
        }

        return true;
    }

    /// <summary>Orders ids by their text, character by character.</summary>
    public int CompareTo(Id? other) => string.CompareOrdinal(Value, other?.Value);

    /// <summary>The text of the id.</summary>
    public sealed override string ToString() => Value;
}
