using System.Globalization;
using Compat.Curation.Diagnostics;

namespace Compat.Curation.Yaml;

/// <summary>Refuses characters that cannot be seen or that editors and YAML count differently.</summary>
internal static class CharacterCheck
{
    /// <summary>Checks a file.</summary>
    /// <param name="faults">The file, and where faults go.</param>
    /// <param name="text">The text to read on with, tabs behind other characters read as spaces.</param>
    /// <returns>Whether the text can be read on.</returns>
    public static bool Passes(DiagnosticList faults, out string text)
    {
        text = faults.Source.Text;
        var passes = true;
        var tabs = false;
        var atStart = true;
        for (var i = 0; i < text.Length && !faults.IsFull; i++)
        {
            var c = text[i];
            if (c is '\n' or '\r')
            {
                atStart = true;
            }
            else if (c == '\t')
            {
                var end = i + 1;
                while (end < text.Length && text[end] == '\t') end++;
                faults.Add(
                    Span.Between(i, end),
                    "tab",
                    atStart ? "a tab in the indentation" : "a tab",
                    "use spaces");
                if (atStart) passes = false;
                tabs = true;
                i = end - 1;
            }
            else if (DiagnosticText.IsUnprintable(c))
            {
                faults.Add(
                    new(i, 1),
                    "character",
                    string.Create(CultureInfo.InvariantCulture, $"the character U+{(int)c:X4} cannot be seen"),
                    "leave it out");
                passes = false;
            }
            else if (c != ' ')
            {
                atStart = false;
            }
        }

        if (tabs) text = text.Replace('\t', ' ');
        return passes && !faults.IsFull;
    }
}
