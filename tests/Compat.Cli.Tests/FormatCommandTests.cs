namespace Compat.Cli.Tests;

public sealed class FormatCommandTests : IDisposable
{
    private const string Canonical = "site: { id: s, name: one }\n";

    /// <summary>A site file as it was written when the times had other names.</summary>
    private const string Old = "site: {id: s, name: one} # residence\nproducts:\n- {id: p, name: p, composition: full, strength-of: liquid, "
        + "ingredients: [{agent: ethanol, strength: 70 % v/v}], ph: [{value: '7', of: in-use}], wet-times: [{method: damp-wipe, time: '20..45 s'}]}\n";

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

    [Fact]
    public void Renew_OfASiteWithOldWords_WritesTheNewOnesInTheFormatOnce()
    {
        var path = Write("a.yaml", Old);
        var refused = CliRun.Of("format", path);
        Assert.Equal(2, refused.Code);
        Assert.Contains("the key `wet-times` is not known here, it is called `contact-times` now", refused.FlatNotes, StringComparison.Ordinal);
        Assert.Contains("help: `compat format --renew FILE`", refused.FlatNotes, StringComparison.Ordinal);
        Assert.Equal(Old, File.ReadAllText(path));

        var check = CliRun.Of("format", "--renew", "--check", path);
        Assert.Equal((1, $"{path}:1: holds words that were renamed\n1 file to format, 0 files in the canonical format\n"), (check.Code, check.Output));
        Assert.Equal(Old, File.ReadAllText(path));

        var run = CliRun.Of("format", "--renew", path);
        Assert.Equal((0, $"{path}: renewed\n1 file formatted, 0 files in the canonical format\n", ""), (run.Code, run.Output, run.Notes));
        var text = File.ReadAllText(path);
        Assert.Contains("contact-times: [{ method: damp-wipe, time: \"20..45 s\" }]", text, StringComparison.Ordinal);
        Assert.StartsWith("site: { id: s, name: one } # residence\n", text, StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("format", "--renew", "--check", path).Code);
        Assert.Equal(0, CliRun.Of("format", "--check", path).Code);
    }

    [Fact]
    public void Renew_OfAFolder_RenewsDataSitesAndAnswers()
    {
        const string Answers = "section-1: {id: p, name: p}\nlabel: {wet-times:   []}\n";
        Directory.CreateDirectory(Path.Combine(_folder.FullName, "demo"));
        Write("conventions.yaml", "- {id: unstated-residence, value: <= 1 min, reason: r}\n");
        Write("demo/s.yaml", Old);
        var answers = Write("demo/answers.yaml", Answers);
        Assert.Equal(2, CliRun.Of("format", _folder.FullName).Code);
        Assert.Equal(Answers, File.ReadAllText(answers));

        var run = CliRun.Of("format", "--renew", _folder.FullName);
        Assert.Equal((0, ""), (run.Code, run.Notes));
        Assert.EndsWith("\n3 files formatted, 0 files in the canonical format\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(Answers.Replace("wet-times", "contact-times", StringComparison.Ordinal), File.ReadAllText(answers));
        Assert.Equal(0, CliRun.Of("format", "--renew", "--check", _folder.FullName).Code);
    }

    private string Write(string name, string text)
    {
        var path = Path.Combine(_folder.FullName, name);
        File.WriteAllText(path, text);
        return path;
    }
}
