namespace Compat.Cli.Tests.Reviews;

/// <summary>The workflow of pull requests types what a person types.</summary>
public sealed class WorkflowTests
{
    private static string Workflow { get; } = Repository.Read(".github", "workflows", "pull-request.yml");

    private static string[] Lines { get; } = Workflow.Split('\n')
        .Select(line => line.Trim()).Where(line => line.StartsWith("- run: dotnet run ", StringComparison.Ordinal)).Select(line => line["- run: ".Length..])
            .ToArray();

    [Fact]
    public void ItsCommands_AreThoseOfThePageForDevelopers()
    {
        var page = Repository.Read("DEVELOPERS.md");
        var written = Lines.Where(line => line.Contains('>', StringComparison.Ordinal)).ToArray();
        Assert.Equal(2, written.Length);
        foreach (var line in written)
            Assert.Contains("\n" + line.Replace(" --no-build", "", StringComparison.Ordinal).Split(" || ")[0] + "\n", page, StringComparison.Ordinal);
    }

    [Fact]
    public void EachCommand_NamesAKnownCommandAndKnownOptions()
    {
        foreach (var line in Lines)
        {
            var words = line.Split(" -- ")[1].Split(" > ")[0].Replace("\"$BASE\"", "no-such-revision", StringComparison.Ordinal).Split(' ');
            Assert.Contains(words[0], new[] { "check", "review" });
            var notes = CliRun.Of(words.Select(word => word == "data" ? "no-such-folder" : word).ToArray()).Notes;
            Assert.DoesNotContain("unknown", notes, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Comment_StandsBeforeWhatMayFailAndHoldsTheTokenAlone()
    {
        var steps = Workflow[Workflow.IndexOf("\n  data:", StringComparison.Ordinal)..].Split("\n      - ");
        int At(string text) => Array.FindIndex(steps, step => step.Contains(text, StringComparison.Ordinal));
        Assert.True(
            At(" review \"$BASE\"") < At("GITHUB_STEP_SUMMARY") && At("GITHUB_STEP_SUMMARY") < At("<!-- compat review -->")
            && At("<!-- compat review -->") < At("upload-sarif"), "summary, comment, findings");
        Assert.Equal(steps.Length - 1, At("upload-sarif"));
        Assert.Equal(
            At("<!-- compat review -->"), Assert.Single(Enumerable.Range(0, steps.Length), i => steps[i].Contains("github.token", StringComparison.Ordinal)));
        Assert.Contains("test $? -le 2", steps[At(" review \"$BASE\"")], StringComparison.Ordinal);
    }

    [Fact]
    public void Jobs_EndAndKeepNoCredentials()
    {
        Assert.Equal(Workflow.Split("runs-on:").Length, Workflow.Split("timeout-minutes:").Length);
        Assert.Equal(Workflow.Split("actions/checkout@").Length, Workflow.Split("persist-credentials: false").Length);
        Assert.Contains("\nconcurrency:\n", Workflow, StringComparison.Ordinal);
        Assert.DoesNotContain("pull_request_target", Workflow, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePipeline_RunsItsLines() =>
        Assert.Contains(".github/workflows/pull-request.yml", Repository.Read(".ci", "run"), StringComparison.Ordinal);
}
