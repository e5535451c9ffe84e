using System.Globalization;
using System.Text;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Diagnostics;

/// <summary>Shows diagnostics to people: heading, source line, caret, help.</summary>
public static class DiagnosticText
{
    /// <summary>How much of a source line is shown, in characters.</summary>
    public const int Width = 100;

    private const int LeadIn = 40;

    /// <summary>How many are shown; of the rest, how many there are.</summary>
    public const int MostShown = 300;

    /// <summary>All of them, each followed by an empty line; where they are more than <see cref="MostShown"/>, the rest is counted.</summary>
    public static string Render(IEnumerable<Diagnostic> diagnostics)
    {
        var all = diagnostics.ToList();
        return string.Concat(all.Take(MostShown).Select(diagnostic => Render(diagnostic) + "\n"))
            + (all.Count > MostShown ? string.Create(CultureInfo.InvariantCulture, $"error: {all.Count - MostShown} errors more are not shown\n\n") : "");
    }

    /// <summary>One of them: lines ended by LF.</summary>
    public static string Render(Diagnostic diagnostic)
    {
        var text = new StringBuilder();
        text.Append(Heading(diagnostic)).Append('\n');
        if (diagnostic.Place is { } place) AppendExcerpt(text, place);
        if (diagnostic.Related is { } related)
        {
            text.Append("  ").Append(related.Label).Append(": ").Append(Where(related.Place)).Append('\n');
            AppendExcerpt(text, related.Place);
        }

        if (diagnostic.Help is { } help) text.Append("  help: ").Append(HiddenText.Shown(help)).Append('\n');
        return text.ToString();
    }

    internal static string Heading(Diagnostic diagnostic) =>
        (diagnostic.Place is { } place ? Where(place) : NameOf(diagnostic.File)) + ": error: " + HiddenText.Shown(Cut(diagnostic.Message));

    /// <summary>The source line of a place with a caret under it: two lines ended by LF.</summary>
    public static string Excerpt(SourcePlace place)
    {
        var text = new StringBuilder();
        AppendExcerpt(text, place);
        return text.ToString();
    }

    /// <summary>File, line and column of a place.</summary>
    public static string Where(SourcePlace place)
    {
        var position = place.Position;
        return string.Create(CultureInfo.InvariantCulture, $"{NameOf(place.Source.Path)}:{position.Line}:{position.Column}");
    }

    /// <summary>The name of a file so that it neither hides anything nor starts a line as a workflow command does.</summary>
    private static string NameOf(string path) => (path.TrimStart().StartsWith("::", StringComparison.Ordinal) ? "./" : "") + HiddenText.Shown(path);

    private static void AppendExcerpt(StringBuilder text, SourcePlace place)
    {
        var source = place.Source;
        var position = place.Position;
        var line = source.Lines.LineSpan(position.Line);
        var start = Math.Clamp(place.Span.Start, line.Start, line.End);
        var end = Math.Clamp(place.Span.End, start, line.End);
        var from = line.Start;
        var to = line.End;
        if (line.Length > Width)
        {
            from = Whole(source.Text, Math.Max(line.Start, Math.Min(start - LeadIn, line.End - Width)), line);
            to = Whole(source.Text, Math.Min(line.End, from + Width), line);
        }

        end = Math.Min(end, to);
        var before = from > line.Start ? "…" : "";
        var number = position.Line.ToString(CultureInfo.InvariantCulture);
        text.Append("  ").Append(number).Append(" | ").Append(before).Append(HiddenText.Shown(source.Text[from..to].Replace('\t', ' ')));
        if (to < line.End) text.Append('…');
        TrimEnd(text);
        text.Append('\n');
        text.Append(' ', number.Length + 2).Append(" | ");
        text.Append(' ', before.Length + Runes(source.Text, from, start));
        text.Append('^', Math.Max(1, Runes(source.Text, start, end))).Append('\n');
    }

    private static void TrimEnd(StringBuilder text)
    {
        while (text.Length > 0 && text[^1] == ' ') text.Length--;
    }

    /// <summary>Moves a cut off the middle of a surrogate pair.</summary>
    private static int Whole(string text, int offset, TextSpan line) =>
        offset > line.Start && offset < line.End && char.IsLowSurrogate(text[offset]) ? offset - 1 : offset;

    private static int Runes(string text, int from, int to)
    {
        var count = 0;
        for (var i = from; i < to; i++)
            if (!char.IsLowSurrogate(text[i]) || i == from) count++;
        return count;
    }

    private static string Cut(string message) => message.Length <= 600 ? message : message[..600] + "…";
}
