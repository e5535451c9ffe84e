using System.CommandLine;
using Compat.Cli.Checks;
using Compat.Cli.Input;
using Compat.Curation.Checking;
using Compat.Curation.Editing;

namespace Compat.Cli.Commands;

/// <summary><c>compat pack</c>: compiles a data folder to the one file that the library loads.</summary>
internal sealed class PackCommand : CliCommand
{
    private readonly Argument<string> _directory;
    private readonly Option<string?> _out;
    private readonly Option<string?> _today;

    /// <summary>Makes the command.</summary>
    public PackCommand()
        : base(
            "pack",
            "Checks a data folder as `compat check` does and, where no fault is found, compiles it to a snapshot: the same data give the same bytes.",
            new("The snapshot shipped in the library", "compat pack data --out src/Compat/Snapshots/shipped.bin"),
            new("A snapshot of your own folder", "compat pack my-data --out my-data.bin"))
    {
        _directory = new Argument<string>("dir") { HelpName = "DIR", Description = "The data folder" };
        Arguments.Add(_directory);
        _out = One("--out", "FILE", "Where to write the snapshot");
        _today = One("--today", "DAY", "The day on which ages are counted; the clock's where left out");
    }

    /// <inheritdoc/>
    public override IReadOnlyList<string> ExitCodes { get; } = ["0 written", "1 faults, as `compat check` finds them: nothing is written"];

    /// <inheritdoc/>
    public override int Execute(Call call)
    {
        if (call.Parsed.GetResult(_directory) is not { Tokens.Count: 1 }) call.Problems.Add(BadInput.Of("missing-argument", "`pack` needs DIR"));
        if (call.Parsed.GetValue(_out) is not { } path)
        {
            call.Problems.Add(BadInput.Of("missing-option", "`pack` needs `--out FILE`"));
            return BadInput.Report(call.Problems, call.Stderr);
        }

        var options = new CheckOptions { Today = DayReader.Today(call, _today) };
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        var directory = call.Parsed.GetValue(_directory)!;
        if (CheckCommand.Checked(call, directory, [], options) is not { Report: { } report } check) return ExitCode.BadInput;
        if (!report.IsClean)
        {
            var shown = new CheckCall(directory, [], false, check.Places, check.BasisOf);
            new CheckText(call.Stderr, shown).Write(report with { Findings = report.Faults.ToArray(), Gaps = [] });
            return ExitCode.NotAllowed;
        }

        var problems = KnowledgeBase.TryBuild(check.Data!, out var kb);
        if (kb is null) return BadInput.Report(problems, call.Stderr);
        return SiteCommand.Save(call, path, () => WholeFile.Replace(path, kb.Save), $"{path}: {kb.Data.Rules.Count} rules, content {kb.Identity[0].Hash}");
    }
}
