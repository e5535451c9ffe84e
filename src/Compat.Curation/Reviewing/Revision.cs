using System.ComponentModel;
using System.Diagnostics;
using System.Formats.Tar;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Curation.Reviewing;

/// <summary>A state of the data: a folder, or the folder as it was at a revision of the repository one stands in.</summary>
/// <param name="Directory">The data folder.</param>
/// <param name="Name">The revision; null for the folder as it is.</param>
public sealed record Revision(string Directory, string? Name)
{
    /// <summary>What a reader calls it.</summary>
    public string ShownAs => Name ?? Directory;

    /// <summary>Reads the records, without checking references and meaning.</summary>
    /// <param name="memory">Trees of files read before.</param>
    /// <param name="fault">What kept them from being read at all; null where nothing did.</param>
    internal ReadResult? Read(FileMemory memory, out Diagnostic? fault)
    {
        fault = null;
        if (Name is null) return DataFolder.Read(Directory, memory);
        var files = new Dictionary<string, byte[]>();
        fault = Archive(files);
        return fault is null ? DataFolder.Read(files, Directory, memory) : null;
    }

    /// <summary>Takes the files out of the repository by one call of git.</summary>
    private Diagnostic? Archive(Dictionary<string, byte[]> files)
    {
        var start = new ProcessStartInfo("git") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var word in new[] { "archive", "--format=tar", Name!, "--", Directory }) start.ArgumentList.Add(word);
        try
        {
            using var git = Process.Start(start)!;
            var said = git.StandardError.ReadToEndAsync();
            using var tar = new MemoryStream();
            git.StandardOutput.BaseStream.CopyTo(tar);
            git.WaitForExit();
            if (git.ExitCode != 0) return Fault("revision-not-found", $"git cannot give `{Directory}` at `{Name}`: {said.Result.Trim().Split('\n')[0]}", "name a folder, or a branch, tag or commit of the repository you stand in");
            tar.Position = 0;
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
