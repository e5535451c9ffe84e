using System.CommandLine;
using Compat.Validation;

namespace Compat.Cli.Commands;

/// <summary>One worked example for <c>--help</c>.</summary>
/// <param name="What">What it is for.</param>
/// <param name="Line">What to type.</param>
internal sealed record Example(string What, string Line);

/// <summary>One call of a command.</summary>
/// <param name="Parsed">The arguments.</param>
/// <param name="Stdout">Takes results.</param>
/// <param name="Stderr">Takes notes and what is wrong.</param>
/// <param name="IsTerminal">Whether results are read on a terminal.</param>
/// <param name="Problems">What is wrong so far; all of it is reported at once.</param>
internal sealed record Call(ParseResult Parsed, TextWriter Stdout, TextWriter Stderr, bool IsTerminal, List<Problem> Problems)
{
    /// <summary>Where answers to what is asked come from.</summary>
    public TextReader Stdin { get; init; } = Console.In;
}

/// <summary>A command with its examples.</summary>
internal abstract class CliCommand : Command
{
    /// <summary>Makes the command.</summary>
    protected CliCommand(string name, string description, params Example[] examples)
        : base(name, description)
    {
        Examples = examples;
    }

    /// <summary>Two worked examples.</summary>
    public IReadOnlyList<Example> Examples { get; }

    /// <summary>What each exit code of this command means, beside 2 for bad input.</summary>
    public virtual IReadOnlyList<string> ExitCodes { get; } = ["0 done"];

    /// <summary>Runs the command; it reports the call's problems together with its own.</summary>
    public abstract int Execute(Call call);

    /// <summary>Adds an option that takes one value.</summary>
    protected Option<string?> One(string name, string value, string description) =>
        Add(new Option<string?>(name) { Description = description, HelpName = value });

    /// <summary>Adds an option that may be repeated.</summary>
    protected Option<string[]> Many(string name, string value, string description) =>
        Add(new Option<string[]>(name) { Description = description + "; may be repeated", HelpName = value });

    /// <summary>Adds an option without a value.</summary>
    /// <remarks>It is given where it has a result. An option of texts: one of booleans would have to be compiled at every start.</remarks>
    protected Option<string?> Flag(string name, string description) => Add(new Option<string?>(name) { Description = description, Arity = ArgumentArity.Zero });

    /// <summary>Adds the option that names the form of the output, of those there are; the first where it is left out.</summary>
    protected Option<string?> Format(IReadOnlyList<string> formats) => One("--format", "WORD", $"{string.Join(", ", formats)}; {formats[0]} where left out");

    /// <summary>The form of the output; a word that is none is noted.</summary>
    protected static string FormatOf(Call call, Option<string?> option, IReadOnlyList<string> formats)
    {
        var format = call.Parsed.GetValue(option) ?? formats[0];
        if (!formats.Contains(format)) call.Problems.Add(BadInput.Of("unknown-word", $"there is no format `{format}`", NearestNames.Help(format, formats) ?? $"the formats are: {string.Join(", ", formats)}", "format"));
        return format;
    }

    private TOption Add<TOption>(TOption option) where TOption : Option
    {
        Options.Add(option);
        return option;
    }
}
