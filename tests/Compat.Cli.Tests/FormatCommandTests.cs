namespace Compat.Cli.Tests;

public sealed class FormatCommandTests : IDisposable
{
    private const string Canonical = "site: { id: s, name: one }\n";
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("compat-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void Check_OfACanonicalFile_IsClean()
    {
        var run = CliRun.Of("format", Write("a.yaml", Canonical), "--check");
        Assert.Equal((0, "0 files to format, 1 file in the canonical format\n", ""), (run.Code, run.Output, run.Notes));
    }

    [Fact]
    public void Check_OfAnotherFile_NamesItsFirstLineAndWritesNothing()
    {
        var path = Write("a.yaml", "# c\nsite: {id: s, name: one}\n");
        var run = CliRun.Of("format", path, Write("b.yaml", Canonical), "--check");
        Assert.Equal(1, run.Code);
        Assert.Equal($"{path}:2: not in the canonical format\n1 file to format, 1 file in the canonical format\n", run.Output);
        Assert.Equal("# c\nsite: {id: s, name: one}\n", File.ReadAllText(path));
    }

    [Fact]
    public void Format_RewritesAndThenNothingChanges()
    {
        var path = Write("a.yaml", "site: {name: one, id: s}");
        var run = CliRun.Of("format", path);
        Assert.Equal((0, $"{path}: formatted\n1 file formatted, 0 files in the canonical format\n"), (run.Code, run.Output));
        Assert.Equal(Canonical, File.ReadAllText(path));
        Assert.Equal(0, CliRun.Of("format", path, "--check").Code);
    }

    [Theory]
    [InlineData()]
    [InlineData("--check")]
    public void Format_OfAFileThatCannotBeRead_ReportsItAndFormatsTheOthers(params string[] options)
    {
        const string Faulty = "site: {id: s, nam: one}\n";
        var (faulty, other) = (Write("a.yaml", Faulty), Write("b.yaml", "site: {id: s, name: one}\n"));
        var run = CliRun.Of(["format", faulty, other, .. options]);
        Assert.Equal(2, run.Code);
        Assert.Contains($"{faulty}:1:15: error: the key `nam` is not known here", run.Notes, StringComparison.Ordinal);
        Assert.Equal(Faulty, File.ReadAllText(faulty));
        Assert.Equal(options.Length == 0 ? Canonical : "site: {id: s, name: one}\n", File.ReadAllText(other));
    }

    [Fact]
    public void Format_WithoutAPath_IsBadInput()
    {
        var run = CliRun.Of("format", "--check");
        Assert.Equal(2, run.Code);
        Assert.StartsWith("error: `format` needs PATH", run.Notes, StringComparison.Ordinal);
    }

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, text);
        return path;
    }
}
