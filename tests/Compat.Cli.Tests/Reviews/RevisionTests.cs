using System.Diagnostics;

namespace Compat.Cli.Tests.Reviews;

/// <summary>The review of revisions of a repository, by the program in a process of its own: it stands in the repository.</summary>
public sealed class RevisionTests : IDisposable
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
        Assert.Equal(folders.Replace("`base` to `head`", "`first` to `main`", StringComparison.Ordinal).Replace("head/", "data/", StringComparison.Ordinal).Replace("--data head", "--data data", StringComparison.Ordinal), output);
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
