using Compat.Cli.Input;
using Compat.Cli.Json;
using Compat.Cli.Text;

namespace Compat.Cli.Commands;

/// <summary><c>compat map</c>: the whole decision map of a part and an agent.</summary>
internal sealed class MapCommand : QuestionCommand
{
    private readonly QuestionOptions _options;

    /// <summary>Makes the command.</summary>
    public MapCommand()
        : base(
            "map",
            "Prints the whole decision map of a part and an agent: boxes that do not overlap and together hold every exposure.",
            new("All that is known of ethanol on a membrane keypad", "compat map --part keypad-membrane --agent ethanol"),
            new("Hypochlorite on anodised aluminium, as JSON", "compat map --material anodised-aluminium --agent sodium-hypochlorite --json"))
    {
        _options = new QuestionOptions
        {
            Part = Part("The part type"),
            Materials = Materials(),
            MaterialsKnown = MaterialsKnown(),
            Agent = Agent(),
        };
    }

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var question = QuestionReader.Read(_options, call.Parsed, kb, call.Problems);
        var map = AskOrNote(call, () => kb.Map(question));
        if (call.Problems.Count > 0 || map is null) return BadInput.Report(call.Problems, call.Stderr);
        var names = NamesOf(kb);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new MapJson(json, names).Write(map, question));
        else new MapText(new Page(call.Stdout), names).Write(map, question);
        return ExitCode.Done;
    }
}
