namespace Compat.Cli.Tests.Reviews;

/// <summary>The base folder beside a copy to which a script of replacements was applied; the two are shown as <c>base</c> and <c>head</c>.</summary>
/// <remarks>A script names a file, then gives lines to be found there once, after a hyphen, and those in their place, after a plus.</remarks>
internal sealed class EditFolder : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("compat-review-").FullName;

    /// <summary>Both folders alike.</summary>
    public EditFolder()
    {
        foreach (var side in new[] { Base, Head }) Copy(Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits", "base"), side);
    }

    /// <summary>The second folder edited by the script of a name.</summary>
    public EditFolder(string name)
        : this()
    {
        string file = "", was = "", now = "";
        foreach (var line in File.ReadAllLines(Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits", name, "edit.txt")).Append(""))
        {
            if (line.StartsWith("- ", StringComparison.Ordinal)) was += line[2..] + "\n";
            else if (line.StartsWith("+ ", StringComparison.Ordinal)) now += line[2..] + "\n";
            else
            {
                if (file.Length > 0) Replace(file, was.TrimEnd('\n'), now.TrimEnd('\n'));
                (file, was, now) = (line, "", "");
            }
        }
    }

    public string Base => Path.Combine(_root, "base");

    public string Head => Path.Combine(_root, "head");

    /// <summary>Puts a text of HEAD, found there once, in place of another.</summary>
    public void Replace(string file, string was, string now)
    {
        var path = Path.Combine(Head, file);
        var text = File.ReadAllText(path);
        Assert.Equal(2, text.Split(was).Length);
        File.WriteAllText(path, text.Replace(was, now, StringComparison.Ordinal));
    }

    public CliRun Review(params string[] more)
    {
        var run = CliRun.Of(["review", Base, Head, .. more]);
        return run with { Output = Shown(run.Output), Notes = Shown(run.Notes) };
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);

    private string Shown(string text) => text.Replace(_root + "/", "", StringComparison.Ordinal);

    private static void Copy(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*.yaml", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }
}
