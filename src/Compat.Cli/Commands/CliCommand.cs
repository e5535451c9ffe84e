using System.CommandLine;
using System.Runtime.CompilerServices;
using Compat.Cli.Input;
using Compat.Curation;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Cli.Commands;

/// <summary>One worked example for <c>--help</c>.</summary>
internal sealed record Example(string What, string Line);

/// <summary>One call of a command.</summary>
/// <param name="Problems">What is wrong so far; all of it is reported at once.</param>
internal sealed record Call(ParseResult Parsed, TextWriter Stdout, TextWriter Stderr, bool IsTerminal, List<Problem> Problems)
{
    public TextReader Stdin { get; init; } = Console.In;

    /// <summary>What is asked where no folder is named; null for the shipped data.</summary>
    public KnowledgeBase? Data { get; init; }

    public OptionReader Options => new(Parsed, Problems);

    public bool Has(Option option) => Parsed.GetResult(option) is not null;

    public void Note(string code, string message, string? help = null, string field = "") => Problems.Add(BadInput.Of(code, message, help, field));

    /// <summary>Reports what is wrong so far; the exit code.</summary>
    public int Report() => BadInput.Report(Problems, Stderr);

    public int Refuse(IEnumerable<Problem> problems) => BadInput.Report(problems, Stderr);

    /// <summary>Reports one thing that is wrong, once nothing else is; the exit code.</summary>
    public int Refuse(string code, string message, string? help = null, string field = "") => Refuse([BadInput.Of(code, message, help, field)]);

    /// <summary>Reports what is wrong with files; the exit code.</summary>
    public int Refuse(IReadOnlyList<Diagnostic> faults)
    {
        Stderr.Write(DiagnosticText.Render(faults));
        return ExitCode.BadInput;
    }

    /// <summary>Writes a file and says that it is done, or why it cannot be.</summary>
    public int Save(string path, Action save, string done)
    {
        try
        {
            save();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refuse("not-written", $"`{path}` cannot be written: {problem.Message}");
        }

        new Page(Stdout).Line(done, 0, 2);
        return ExitCode.Done;
    }
}

/// <summary>A command with its examples.</summary>
internal abstract class CliCommand : Command
{
    protected CliCommand(string name, string description, params Example[] examples)
        : base(name, description)
    {
        Examples = examples;
    }

    public IReadOnlyList<Example> Examples { get; }

    /// <summary>What each exit code of this command means, beside 2 for bad input.</summary>
    public virtual IReadOnlyList<string> ExitCodes { get; } = ["0 done"];

    /// <summary>Runs the command; it reports the call's problems together with its own.</summary>
    public abstract int Execute(Call call);

    protected Option<string?> One(string name, string value, string description) =>
        Add(new Option<string?>(name) { Description = description, HelpName = value });

    protected Option<string[]> Many(string name, string value, string description) =>
        Add(new Option<string[]>(name) { Description = description + "; may be repeated", HelpName = value });

    /// <remarks>It is given where it has a result. An option of texts: one of booleans would have to be compiled at every start.</remarks>
    protected Option<string?> Flag(string name, string description) => Add(new Option<string?>(name) { Description = description, Arity = ArgumentArity.Zero });

    /// <summary>Adds the option that names the form of the output, of those there are; the first where it is left out.</summary>
    protected Option<string?> Format(IReadOnlyList<string> formats) => One("--format", "WORD", $"{string.Join(", ", formats)}; {formats[0]} where left out");

    /// <summary>The form of the output; a word that is none is noted.</summary>
    protected static string FormatOf(Call call, Option<string?> option, IReadOnlyList<string> formats)
    {
        var format = call.Parsed.GetValue(option) ?? formats[0];
        if (!formats.Contains(format)) call.Note("unknown-word", $"there is no format `{format}`",
            NearestNames.Help(format, formats) ?? $"the formats are: {string.Join(", ", formats)}", "format");
        return format;
    }

