using System.CommandLine;
using Compat.Cli.Input;
using Compat.Cli.Wording;
using Compat.Curation.Reading;

namespace Compat.Cli.Commands;

/// <summary>A command that reads a knowledge base: the shipped one, or that of a folder, with sites laid over it.</summary>
internal abstract class DataCommand : CliCommand
{
    private readonly Option<string?> _data;
    private readonly Option<string[]> _sites;
    private readonly Option<string?>? _json;

    /// <summary>Makes the command.</summary>
    protected DataCommand(string name, string description, params Example[] examples)
        : this(true, name, description, examples)
    {
    }

    /// <summary>Makes the command, with or without the option that asks for JSON.</summary>
    protected DataCommand(bool json, string name, string description, params Example[] examples)
        : base(name, description, examples)
    {
        _data = One("--data", "DIR", "Use the data of this folder in place of the shipped data");
        _sites = Many("--site", "FILE", "Lay a site file over the data: its products, devices and rules");
        _json = json ? Flag("--json", "Write JSON") : null;
    }

    /// <summary>Where the records of the folder and of the sites stand; null where the shipped data alone is asked.</summary>
    protected SourceMap? Places { get; private set; }

    /// <inheritdoc/>
    public sealed override int Execute(Call call)
    {
        var loaded = KnowledgeSource.Load(call.Parsed.GetValue(_data), call.Parsed.GetValue(_sites) ?? [], call.Stderr, out var places);
        Places = places;
        return loaded is null
            ? (call.Problems.Count > 0 ? BadInput.Report(call.Problems, call.Stderr) : ExitCode.BadInput)
            : Execute(call, loaded);
    }

    /// <summary>The id that an option names, of those there are; one that is not there is noted with the nearest.</summary>
    protected static TId? Known<TId>(Call call, Option<string?> option, IEnumerable<TId> known, string kind) where TId : class
    {
        if (call.Parsed.GetValue(option) is not { } text) return null;
        var ids = known.ToArray();
        if (ids.FirstOrDefault(id => id.ToString() == text) is { } found) return found;
        call.Problems.Add(BadInput.Of("unknown-" + kind, $"there is no {kind} `{text}`", Validation.NearestNames.Help(text, ids.Select(id => id.ToString()!)), option.Name[2..]));
        return null;
    }

    /// <summary>Asks, and notes why a question cannot be asked.</summary>
    /// <returns>Null where it cannot.</returns>
    protected static TAnswer? AskOrNote<TAnswer>(Call call, Func<TAnswer> ask) where TAnswer : class
    {
        try
        {
            return ask();
        }
        catch (QuestionException wrong)
        {
            call.Problems.AddRange(wrong.Problems);
        }
        catch (TooManyBoxesException tooMany)
        {
            call.Problems.Add(BadInput.Of("too-many-boxes", tooMany.Message));
        }

        return null;
    }

    /// <summary>The serial number that an option names, or null; a text that is none is noted.</summary>
    protected static SerialNumber? SerialOf(Call call, Option<string?> option)
    {
        if (call.Parsed.GetValue(option) is not { } text) return null;
        if (SerialNumber.TryParse(text, out var serial)) return serial;
        call.Problems.Add(BadInput.Of("bad-serial", $"`{text}` is no serial number", "letters, then a whole number: `AB1200`", option.Name[2..]));
        return null;
    }

    /// <summary>Runs the command on a knowledge base.</summary>
    protected abstract int Execute(Call call, KnowledgeBase kb);

    /// <summary>Whether the result is asked as JSON. What writes it is then called in a branch of its own, so that text alone never loads it.</summary>
    protected bool WantsJson(Call call) => _json is not null && call.Parsed.GetResult(_json) is not null;

    /// <summary>The names of a knowledge base.</summary>
    protected static Names NamesOf(KnowledgeBase kb) => new(kb);
}
