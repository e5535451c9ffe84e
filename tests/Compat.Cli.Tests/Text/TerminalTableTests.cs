namespace Compat.Cli.Tests.Text;

/// <summary>On a terminal lists are tables, which say what the plain text says.</summary>
public sealed class TerminalTableTests
{
    [Theory]
    [InlineData("list", "agents")]
    [InlineData("list", "parts")]
    [InlineData("list", "materials")]
    [InlineData("find", "alcohol")]
    public void Table_OnATerminal_HoldsEveryWordOfThePlainText(params string[] args)
    {
        var plain = CliRun.Of(args);
        var table = CliRun.OnTerminal(args);
        Assert.Equal(0, table.Code);
        Assert.Contains("id", table.Output.Split('\n').First(line => line.Trim().Length > 0), StringComparison.Ordinal);
        var ids = plain.Output.Split('\n').Where(line => line.Contains("  ", StringComparison.Ordinal) && !line.StartsWith("   ", StringComparison.Ordinal))
            .Select(line => line.Trim().Split(' ')[0]).ToArray();
        Assert.True(ids.Length > 3);
        foreach (var id in ids) Assert.Contains(id, table.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", plain.Output, StringComparison.Ordinal);
        Assert.All(table.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Lookup.ShellFact("script")]
    public void OnARealTerminal_NoControlSequenceIsEverWritten()
    {
        // `script` runs a command on a terminal of its own; TERM and the variables that ask for colour are those of one that can do everything.
        var program = Path.Combine(AppContext.BaseDirectory, "Compat.Cli.dll");
        foreach (var command in new[] { "list agents", "find alcohol", "ask --part socket --agent ethanol", "list agent" })
        {
            var start = new System.Diagnostics.ProcessStartInfo("script", ["-qec", $"dotnet {program} {command}", "/dev/null"])
            {
                RedirectStandardOutput = true,
                RedirectStandardInput = true
            };
            foreach (var (name, value) in new[] { ("TERM", "xterm-256color"), ("COLORTERM", "truecolor"), ("FORCE_COLOR", "3"), ("CLICOLOR_FORCE", "1") })
                start.Environment[name] = value;
            using var process = System.Diagnostics.Process.Start(start)!;
            process.StandardInput.Close();
            // The runtime itself sets the keypad's mode when it opens a terminal: not shown, and no colour.
            var said = process.StandardOutput.ReadToEnd().Replace("\u001b[?1h\u001b=", "", StringComparison.Ordinal);
            process.WaitForExit();
            Assert.True(said.Length > 40, said);
            Assert.Equal([], said.Where(c => char.IsControl(c) && c is not ('\r' or '\n' or '\u0004' or '\b')));
        }
    }

    [Fact]
    public void Ask_OnATerminal_IsThePlainText()
    {
        string[] args = ["ask", "--part", "socket", "--agent", "ethanol"];
        Assert.Equal(CliRun.Of(args).Output, CliRun.OnTerminal(args).Output);
    }
}
