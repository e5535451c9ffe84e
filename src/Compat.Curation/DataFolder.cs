using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation;

/// <summary>Reads a folder of data files.</summary>
public static class DataFolder
{
    /// <summary>Reads the records of a folder, without checking references and meaning.</summary>
    /// <param name="directory">The folder; its files are shown by this name.</param>
    public static ReadResult Read(string directory) => Read(directory, new FileMemory());

    /// <summary>Reads the records of a folder; a file whose text was read before is not read again.</summary>
    internal static ReadResult Read(string directory, FileMemory memory)
    {
        var faults = new List<Diagnostic>();
        var found = FolderFiles.Find(directory, faults);
        var isLookedThrough = faults.Count == 0;
        var (files, gaps) = ReadAll((found ?? []).Select(one => (one.Path, Bytes: (Func<string, List<Diagnostic>, byte[]?>)((shownAs, list) => SourceReader.ReadBytes(one.Full, shownAs, list)))), directory, memory, faults);
        if (files.Count == 0 && faults.Count == 0)
            faults.Add(new("folder-empty", "the folder holds no data files", "it needs `materials/`, `parts/`, `agents/`, `sources/` and `rules/`", directory, null));
        return Assemble(files, faults, isLookedThrough ? gaps : FolderLayout.RecordKinds);
    }

    /// <summary>Reads records from files already in memory, for example of a revision.</summary>
    /// <param name="files">Bytes by the path inside the data folder, parts joined by <c>/</c>.</param>
    /// <param name="shownAs">The name the folder is shown by.</param>
    public static ReadResult Read(IReadOnlyDictionary<string, byte[]> files, string shownAs) => Read(files, shownAs, new FileMemory());

