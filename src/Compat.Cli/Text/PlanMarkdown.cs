using System.Text;
using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Text;

/// <summary>Writes a plan as a sheet for the ward: pages of short lines that fit A4, each headed, with a blank at every step.</summary>
/// <remarks>Whatever comes from data is escaped: it can neither end a table nor make a link.</remarks>
internal sealed class PlanMarkdown(TextWriter output, Names names)
{
    /// <summary>The most lines on a page; a line of a table takes about as many lines as its text is long.</summary>
    internal const int LinesOnPage = 55;

    private const int ColumnsOfText = 85;
    private readonly StringBuilder _page = new();
    private string _title = "";
    private int _lines;
    private int _pages;

    /// <summary>The whole sheet.</summary>
    public void Write(PlanSheet sheet, StatusDeclaration? declaration)
    {
        var words = new PlanWording(sheet, names);
        var steps = new PlanStepWording(sheet, words, names);
        _title = words.Title;
        NewPage();
        if (sheet.Hold || sheet.Prions) Stopped(sheet, steps);
        else
        {
            foreach (var line in words.Asked()) Item(line);
            foreach (var heading in Enum.GetValues<PlanHeading>().Where(heading => sheet.Under(heading).Any()))
            {
                Heading(PlanWording.Of(heading));
                if (words.Everywhere(heading) is { Count: > 0 } everywhere) Part(everywhere);
                foreach (var part in sheet.Under(heading)) Part([.. words.Of(part)]);
            }

            if (sheet.Steps.Count > 0) Heading("Steps: done or not done, and initials, at each");
            foreach (var step in sheet.Steps) Step(step, steps);
            if (steps.Adds.Count > 0) Heading("The occasion adds");
            foreach (var add in steps.Adds) Item("[  ] " + add);
            if (words.Fewer() is { } fewer)
            {
                Heading("What one product fewer would cost");
                Item(fewer);
            }
        }

        if (declaration is not null)
        {
            NewPage();
            Heading("Declaration of the decontamination status");
            foreach (var line in new DeclarationWording(words).Of(declaration)) Item(line);
        }

        Heading("Cautions", VerdictWording.Cautions.Count);
        foreach (var caution in VerdictWording.Cautions) Item(caution);
        Heading("Data", sheet.Identity.Count);
        foreach (var state in sheet.Identity) Item(EvidenceWording.Of(state));
        output.Write(_page.ToString());
    }

    private void Stopped(PlanSheet sheet, PlanStepWording steps)
    {
        Heading(sheet.Prions ? KillWording.Prions : "No plan: the device is kept as it is");
        if (sheet.Prions) return;
        foreach (var add in steps.Adds) Item("[  ] " + add);
        Item("Who was told: ____________ date and time: ____________ held by: ____________");
    }

    private void Part(IReadOnlyList<string> lines)
    {
        Room(lines.Take(2).Sum(Lines));
        Item(lines[0]);
        foreach (var line in lines.Skip(1)) Item(line, 1);
    }

    private void Step(PlanStep step, PlanStepWording words)
    {
        var details = words.Details(step).ToArray();
        Room(Lines(words.Line(step)) + 1 + Math.Min(6, details.Sum(Lines)));
        Item($"**{step.Number}.** {Markdown.Plain(words.Line(step))} — done [  ] not done [  ] initials ______", 0, escaped: true);
        foreach (var detail in details) Item(detail, 1);
    }

    private void Heading(string text, int with = 2)
    {
        Room(with + 3);
        Add($"\n## {Markdown.Plain(text)}\n", 3);
    }

    private void Item(string text, int depth = 0, bool escaped = false)
    {
        Room(Lines(text));
        Add(new string(' ', depth * 2) + "- " + (escaped ? text : Markdown.Plain(text)), Lines(text));
    }

    private void Room(int lines)
    {
        if (_lines + lines > LinesOnPage && _lines > 4) NewPage();
    }

    private void NewPage()
    {
        if (_pages > 0) _page.Append("\n<div style=\"page-break-after: always\"></div>\n\n");
        _lines = 0;
        Add($"# {Markdown.Plain(_title)} (page {++_pages})\n", 3);
    }

    private void Add(string text, int lines)
    {
        _page.Append(text).Append('\n');
        _lines += lines;
    }

    private static int Lines(string text) => 1 + (text.Length / ColumnsOfText);
}
