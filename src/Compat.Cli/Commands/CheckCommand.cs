using System.CommandLine;
using System.Globalization;
using Compat.Cli.Json;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;

namespace Compat.Cli.Commands;

/// <summary><c>compat check</c>: proves that a data folder cannot contradict itself, or shows where it does.</summary>
internal sealed class CheckCommand : CliCommand
{
    private static readonly string[] Formats = ["text", "json", "sarif", "github"];
    private readonly Argument<string> _directory;
    private readonly Option<string[]> _sites;
    private readonly Option<string?> _format;
    private readonly Option<string?> _verbose;
    private readonly Option<string?> _gaps;
    private readonly Option<string?> _stale;
    private readonly Option<string?> _today;

    public CheckCommand()
        : base(
            "check",
            "Proves that the rules of a data folder cannot contradict each other, over every question, or shows where they do.",
            new("Before a change of rules is saved", "compat check data"),
            new("On a pull request, with the remarks beside the lines", "compat check data --format github"))
    {
        _directory = new Argument<string>("dir") { HelpName = "DIR", Description = "The data folder" };
        Arguments.Add(_directory);
        _sites = Many("--site", "FILE", "Lay a site file over the data");
        _format = Format(Formats);
        _verbose = Flag("--verbose", "List refinements and every gap too");
        _gaps = One("--gaps-at-most", "NUMBER", "More pairs of part and agent without evidence are a fault");
        _stale = One("--stale-after", "MONTHS", "Rules not looked at for so long are noted: 24mo where left out");
        _today = One("--today", "DAY", "The day on which ages are counted, and behind which no date may lie; the clock's where left out");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 no fault", "1 faults"];

    public override int Execute(Call call)
    {
        if (call.Parsed.GetResult(_directory) is not { Tokens.Count: 1 }) call.Note("missing-argument", "`check` needs DIR");
        var format = FormatOf(call, _format, Formats);
        using var progress = TerminalProgress.Of(call.Stderr);
        var options = new CheckOptions
        {
            Today = call.Options.Today(_today),
            StaleAfterMonths = Months(call),
            GapsAtMost = Gaps(call),
            WithRefinements = call.Has(_verbose),
            Progress = progress.Step,
        };
        if (call.Problems.Count > 0) return call.Report();
        return Run(call, options, format);
    }

    /// <summary>Checks a folder and writes what of it cannot be read.</summary>
    internal static FolderCheck Checked(Call call, string directory, IReadOnlyList<string> sites, CheckOptions options)
    {
        var check = FolderCheck.Run(directory, sites, options);
        call.Stderr.Write(DiagnosticText.Render(check.Unreadable));
        return check;
    }

    private int Run(Call call, CheckOptions options, string format)
    {
        var directory = call.Parsed.GetValue(_directory)!;
        var sites = call.Parsed.GetValue(_sites) ?? [];
        var check = Checked(call, directory, sites, options);
        if (check.Report is null && format == "text") return ExitCode.BadInput;
        var report = check.Report ?? CheckReport.Nothing;
        var shown = new CheckCall(directory, sites, call.Has(_verbose), check.Places, check.BasisOf) { Unreadable = check.Unreadable };
        switch (format)
        {
            case "json": JsonDocuments.Write(call.Stdout, json => new CheckJson(json, shown).Write(report)); break;
            case "sarif": JsonDocuments.Write(call.Stdout, json => new CheckSarif(json, shown).Write(report)); break;
            case "github": new CheckGithub(call.Stdout, shown).Write(report); break;
            default: new CheckText(call.Stdout, shown).Write(report); break;
        }

        return check.Report is null ? ExitCode.BadInput : report.IsClean ? ExitCode.Done : ExitCode.NotAllowed;
    }

    private int Months(Call call)
    {
        if (call.Parsed.GetValue(_stale) is not { } text) return new CheckOptions { Today = default }.StaleAfterMonths;
        if (text.EndsWith("mo", StringComparison.Ordinal) && int.TryParse(text[..^2], NumberStyles.None, CultureInfo.InvariantCulture, out var months)
            && months is > 0 and <= 1200) return months;
        call.Note("bad-figure", $"`{text}` is no number of months", "write `24mo`", "stale-after");
        return 0;
    }

    private int? Gaps(Call call)
    {
        if (call.Parsed.GetValue(_gaps) is not { } text) return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var gaps)) return gaps;
        call.Note("bad-figure", $"`{text}` is no number of gaps", "write a whole number from 0", "gaps-at-most");
        return null;
    }
}

/// <summary><c>compat pack</c>: compiles a data folder to the one file that the library loads.</summary>
internal sealed class PackCommand : CliCommand
{
    private readonly Argument<string> _directory;
    private readonly Option<string?> _out;
    private readonly Option<string?> _today;

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

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 written", "1 faults, as `compat check` finds them: nothing is written"];

    public override int Execute(Call call)
    {
        if (call.Parsed.GetResult(_directory) is not { Tokens.Count: 1 }) call.Note("missing-argument", "`pack` needs DIR");
        if (call.Parsed.GetValue(_out) is not { } path)
        {
            call.Note("missing-option", "`pack` needs `--out FILE`");
            return call.Report();
        }

        var options = new CheckOptions { Today = call.Options.Today(_today) };
        if (call.Problems.Count > 0) return call.Report();
        var directory = call.Parsed.GetValue(_directory)!;
        if (CheckCommand.Checked(call, directory, [], options) is not { Report: { } report } check) return ExitCode.BadInput;
        if (!report.IsClean)
        {
            var shown = new CheckCall(directory, [], false, check.Places, check.BasisOf);
            new CheckText(call.Stderr, shown).Write(report with { Findings = report.Faults.ToArray(), Gaps = [] });
            return ExitCode.NotAllowed;
        }

        var problems = KnowledgeBase.TryBuild(check.Data!, out var kb);
        if (kb is null) return call.Refuse(problems);
        return call.Save(path, () => WholeFile.Replace(path, kb.Save), $"{path}: {kb.Data.Rules.Count} rules, content {kb.Identity[0].Hash}");
    }
}
