using System.CommandLine;
using System.CommandLine.Parsing;
using Compat.Cli.Commands;
using Compat.Curation;

namespace Compat.Cli;

/// <summary>The whole command: reads the arguments, runs what they ask, returns the exit code.</summary>
internal static class CommandLine
{
    /// <summary>Every command, and whether it asks the shipped data where no folder is named.</summary>
    private static readonly (string Name, bool AsksShipped, Func<CliCommand> Make)[] Commands =
    [
        ("ask", true, () => new AskCommand()),
        ("map", true, () => new MapCommand()),
        ("list", true, () => new ListCommand()),
        ("find", true, () => new FindCommand()),
        ("plan", true, () => new PlanCommand()),
        ("dilute", true, () => new DiluteCommand()),
        ("mix", true, () => new MixCommand()),
        ("bath", true, () => new BathCommand()),
        ("pack", false, () => new PackCommand()),
        ("check", false, () => new CheckCommand()),
        ("review", false, () => new ReviewCommand()),
        ("format", false, () => new FormatCommand()),
        ("site", true, () => new SiteCommand()),
        ("shelf", true, () => new ShelfCommand()),
        ("dossier", true, () => new DossierCommand()),
        ("completions", true, () => new CompletionsCommand()),
    ];

    private static readonly ParserConfiguration Configuration = new() { EnablePosixBundling = false, ResponseFileTokenReplacer = null };

    /// <param name="isTerminal">Whether results are read on a terminal; else lists are plain text, the same on every machine.</param>
    /// <param name="stdin">Where answers to what is asked come from; the console's where left out.</param>
    /// <param name="data">What is asked where no folder is named; the shipped data where left out.</param>
    public static int Run(string[] args, TextWriter stdout, TextWriter stderr, bool isTerminal, TextReader? stdin = null, KnowledgeBase? data = null)
    {
        using var results = new GuardedWriter(stdout);
        using var notes = new GuardedWriter(stderr);
        try
        {
            return RunGuarded(args, results, notes, isTerminal, stdin, data);
        }
        finally
        {
            notes.Flush();
            results.Flush();
        }
    }

    private static int RunGuarded(string[] args, TextWriter stdout, TextWriter stderr, bool isTerminal, TextReader? stdin, KnowledgeBase? data)
    {
        var help = new Option<string?>("--help", "-h", "-?")
        {
            Description = "Show what the command does, with examples",
            Arity = ArgumentArity.Zero,
            Recursive = true
        };
        var version = new Option<string?>("--version") { Description = "Show the version of the program and of the shipped data", Arity = ArgumentArity.Zero };
        var root = new Command("compat", "Says whether a cleaning or disinfecting agent may be used on a part of bedside equipment, how, and why.");
        root.Options.Add(help);
        root.Options.Add(version);
        // The options of the other commands need not be set up for a call that names its own first.
        var named = args.Length == 0 ? [] : Array.FindAll(Commands, one => one.Name == args[0]);
        foreach (var one in named.Length > 0 ? named : Commands) root.Subcommands.Add(one.Make());

        if (args is ["complete", .. var words])
        {
            foreach (var word in Completion.Of(words, root)) stdout.Write(word + "\n");
            return ExitCode.Done;
        }

        var hidden = args.Select((arg, i) => (Number: i + 1, Arg: arg, At: HiddenText.Find(arg, out _))).Where(one => one.At >= 0)
            .Select(one => BadInput.Of("character", $"argument {one.Number} holds {HiddenText.NameAt(one.Arg, one.At)}, a character that cannot be seen",
                "leave it out; a file with such a name must be renamed")).ToArray();
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
            foreach (var identity in KnowledgeBase.Shipped.Identity) stdout.Write(EvidenceWording.Of(identity) + "\n");
            return ExitCode.Done;
        }

