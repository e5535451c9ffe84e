using System.Reflection;
using System.Runtime.Versioning;
using System.Text.RegularExpressions;
using Compat.Tests.Shipped;

namespace Compat.Tests.PublicApi;

/// <summary>Holds a public API against the file that records it.</summary>
internal static partial class RecordedApi
{
    /// <summary>
    /// Fails where they differ; with COMPAT_ACCEPT=1 it writes the file instead. The file records the build for .NET: the one for netstandard2.0 is held
    /// against it too, without the JSON that only the former has.
    /// </summary>
    public static void Check(Assembly assembly, params string[] path)
    {
        var file = RepositoryFile.Of(path);
        var current = ApiText.Of(assembly);
        var standard = assembly.GetCustomAttribute<TargetFrameworkAttribute>()!.FrameworkName.StartsWith(".NETStandard", StringComparison.Ordinal);
        if (!standard && Environment.GetEnvironmentVariable("COMPAT_ACCEPT") == "1")
        {
            File.WriteAllText(file, current);
            return;
        }

        var recorded = File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal);
        if (standard) recorded = JsonTypes().Replace(recorded, "");
        Assert.True(
            current == recorded,
            $"the public API has changed; if that is meant, write {string.Join('/', path)} anew with COMPAT_ACCEPT=1 and review it:\n"
                + $"{Difference(recorded, current)}");
    }

    [GeneratedRegex(@"^\S[^\n]* Compat\.Serialization\.[^\n]*\n(?: [^\n]*\n)*", RegexOptions.Multiline)]
    private static partial Regex JsonTypes();

    private static string Difference(string recorded, string current)
    {
        var (before, after) = (Lines(recorded), Lines(current));
        return string.Join("\n", before.Except(after).Select(line => $"- {line}").Concat(after.Except(before).Select(line => $"+ {line}")));
    }

    /// <summary>Each member with the type it is of.</summary>
    private static List<string> Lines(string text)
    {
        var lines = new List<string>();
        var type = "";
        foreach (var line in text.Split('\n'))
        {
            if (!line.StartsWith(' ')) type = line;
            lines.Add(line.StartsWith(' ') ? $"{type}: {line.Trim()}" : line);
        }

        return lines;
    }
}
