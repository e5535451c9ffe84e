using System.Text;
using Compat.Validation;

namespace Compat.Cli.Text;

/// <summary>Guards whoever reads the output, on a terminal or in the log of a pipeline: no hidden character goes through, and no line is a command to the runner of a workflow.</summary>
/// <remarks>Names and texts are refused where they are read; this is the last door. Tabs and line ends pass, a no-break space becomes a plain one. Whole lines are handed on; the rest by <see cref="Flush"/>.</remarks>
/// <param name="inner">Where to.</param>
internal sealed class GuardedWriter(TextWriter inner) : TextWriter
{
    /// <summary>What a runner takes for a command anywhere in a line; two colons only where the line begins.</summary>
    private static readonly string[] Marks = ["##[", "##vso["];

    private readonly StringBuilder _held = new();
    private bool _isBlank = true;

    /// <inheritdoc/>
    public override Encoding Encoding => inner.Encoding;

    /// <summary>The writer behind a guarded one, for what is a command on purpose or writes a line over again; the same where it is not guarded.</summary>
    public static TextWriter Behind(TextWriter writer)
    {
        if (writer is not GuardedWriter guarded) return writer;
        guarded.Flush();
        return guarded.Inner;
    }

    private TextWriter Inner => inner;

    /// <inheritdoc/>
    public override void Write(char value)
    {
        _held.Append(value);
        if (value == '\n') Flush();
    }

    /// <inheritdoc/>
    public override void Write(string? value)
    {
        if (value is null) return;
        var end = value.LastIndexOf('\n') + 1;
        _held.Append(value, 0, end);
        if (end > 0) Flush();
        _held.Append(value, end, value.Length - end);
    }

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    /// <inheritdoc/>
    public override void Flush()
    {
        if (_held.Length > 0) inner.Write(Harmless(_held.ToString()));
        _held.Clear();
        inner.Flush();
    }

    private string Harmless(string text)
    {
        var shown = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length;)
        {
            var length = 1;
            if (text[i] is '\n' or '\t' or ' ' or '\u00a0' || (text[i] == '\r' && i + 1 < text.Length && text[i + 1] == '\n'))
            {
                shown.Append(text[i] == '\u00a0' ? ' ' : text[i]);
                _isBlank = text[i] == '\n' || _isBlank;
            }
            else
            {
                if (_isBlank && text.AsSpan(i).StartsWith("::")) shown.Append(": ");
                else if (Array.Find(Marks, mark => text.AsSpan(i).StartsWith(mark)) is { } mark) shown.Append(mark, 0, length = mark.Length - 1).Append(' ');
                else if (HiddenText.IsHidden(text, i, out length)) shown.Append(HiddenText.Instead);
                else shown.Append(text, i, length);
                _isBlank = false;
            }

            i += length;
        }

        return shown.ToString();
    }
}