        var problems = parsed.Errors.Count == 0 ? [] : Problems(parsed, root).ToList();
        try
        {
            var call = new Call(parsed, stdout, stderr, isTerminal, problems) { Stdin = stdin ?? Console.In, Data = data };
            if (asked is CliCommand runnable) return runnable.Execute(call);
        }
        catch (TooManyBoxesException tooMany)
        {
            problems.Add(BadInput.Of("too-many-boxes", tooMany.Message));
            return BadInput.Report(problems, stderr);
        }

        if (problems.Count == 0) problems.Add(BadInput.Of("no-command", "no command is given", "see `compat --help`"));
        return BadInput.Report(problems, stderr);
    }

    /// <summary>Whether a call may ask the shipped data, so that it is worth reading while the arguments are parsed.</summary>
    public static bool MayAskShipped(string[] args) =>
        args.Length > 1 && !Array.Exists(Commands, one => one.Name == args[0] && !one.AsksShipped) && Array.IndexOf(args, "--data") < 0;

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
                yield return option.Tokens.Count < option.Option.Arity.MinimumNumberOfValues
                    ? BadInput.Of(
                        "missing-value", $"`{option.Option.Name}` needs {(option.Option.Arity.MinimumNumberOfValues > 1 ? option.Option.HelpName : "a value")}")
                    : BadInput.Of("given-twice", $"`{option.Option.Name}` is given more than once");
            }
            else if (error.SymbolResult is ArgumentResult argument)
            {
                var what = argument.Argument.HelpName ?? argument.Argument.Name;
                yield return argument.Tokens.Count == 0
                    ? BadInput.Of("missing-argument", $"`{parsed.CommandResult.Command.Name}` needs {what}")
                    : BadInput.Of("wrong-argument", $"`{argument.Tokens[0].Value}` cannot stand for {what}");
            }
        }
    }
}

/// <summary>What the command returns to a script.</summary>
internal static class ExitCode
{
    /// <summary>Of <c>ask</c>: allowed as asked. Elsewhere: done.</summary>
    public const int Done = 0;

    /// <summary>Of <c>ask</c>: not allowed. Elsewhere: nothing found.</summary>
    public const int NotAllowed = 1;

    public const int BadInput = 2;

    /// <summary>Of <c>ask</c>: allowed, but only within the limits shown.</summary>
    public const int WithinLimits = 3;

    public const int NotEstablished = 4;

    public static int Of(Answer answer) => answer.Verdict switch
    {
        Verdict.NotAllowed => NotAllowed,
        Verdict.NotEstablished => NotEstablished,
        _ => answer.MayUse ? Done : WithinLimits,
    };

    /// <summary>The code of several answers: not allowed, else not established, else within limits, else allowed as asked. No answer at all is not
    /// established.</summary>
    public static int Of(IReadOnlyCollection<Answer> answers)
    {
        int[] worstFirst = [NotAllowed, NotEstablished, WithinLimits, Done];
        var codes = answers.Select(Of).ToHashSet();
        return codes.Count == 0 ? NotEstablished : worstFirst.First(codes.Contains);
    }
}

/// <summary>Reports what is wrong with a call.</summary>
internal static class BadInput
{
    public static Problem Of(string code, string message, string? help = null, string field = "") =>
        new(code, new ProblemPlace(RecordKind.Question, "", field), message, help);

    /// <summary>Writes all problems, each with its help line.</summary>
    public static int Report(IEnumerable<Problem> problems, TextWriter stderr)
    {
        var page = new Page(stderr);
        foreach (var problem in problems.Distinct())
        {
            var place = problem.Place.Kind switch
            {
                RecordKind.Question when problem.Place.Field.Length > 0 => $"--{Option(problem.Place.Field)}: ",
                RecordKind.Question => "",
                _ => $"{Space.Words.Of(problem.Place.Kind)} `{problem.Place.Id}`{(problem.Place.Field.Length == 0 ? "" : " at " + problem.Place.Field)}: ",
            };
            page.Line("error: " + place + problem.Message, 0, 2);
            if (problem.Help is not null) page.Line("help: " + problem.Help, 2, 4);
        }

        return ExitCode.BadInput;
    }

    private static string Option(string field) => field == "device-part" ? "part" : field.Split('.')[0];
}
