using System.ComponentModel;
using System.Diagnostics;

namespace Compat.Curation.Reviewing;

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
