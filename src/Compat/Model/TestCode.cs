using System.Diagnostics.CodeAnalysis;

namespace Compat.Model;

/// <summary>The code by which a standards body names a test, without its edition, for example <c>EN 13727</c>.</summary>
/// <remarks>Equal when the text is equal. Immutable and safe to share between threads.</remarks>
public sealed record TestCode : IComparable<TestCode>
{
    /// <summary>The longest text a code may have, in characters.</summary>
    public const int MaximumLength = 60;

    /// <summary>Makes the code of its text.</summary>
    /// <param name="value">Its text.</param>
    /// <exception cref="ArgumentException">It has not the form of a code.</exception>
    public TestCode(string value)
    {
        if (!IsWellFormed(value))
            throw new ArgumentException($"`{value}` is no code of a test: expected words of letters and digits, as `EN 13727`", nameof(value));
        Value = value;
    }

    /// <summary>The text of the code.</summary>
    public string Value { get; }

    /// <summary>Whether a text has the form of a code: words of letters and digits, each joined to the next by one space or one of <c>.:+/-</c>.</summary>
    public static bool IsWellFormed(string? text)
    {
        if (text is not { Length: > 0 and <= MaximumLength }) return false;
        var joined = true;
        foreach (var c in text)
        {
            if (c is (>= 'a' and <= 'z') or (>= 'A' and <= 'Z') or (>= '0' and <= '9')) joined = false;
            else if (joined || c is not (' ' or '.' or ':' or '+' or '/' or '-')) return false;
            else joined = true;
        }

        return !joined;
    }

    /// <summary>Makes the code of a text, where that has the form of one.</summary>
    /// <param name="text">The text.</param>
    /// <param name="code">The code, or null.</param>
    /// <returns>Whether it has.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out TestCode? code) => (code = IsWellFormed(text) ? new TestCode(text!) : null) is not null;

    /// <summary>Orders codes by their text, character by character.</summary>
    public int CompareTo(TestCode? other) => string.CompareOrdinal(Value, other?.Value);

    /// <summary>The text of the code.</summary>
    public override string ToString() => Value;
}
