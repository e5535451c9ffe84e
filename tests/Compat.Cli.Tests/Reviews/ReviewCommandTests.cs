namespace Compat.Cli.Tests.Reviews;

/// <summary>What the command makes of folders, and when it fails.</summary>
public sealed class ReviewCommandTests
{
    [Fact]
    public void CommentsWhitespaceKeyOrderAndMovedFiles_ChangeNoAnswer()
    {
        using var folder = new EditFolder();
        var rules = Path.Combine(folder.Head, "rules", "rules.yaml");
        var records = File.ReadAllText(rules).Split("- id: ", StringSplitOptions.RemoveEmptyEntries);
        File.WriteAllText(
            Path.Combine(folder.Head, "rules", "others.yaml"),
            "# moved here\n\n" + string.Concat(records.Skip(2).Reverse().Select(record => "- id: " + record)));
        File.WriteAllText(rules, string.Concat(records.Take(2).Select(record =>
        {
            var lines = record.TrimEnd('\n').Split('\n');
            return "- " + lines[^1].Trim() + "\n" + string.Join("\n", lines[1..^1]) + "\n  id: " + lines[0] + " # at the end\n\n";
        })));
        var run = folder.Review();
        Assert.Equal((0, "no answer changes\n", ""), (run.Code, run.Output, run.Notes));
    }

    [Fact]
    public void Wording_ChangesNoAnswer()
    {
        using var folder = new EditFolder();
        folder.Replace("agents/agents.yaml", "name: ethanol", "name: spirit of wine");
        folder.Replace("sources/sources.yaml", "an invented paper", "another title");
        folder.Replace("parts/parts.yaml", "name: lid,", "name: the lid, note: remarked,");
        var run = folder.Review();
        Assert.Equal(0, run.Code);
        Assert.EndsWith("no answer changes (3 records edited)\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("wording only:", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void RequireEvidence_FailsOnlyOnLoosePermissions()
    {
        using var read = new EditFolder("end-opened");
        Assert.Equal((1, 0), (read.Review().Code, read.Review("--require-evidence").Code));
        using var practice = new EditFolder("override-added");
        Assert.Equal((1, 1), (practice.Review().Code, practice.Review("--require-evidence").Code));
    }

    [Fact]
    public void ContradictionsOfHead_AreReported()
    {
        using var folder = new EditFolder();
        folder.Replace("rules/rules.yaml", "part: housing\n  agent: propanol", "material: plastic\n  agent: propanol");
        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("error: contradiction: `housing.alcohol` allows what `housing.propanol` does not allow", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WhoRestsOn_ListsWhatFalls()
    {
        using var folder = new EditFolder();
        var run = CliRun.Of("review", folder.Base, "--who-rests-on", "steel.chlorine");
        Assert.Equal(0, run.Code);
        Assert.Contains("`frame` with `chlorine`: allowed -> not established", run.Output, StringComparison.Ordinal);
        Assert.Contains("tightened: 2 boxes", run.Output, StringComparison.Ordinal);
        var source = CliRun.Of("review", folder.Base, "--who-rests-on", "a-paper").Output;
        Assert.Contains("`display` with `soap`", source, StringComparison.Ordinal);
        Assert.Contains("no longer reached: intermediate", CliRun.Of("review", folder.Base, "--who-rests-on", "chlorine.intermediate").Output,
            StringComparison.Ordinal);
        Assert.Contains("1 material alone, 1 agent", CliRun.Of("review", folder.Base, "--who-rests-on", "steel").Output, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("review", folder.Base, "--who-rests-on", "nothing-like-it").Code);
    }

    [Fact]
    public void FilesThatCannotBeRead_AreBadInput()
    {
        using var folder = new EditFolder();
        File.WriteAllText(Path.Combine(folder.Head, "rules", "more.yaml"), "- id: [\n");
        var run = folder.Review();
        Assert.Equal((2, ""), (run.Code, run.Output));
        Assert.Contains("`head` cannot be read:", run.Notes, StringComparison.Ordinal);
        Assert.Contains("more.yaml:", run.Notes, StringComparison.Ordinal);
    }

    [Fact]
    public void BadCalls_AreAllReported()
    {
        var run = CliRun.Of("review", "--format", "xml");
        Assert.Equal(2, run.Code);
        Assert.Contains("needs BASE", run.Notes, StringComparison.Ordinal);
        Assert.Contains("--format", run.Notes, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("review", "a", "b", "--who-rests-on", "c").Code);
    }
}
