using System.CommandLine;
using System.Globalization;
using Compat.Curation.Diagnostics;
using Compat.Curation.Formatting;

namespace Compat.Cli.Commands;

/// <summary><c>compat format</c>: brings data files and site files into the one canonical format.</summary>
internal sealed class FormatCommand : CliCommand
{
    private readonly Argument<string[]> _paths;
    private readonly Option<string?> _check;
    private readonly Option<string?> _renew;

    public FormatCommand()
        : base(
            "format",
            "Brings data files into the one format: order of keys, indentation, spaces, quotes, spelling of ranges. Comments, blank lines, the order of "
                + "records and every value are kept.",
            new("Whether a data folder is in that format; nothing is written", "compat format data --check"),
            new("A site's own file with the words of an older version, rewritten in place", "compat format my-site.yaml --renew"))
    {
        _paths = new Argument<string[]>("path")
        {
            HelpName = "PATH",
            Description = "A data folder, a data file or a site file; may be repeated",
            Arity = ArgumentArity.ZeroOrMore
        };
        Arguments.Add(_paths);
        _check = Flag("--check", "Write nothing: list each file that would change, with its first line that would; then the exit code is 1");
        _renew = Flag("--renew", "First write keys and words that were renamed anew, also in files of answers for `site add-product`, which keep their layout");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 done", "1 with --check: a file is to be formatted"];

    public override int Execute(Call call)
    {
        var paths = call.Parsed.GetValue(_paths) ?? [];
        if (paths.Length == 0) call.Note("missing-argument", "`format` needs PATH", "name a data folder or a file");
        if (call.Problems.Count > 0) return call.Report();
        var renew = call.Has(_renew);
        var results = paths.Distinct(StringComparer.Ordinal).Select(path => DataFormat.Of(path, renew)).ToList();
        var files = results.SelectMany(result => result.Files).ToList();
        var changing = files.Where(file => file.FirstChange is not null).ToList();
        var faults = results.SelectMany(result => result.Diagnostics).ToList();
        call.Stderr.Write(DiagnosticText.Render(faults));
        var check = call.Has(_check);
        foreach (var file in changing)
        {
            if (check) call.Stdout.Write(string.Create(CultureInfo.InvariantCulture,
                $"{file.ShownAs}:{file.FirstChange}: {(file.IsRenewed ? "holds words that were renamed" : "not in the canonical format")}\n"));
            else if (Saved(file, call)) call.Stdout.Write($"{file.ShownAs}: {(file.IsRenewed ? "renewed" : "formatted")}\n");
            else return ExitCode.BadInput;
        }

        var same = files.Count - changing.Count;
        call.Stdout.Write(string.Create(CultureInfo.InvariantCulture, $"{English.Count(changing.Count, "file")} {(check ? "to format" : "formatted")}, "
            + $"{English.Count(same, "file")} in the canonical format\n"));
        if (faults.Count > 0) return ExitCode.BadInput;
        return check && changing.Count > 0 ? ExitCode.NotAllowed : ExitCode.Done;
    }

    private static bool Saved(FormattedFile file, Call call)
    {
        try
        {
            file.Save();
            return true;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            call.Refuse("not-written", $"`{file.ShownAs}` cannot be written: {problem.Message}");
            return false;
        }
    }
}
