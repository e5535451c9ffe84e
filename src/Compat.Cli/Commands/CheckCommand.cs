using System.CommandLine;
using System.Globalization;
using Compat.Cli.Checks;
using Compat.Cli.Input;
using Compat.Cli.Json;
using Compat.Cli.Text;
using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;

namespace Compat.Cli.Commands;

/// <summary><c>compat check</c>: proves that a data folder cannot contradict itself, or shows where it does.</summary>
internal sealed class CheckCommand : CliCommand
{
    /// <summary>The formats there are.</summary>
    private static readonly string[] Formats = ["text", "json", "sarif", "github"];
    private readonly Argument<string> _directory;
    private readonly Option<string[]> _sites;
    private readonly Option<string?> _format;
    private readonly Option<string?> _verbose;
    private readonly Option<string?> _gaps;
    private readonly Option<string?> _stale;
    private readonly Option<string?> _today;

    /// <summary>Makes the command.</summary>
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

    /// <inheritdoc/>
    public override IReadOnlyList<string> ExitCodes { get; } = ["0 no fault", "1 faults"];

    /// <inheritdoc/>
    public override int Execute(Call call)
    {
        if (call.Parsed.GetResult(_directory) is not { Tokens.Count: 1 }) call.Problems.Add(BadInput.Of("missing-argument", "`check` needs DIR"));
        var format = FormatOf(call, _format, Formats);
        using var progress = TerminalProgress.Of(call.Stderr);
        var options = new CheckOptions
        {
            Today = DayReader.Today(call, _today),
            StaleAfterMonths = Months(call),
            GapsAtMost = Gaps(call),
            WithRefinements = call.Parsed.GetResult(_verbose) is not null,
            Progress = progress.Step,
        };
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        return Run(call, options, format);
    }

    /// <summary>Checks a folder and writes what of it cannot be read; null where its rules cut each other too finely, which is reported.</summary>
    internal static FolderCheck? Checked(Call call, string directory, IReadOnlyList<string> sites, CheckOptions options)
    {
        try
        {
            var check = FolderCheck.Run(directory, sites, options);
            call.Stderr.Write(DiagnosticText.Render(check.Unreadable));
            return check;
        }
        catch (TooManyBoxesException tooMany)
        {
            BadInput.Report([BadInput.Of("too-many-boxes", tooMany.Message)], call.Stderr);
            return null;
        }
    }

    private int Run(Call call, CheckOptions options, string format)
    {
        var directory = call.Parsed.GetValue(_directory)!;
        var sites = call.Parsed.GetValue(_sites) ?? [];
        if (Checked(call, directory, sites, options) is not { } check) return ExitCode.BadInput;
        if (check.Report is null && format == "text") return ExitCode.BadInput;
        var report = check.Report ?? CheckReport.Nothing;
        var shown = new CheckCall(directory, sites, call.Parsed.GetResult(_verbose) is not null, check.Places, check.BasisOf) { Unreadable = check.Unreadable };
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
        if (text.EndsWith("mo", StringComparison.Ordinal) && int.TryParse(text[..^2], NumberStyles.None, CultureInfo.InvariantCulture, out var months) && months is > 0 and <= 1200) return months;
        call.Problems.Add(BadInput.Of("bad-figure", $"`{text}` is no number of months", "write `24mo`", "stale-after"));
        return 0;
    }

    private int? Gaps(Call call)
    {
        if (call.Parsed.GetValue(_gaps) is not { } text) return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var gaps)) return gaps;
        call.Problems.Add(BadInput.Of("bad-figure", $"`{text}` is no number of gaps", "write a whole number from 0", "gaps-at-most"));
        return null;
    }
}
