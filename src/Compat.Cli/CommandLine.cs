using System.CommandLine;
using System.CommandLine.Parsing;
using Compat.Cli.Commands;
using Compat.Cli.Text;
using Compat.Curation;
using Compat.Validation;

namespace Compat.Cli;

/// <summary>The whole command: reads the arguments, runs what they ask, returns the exit code.</summary>
public static class CommandLine
{
    private static readonly string[] Names = ["ask", "map", "list", "find", "plan", "dilute", "mix", "bath", "pack", "check", "review", "format", "site", "shelf", "dossier", "completions"];
    private static readonly ParserConfiguration Configuration = new() { EnablePosixBundling = false, ResponseFileTokenReplacer = null };

    /// <summary>Runs one call.</summary>
    /// <param name="args">The arguments, as the shell gives them.</param>
    /// <param name="stdout">Takes results.</param>
    /// <param name="stderr">Takes notes and what is wrong.</param>
    /// <param name="isTerminal">Whether results are read on a terminal; else lists are plain text, the same on every machine.</param>
    /// <param name="stdin">Where answers to what is asked come from; the console's where left out.</param>
    /// <returns>The exit code (<see cref="ExitCode"/>).</returns>
    public static int Run(string[] args, TextWriter stdout, TextWriter stderr, bool isTerminal, TextReader? stdin = null)
    {
        using var results = new GuardedWriter(stdout);
        using var notes = new GuardedWriter(stderr);
        try
        {
            return RunGuarded(args, results, notes, isTerminal, stdin);
        }
        finally
        {
            notes.Flush();
            results.Flush();
        }
    }

    private static int RunGuarded(string[] args, TextWriter stdout, TextWriter stderr, bool isTerminal, TextReader? stdin)
    {
        var help = new Option<string?>("--help", "-h", "-?") { Description = "Show what the command does, with examples", Arity = ArgumentArity.Zero, Recursive = true };
        var version = new Option<string?>("--version") { Description = "Show the version of the program and of the shipped data", Arity = ArgumentArity.Zero };
        var root = new Command("compat", "Says whether a cleaning or disinfecting agent may be used on a part of bedside equipment, how, and why.");
        root.Options.Add(help);
        root.Options.Add(version);
        if (args.Length > 0 && Named(args[0]) is { } named) root.Subcommands.Add(named);
        else foreach (var name in Names) root.Subcommands.Add(Named(name)!);

        if (args is ["complete", .. var words])
        {
            foreach (var word in Lookup.Completion.Of(words, root)) stdout.Write(word + "\n");
            return ExitCode.Done;
        }

        var hidden = args.Select((arg, i) => (Number: i + 1, Arg: arg, At: HiddenText.Find(arg, out _))).Where(one => one.At >= 0)
            .Select(one => BadInput.Of("character", $"argument {one.Number} holds {HiddenText.NameAt(one.Arg, one.At)}, a character that cannot be seen", "leave it out; a file with such a name must be renamed")).ToArray();
        if (hidden.Length > 0) return BadInput.Report(hidden, stderr);
        var parsed = root.Parse(args, Configuration);
        var asked = parsed.CommandResult.Command;
        if (parsed.GetResult(help) is not null || (args.Length == 0 && asked == root))
        {
            HelpText.Write(new Page(stdout), root, asked, help);
            return ExitCode.Done;
        }

        if (asked == root && parsed.GetResult(version) is not null)
        {
            stdout.Write($"compat {typeof(CommandLine).Assembly.GetName().Version!.ToString(3)}\n");
            foreach (var identity in KnowledgeBase.Shipped.Identity) stdout.Write(Wording.EvidenceWording.Of(identity) + "\n");
            return ExitCode.Done;
        }

        var problems = parsed.Errors.Count == 0 ? [] : Problems(parsed, root).ToList();
        if (asked is CliCommand runnable)
            return runnable.Execute(new Call(parsed, stdout, stderr, isTerminal, problems) { Stdin = stdin ?? Console.In });
        if (problems.Count == 0) problems.Add(BadInput.Of("no-command", "no command is given", "see `compat --help`"));
        return BadInput.Report(problems, stderr);
    }

    /// <summary>A command by its name: the options of the others need not be set up for a call that names it first.</summary>
    private static CliCommand? Named(string name) => name switch
    {
        "ask" => new AskCommand(),
        "map" => new MapCommand(),
        "list" => new ListCommand(),
        "find" => new FindCommand(),
        "dilute" => new DiluteCommand(),
        "mix" => new MixCommand(),
        "plan" => new PlanCommand(),
        "bath" => new BathCommand(),
        "pack" => new PackCommand(),
        "check" => new CheckCommand(),
        "review" => new ReviewCommand(),
        "format" => new FormatCommand(),
        "site" => new SiteCommand(),
        "shelf" => new ShelfCommand(),
        "dossier" => new DossierCommand(),
        "completions" => new CompletionsCommand(),
        _ => null,
    };

    private static IEnumerable<Problem> Problems(ParseResult parsed, Command root)
    {
        var renamed = false;
        foreach (var token in parsed.UnmatchedTokens)
        {
            var options = parsed.CommandResult.Command.Options.Select(option => option.Name);
            if (RenamedWords.OfOption(token.Split('=')[0], options) is { } now)
            {
                renamed = true;
                yield return BadInput.Of("renamed", $"unknown option `{token}`, it is called `{now}` now");
                continue;
            }

            // What stands behind a renamed option is its value.
            if (renamed && !token.StartsWith('-')) continue;
            var known = parsed.CommandResult.Command == root && !token.StartsWith('-')
                ? root.Subcommands.Where(command => !command.Hidden).Select(command => command.Name)
                : options;
            var what = token.StartsWith('-') ? "option" : parsed.CommandResult.Command == root ? "command" : "argument";
            yield return BadInput.Of("unknown-" + what, $"unknown {what} `{token}`", NearestNames.Help(token, known));
        }

        foreach (var error in parsed.Errors)
        {
            if (error.SymbolResult is OptionResult option)
            {
                yield return option.Tokens.Count == 0
                    ? BadInput.Of("missing-value", $"`{option.Option.Name}` needs a value")
                    : BadInput.Of("given-twice", $"`{option.Option.Name}` is given more than once");
            }
            else if (error.SymbolResult is ArgumentResult argument)
            {
                yield return argument.Tokens.Count == 0
                    ? BadInput.Of("missing-argument", $"`{parsed.CommandResult.Command.Name}` needs {argument.Argument.HelpName ?? argument.Argument.Name}")
                    : BadInput.Of("wrong-argument", $"`{argument.Tokens[0].Value}` is not one of {string.Join(", ", ListCommand.Kinds)}", NearestNames.Help(argument.Tokens[0].Value, ListCommand.Kinds));
            }
        }
    }
}
