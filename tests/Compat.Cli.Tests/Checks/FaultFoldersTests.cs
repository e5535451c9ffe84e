namespace Compat.Cli.Tests.Checks;

/// <summary>
/// Each kind of fault has a small folder that shows it, with the whole output beside it. <c>COMPAT_WRITE_GOLDEN=1</c> writes the outputs anew.
/// </summary>
public sealed class FaultFoldersTests
{
    public static TheoryData<string> Folders =>
        [.. Directory.EnumerateDirectories(Repository.File("tests", "Compat.Cli.Tests", "Checks", "Faults")).Select(path => Path.GetFileName(path))
            .Where(name => name != "base").Order()];

    [Theory]
    [MemberData(nameof(Folders))]
    public void Output_IsAsRecorded(string name)
    {
        using var folder = new FaultFolder(name);
        var run = folder.Check("--verbose");
        var text = $"exit code {run.Code}\n{run.Output}{run.Notes}";
        var file = Repository.File("tests", "Compat.Cli.Tests", "Checks", "Faults", name, "expected.txt");
        if (Environment.GetEnvironmentVariable("COMPAT_WRITE_GOLDEN") == "1") File.WriteAllText(file, text);
        Assert.Equal(File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal), text);
    }

    [Theory]
    [InlineData("contradiction", 1)]
    [InlineData("contradiction-seen-with", 1)]
    [InlineData("chamber-by-cloth", 1)]
    [InlineData("ends-that-touch", 0)]
    [InlineData("refinement", 0)]
    [InlineData("redundant-rule", 0)]
    [InlineData("dead-rule", 1)]
    [InlineData("stale", 0)]
    public void ExitCode_SaysWhetherThereAreFaults(string name, int code)
    {
        using var folder = new FaultFolder(name);
        Assert.Equal(code, folder.Check().Code);
    }

    [Fact]
    public void MoreGapsThanAgreed_AreAFault()
    {
        using var folder = new FaultFolder("ends-that-touch");
        Assert.Equal(0, folder.Check("--gaps-at-most", "8").Code);
        var run = folder.Check("--gaps-at-most", "2");
        Assert.Equal(1, run.Code);
        Assert.Contains("too-many-gaps", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AFolderThatCannotBeRead_IsBadInput()
    {
        using var folder = new FaultFolder("contradiction");
        File.WriteAllText(Path.Combine(folder.Path, "rules", "more.yaml"), "- id: [\n");
        var run = folder.Check();
        Assert.Equal(2, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("more.yaml:", run.Notes, StringComparison.Ordinal);
    }

    [Fact]
    public void AWrongWordInOneFileAndAWrongReferenceInAnother_AreBothReported()
    {
        const string rule =
            "- { id: RULE, part: PART, agent: ethanol, when: { methods: [METHOD] }, verdict: not-allowed, damage: { mechanism: crazing, onset: first-use, "
                + "lasting: true, consequence: looks }, why: It is invented., sources: [common-practice], reviewed: 2026-11-25 }\n";
        using var folder = new FaultFolder("contradiction");
        var part = File.ReadLines(Directory.EnumerateFiles(Path.Combine(folder.Path, "parts")).First())
            .First(line => line.Contains("id: ", StringComparison.Ordinal)).Split("id: ")[1].Split(',')[0].Trim();
        void Write(string file, string id, string of, string method) =>
            File.WriteAllText(
                Path.Combine(folder.Path, "rules", file), rule.Replace("RULE", id, StringComparison.Ordinal).Replace("PART", of, StringComparison.Ordinal)
                .Replace("METHOD", method, StringComparison.Ordinal));
        Write("more-a.yaml", "a-wrong-word", part, "damp-wiep");
        Write("more-b.yaml", "a-wrong-part", part + "x", "damp-wipe");
        var run = folder.Check();
        Assert.Equal((2, ""), (run.Code, run.Output));
        Assert.Matches(@"data/rules/more-a\.yaml:1:\d+: error: `damp-wiep` is not one of the words for `methods`", run.Notes);
        Assert.Matches($@"data/rules/more-b\.yaml:1:\d+: error: .*`{part}x`", run.Notes);
        Assert.Contains($"did you mean `{part}`?", run.Notes, StringComparison.Ordinal);
    }

    [Fact]
    public void BadOptions_AreAllReported()
    {
        var run = CliRun.Of("check", "nowhere", "--format", "srif", "--today", "soon", "--stale-after", "2", "--gaps-at-most", "few");
        Assert.Equal(2, run.Code);
        foreach (var option in new[] { "--format", "--today", "--stale-after", "--gaps-at-most" }) Assert.Contains(option, run.Notes, StringComparison.Ordinal);
    }

    [Fact]
    public void TheShippedData_ChecksClean()
    {
        var version = File.ReadAllText(Path.Combine(Repository.File("data"), "version.yaml")).Split("version: ")[1].Trim();
        var run = CliRun.Of("check", Repository.File("data"), "--site", Repository.Demo, "--today", version);
        Assert.True(run.Code == 0, run.Output);
    }
}
