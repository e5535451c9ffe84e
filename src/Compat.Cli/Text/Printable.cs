namespace Compat.Cli.Text;

/// <summary>Keeps text of a file from moving or hiding what stands on a screen.</summary>
internal static class Printable
{
    /// <summary>The text with what cannot be shown replaced, one character for one.</summary>
    public static string Of(string text) => text.Any(IsHidden) ? string.Concat(text.Select(c => IsHidden(c) ? '\uFFFD' : c)) : text;

    private static bool IsHidden(char c) =>
        c < ' ' || c is (>= '\u007F' and <= '\u009F') or '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') or '\uFEFF';
}