    /// <summary>Reads records from files in memory; a file whose text was read before is not read again.</summary>
    internal static ReadResult Read(IReadOnlyDictionary<string, byte[]> files, string shownAs, FileMemory memory)
    {
        var faults = new List<Diagnostic>();
        var (read, gaps) = ReadAll(files.OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => (pair.Key, Bytes: (Func<string, List<Diagnostic>, byte[]?>)((_, _) => pair.Value))), shownAs, memory, faults);
        return Assemble(read, faults, gaps);
    }

    /// <summary>Reads files side by side, in the order of their paths, with the kinds of record that are in one that is no text or has a wrong name.</summary>
    private static (List<DataFile> Files, IReadOnlyCollection<RecordKind> Gaps) ReadAll(IEnumerable<(string Path, Func<string, List<Diagnostic>, byte[]?> Bytes)> found, string directory, FileMemory memory, List<Diagnostic> faults)
    {
        var known = found.Select(one => (one.Bytes, Name: Shown(directory, one.Path), one.Path, Kind: FolderLayout.KindOf(one.Path, Shown(directory, one.Path), faults))).ToArray();
        var files = new DataFile?[known.Length];
        var faultsOf = known.Select(_ => new List<Diagnostic>()).ToArray();
        Parallel.For(0, known.Length, i => files[i] = known[i].Kind is { } kind ? DataFile.Read(kind, known[i].Bytes(known[i].Name, faultsOf[i]), known[i].Name, faultsOf[i], memory) : null);
        foreach (var some in faultsOf) faults.AddRange(some);
        var gaps = known.Where((one, i) => files[i] is null && faults.Exists(fault => fault.File == one.Name)).SelectMany(one => FolderLayout.RecordsIn(one.Path));
        return (files.OfType<DataFile>().ToList(), gaps.ToHashSet());
    }

    /// <summary>Reads the records of a single file, without checking references and meaning.</summary>
    internal static ReadResult ReadOne(FileKind kind, byte[] bytes, string shownAs)
    {
        var faults = new List<Diagnostic>();
        return DataFile.Read(kind, bytes, shownAs, faults) is { } file ? Assemble([file], faults, []) : Assemble([], faults, FolderLayout.RecordKinds);
    }

    /// <summary>Reads a folder and site files, checks them, and makes a knowledge base of them.</summary>
    /// <param name="directory">The folder.</param>
    /// <param name="sitePaths">Site files, laid over one after the other.</param>
    public static ReadResult Load(string directory, params IReadOnlyList<string> sitePaths) =>
        KnowledgeLoader.Build(Read(directory), directory, GivenFile.Read(sitePaths));

    /// <summary>The name a file of a folder is shown by.</summary>
    internal static string Shown(string directory, string path) =>
        directory.Length == 0 || directory is "." ? path : directory.Replace('\\', '/').TrimEnd('/') + "/" + path;

    private static ReadResult Assemble(List<DataFile> files, List<Diagnostic> faults, IReadOnlyCollection<RecordKind> gaps)
    {
        var bases = new AgentBases();
        foreach (var record in RecordsOf(files, FileKind.Agents)) bases.Add(record.Mapping);
        var boxes = new BoxReader(bases);
        var rules = new RuleReader(boxes);
        var agents = new AgentReader(boxes);
        var places = new PlaceBuilder();
        var data = new KnowledgeData
        {
            Version = VersionOf(files) ?? "unversioned",
            Sources = places.Read(RecordKind.Source, RecordsOf(files, FileKind.Sources), BasicReaders.ReadSource, one => one.Id.Value),
            Materials = places.Read(RecordKind.Material, RecordsOf(files, FileKind.Materials), BasicReaders.ReadMaterial, one => one.Id.Value),
            Agents = places.Read(RecordKind.Agent, RecordsOf(files, FileKind.Agents), agents.Read, one => one.Id.Value),
            Parts = places.Read(RecordKind.Part, RecordsOf(files, FileKind.Parts), BasicReaders.ReadPart, one => one.Id.Value),
            Rules = places.Read(RecordKind.Rule, RecordsOf(files, FileKind.Rules), one => rules.Read(one, ofSite: false), one => one.Id.Value),
            Conventions = places.Read(RecordKind.Convention, RecordsOf(files, FileKind.Conventions), BasicReaders.ReadConvention, one => Space.Words.Of(one.Key)),
            StandingRules = places.Read(RecordKind.StandingRule, RecordsOf(files, FileKind.Standing), new StandingReader(boxes).Read, one => one.Id.Value),
        };
        data = WithEfficacyAndPeople(data, files, boxes, places);
        foreach (var file in files) file.Finish(faults);
        IdHelp.Offer(faults, data);
        faults.Sort();
        return new()
        {
            Data = data,
            Diagnostics = faults,
            Places = places.Build(),
            Gaps = gaps.Concat(places.Gaps).Concat(files.Where(file => file.HasGaps).SelectMany(file => FolderLayout.RecordsOf(file.Kind))).ToHashSet(),
        };
    }

    private static KnowledgeData WithEfficacyAndPeople(KnowledgeData data, List<DataFile> files, BoxReader boxes, PlaceBuilder places)
    {
        var people = new PeopleReader(boxes);
        return data with
        {
            Organisms = places.Read(RecordKind.Organism, RecordsOf(files, FileKind.Organisms), LevelReaders.ReadOrganism, one => one.Id.Value),
            Levels = places.Read(RecordKind.Level, RecordsOf(files, FileKind.Levels), LevelReaders.ReadLevel, one => Space.Words.Of(one.Level)),
            TestStandards = places.Read(RecordKind.TestStandard, RecordsOf(files, FileKind.TestStandards), LevelReaders.ReadTest, one => one.Code.Value),
            Needs = places.Read(RecordKind.Need, RecordsOf(files, FileKind.Needs), LevelReaders.ReadNeed, one => one.Id.Value),
            Claims = places.Read(RecordKind.Claim, RecordsOf(files, FileKind.Efficacy), new ClaimReader(boxes).Read, one => one.Id.Value),
            MixingHazards = places.Read(RecordKind.Mixing, RecordsOf(files, FileKind.Mixing).Where(one => !MixingReader.IsHarmless(one)), new MixingReader(boxes).Read, one => one.Id.Value),
            HarmlessMeetings = places.Read(RecordKind.HarmlessMeeting, RecordsOf(files, FileKind.Mixing).Where(MixingReader.IsHarmless), MixingReader.ReadHarmless, one => one.Id.Value),
            PersonRules = places.Read(RecordKind.PersonRule, RecordsOf(files, FileKind.Persons), people.ReadRule, one => one.Id.Value),
            Protections = places.Read(RecordKind.Protection, RecordsOf(files, FileKind.Protection), people.ReadProtection, one => one.Id.Value),
            InstructionWords = places.Read(RecordKind.InstructionWord, RecordsOf(files, FileKind.InstructionWords), new InstructionWordReader(boxes).Read, one => one.Id.Value),
            Occasions = places.Read(RecordKind.Occasion, RecordsOf(files, FileKind.Occasions), LevelReaders.ReadOccasion, one => one.Id.Value),
        };
    }

    private static IEnumerable<RecordFields> RecordsOf(List<DataFile> files, FileKind kind) =>
        files.Where(file => file.Kind == kind).SelectMany(file => file.Records);

    private static string? VersionOf(List<DataFile> files) => files
        .Where(file => file.Kind == FileKind.Version)
        .Select(file => file.Root is YamlMapping root ? new RecordFields(root, file.Faults).Text("version") : null)
        .FirstOrDefault();
}
