using System.CommandLine;
using Compat.Cli.Shelving;
using Compat.Cli.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;
using Compat.Validation;

namespace Compat.Cli.Commands;

/// <summary><c>compat site add-product</c>: a product off its safety data sheet.</summary>
internal sealed class SiteProductCommand : DataCommand
{
    private readonly Argument<string> _file;
    private readonly Option<string?> _from;

    /// <summary>Makes the command.</summary>
    public SiteProductCommand()
        : base(
            json: false,
            "add-product",
            "Adds a product to a site file: asks what its safety data sheet and label say, section by section, or reads the answers from a file; says what each fact opens or closes on the devices so far.",
            new("Asked line by line", "compat site add-product my-site.yaml"),
            new("From a file of answers (section-1, section-3, section-9, label)", "compat site add-product my-site.yaml --from spirit-wipe.yaml"))
    {
        _file = new Argument<string>("file") { HelpName = "FILE", Description = "The site file" };
        Arguments.Add(_file);
        _from = One("--from", "ANSWERS", "Read the answers from this YAML file and ask nothing");
    }

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        var path = call.Parsed.GetValue(_file)!;
        var faults = new List<Diagnostic>();
        if (SiteEditor.Open(kb, path, faults) is not { } editor) return Report(call, faults);
        var answers = call.Parsed.GetValue(_from) is { } from ? ProductAnswers.ReadFile(from, kb.Data) : Asked(call, kb, editor.Site);
        if (answers is null) return BadInput.Report([BadInput.Of("answers-ended", "the answers ended before the product was whole", "nothing was written")], call.Stderr);
        faults.AddRange(answers.Diagnostics);
        if (answers.Product is not { } product || faults.Count > 0) return Report(call, faults);
        if (editor.KnowledgeBase.Sites.SelectMany(site => site.Products).Any(one => one.Id == product.Id))
            return Report(call, [At(answers, new("already-there", new(RecordKind.Product, product.Id.Value, "id"), $"there is a product `{product.Id}` already", "two formulations of one product are two products: give it another id"))]);
        var problems = kb.TryWith(editor.Site with { Products = [.. editor.Site.Products, product] }, out _);
        if (problems.Count > 0) return Report(call, problems.Select(problem => At(answers, problem)).ToList());

        var page = new Page(call.Stdout);
        if (call.Parsed.GetValue(_from) is not null) foreach (var line in new ProductEffects(kb, editor.Site).Of(product)) page.Line(line, 0, 2);
        foreach (var unknown in product.Ingredients.Where(one => one.Unknown is not null)) page.Line($"no class covers `{unknown.Unknown}`: what it does is not established", 0, 2);
        return editor.Add([product], faults) ? SiteCommand.Save(call, path, editor.Save, $"{path}: `{product.Id}` added") : Report(call, faults);
    }

    private static ProductAnswers? Asked(Call call, KnowledgeBase kb, Model.Site site) =>
        new ProductPrompt(call.Stdin, new Page(call.Stderr), kb, new ProductEffects(kb, site)).Ask() is { } text ? ProductAnswers.Read(text, "answers", kb.Data) : null;

    private static Diagnostic At(ProductAnswers answers, Problem problem) =>
        answers.Places.Find(problem.Place) is { } place ? Diagnostic.At(place, problem.Code, problem.Message, problem.Help) : new(problem.Code, problem.Message, problem.Help, problem.Place.Id, null);

    private static int Report(Call call, List<Diagnostic> faults)
    {
        call.Stderr.Write(DiagnosticText.Render(faults));
        return ExitCode.BadInput;
    }
}
