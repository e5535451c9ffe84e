using System.Diagnostics;

namespace Compat.Cli.Tests.Reviews;

/// <summary>The review of revisions of a repository, by the program in a process of its own: it stands in the repository.</summary>
public sealed partial class RevisionTests : IDisposable
{
    private readonly EditFolder _folder = new("boundary-moved");
    private readonly string _root = Directory.CreateTempSubdirectory("compat-revisions-").FullName;

    public RevisionTests()
    {
        Git("init", "-q", "-b", "main");
        Commit(_folder.Base, "before");
        Git("branch", "first");
        Commit(_folder.Head, "after");
    }

    public void Dispose()
    {
        _folder.Dispose();
        Directory.Delete(_root, recursive: true);
    }

    [Fact]
    public void TwoRevisions_AreComparedAsFoldersAre()
    {
        var (code, output, notes) = Compat("review", "first", "main", "--format", "markdown");
        Assert.Equal((1, ""), (code, notes));
        var folders = _folder.Review("--format", "markdown").Output;
        Assert.Equal(
            folders.Replace("`base` to `head`", "`first` to `main`", StringComparison.Ordinal).Replace("head/", "data/", StringComparison.Ordinal)
            .Replace("--data head", "--data data", StringComparison.Ordinal),
            Commits().Replace(output, "`").Replace("ask in a checkout of `main`:\n\n", "", StringComparison.Ordinal));
        Assert.Matches("`first` \\([0-9a-f]{10}\\) to `main` \\([0-9a-f]{10}\\)", output);
    }

    [Fact]
    public void TheWorkingTree_IsHeadWhereNoneIsNamed()
    {
        Assert.Equal((0, "no answer changes\n"), Plain(Compat("review", "main")));
        Assert.Equal(1, Compat("review", "first").Code);
        File.AppendAllText(Path.Combine(_root, "data", "rules", "rules.yaml"), "- id: [\n");
        Assert.Equal(2, Compat("review", "main").Code);
        Assert.Equal((0, "no answer changes\n"), Plain(Compat("review", "main", "main")));
    }

    [Fact]
    public void ARevisionThereIsNot_IsBadInput()
    {
        var (code, output, notes) = Compat("review", "never", "main");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("`never` cannot be read:", notes, StringComparison.Ordinal);
    }

    [Fact]
    public void WithoutGit_TheFaultIsNamed()
    {
        var (code, _, notes) = Run(Environment.ProcessPath ?? "dotnet", path: "/nowhere", typeof(CommandLine).Assembly.Location, "review", "first");
        Assert.Equal(2, code);
        Assert.Contains("git was not found", notes, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatBaseDidSince_IsNoWorkOfHead()
    {
        Git("branch", "topic");
        Commit(_folder.Base, "main goes back");
        Assert.Equal((0, "no answer changes\n"), Plain(Compat("review", "main", "topic")));
        Assert.Contains("(where HEAD left it: ", Compat("review", "main", "topic", "--format", "markdown").Output, StringComparison.Ordinal);
        Assert.Equal(1, Compat("review", "main", "topic", "--direct").Code);
        Git("checkout", "-q", "topic");
        Assert.Equal((0, "no answer changes\n"), Plain(Compat("review", "main")));
    }

    [Theory]
    [InlineData("--output=made")]
    [InlineData("-x")]
    public void ARevisionThatBeginsLikeAnOption_IsRefused(string name)
    {
        var (code, _, notes) = Compat("review", "main", "--", name);
        Assert.Equal(2, code);
        Assert.Contains($"`{name}` is no revision", notes, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(_root, "made*"));
    }

    [Fact]
    public void WhatCannotBeRead_IsACommentThatNamesTheCommit()
    {
        File.AppendAllText(Path.Combine(_root, "data", "rules", "rules.yaml"), "- id: [\n");
        Git("add", "-A");
        Git("-c", "user.name=test", "-c", "user.email=test@example.invalid", "commit", "-q", "-m", "broken");
        var (code, output, notes) = Compat("review", "first", "main", "--format", "markdown");
        Assert.Equal(2, code);
        Assert.StartsWith("## Cannot be judged: `first` (", output, StringComparison.Ordinal);
        Assert.Matches("`main` \\([0-9a-f]{10}\\) cannot be read", output);
        Assert.Contains("rules.yaml:", output, StringComparison.Ordinal);
        Assert.Contains("rules.yaml:", notes, StringComparison.Ordinal);
        Assert.StartsWith("## Cannot be judged", Compat("review", "never", "main", "--format", "markdown").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ASiteFile_IsReadAsItWasThen()
    {
        File.Copy(PlanFolder.Site, Path.Combine(_root, "site.yaml"));
        Git("add", "-A");
        Git("-c", "user.name=test", "-c", "user.email=test@example.invalid", "commit", "-q", "-m", "site");
        var text = File.ReadAllText(Path.Combine(_root, "site.yaml"));
        File.WriteAllText(
            Path.Combine(_root, "site.yaml"),
            text[..text.IndexOf("products:", StringComparison.Ordinal)] + text[text.IndexOf("devices:", StringComparison.Ordinal)..]);
        var (_, output, notes) = Compat("review", "main", "--site", "site.yaml");
        Assert.Equal("", notes);
        Assert.Contains("product `", output, StringComparison.Ordinal);
        Assert.Equal((0, "no answer changes\n"), Plain(Compat("review", "main", "main", "--site", "site.yaml")));
    }

    [System.Text.RegularExpressions.GeneratedRegex("` \\([0-9a-f]{10}\\)")]
    private static partial System.Text.RegularExpressions.Regex Commits();

    private static (int, string) Plain((int Code, string Output, string Notes) run) => (run.Code, run.Output);

    private (int Code, string Output, string Notes) Compat(params string[] args) => Run("dotnet", null, [typeof(CommandLine).Assembly.Location, .. args]);

    private void Commit(string folder, string message)
    {
        if (Directory.Exists(Path.Combine(_root, "data"))) Directory.Delete(Path.Combine(_root, "data"), recursive: true);
        foreach (var file in Directory.EnumerateFiles(folder, "*.yaml", SearchOption.AllDirectories))
        {
            var target = Path.Combine(_root, "data", Path.GetRelativePath(folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        Git("add", "-A");
        Git("-c", "user.name=test", "-c", "user.email=test@example.invalid", "commit", "-q", "-m", message);
    }

    private void Git(params string[] args)
    {
        var (code, _, notes) = Run("git", null, args);
        Assert.True(code == 0, notes);
    }

    private (int Code, string Output, string Notes) Run(string program, string? path, params string[] args)
    {
        var start = new ProcessStartInfo(program) { WorkingDirectory = _root, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var arg in args) start.ArgumentList.Add(arg);
        if (path is not null) start.Environment["PATH"] = path;
        using var process = Process.Start(start)!;
        var notes = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, notes.Result);
    }
}
