using System.CommandLine;
using Compat.Curation.Editing;

namespace Compat.Cli.Commands;

/// <summary><c>compat site new</c>: a commented site file that passes as it stands.</summary>
internal sealed class SiteNewCommand : CliCommand
{
    private readonly Option<string?> _out;
    private readonly Option<string?> _id;
    private readonly Option<string?> _name;

    /// <summary>Makes the command.</summary>
    public SiteNewCommand()
        : base(
            "new",
            "Writes a new site file with comments that say what to write where. It passes as it stands; a file that is there is never written over.",
            new("A file to fill", "compat site new --out my-site.yaml"),
            new("With its id and name", "compat site new --out ward.yaml --id ward-three --name \"ward three\""))
    {
        _out = One("--out", "FILE", "The file to write");
        _id = One("--id", "ID", "The id of the site; `my-site` where left out");
        _name = One("--name", "NAME", "What it is called; the id where left out");
    }

    /// <inheritdoc/>
    public override int Execute(Call call)
    {
        var path = call.Parsed.GetValue(_out);
        var id = call.Parsed.GetValue(_id) ?? "my-site";
        if (path is null && call.Problems.Count == 0) call.Problems.Add(BadInput.Of("missing-out", "`site new` needs --out FILE"));
        if (!Id.IsWellFormed(id)) call.Problems.Add(BadInput.Of("id", $"`{id}` is no id", "write lower-case words joined by single hyphens", "id"));
        if (path is not null && (File.Exists(path) || Directory.Exists(path))) call.Problems.Add(BadInput.Of("already-there", $"`{path}` is there already", "name another file", "out"));
        if (call.Problems.Count > 0) return BadInput.Report(call.Problems, call.Stderr);
        var name = call.Parsed.GetValue(_name) is { Length: > 0 } given ? given : id;
        return SiteCommand.Save(call, path!, () => WholeFile.Create(path!, SiteStart.Text(new SiteId(id), name)), $"{path}: written");
    }
}
