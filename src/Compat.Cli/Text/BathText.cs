using Compat.Planning;
using Compat.Cli.Wording;

namespace Compat.Cli.Text;

/// <summary>Writes for people whether a bath or tub is still good.</summary>
public sealed class BathText(Page page, Names names)
{
    /// <summary>The whole answer.</summary>
    public void Write(BathAnswer answer)
    {
        page.Line($"{BathWording.Heading(answer.Verdict)}: {Subject(answer.Question)}", 0, 2);
        foreach (var reason in answer.Reasons) page.Item(BathWording.Of(reason));
        if (answer.Least is { } least)
        {
            page.Heading("What it must still have");
            page.Item($"{names.Agent(answer.Agent!.Value)}: {FigureWording.Strength(least.Percent, least.Unit)}{(answer.Test is null ? "" : $"; tested {answer.Test}")}");
        }

        if (answer.Sources.Count > 0)
        {
            page.Heading("Sources");
            foreach (var source in answer.Sources) page.Item(source.Value);
        }

        page.Heading("Cautions");
        foreach (var caution in VerdictWording.Cautions) page.Item(caution);
        page.Item("A bath that looks cloudy, smells otherwise or holds soil is discarded, whatever its strength and days.");
        page.Heading("Data");
        foreach (var state in answer.Identity) page.Item(EvidenceWording.Of(state));
    }

    private string Subject(BathQuestion question) =>
        (question.Product is { } product ? names.Product(product.Value) : $"the bath of {question.Claim}") + $", on {question.Today}";
}