    private TOption Add<TOption>(TOption option) where TOption : Option
    {
        Options.Add(option);
        return option;
    }
}

/// <summary>A command that reads a knowledge base: the shipped one, or that of a folder, with sites laid over it.</summary>
internal abstract class DataCommand : CliCommand
{
    private readonly Option<string?> _data;
    private readonly Option<string[]> _sites;
    private readonly Option<string?>? _json;

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

    public sealed override int Execute(Call call)
    {
        var loaded = KnowledgeSource.Load(
            call.Parsed.GetValue(_data), call.Parsed.GetValue(_sites) ?? [], call.Data, call.Stderr, out var places);
        Places = places;
        return loaded is null
            ? (call.Problems.Count > 0 ? call.Report() : ExitCode.BadInput)
            : Execute(call, loaded);
    }

    /// <summary>The id that an option names, of those there are; one that is not there is noted with the nearest.</summary>
    protected static TId? Known<TId>(Call call, Option<string?> option, IEnumerable<TId> known, string kind) where TId : class
    {
        if (call.Parsed.GetValue(option) is not { } text) return null;
        var ids = known.ToArray();
        if (ids.FirstOrDefault(id => id.ToString() == text) is { } found) return found;
        call.Note("unknown-" + kind, $"there is no {kind} `{text}`", NearestNames.Help(text, ids.Select(id => id.ToString()!)), option.Name[2..]);
        return null;
    }

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
            return null;
        }
    }

    protected abstract int Execute(Call call, KnowledgeBase kb);

    /// <summary>Whether the result is asked as JSON. What writes it is then called in a branch of its own, so that text alone never loads it.</summary>
    protected bool WantsJson(Call call) => _json is not null && call.Has(_json);

    protected static Names NamesOf(KnowledgeBase kb) => new(kb);
}

/// <summary>A command that is asked about a part or materials, and an agent.</summary>
internal abstract class QuestionCommand : DataCommand
{
    protected QuestionCommand(string name, string description, params Example[] examples)
        : base(name, description, examples)
    {
    }

    protected Option<string?> Part(string description) => One("--part", "ID", description);

    protected Option<string[]> Materials() =>
        Many("--material", "ID", "A material, alone or one that the part has beside what its kind has; `a|b` where it is one of several");

    protected Option<string?> MaterialsKnown() => One("--materials-known", "WORD", "fully where the materials named are all that the part has, in place of "
        + "what its kind has; partly where it has others too");

    protected Option<string?> Agent() => One("--agent", "ID", "The agent class");
}

/// <summary>Finds the knowledge base a call speaks of.</summary>
internal static class KnowledgeSource
{
    /// <summary>The knowledge base of a folder, or else the one given, with sites laid over it.</summary>
    /// <param name="shipped">What is asked where neither folder nor site is named; read only where it is needed.</param>
    /// <param name="places">Where the records stand; null for the shipped knowledge base alone.</param>
    /// <returns>Null where files are wrong; what is wrong has been written then.</returns>
    public static KnowledgeBase? Load(string? directory, IReadOnlyList<string> sites, KnowledgeBase? shipped, TextWriter stderr, out SourceMap? places)
    {
        places = null;
        return directory is null && sites.Count == 0 ? shipped ?? KnowledgeBase.Shipped : Read(directory, sites, shipped, stderr, out places);
    }

    /// <remarks>Kept apart, so that a call on the shipped data alone never loads what reads files.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static KnowledgeBase? Read(string? directory, IReadOnlyList<string> sites, KnowledgeBase? shipped, TextWriter stderr, out SourceMap? places)
    {
        var read = directory is null ? SiteFile.LayOver(shipped ?? KnowledgeBase.Shipped, sites) : DataFolder.Load(directory, sites);
        stderr.Write(DiagnosticText.Render(read.Diagnostics));
        places = read.Places;
        return read.KnowledgeBase;
    }
}
