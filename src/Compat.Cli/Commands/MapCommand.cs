using Compat.Cli.Input;
using Compat.Cli.Json;
using Compat.Cli.Text;

namespace Compat.Cli.Commands;

/// <summary><c>compat map</c>: the whole decision map of a part and an agent.</summary>
internal sealed class MapCommand : DataCommand
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
            Part = One("--part", "ID", "The part type"),
            Materials = Many("--material", "ID", "A material, alone or in place of the part's own; `a|b` where it is one of several"),
            Agent = One("--agent", "ID", "The agent class"),
        };
    }

    /// <inheritdoc/>
    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var question = QuestionReader.Read(_options, call.Parsed, kb, call.Problems);
        DecisionMap? map = null;
        try
        {
            map = kb.Map(question);
        }
        catch (QuestionException wrong)
        {
            call.Problems.AddRange(wrong.Problems);
        }
        catch (TooManyBoxesException tooMany)
        {
            call.Problems.Add(BadInput.Of("too-many-boxes", tooMany.Message));
        }

        if (call.Problems.Count > 0 || map is null) return BadInput.Report(call.Problems, call.Stderr);
        var names = NamesOf(kb);
        Write(call, json => new MapJson(json, names).Write(map, question), page => new MapText(page, names).Write(map, question));
        return ExitCode.Done;
    }
}
