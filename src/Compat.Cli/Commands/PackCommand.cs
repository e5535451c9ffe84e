using System.CommandLine;
using Compat.Curation;
using Compat.Curation.Diagnostics;

namespace Compat.Cli.Commands;

/// <summary><c>compat pack</c>: compiles a data folder to the one file that the library loads.</summary>
internal sealed class PackCommand : CliCommand
{
    private readonly Argument<string> _directory;
    private readonly Option<string?> _out;

    /// <summary>Makes the command.</summary>
    public PackCommand()
        : base(
            "pack",
            "Checks a data folder and compiles it to a snapshot: the same data give the same bytes.",
            new("The snapshot shipped in the library", "compat pack data --out src/Compat/Snapshots/shipped.bin"),
            new("A snapshot of your own folder", "compat pack my-data --out my-data.bin"))
    {
        _directory = new Argument<string>("dir") { HelpName = "DIR", Description = "The data folder" };
        Arguments.Add(_directory);
        _out = One("--out", "FILE", "Where to write the snapshot");
    }

    /// <inheritdoc/>
    public override int Execute(Call call)
    {
        if (call.Parsed.GetResult(_directory) is not { Tokens.Count: 1 }) call.Problems.Add(BadInput.Of("missing-argument", "`pack` needs DIR"));
        if (call.Parsed.GetValue(_out) is not { } path)
        {
            call.Problems.Add(BadInput.Of("missing-option", "`pack` needs `--out FILE`"));
            return BadInput.Report(call.Problems, call.Stderr);
        }

        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        var read = DataFolder.Load(call.Parsed.GetValue(_directory)!);
        call.Stderr.Write(DiagnosticText.Render(read.Diagnostics));
        if (read.KnowledgeBase is not { } kb) return ExitCode.BadInput;
        try
        {
            Replace(path, kb);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return BadInput.Report([BadInput.Of("not-written", $"`{path}` cannot be written: {problem.Message}")], call.Stderr);
        }

        call.Stdout.Write($"{path}: {kb.Data.Rules.Count} rules, content {kb.Identity[0].Hash}\n");
        return ExitCode.Done;
    }

    /// <summary>Writes beside the file, then takes its place: a reader sees the old or the new one whole.</summary>
    private static void Replace(string path, KnowledgeBase kb)
    {
        var beside = path + ".new";
        using (var stream = File.Create(beside)) kb.Save(stream);
        File.Move(beside, path, overwrite: true);
    }
}
