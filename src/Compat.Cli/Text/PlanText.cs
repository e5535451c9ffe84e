using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Text;

/// <summary>Writes a plan for people.</summary>
public sealed class PlanText(Page page, Names names)
{
    /// <summary>The whole plan.</summary>
    public void Write(PlanSheet sheet, StatusDeclaration? declaration)
    {
        var words = new PlanWording(sheet, names);
        var steps = new PlanStepWording(sheet, words, names);
        page.Line(Printable.Of(words.Title));
        if (sheet.Hold || sheet.Prions) Stopped(sheet, steps);
        else
        {
            foreach (var line in words.Asked()) page.Line(Printable.Of(line), 2, 4);
            foreach (var heading in Enum.GetValues<PlanHeading>().Where(heading => sheet.Under(heading).Any()))
            {
                page.Heading(PlanWording.Of(heading));
                Item(words.Everywhere(heading));
                foreach (var part in sheet.Under(heading)) Item(words.Of(part));
            }

            if (sheet.Steps.Count > 0) page.Heading("Steps");
            foreach (var step in sheet.Steps)
            {
                page.Line(Printable.Of($"{step.Number}. {steps.Line(step)}"), 2, 6);
                foreach (var detail in steps.Details(step)) page.Line(Printable.Of("- " + detail), 6, 8);
            }

            if (steps.Adds.Count > 0) page.Heading("The occasion adds");
            foreach (var add in steps.Adds) page.Item(Printable.Of(add));
            if (words.Fewer() is { } fewer)
            {
                page.Heading("What one product fewer would cost");
                page.Line(Printable.Of(fewer), 2, 2);
            }
        }

        if (declaration is not null)
        {
            page.Heading("Decontamination status");
            foreach (var line in new DeclarationWording(words).Of(declaration)) page.Item(Printable.Of(line));
        }

        page.Heading("Cautions");
        foreach (var caution in VerdictWording.Cautions) page.Item(caution);
        page.Heading("Data");
        foreach (var state in sheet.Identity) page.Item(EvidenceWording.Of(state));
    }

    private void Stopped(PlanSheet sheet, PlanStepWording steps)
    {
        if (sheet.Prions)
        {
            page.Line(KillWording.Prions);
            return;
        }

        page.Line("No plan: the device is kept as it is.", 2);
        foreach (var add in steps.Adds) page.Item(Printable.Of(add));
        page.Item("Who was told: ____________ date and time: ____________ held by: ____________");
    }

    private void Item(IEnumerable<string> lines)
    {
        var first = true;
        foreach (var line in lines)
        {
            if (first) page.Item(Printable.Of(line));
            else page.Line(Printable.Of(line), 6, 8);
            first = false;
        }
    }
}
