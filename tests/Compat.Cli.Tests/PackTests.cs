namespace Compat.Cli.Tests;

/// <summary>A snapshot is made only of data in which the check finds no fault.</summary>
public sealed class PackTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("compat-pack").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Pack_RulesThatContradict_WritesNothing()
    {
        var data = Path.Combine(_folder, "data");
        foreach (var source in new[] { "base", "contradiction" })
        {
            var from = Repository.File("tests", "Compat.Cli.Tests", "Checks", "Faults", source);
            foreach (var file in Directory.GetFiles(from, "*.yaml", SearchOption.AllDirectories))
            {
                var to = Path.Combine(data, Path.GetRelativePath(from, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to, overwrite: true);
            }
        }

        var run = CliRun.Of("pack", data, "--out", Path.Combine(_folder, "out.bin"));
        Assert.Equal(1, run.Code);
        Assert.Equal("", run.Output);
        Assert.Contains("contradict", run.Notes, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_folder));
    }
}
