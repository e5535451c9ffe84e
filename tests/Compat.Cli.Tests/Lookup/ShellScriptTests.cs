using System.Diagnostics;

namespace Compat.Cli.Tests.Lookup;

/// <summary>A test with a shell: skipped by name where the shell is not installed.</summary>
public sealed class ShellFactAttribute : FactAttribute
{
    public ShellFactAttribute(string shell) => Skip = ShellScriptTests.Path(shell) is null ? $"needs {shell}" : null;
}

/// <summary>The completion scripts in the shells they are for: each is taken without complaint and gives what the program says.</summary>
public sealed class ShellScriptTests
{
    /// <summary>Stands for the program: says which words it was asked to complete.</summary>
    private const string Program = "compat() { local IFS=' '; printf '%s\\n' \"$*\" 'second answer'; }\n";

    [ShellFact("bash")]
    public void Bash_TakesTheScriptAndOffersTheAnswers()
    {
        var said = Run("bash",
            Program + Script("bash") + "COMP_WORDS=(compat ask --part disp); COMP_CWORD=3; _compat; printf '[%s]' \"${COMPREPLY[@]}\"; complete -p compat");
        Assert.Equal("[complete ask --part disp][second answer]complete -F _compat compat\n", said);
    }

    [ShellFact("zsh")]
    public void Zsh_TakesTheScriptAndOffersTheAnswers()
    {
        var said = Run("zsh",
            Program + "compdef() { print -n \"[$*]\"; }; compadd() { print -rn -- \"[$1 ${(j:|:)found}]\"; }\n" + Script("zsh") + "words=(compat ask --part "
                + "disp); CURRENT=4; _compat");
        Assert.Equal("[_compat compat][-a complete ask --part disp|second answer]", said);
    }

    [ShellFact("pwsh")]
    public void PowerShell_TakesTheScriptAndOffersTheAnswers()
    {
        var said = Run("pwsh",
            "function compat { \"$args\" }\n" + Script("pwsh") + "(TabExpansion2 -inputScript 'compat ask --part disp' -cursorColumn "
                + "22).CompletionMatches.CompletionText");
        Assert.Equal("complete ask --part disp\n", said);
    }

    /// <summary>Where a shell is; null where it is not installed.</summary>
    internal static string? Path(string shell) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(System.IO.Path.PathSeparator).Select(folder => System.IO.Path.Combine(folder, shell))
            .FirstOrDefault(File.Exists);

    private static string Script(string shell) => CliRun.Of("completions", shell).Output;

    private static string Run(string shell, string script)
    {
        var file = System.IO.Path.ChangeExtension(System.IO.Path.GetTempFileName(), shell == "pwsh" ? ".ps1" : ".sh");
        File.WriteAllText(file, script);
        try
        {
            string[] start = shell switch { "bash" => ["--norc", file], "zsh" => ["-f", file], _ => ["-NoProfile", "-File", file] };
            using var process = Process.Start(new ProcessStartInfo(Path(shell)!, start) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.Equal("", errors.Result);
            return said.Replace("\r\n", "\n", StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
