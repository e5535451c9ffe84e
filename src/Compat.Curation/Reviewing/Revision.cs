using System.ComponentModel;
using System.Diagnostics;
using System.Formats.Tar;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Yaml;

namespace Compat.Curation.Reviewing;

/// <summary>A state of the data: a folder, or the folder as it was at a revision of the repository one stands in.</summary>
/// <param name="Directory">The data folder.</param>
/// <param name="Name">The revision; null for the folder as it is.</param>
public sealed record Revision(string Directory, string? Name)
{
    private const int Shown = 10;

    /// <summary>The commit, where it is known; null for a folder, and where the name is none of a commit.</summary>
    public string? Commit { get; init; }

    /// <summary>What is told of it beside its name: that it is where HEAD left BASE; empty where it is the revision named.</summary>
    public string Note { get; init; } = "";

    /// <summary>What a reader calls it.</summary>
    public string ShownAs => Name ?? Directory;

    /// <summary>What a reader calls it, with its commit.</summary>
    public string Heading => $"`{ShownAs}`{(Commit is null ? "" : $" ({Note}{Commit[..Math.Min(Shown, Commit.Length)]})")}";

    /// <summary>The revision with its commit looked up.</summary>
    /// <param name="fault">What is wrong with it; null where nothing is.</param>
    public Revision Resolved(out Diagnostic? fault)
    {
        fault = null;
        if (Name is null) return this;
        if (Name.StartsWith('-'))
        {
            fault = Fault("revision-not-found", $"`{Name}` is no revision: none begins with `-`",
                "name a folder, or a branch, tag or commit of the repository you stand in");
            return this;
        }

        try
        {
            if (Git.Line(out var said, "rev-parse", "--verify", "--end-of-options", Name + "^{commit}") is { } commit) return this with { Commit = commit };
            fault = Fault("revision-not-found", $"git cannot give `{Directory}` at `{Name}`: {said}",
                "name a folder, or a branch, tag or commit of the repository you stand in");
        }
        catch (Win32Exception)
        {
            fault = Fault("git-not-found", $"`{Name}` is no folder, and git was not found to read it as a revision", "install git, or name two data folders");
        }

        return this;
    }

    /// <summary>BASE as it was where HEAD left it: what BASE did since is no work of HEAD.</summary>
    /// <param name="head">HEAD; the working tree is compared by the commit it stands on.</param>
    /// <param name="fault">What is wrong; null where nothing is.</param>
    public Revision WhereLeftBy(Revision head, out Diagnostic? fault)
    {
        fault = null;
        if (Commit is null || (head.Name is null && !IsTracked(head.Directory))) return this;
        var other = head.Commit ?? Git.Line(out _, "rev-parse", "--verify", "--quiet", "HEAD");
        if (other is null) return this;
        if (Git.Line(out _, "merge-base", "--end-of-options", Commit, other) is { Length: > 0 } left) return left == Commit ? this
            : this with { Commit = left, Note = "where HEAD left it: " };
        fault = Fault("no-common-commit", $"`{ShownAs}` and `{head.ShownAs}` have no commit in common",
            "fetch more of the history, or compare them as they are with `--direct`");
        return this;
    }

    /// <summary>Reads the records, without checking references and meaning.</summary>
    /// <param name="memory">Trees of files read before.</param>
    /// <param name="beside">Takes the files of the folder that are no records of it: sites and patterns, by their path in it.</param>
    /// <param name="fault">What kept them from being read at all; null where nothing did.</param>
    internal ReadResult? Read(FileMemory memory, Dictionary<string, byte[]> beside, out Diagnostic? fault)
    {
        fault = null;
        if (Name is null)
        {
            foreach (var (path, full) in FolderFiles.Find(Directory, []) ?? [])
                if (IsBeside(path) && SourceReader.ReadBytes(full, path, []) is { } bytes) beside[path] = bytes;
            return DataFolder.Read(Directory, memory);
        }

        if (Commit is null)
        {
            var resolved = Resolved(out fault);
            return fault is null ? resolved.Read(memory, beside, out fault) : null;
        }

        var files = new Dictionary<string, byte[]>();
        fault = Archive(files);
        foreach (var (path, bytes) in files)
            if (IsBeside(path)) beside[path] = bytes;
        return fault is null ? DataFolder.Read(files, Directory, memory) : null;
    }

    /// <summary>A file of the working tree as it was then; null where it was not there, or this is no revision: then it is what it is.</summary>
    internal byte[]? FileThen(string path) => Commit is null ? null : Git.Run(out _, "show", "--end-of-options", $"{Commit}:./{path.Replace('\\', '/')}");

    private static bool IsBeside(string path) =>
        path.EndsWith(".yaml", StringComparison.Ordinal)
            && (path.StartsWith("demo/", StringComparison.Ordinal) || path.StartsWith("patterns/", StringComparison.Ordinal));

    private static bool IsTracked(string directory) => Git.Line(out _, "ls-files", "--", directory) is { Length: > 0 };

    /// <summary>Takes the files out of the repository by one call of git.</summary>
    private Diagnostic? Archive(Dictionary<string, byte[]> files)
    {
        try
        {
            if (Git.Run(out var said, "archive", "--format=tar", Commit!, "--", Directory) is not { } bytes)
                return Fault("revision-not-found", $"git cannot give `{Directory}` at `{Name}`: {said}",
                    "name a folder, or a branch, tag or commit of the repository you stand in");
            using var tar = new MemoryStream(bytes);
            Unpack(tar, files);
            return null;
        }
        catch (Win32Exception)
        {
            return Fault("git-not-found", $"`{Name}` is no folder, and git was not found to read it as a revision", "install git, or name two data folders");
        }
    }

    private void Unpack(Stream tar, Dictionary<string, byte[]> files)
    {
        var root = Directory.Replace('\\', '/').TrimEnd('/') + "/";
        if (root.StartsWith("./", StringComparison.Ordinal)) root = root[2..];
        using var reader = new TarReader(tar);
        while (reader.GetNextEntry() is { } entry)
        {
            if (entry.DataStream is not { } content || !entry.Name.StartsWith(root, StringComparison.Ordinal)) continue;
            using var bytes = new MemoryStream();
            content.CopyTo(bytes);
            files[entry.Name[root.Length..]] = bytes.ToArray();
        }
    }

    private Diagnostic Fault(string code, string message, string help) => new(code, message, help, ShownAs, null);
}

/// <summary>Asks git, in the repository one stands in.</summary>
internal static class Git
{
    /// <summary>Runs git.</summary>
    /// <param name="said">The first line of what it says is wrong.</param>
    /// <param name="words">What it is told. What a person named stands behind <c>--end-of-options</c>.</param>
    /// <returns>What it writes; null where it fails.</returns>
    /// <exception cref="Win32Exception">There is no git.</exception>
    public static byte[]? Run(out string said, params string[] words)
    {
        var start = new ProcessStartInfo("git") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var word in words) start.ArgumentList.Add(word);
        using var git = Process.Start(start)!;
        var errors = git.StandardError.ReadToEndAsync();
        using var output = new MemoryStream();
        git.StandardOutput.BaseStream.CopyTo(output);
        git.WaitForExit();
        said = errors.GetAwaiter().GetResult().Trim().Split('\n')[0];
        return git.ExitCode == 0 ? output.ToArray() : null;
    }

    /// <summary>The same, of which one line of text is wanted.</summary>
    public static string? Line(out string said, params string[] words) =>
        Run(out said, words) is { } bytes ? System.Text.Encoding.UTF8.GetString(bytes).Trim() : null;
}
