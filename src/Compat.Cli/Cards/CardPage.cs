using System.Globalization;
using System.Net;

namespace Compat.Cli.Cards;

/// <summary>Finds the largest type in which a card fits one A4 page. Lengths are in points, 1/72 inch.</summary>
internal static class CardFit
{
    public const double Largest = 15;

    /// <summary>The smallest type of the lines that is still read at arm's length; a card that does not fit in it is none.</summary>
    public const double Smallest = 9;

    public const double SmallestFoot = 8;

    public const int MarginMillimetres = 10;

    public const double LineHeight = 1.2;

    public const double Title = 1.6;

    public const double Heading = 1.2;

    public const double SectionSpace = 0.4;

    public const double Padding = 0.3;

    /// <summary>The frame of a section, in points; that of what is never done is what one sees first.</summary>
    public const double Frame = 1, NeverFrame = 4;

    public const double LineSpace = 0.18;

    public const double Indent = 1.4;

    private const double PointsPerMillimetre = 72 / 25.4;
    private const double Width = (210 - (2 * MarginMillimetres)) * PointsPerMillimetre;

    private const double Height = ((297 - (2 * MarginMillimetres)) * PointsPerMillimetre) - 9;

    /// <summary>The type in which it fits; null where it does not in the smallest.</summary>
    public static double? Of(WardCard card)
    {
        for (var size = Largest; size >= Smallest; size -= 0.25)
            if (HeightOf(card, size) <= Height) return size;
        return null;
    }

    public static double Foot(double size) => Math.Max(SmallestFoot, size * 0.7);

    /// <summary>How much too high a card is in the smallest type, as a share of the page.</summary>
    public static double Over(WardCard card) => (HeightOf(card, Smallest) / Height) - 1;

    private static double HeightOf(WardCard card, double size) =>
        LinesOf(card.Title, "", size * Title, 0) + LinesOf("", card.Under, size, 0) + card.Sections.Sum(section => HeightOf(section, size));

    private static double HeightOf(CardSection section, double size)
    {
        var foot = section.Part == CardPart.Foot;
        var type = foot ? Foot(size) : size;
        var frame = foot ? 0 : 2 * (section.Part == CardPart.Never ? NeverFrame : Frame);
        var inner = foot ? 0 : 2 * Padding * type;
        return (SectionSpace * type) + inner + frame + LinesOf(section.Heading, "", type * (foot ? 1 : Heading), inner + frame)
            + section.Lines.Sum(line => (LineSpace * type) + LinesOf(line.Lead, line.Text, type, inner + frame + ((line.IsDetail ? 2 : 1) * Indent * type)));
    }

    /// <summary>The height of text in a type on a page less what is taken off its width.</summary>
    private static double LinesOf(string lead, string text, double type, double less) =>
        lead.Length + text.Length == 0 ? 0 : TextWidth.Lines(lead, text, (Width - less) / type) * type * LineHeight;
}

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

/// <summary>Writes a card as HTML that stands alone: no script, nothing from a network, black on white, one A4 page.</summary>
/// <remarks>Whatever comes from data is escaped; the page itself forbids a browser to run or fetch anything.</remarks>
internal static class CardHtml
{
    public static void Write(TextWriter output, WardCard card, double size)
    {
        output.Write($"""
            <!DOCTYPE html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
            <meta name="viewport" content="width=device-width">
            <title>{Escaped(card.Title)}</title>
            <style>
            {Style(size)}
            </style>
            </head>
            <body>
            <main>
            <h1>{Escaped(card.Title)}</h1>

            """);
        if (card.Under.Length > 0) output.Write($"<p class=\"under\">{Escaped(card.Under)}</p>\n");
        foreach (var section in card.Sections) Write(output, section);
        output.Write("</main>\n</body>\n</html>\n");
    }

    private static void Write(TextWriter output, CardSection section)
    {
        var list = section.Part == CardPart.Use ? "ol" : "ul";
        var kind = section.Part switch { CardPart.Use => "use", CardPart.Never => "never", CardPart.NotDone => "not-done", _ => "foot" };
        output.Write($"<section class=\"{kind}\">\n<h2>{Escaped(section.Heading)}</h2>\n<{list}>\n");
        for (var i = 0; i < section.Lines.Count; i++)
        {
            output.Write("<li>" + Line(section.Lines[i]));
            if (section.Lines.ElementAtOrDefault(i + 1) is { IsDetail: true })
            {
                output.Write("\n<ul>\n");
                for (; section.Lines.ElementAtOrDefault(i + 1) is { IsDetail: true } detail; i++) output.Write($"<li>{Line(detail)}</li>\n");
                output.Write("</ul>");
            }

            output.Write("</li>\n");
        }

        output.Write($"</{list}>\n</section>\n");
    }

    private static string Line(CardLine line) =>
        line.Lead.Length == 0 ? Escaped(line.Text) : $"<strong>{Escaped(line.Lead)}</strong>{(line.Text.Length == 0 ? "" : " " + Escaped(line.Text))}";

    private static string Escaped(string text) => WebUtility.HtmlEncode(Printable.Of(text));

    private static string Style(double size) => string.Create(CultureInfo.InvariantCulture, $$"""
        @page { size: A4 portrait; margin: {{CardFit.MarginMillimetres}}mm; }
        * { box-sizing: border-box; margin: 0; padding: 0; }
        html { color: #000; background: #fff; }
        body { font: {{size}}pt/{{CardFit.LineHeight}} Arial, Helvetica, "Liberation Sans", "DejaVu Sans", sans-serif; overflow-wrap: anywhere; }
        main { max-width: {{210 - (2 * CardFit.MarginMillimetres)}}mm; margin: 0 auto; }
        h1 { font-size: {{CardFit.Title}}em; line-height: {{CardFit.LineHeight}}; }
        h2 { font-size: {{CardFit.Heading}}em; line-height: {{CardFit.LineHeight}}; }
        section { margin-top: {{CardFit.SectionSpace}}em; padding: {{CardFit.Padding}}em; border: {{CardFit.Frame}}pt solid #000; }
        section.never { border-width: {{CardFit.NeverFrame}}pt; }
        section.foot { font-size: {{CardFit.Foot(size)}}pt; border: 0; padding: 0; }
        section.foot h2 { font-size: 1em; }
        ol, ul { padding-left: {{CardFit.Indent}}em; }
        li { margin-top: {{CardFit.LineSpace}}em; }
        @media screen { body { padding: {{CardFit.MarginMillimetres}}mm; } }
        """);
}
