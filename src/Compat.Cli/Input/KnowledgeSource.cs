using System.Runtime.CompilerServices;
using Compat.Curation;
using Compat.Curation.Diagnostics;

namespace Compat.Cli.Input;

/// <summary>Finds the knowledge base a call speaks of.</summary>
public static class KnowledgeSource
{
    /// <summary>The shipped knowledge base, or that of a folder, with sites laid over it.</summary>
    /// <returns>Null where files are wrong; what is wrong has been written then.</returns>
    public static KnowledgeBase? Load(string? directory, IReadOnlyList<string> sites, TextWriter stderr) =>
        directory is null && sites.Count == 0 ? KnowledgeBase.Shipped : Read(directory, sites, stderr);

    /// <remarks>Kept apart, so that a call on the shipped data alone never loads what reads files.</remarks>
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static KnowledgeBase? Read(string? directory, IReadOnlyList<string> sites, TextWriter stderr)
    {
        var faults = new List<Diagnostic>();
        var kb = directory is null ? LayOver(KnowledgeBase.Shipped, sites, faults) : ReadFolder(directory, sites, faults);
        stderr.Write(DiagnosticText.Render(faults));
        return faults.Count == 0 ? kb : null;
    }

    private static KnowledgeBase? ReadFolder(string directory, IReadOnlyList<string> sites, List<Diagnostic> faults)
    {
        var read = DataFolder.Load(directory, sites);
        faults.AddRange(read.Diagnostics);
        return read.KnowledgeBase;
    }

    private static KnowledgeBase LayOver(KnowledgeBase kb, IReadOnlyList<string> sites, List<Diagnostic> faults)
    {
        foreach (var path in sites)
        {
            var read = SiteFile.Read(path, kb.Data);
            faults.AddRange(read.Diagnostics);
            if (read.Site is null || !read.IsClean) continue;
            var problems = kb.TryWith(read.Site, out var overlaid);
            foreach (var problem in problems)
            {
                faults.Add(read.Places.Find(problem.Place) is { } place
                    ? Diagnostic.At(place, problem.Code, problem.Message, problem.Help)
                    : new Diagnostic(problem.Code, problem.Message, problem.Help, path, null));
            }

            kb = overlaid ?? kb;
        }

        return kb;
    }
}
