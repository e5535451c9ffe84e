using System.Diagnostics;

namespace Compat.Cli.Tests;

/// <summary>An answer that does not reach its reader whole is never told to a script as done.</summary>
public sealed class LostOutputTests
{
    [Fact]
    public void Output_ThatCannotBeWritten_IsOneLineAndBadInput()
    {
        if (!OperatingSystem.IsLinux()) return;
        var (code, notes) = Shell("list parts > /dev/full");
        Assert.Equal(2, code);
        Assert.StartsWith("error: the output cannot be written: ", Assert.Single(notes.Split('\n', StringSplitOptions.RemoveEmptyEntries)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Output_OfWhichTheReaderWentAway_IsBadInputWithoutAWord()
    {
        if (!OperatingSystem.IsLinux()) return;
        var (code, notes) = Shell("list parts --json | true");
        Assert.Equal("", notes);
        Assert.Equal(2, code);
    }

    [Fact]
    public void Output_ThatIsClosed_IsBadInput()
    {
        if (!OperatingSystem.IsLinux()) return;
        Assert.Equal(2, Shell("list parts >&-").Code);
    }

    [Fact]
    public void Notes_ThatCannotBeWritten_LeaveTheExitCode()
    {
        if (!OperatingSystem.IsLinux()) return;
        Assert.Equal(2, Shell("ask 2> /dev/full").Code);
    }

    /// <summary>The exit code of the program itself, not of what reads it.</summary>
    private static (int Code, string Notes) Shell(string words)
    {
        var program = Path.ChangeExtension(typeof(CommandLine).Assembly.Location, ".dll");
        var start = new ProcessStartInfo("bash", ["-c", $"dotnet {program} {words}; exit ${{PIPESTATUS[0]}}"])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        using var shell = Process.Start(start)!;
        var notes = shell.StandardError.ReadToEnd();
        shell.WaitForExit();
        return (shell.ExitCode, notes);
    }
}
