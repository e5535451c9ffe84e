using System.Globalization;
using System.Text;

namespace Compat.Validation;

/// <summary>
/// Finds characters that nobody sees as what they are: they move, hide or turn round the text beside them, or look like a space or like nothing.
/// </summary>
/// <remarks>The one definition, for files, arguments, records made in code, and what is written to a screen.</remarks>
internal static class HiddenText
{
    /// <summary>What stands in place of a hidden character where it must be shown.</summary>
    public const char Instead = '\uFFFD';

    /// <summary>Where the first hidden character of a text is; -1 where there is none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="length">How many UTF-16 units it has.</param>
    public static int Find(string text, out int length)
    {
        for (var i = 0; i < text.Length; i += length)
            if (IsHidden(text, i, out length)) return i;
        length = 0;
        return -1;
    }

    /// <summary>Whether a hidden character stands at a place.</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">The place.</param>
    /// <param name="length">How many UTF-16 units the character there has.</param>
    public static bool IsHidden(string text, int at, out int length)
    {
        length = 1;
        var c = text[at];
        if (c is >= ' ' and < '\u007F') return false;
        if (char.IsSurrogatePair(text, at)) length = 2;
        return CharUnicodeInfo.GetUnicodeCategory(text, at) switch
        {
            UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
                or UnicodeCategory.SpaceSeparator or UnicodeCategory.Surrogate => true,
            _ => IsBlank(length == 2 ? char.ConvertToUtf32(c, text[at + 1]) : c),
        };
    }

    /// <summary>The name of the character at a place: <c>U+202E</c>.</summary>
    public static string NameAt(string text, int at) =>
        "U+" + (char.IsSurrogatePair(text, at) ? char.ConvertToUtf32(text, at) : text[at]).ToString("X4", CultureInfo.InvariantCulture);

    /// <summary>The text with each hidden character replaced by one that is seen.</summary>
    public static string Shown(string text)
    {
        if (Find(text, out _) < 0) return text;
        var shown = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length;)
        {
            if (IsHidden(text, i, out var length)) shown.Append(Instead);
            else shown.Append(text, i, length);
            i += length;
        }

        return shown.ToString();
    }

    /// <summary>Marks and letters that are drawn as nothing: the joiner of graphemes, fillers, selectors of variants, braille without dots, the tags.</summary>
    private static bool IsBlank(int c) =>
        c is 0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or (>= 0x180B and <= 0x180F) or 0x2800 or 0x3164 or 0xFFA0
            or (>= 0xFE00 and <= 0xFE0F) or (>= 0xFFF0 and <= 0xFFF8) or (>= 0xE0000 and <= 0xE0FFF);
}
