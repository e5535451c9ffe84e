using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Recorded;
using Compat.Knowledge;

namespace Compat.Curation.Reviewing;

/// <summary>The review of two states of a data folder, with site files over both.</summary>
public sealed record FolderReview
{
    /// <summary>What kept the files from being read; empty where nothing did.</summary>
    public required IReadOnlyList<Diagnostic> Unreadable { get; init; }

    /// <summary>Which state could not be read; null where both could.</summary>
    public Revision? UnreadableState { get; init; }

    /// <summary>What differs; null where the files could not be read.</summary>
    public ReviewReport? Report { get; init; }

    /// <summary>The knowledge base of HEAD; null where the files could not be read.</summary>
    public KnowledgeBase? Head { get; init; }

    /// <summary>Where the records of both states stand; null where the files could not be read.</summary>
    public EditPlaces? Places { get; init; }

    /// <summary>What kept recorded plans from being read or asked; empty where nothing did.</summary>
    public IReadOnlyList<Diagnostic> UnreadablePlans { get; init; } = [];

    /// <summary>The plans of which answers no longer hold: those that go stale between BASE and HEAD first, the most pressing of them first; null where none were given.</summary>
    public IReadOnlyList<StalePlan>? StalePlans { get; init; }

    /// <summary>How many plans were looked at.</summary>
    public int Plans { get; init; }

    /// <summary>Reads both states and compares them.</summary>
    /// <param name="before">BASE.</param>
    /// <param name="after">HEAD.</param>
    /// <param name="sitePaths">Site files, laid over both.</param>
    /// <param name="plans">A folder of plans and dossiers written earlier, asked again of HEAD; null where there is none.</param>
    /// <param name="progress">Told what is looked at; null where nobody watches.</param>
    /// <exception cref="TooManyBoxesException">One pair of part and agent needs more than 100,000 boxes.</exception>
    public static FolderReview Run(Revision before, Revision after, IReadOnlyList<string> sitePaths, string? plans = null, Action<string>? progress = null)
    {
        progress?.Invoke("files");
        var memory = new FileMemory();
        var states = new[] { before, after }.Select(state => (Read: state.Read(memory, out var fault), Fault: fault, state.Directory)).ToArray();
        var sites = GivenFile.Read(sitePaths);
        ReadResult? was = null, now = null;
        Parallel.Invoke(() => was = Built(states[0].Read, states[0].Fault, states[0].Directory, sites), () => now = Built(states[1].Read, states[1].Fault, states[1].Directory, sites));
        foreach (var (state, read) in new[] { (before, was!), (after, now!) })
            if (!read.IsClean) return new() { Unreadable = read.Diagnostics, UnreadableState = state };
        var report = DataReview.Run(was!.Data, was.Sites, now!.Data, now.Sites, progress);
        var review = new FolderReview { Unreadable = [], Report = report, Head = now.KnowledgeBase, Places = new EditPlaces(was.Places, now.Places) };
        return plans is null ? review : review.With(plans, was.KnowledgeBase!);
    }

    private FolderReview With(string plans, KnowledgeBase before)
    {
        var faults = new List<Diagnostic>();
        var files = Reasking.ReadAll(plans, faults);
        var stale = StalePlan.Of(files, before, Head!, Report!.Edits, faults);
        faults.Sort();
        return this with { UnreadablePlans = faults, StalePlans = stale, Plans = files.Count };
    }

    /// <summary>Compares a state with itself without one record and all that rests on it alone.</summary>
    /// <param name="state">The state.</param>
    /// <param name="id">The id of a rule, source, material or claim.</param>
    /// <param name="sitePaths">Site files over it.</param>
    /// <param name="progress">Told what is looked at; null where nobody watches.</param>
    /// <returns>Null where there is no such record.</returns>
    /// <exception cref="TooManyBoxesException">One pair of part and agent needs more than 100,000 boxes.</exception>
    public static FolderReview? Without(Revision state, string id, IReadOnlyList<string> sitePaths, Action<string>? progress = null)
    {
        progress?.Invoke("files");
        var read = Built(state.Read(new FileMemory(), out var fault), fault, state.Directory, GivenFile.Read(sitePaths));
        if (!read.IsClean) return new() { Unreadable = read.Diagnostics, UnreadableState = state };
        if (Withdrawal.Of(read.Data, read.Sites, id) is not { } without) return null;
        var report = DataReview.Run(read.Data, read.Sites, without.Data, without.Sites, progress);
        return new() { Unreadable = [], Report = report, Head = read.KnowledgeBase, Places = new EditPlaces(read.Places, read.Places) };
    }

    private static ReadResult Built(ReadResult? read, Diagnostic? fault, string directory, IReadOnlyList<GivenFile> siteFiles) => read is null
        ? new() { Data = new KnowledgeData(), Diagnostics = [fault!], Places = new PlaceBuilder().Build() }
        : KnowledgeLoader.Build(read, directory, siteFiles);
}
