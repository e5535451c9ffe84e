using System.Globalization;
using System.Net;
using Compat.Cli.Text;

namespace Compat.Cli.Cards;

/// <summary>Writes a card as HTML that stands alone: no script, nothing from a network, black on white, one A4 page.</summary>
/// <remarks>Whatever comes from data is escaped; the page itself forbids a browser to run or fetch anything.</remarks>
internal static class CardHtml
{
    /// <summary>Writes it.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="card">The card.</param>
    /// <param name="size">The type of its lines, in points (<see cref="CardFit.Of"/>).</param>
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
        output.Write($"<section class=\"{section.Part switch { CardPart.Use => "use", CardPart.Never => "never", CardPart.NotDone => "not-done", _ => "foot" }}\">\n<h2>{Escaped(section.Heading)}</h2>\n<{list}>\n");
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
