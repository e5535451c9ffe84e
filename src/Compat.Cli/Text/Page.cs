namespace Compat.Cli.Text;

/// <summary>Writes text for people, at most 80 columns wide, without colour.</summary>
/// <remarks>A no-break space keeps a figure and its unit on one line; it is written as a plain space.</remarks>
public sealed class Page(TextWriter writer)
{
    /// <summary>The widest line.</summary>
    public const int Width = 80;

    /// <summary>An empty line.</summary>
    public void Blank() => writer.Write('\n');

    /// <summary>A heading with an empty line before it.</summary>
    public void Heading(string text)
    {
        Blank();
        Line(text);
    }

    /// <summary>An item of a list under a heading.</summary>
    public void Item(string text) => Line("- " + text, 2, 4);

    /// <summary>A paragraph, wrapped at spaces.</summary>
    /// <param name="text">The text.</param>
    /// <param name="indent">Columns before the first line.</param>
    /// <param name="hanging">Columns before the lines after it; the same where left out.</param>
    public void Line(string text, int indent = 0, int hanging = -1)
    {
        var column = indent;
        Spaces(indent);
        var first = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!first && column + 1 + word.Length > Width)
            {
                column = hanging < 0 ? indent : hanging;
                writer.Write('\n');
                Spaces(column);
            }
            else if (!first)
            {
                writer.Write(' ');
                column++;
            }

            writer.Write(word.Replace('\u00a0', ' '));
            column += word.Length;
            first = false;
        }

        writer.Write('\n');
    }

    private void Spaces(int count)
    {
        for (; count > 0; count--) writer.Write(' ');
    }

    /// <summary>A name and what it means, in two columns; the second one is wrapped.</summary>
    public void Columns(string left, string right, int indent, int leftWidth)
    {
        var second = indent + leftWidth + 2;
        if (left.Length > leftWidth)
        {
            Line(left.Replace(' ', '\u00a0'), indent);
            Line(right, second);
        }
        else
        {
            Line(left.PadRight(leftWidth + 1).Replace(' ', '\u00a0') + " " + right, indent, second);
        }
    }
}
