using Compat.Cli.Text;

namespace Compat.Cli.Commands;

/// <summary><c>compat site</c>: starts and fills a site file.</summary>
internal sealed class SiteCommand : CliCommand
{
    /// <summary>Makes the command.</summary>
    public SiteCommand()
        : base(
            "site",
            "Starts a site file and fills it: products off their safety data sheets, devices off an asset list. The file is replaced whole or not at all.",
            new("A new file that passes as it stands", "compat site new --out my-site.yaml"),
            new("Devices off an asset list", "compat site import my-site.yaml devices.csv --columns device=Description"))
    {
        Subcommands.Add(new SiteNewCommand());
        Subcommands.Add(new SiteProductCommand());
        Subcommands.Add(new SiteImportCommand());
    }

    /// <inheritdoc/>
    public override int Execute(Call call)
    {
        if (call.Problems.Count == 0) call.Problems.Add(BadInput.Of("no-command", "`site` needs new, add-product or import", "see `compat site --help`"));
        return BadInput.Report(call.Problems, call.Stderr);
    }

    /// <summary>Saves a file; says so where it cannot be.</summary>
    internal static int Save(Call call, string path, Action save, string done)
    {
        try
        {
            save();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return BadInput.Report([BadInput.Of("not-written", $"`{path}` cannot be written: {problem.Message}")], call.Stderr);
        }

        new Page(call.Stdout).Line(done, 0, 2);
        return ExitCode.Done;
    }
}
