using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Recorded;

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

    /// <summary>The site files that were laid over: those named, and those of the data folder that differ.</summary>
    public IReadOnlyList<string> Sites { get; init; } = [];

    /// <summary>What kept recorded plans from being read or asked; empty where nothing did.</summary>
    public IReadOnlyList<Diagnostic> UnreadablePlans { get; init; } = [];

    /// <summary>
    /// The plans of which answers no longer hold: those that go stale between BASE and HEAD first, the most pressing of them first; null where none were
    /// given.
    /// </summary>
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
        var given = GivenFile.Read(sitePaths);
        var states = new[] { before, after }.Select(state => new StateFiles(state, memory)).ToArray();
        var others = OtherSites(states[0], states[1]).Where(key => !sitePaths.Any(path => states.Any(state => state.IsFile(path, key)))).ToArray();
        ReadResult? was = null, now = null;
        Parallel.Invoke(() => was = states[0].Build(given, others), () => now = states[1].Build(given, others));
        foreach (var (state, read) in new[] { (before, was!), (after, now!) })
            if (!read.IsClean) return new() { Unreadable = read.Diagnostics, UnreadableState = state };
        var faults = new List<Diagnostic>();
        var patterns = PatternReview.Of(states[0].Beside, states[1].Beside, faults).ToArray();
        if (faults.Count > 0) return new() { Unreadable = faults, UnreadableState = after };
        var report = DataReview.Run(was!.Data, was.Sites, now!.Data, now.Sites, patterns, progress);
        var review = new FolderReview
        {
            Unreadable = [],
            Report = report,
            Head = now.KnowledgeBase,
            Places = new EditPlaces(was.Places, now.Places),
            Sites = [.. sitePaths, .. others.Where(states[1].Beside.ContainsKey).Select(key => DataFolder.Shown(after.Directory, key))]
        };
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
        var read = new StateFiles(state, new FileMemory()).Build(GivenFile.Read(sitePaths), []);
        if (!read.IsClean) return new() { Unreadable = read.Diagnostics, UnreadableState = state };
        if (Withdrawal.Of(read.Data, read.Sites, id) is not { } without) return null;
        var report = DataReview.Run(read.Data, read.Sites, without.Data, without.Sites, progress);
        return new() { Unreadable = [], Report = report, Head = read.KnowledgeBase, Places = new EditPlaces(read.Places, read.Places) };
    }

    /// <summary>The example sites of the data folder that are not the same in both states.</summary>
    private static IEnumerable<string> OtherSites(StateFiles before, StateFiles after) =>
        before.Beside.Keys.Union(after.Beside.Keys).Where(path => path.StartsWith("demo/", StringComparison.Ordinal))
        .Where(path => !(before.Beside.TryGetValue(path, out var one) && after.Beside.TryGetValue(path, out var other) && one.AsSpan().SequenceEqual(other)))
            .Order(StringComparer.Ordinal);

    /// <summary>The files of one state.</summary>
    private sealed class StateFiles
    {
        private readonly ReadResult? _read;
        private readonly Diagnostic? _fault;

        public StateFiles(Revision state, FileMemory memory)
        {
            State = state;
            _read = state.Read(memory, Beside, out _fault);
        }

        public Revision State { get; }

        /// <summary>Sites and patterns, by their path in the folder.</summary>
        public Dictionary<string, byte[]> Beside { get; } = [];

        /// <summary>Whether a path is that of a file of the folder.</summary>
        public bool IsFile(string path, string key) => Path.GetFullPath(path) == Path.GetFullPath(Path.Combine(State.Directory, key));

        /// <summary>
        /// The state with sites: those named as they were then, or, where they were not there, as they are; those of the folder where it has them.
        /// </summary>
        public ReadResult Build(IReadOnlyList<GivenFile> named, IReadOnlyList<string> ofFolder)
        {
            if (_read is null) return new() { Data = new KnowledgeData(), Diagnostics = [_fault!], Places = new PlaceBuilder().Build() };
            var then = named.Select(file => State.FileThen(file.Path) is { } bytes ? new GivenFile(file.Path, bytes, []) : file);
            var own = ofFolder.Where(Beside.ContainsKey).Select(key => new GivenFile(DataFolder.Shown(State.Directory, key), Beside[key], []));
            return KnowledgeLoader.Build(_read, State.Directory, [.. then, .. own]);
        }
    }
}

/// <summary>Takes one record out of a knowledge base with all that rests on it alone.</summary>
internal static class Withdrawal
{
    /// <summary>
    /// The records without a rule, a source (rules and claims that cite nothing else fall too), the rules on a material, or a claim; null where nothing has
    /// the id.
    /// </summary>
    public static (KnowledgeData Data, IReadOnlyList<Site> Sites)? Of(KnowledgeData data, IReadOnlyList<Site> sites, string id)
    {
        var known = data.Rules.Concat(sites.SelectMany(site => site.Rules)).Any(rule => rule.Id.Value == id)
            || data.Sources.Concat(sites.SelectMany(site => site.Sources)).Any(source => source.Id.Value == id)
            || data.Materials.Any(material => material.Id.Value == id) || data.Claims.Any(claim => claim.Id.Value == id);
        if (!known) return null;
        var gone = data.Rules.Concat(sites.SelectMany(site => site.Rules)).Where(rule => Falls(rule, id)).Select(rule => rule.Id).ToHashSet();
        var left = data with
        {
            Rules = Left(data.Rules),
            Claims = data.Claims.Where(claim => claim.Id.Value != id && !IsOnly(claim.Sources, id))
                .Select(claim => claim with { Sources = Others(claim.Sources, id) }).ToArray(),
            PersonRules = data.PersonRules.Where(rule => !IsOnly(rule.Sources, id)).ToArray(),
            MixingHazards = data.MixingHazards.Where(hazard => !IsOnly(hazard.Sources, id)).ToArray(),
            HarmlessMeetings = data.HarmlessMeetings.Where(meeting => !IsOnly(meeting.Sources, id)).ToArray(),
            Sources = data.Sources.Where(source => source.Id.Value != id).ToArray(),
        };
        return (left, sites.Select(site => site with { Rules = Left(site.Rules), Sources = site.Sources.Where(source => source.Id.Value != id).ToArray() })
            .ToArray());

        Rule[] Left(IReadOnlyList<Rule> rules) => rules.Where(rule => !gone.Contains(rule.Id))
            .Select(rule => rule with { Sources = Others(rule.Sources, id), Overrides = rule.Overrides.Where(other => !gone.Contains(other)).ToArray() })
                .ToArray();
    }

    private static bool Falls(Rule rule, string id) => rule.Id.Value == id || rule.Target.Material?.Value == id || IsOnly(rule.Sources, id);

    private static bool IsOnly(IReadOnlyList<SourceId> sources, string id) => sources.Count > 0 && sources.All(source => source.Value == id);

    private static SourceId[] Others(IReadOnlyList<SourceId> sources, string id) => sources.Where(source => source.Value != id).ToArray();
}
