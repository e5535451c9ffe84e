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
        var ids = plain.Output.Split('\n').Where(line => line.Contains("  ", StringComparison.Ordinal) && !line.StartsWith("   ", StringComparison.Ordinal)).Select(line => line.Trim().Split(' ')[0]).ToArray();
        Assert.True(ids.Length > 3);
        foreach (var id in ids) Assert.Contains(id, table.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", plain.Output, StringComparison.Ordinal);
        Assert.All(table.Output.Replace("\u001b[1m", "", StringComparison.Ordinal).Replace("\u001b[0m", "", StringComparison.Ordinal).Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public void Ask_OnATerminal_IsThePlainText()
    {
        string[] args = ["ask", "--part", "socket", "--agent", "ethanol"];
        Assert.Equal(CliRun.Of(args).Output, CliRun.OnTerminal(args).Output);
    }
}
