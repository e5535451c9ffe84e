using System.CommandLine;

namespace Compat.Cli.Commands;

/// <summary><c>compat completions</c>: scripts that complete commands, options and ids in a shell.</summary>
internal sealed class CompletionsCommand : CliCommand
{
    private const string Bash = """
        _compat() {
          local IFS=$'\n'
          COMPREPLY=($(compat complete "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
          if [ ${#COMPREPLY[@]} -eq 0 ]; then compopt -o default 2>/dev/null; fi
        }
        complete -F _compat compat
        """;

    private const string Zsh = """
        #compdef compat
        _compat() {
          local -a found
          found=(${(f)"$(compat complete "${(@)words[2,CURRENT]}" 2>/dev/null)"})
          if (( ${#found} )); then compadd -a found; else _files; fi
        }
        compdef _compat compat
        """;

    private const string PowerShell = """
        Register-ArgumentCompleter -Native -CommandName compat -ScriptBlock {
          param($word, $line, $cursor)
          $words = @($line.CommandElements | Select-Object -Skip 1 | ForEach-Object { $_.ToString() })
          if ($word -eq '') { $words += '' }
          compat complete @words 2>$null | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
        }
        """;

    private readonly Argument<string> _shell;

    public CompletionsCommand()
        : base(
            "completions",
            "Writes the script that completes commands, options and ids in a shell; the ids are asked of the program at every press of the key, those of "
                + "--site FILE too.",
            new("For bash: source the file it is written to", "compat completions bash > compat-completions.sh"),
            new("In PowerShell", "compat completions pwsh | Out-String | Invoke-Expression"))
    {
        _shell = new Argument<string>("shell") { HelpName = "bash|zsh|pwsh", Description = "The shell" };
        Arguments.Add(_shell);
    }

    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "pwsh"];

    public override int Execute(Call call)
    {
        var shell = call.Parsed.GetResult(_shell) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_shell)! : "";
        if (call.Problems.Count == 0 && !Shells.Contains(shell))
            call.Note("unknown-shell", $"there is no script for `{shell}`", NearestNames.Help(shell, Shells) ?? "write one of " + string.Join(", ", Shells));
        if (call.Problems.Count > 0) return call.Report();
        call.Stdout.Write((shell switch { "bash" => Bash, "zsh" => Zsh, _ => PowerShell }).Replace("\r\n", "\n", StringComparison.Ordinal) + "\n");
        return ExitCode.Done;
    }
}

/// <summary>What may stand next on a command line: what the scripts of <c>compat completions</c> ask at every press of the key.</summary>
internal static class Completion
{
    /// <param name="words">What stands behind the program's name so far; the last one is being written.</param>
    public static IEnumerable<string> Of(string[] words, Command root)
    {
        if (words.Length == 0) words = [""];
        var current = words[^1];
        var command = root;
        var depth = 0;
        while (depth < words.Length - 1 && command.Subcommands.FirstOrDefault(sub => sub.Name == words[depth]) is { } below) (command, depth) = (
            below, depth + 1);
        return Choices(words, command, depth == words.Length - 1)
            .Where(word => word.StartsWith(current, StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal);
    }

    private static IEnumerable<string> Choices(string[] words, Command command, bool takesCommand)
    {
        var before = words.Length > 1 ? words[^2] : "";
        if (command.Options.FirstOrDefault(option => option.Name == before) is { Arity.MaximumNumberOfValues: > 0 }) return Values(words, before);
        if (words[^1].StartsWith('-')) return command.Options.Select(option => option.Name).Append("--help");
        if (takesCommand && command.Subcommands.Count > 0) return command.Subcommands.Where(sub => !sub.Hidden).Select(sub => sub.Name);
        return command.Name switch
        {
            "list" => ListCommand.Kinds,
            "completions" => CompletionsCommand.Shells,
            "mix" => Ids(words, "agents", "products", "materials"),
            _ => [],
        };
    }

    private static IEnumerable<string> Values(string[] words, string option) => option switch
    {
        "--part" => Ids(words, "parts"),
        "--material" => Ids(words, "materials"),
        "--agent" => Ids(words, "agents"),
        "--product" or "--replace" => Ids(words, "products"),
        "--device" => Ids(words, "devices"),
        "--against" => Ids(words, "organisms").Concat(Words.All<Model.OrganismGroup>()),
        "--method" => Words.All<ApplicationMethod>(),
        "--level" => Words.All<Model.Level>(),
        "--patient" => Words.All<Model.PatientGroup>(),
        "--soil" => Words.All<Model.SoilKind>(),
        "--touched-by" => Words.All<Model.TouchedBy>(),
        "--act" => Words.All<Model.Act>(),
        _ => [],
    };

    /// <summary>Ids of the data and sites that the line names already; of the shipped data where they cannot be read.</summary>
    private static IEnumerable<string> Ids(string[] words, params string[] kinds)
    {
        var sites = words.Zip(words.Skip(1)).Where(pair => pair.First == "--site").Select(pair => pair.Second).ToArray();
        var data = words.Zip(words.Skip(1)).Where(pair => pair.First == "--data").Select(pair => pair.Second).FirstOrDefault();
        var kb = KnowledgeSource.Load(data, sites, null, TextWriter.Null, out _) ?? KnowledgeBase.Shipped;
        return kinds.SelectMany(kind => Catalogue.Of(kb, kind)).Select(entry => entry.Id);
    }
}
