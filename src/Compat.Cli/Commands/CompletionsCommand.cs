using System.CommandLine;
using Compat.Validation;

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

    /// <summary>Makes the command.</summary>
    public CompletionsCommand()
        : base(
            "completions",
            "Writes the script that completes commands, options and ids in a shell; the ids are asked of the program at every press of the key, those of --site FILE too.",
            new("For bash: source the file it is written to", "compat completions bash > compat-completions.sh"),
            new("In PowerShell", "compat completions pwsh | Out-String | Invoke-Expression"))
    {
        _shell = new Argument<string>("shell") { HelpName = "bash|zsh|pwsh", Description = "The shell" };
        Arguments.Add(_shell);
    }

    /// <summary>The shells there are scripts for.</summary>
    public static IReadOnlyList<string> Shells { get; } = ["bash", "zsh", "pwsh"];

    /// <inheritdoc/>
    public override int Execute(Call call)
    {
        var shell = call.Parsed.GetResult(_shell) is { Tokens.Count: 1 } ? call.Parsed.GetValue(_shell)! : "";
        if (call.Problems.Count == 0 && !Shells.Contains(shell))
            call.Problems.Add(BadInput.Of("unknown-shell", $"there is no script for `{shell}`", NearestNames.Help(shell, Shells) ?? "write one of " + string.Join(", ", Shells)));
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        call.Stdout.Write((shell switch { "bash" => Bash, "zsh" => Zsh, _ => PowerShell }).Replace("\r\n", "\n", StringComparison.Ordinal) + "\n");
        return ExitCode.Done;
    }
}
