namespace Compat.Cli.Cards;

/// <summary>How wide text becomes in the widest of the fonts a card may be shown in, so that what is reckoned to fit does.</summary>
/// <remarks>
/// The font is whichever of those the card names is on the reader's machine. The widths are those of DejaVu Sans, in hundredths of the type size, rounded up;
/// the others named are narrower.
/// </remarks>
internal static class TextWidth
{
    private const int First = ' ';
    private const int Wide = 105;

    private static ReadOnlySpan<byte> Plain =>
    [
        32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 54,
        100, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79, 61, 79, 70, 64, 62, 74, 69, 99, 69, 62, 69, 40, 34, 40, 84, 50,
        50, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98, 64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84,
    ];

    private static ReadOnlySpan<byte> Bold =>
    [
        35, 46, 53, 84, 70, 101, 88, 31, 46, 46, 53, 84, 38, 42, 38, 37, 70, 70, 70, 70, 70, 70, 70, 70, 70, 70, 40, 40, 84, 84, 84, 59,
        100, 78, 77, 74, 84, 69, 69, 83, 84, 38, 38, 78, 64, 100, 84, 86, 74, 86, 78, 73, 69, 82, 78, 111, 78, 73, 73, 46, 37, 46, 84, 50,
        50, 68, 72, 60, 72, 68, 44, 72, 72, 35, 35, 67, 35, 105, 72, 69, 72, 72, 50, 60, 48, 72, 66, 93, 65, 66, 59, 72, 37, 72, 84,
    ];

    /// <summary>The width of a text on one line, as a multiple of the type size.</summary>
    public static double Of(ReadOnlySpan<char> text, bool bold)
    {
        var widths = bold ? Bold : Plain;
        var sum = 0;
        foreach (var c in text)
        {
            var at = (c == '\u00A0' ? ' ' : c) - First;
            sum += at >= 0 && at < widths.Length ? widths[at] : Wide;
        }

        return sum / 100.0;
    }

    /// <summary>How many lines a bold lead and a text behind it take, broken at spaces and, where a word is longer than a line, within it.</summary>
    /// <param name="lead">The lead.</param>
    /// <param name="text">The text.</param>
    /// <param name="width">The width of a line, as a multiple of the type size.</param>
    public static int Lines(string lead, string text, double width)
    {
        var lines = 1;
        var at = 0.0;
        foreach (var (part, bold) in new[] { (lead, true), (text, false) })
        {
            foreach (var word in part.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var wide = Of(word, bold);
                var space = at == 0 ? 0 : Of(" ", bold);
                if (at > 0 && at + space + wide > width)
                {
                    lines++;
                    (at, space) = (0, 0);
                }

                at += space + wide;
                for (; at > width; at -= width) lines++;
            }
        }

        return lines;
    }
}
