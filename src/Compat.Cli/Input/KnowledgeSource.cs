using System.Runtime.CompilerServices;
using Compat.Curation;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Cli.Input;

/// <summary>Finds the knowledge base a call speaks of.</summary>
public static class KnowledgeSource
{
    /// <summary>The shipped knowledge base, or that of a folder, with sites laid over it.</summary>
    /// <returns>Null where files are wrong; what is wrong has been written then.</returns>
    public static KnowledgeBase? Load(string? directory, IReadOnlyList<string> sites, TextWriter stderr) => Load(directory, sites, stderr, out _);

    /// <summary>The same, with where the records stand; null for the shipped knowledge base alone.</summary>
    public static KnowledgeBase? Load(string? directory, IReadOnlyList<string> sites, TextWriter stderr, out SourceMap? places)
    {
        places = null;
        return directory is null && sites.Count == 0 ? KnowledgeBase.Shipped : Read(directory, sites, stderr, out places);
    }

    /// <remarks>Kept apart, so that a call on the shipped data alone never loads what reads files.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static KnowledgeBase? Read(string? directory, IReadOnlyList<string> sites, TextWriter stderr, out SourceMap? places)
    {
        var read = directory is null ? SiteFile.LayOver(KnowledgeBase.Shipped, sites) : DataFolder.Load(directory, sites);
        stderr.Write(DiagnosticText.Render(read.Diagnostics));
        places = read.Places;
        return read.KnowledgeBase;
    }
}
