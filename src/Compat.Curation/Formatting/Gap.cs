using System.Text;
using Compat.Curation.Yaml;

namespace Compat.Curation.Formatting;

/// <summary>What stands between two values: spaces, line ends and comments, and nothing else.</summary>
internal sealed class Gap
{
    private readonly List<(int Column, string Comment)> _lines = [];
    private readonly bool _startsFile;
    private readonly bool _endsFile;
    private string? _trailing;

    private Gap(bool startsFile, bool endsFile)
    {
        _startsFile = startsFile;
        _endsFile = endsFile;
    }

    /// <summary>The comments in it, in their order.</summary>
    public IEnumerable<string> Comments =>
        _lines.Where(line => line.Comment.Length > 0).Select(line => line.Comment).Prepend(_trailing ?? "").Where(comment => comment.Length > 0);

    /// <summary>Whether a comment stands in it.</summary>
    public bool HasComments => Comments.Any();

    /// <summary>Reads a gap of a text whose lines end by LF; null where something else stands in the stretch.</summary>
    public static Gap? Read(string text, TextSpan span) =>
        Read(text.Substring(span.Start, span.Length), span.Start == 0, span.End == text.Length);

    /// <summary>Reads what stands between two values; null where it is more than a gap.</summary>
    /// <param name="between">What stands between them.</param>
    /// <param name="startsFile">Whether nothing stands before it.</param>
    /// <param name="endsFile">Whether nothing stands behind it.</param>
    public static Gap? Read(string between, bool startsFile, bool endsFile)
    {
        var parts = between.Split('\n');
        var gap = new Gap(startsFile, endsFile);
        for (var i = 0; i < parts.Length; i++)
        {
            var body = parts[i].Trim(' ');
            if (body.Length > 0 && body[0] != '#') return null;
            var isLast = i == parts.Length - 1;
            if (isLast && !gap._endsFile && body.Length > 0) return null;
            if (i == 0 && !gap._startsFile) gap._trailing = body.Length > 0 ? body : null;
            else if (!isLast || body.Length > 0) gap._lines.Add((parts[i].IndexOf('#', StringComparison.Ordinal), body));
        }

        return gap;
    }

    /// <summary>The gap as it is written: comments kept, at most one blank line at a place, none at the ends of the file.</summary>
    /// <param name="inline">What stands between the two where they share a line; null where the second begins a line. A comment always makes it begin
    /// one.</param>
    /// <param name="column">The column (from 0) of what follows.</param>
    /// <param name="columnOf">The column of a comment on a line of its own, by the one it has.</param>
    public string Write(string? inline, int column, Func<int, int> columnOf)
    {
        if (inline is not null && !HasComments) return inline;
        var text = new StringBuilder();
        if (_trailing is not null) text.Append(' ').Append(_trailing);
        if (!_startsFile) text.Append('\n');
        var blank = false;
        foreach (var (from, comment) in _lines)
        {
            if (comment.Length == 0)
            {
                blank = true;
                continue;
            }

            if (blank && text.Length > 0) text.Append('\n');
            blank = false;
            text.Append(' ', columnOf(from)).Append(comment).Append('\n');
        }

        if (_endsFile) return text.ToString();
        if (blank && text.Length > 0) text.Append('\n');
        return text.Append(' ', column).ToString();
    }
}
