namespace Compat.Cli.Tests.Reviews;

/// <summary>Ten edits of a small base, each with the comment that a review makes of it. <c>COMPAT_ACCEPT=1</c> writes the comments anew.</summary>
public sealed class ScriptedEditsTests
{
    public static TheoryData<string> Edits => [.. Directory.EnumerateDirectories(Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits")).Select(path => Path.GetFileName(path)).Where(name => name != "base").Order()];

    [Theory]
    [MemberData(nameof(Edits))]
    public void Comment_IsAsRecorded(string name)
    {
        using var folder = new EditFolder(name);
        var run = folder.Review("--format", "markdown");
        Assert.Equal("", run.Notes);
        var file = Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits", name, "expected.md");
        var text = $"<!-- exit code {run.Code} -->\n{run.Output}";
        if (Environment.GetEnvironmentVariable("COMPAT_ACCEPT") == "1") File.WriteAllText(file, text);
        Assert.Equal(File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal), text);
    }

    [Theory]
    [InlineData("boundary-moved", 1)]
    [InlineData("end-opened", 1)]
    [InlineData("override-added", 1)]
    [InlineData("material-added", 0)]
    [InlineData("agent-moved", 1)]
    [InlineData("duty-dropped", 1)]
    [InlineData("source-downgraded", 0)]
    [InlineData("wetness-raised", 1)]
    [InlineData("claim-time-shortened", 1)]
    [InlineData("rename", 0)]
    public void ExitCode_SaysWhetherAnythingIsLoosened(string name, int code)
    {
        using var folder = new EditFolder(name);
        Assert.Equal(code, folder.Review().Code);
    }
}
