namespace Compat.Cli.Tests.Reviews;

/// <summary>Ten edits of a small base, each with the comment that a review makes of it. <c>COMPAT_ACCEPT=1</c> writes the comments anew.</summary>
public sealed class ScriptedEditsTests
{
    /// <summary>The edits, and whether anything is loosened by each.</summary>
    public static TheoryData<string, int> Edits => new()
    {
        { "boundary-moved", 1 },
        { "end-opened", 1 },
        { "override-added", 1 },
        { "material-added", 0 },
        { "agent-moved", 1 },
        { "duty-dropped", 1 },
        { "source-downgraded", 0 },
        { "wetness-raised", 1 },
        { "claim-time-shortened", 1 },
        { "rename", 0 },
    };

    public static TheoryData<string> Names => [.. Edits.Select(row => (string)row[0])];

    [Theory]
    [MemberData(nameof(Edits))]
    public void Comment_IsAsRecorded(string name, int code)
    {
        using var folder = new EditFolder(name);
        var run = folder.Review("--format", "markdown");
        Assert.Equal((code, ""), (run.Code, run.Notes));
        var file = Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits", name, "expected.md");
        var text = $"<!-- exit code {run.Code} -->\n{run.Output}";
        if (Environment.GetEnvironmentVariable("COMPAT_ACCEPT") == "1") File.WriteAllText(file, text);
        Assert.Equal(File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal), text);
    }

    [Fact]
    public void Edits_AreAllThereAre() => Assert.Equal(
        Directory.EnumerateDirectories(Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits")).Select(path => Path.GetFileName(path))
            .Where(name => name != "base").Order(),
        Edits.Select(row => (string)row[0]).Order());
}
