using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Curation.Checking;

/// <summary>The check of a data folder, with site files over it.</summary>
public sealed record FolderCheck
{
    /// <summary>What kept the files from being read; empty where nothing did.</summary>
    public required IReadOnlyList<Diagnostic> Unreadable { get; init; }

    /// <summary>What was found; null where the files could not be read.</summary>
    public CheckReport? Report { get; init; }

    /// <summary>Where each record stands.</summary>
    public required SourceMap Places { get; init; }

    /// <summary>What was checked, without the sites; null where the files could not be read.</summary>
    public KnowledgeData? Data { get; init; }

    /// <summary>The unit of an agent's strength; null where there is none or no such agent.</summary>
    public StrengthUnit? BasisOf(string? agent)
    {
        while (Data?.Agents.FirstOrDefault(one => one.Id.Value == agent) is { } found)
        {
            if (found.Basis is { } basis) return basis;
            agent = found.Under?.Value;
        }

        return null;
    }

    /// <summary>Reads a folder and site files, and checks them.</summary>
    /// <param name="directory">The folder.</param>
    /// <param name="sitePaths">Site files, laid over one after the other.</param>
    /// <param name="options">What to look at.</param>
    /// <exception cref="TooManyBoxesException">One pair of part and agent needs more than 100,000 boxes.</exception>
    public static FolderCheck Run(string directory, IReadOnlyList<string> sitePaths, CheckOptions options)
    {
        options.Progress?.Invoke("files");
        var read = DataFolder.Read(directory);
        var faults = read.Diagnostics.ToList();
        var places = read.Places;
        var sites = new List<Site>();
        var files = GivenFile.Read(sitePaths);
        foreach (var file in files)
        {
            var site = SiteFile.Read(file, read.Data);
            faults.AddRange(site.Diagnostics);
            places = places.With(site.Places);
            if (site.Site is not null) sites.Add(site.Site);
        }

        if (faults.Count > 0) return new() { Unreadable = KnowledgeLoader.Build(read, directory, files).Diagnostics, Places = places };
        var report = DataCheck.Run(read.Data, sites, options, out var problems);
        foreach (var problem in problems)
            faults.Add(ProblemDiagnostic.Of(problem, places.Find(problem.Place), places, directory));
        faults.Sort();
        return new() { Unreadable = faults, Report = report, Places = places, Data = read.Data };
    }
}
