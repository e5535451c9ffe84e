namespace Compat.Cli.Tests.Checks;

/// <summary>A folder of faults laid over the base folder, in a place of its own; its path is shown as <c>data</c>.</summary>
internal sealed class FaultFolder : IDisposable
{
    private readonly string? _site;

    public FaultFolder(string name)
    {
        Path = Directory.CreateTempSubdirectory("compat-check-").FullName;
        foreach (var from in new[] { "base", name }) Copy(Repository.File("tests", "Compat.Cli.Tests", "Checks", "Faults", from));
        var site = System.IO.Path.Combine(Path, "site.yaml");
        if (!File.Exists(site)) return;
        _site = Path + "-site.yaml";
        File.Move(site, _site);
    }

    public string Path { get; }

    /// <summary>Runs the check on a fixed day.</summary>
    public CliRun Check(params string[] more)
    {
        var run = CliRun.Of(["check", Path, "--today", "2026-11-25", .. _site is null ? Array.Empty<string>() : ["--site", _site], .. more]);
        return run with { Output = Shown(run.Output), Notes = Shown(run.Notes) };
    }

    public void Dispose()
    {
        Directory.Delete(Path, recursive: true);
        if (_site is not null) File.Delete(_site);
    }

    private string Shown(string text) => (_site is null ? text : text.Replace(_site, "site.yaml", StringComparison.Ordinal))
        .Replace(Path, "data", StringComparison.Ordinal);

    private void Copy(string from)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*.yaml", SearchOption.AllDirectories))
        {
            var to = System.IO.Path.Combine(Path, System.IO.Path.GetRelativePath(from, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
    }
}
