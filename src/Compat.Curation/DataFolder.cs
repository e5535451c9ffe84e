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
        var (files, gaps) = ReadAll(
            (found ?? [])
            .Select(one => (one.Path, Bytes: (Func<string, List<Diagnostic>, byte[]?>)((shownAs, list) => SourceReader.ReadBytes(one.Full, shownAs, list)))),
            directory, memory, faults);
        if (files.Count == 0 && faults.Count == 0)
            faults.Add(
                new("folder-empty", "the folder holds no data files", "it needs `materials/`, `parts/`, `agents/`, `sources/` and `rules/`", directory, null));
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
        var (read, gaps) = ReadAll(
            files.OrderBy(pair => pair.Key, StringComparer.Ordinal)
            .Select(pair => (pair.Key, Bytes: (Func<string, List<Diagnostic>, byte[]?>)((_, _) => pair.Value))), shownAs, memory, faults);
        return Assemble(read, faults, gaps);
    }

    /// <summary>Reads files side by side, in the order of their paths, with the kinds of record that are in one that is no text or has a wrong name.</summary>
    private static (List<DataFile> Files, IReadOnlyCollection<RecordKind> Gaps) ReadAll(
        IEnumerable<(string Path, Func<string, List<Diagnostic>, byte[]?> Bytes)> found, string directory, FileMemory memory, List<Diagnostic> faults)
    {
        var known = found.Select(
            one => (one.Bytes, Name: Shown(directory, one.Path), one.Path, Kind: FolderLayout.KindOf(one.Path, Shown(directory, one.Path), faults))).ToArray();
        var files = new DataFile?[known.Length];
        var faultsOf = known.Select(_ => new List<Diagnostic>()).ToArray();
        Parallel.For(
            0, known.Length, i => files[i] = known[i].Kind is { } kind
            ? DataFile.Read(kind, known[i].Bytes(known[i].Name, faultsOf[i]), known[i].Name, faultsOf[i], memory) : null);
        foreach (var some in faultsOf) faults.AddRange(some);
        var gaps = known.Where((one, i) => files[i] is null && faults.Exists(fault => fault.File == one.Name))
            .SelectMany(one => FolderLayout.RecordsIn(one.Path));
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
        var reader = new RecordReader(new BoxReader(bases), ofSite: false);
        var places = new PlaceBuilder();
        var data = new KnowledgeData
        {
            Version = VersionOf(files) ?? "unversioned",
            Sources = Read(RecordKind.Source, FileKind.Sources, one => reader.ReadSource(one), one => one.Id.Value),
            Materials = Read(RecordKind.Material, FileKind.Materials, one => reader.ReadMaterial(one), one => one.Id.Value),
            Agents = Read(RecordKind.Agent, FileKind.Agents, one => reader.ReadAgentClass(one), one => one.Id.Value),
            Parts = Read(RecordKind.Part, FileKind.Parts, one => reader.ReadPartType(one), one => one.Id.Value),
            Rules = Read(RecordKind.Rule, FileKind.Rules, one => reader.ReadRule(one), one => one.Id.Value),
            Conventions = Read(RecordKind.Convention, FileKind.Conventions, RecordReader.ReadConvention, one => Space.Words.Of(one.Key)),
            StandingRules = Read(RecordKind.StandingRule, FileKind.Standing, one => reader.ReadStandingRule(one), one => one.Id.Value),
            Organisms = Read(RecordKind.Organism, FileKind.Organisms, one => reader.ReadOrganism(one), one => one.Id.Value),
            Levels = Read(RecordKind.Level, FileKind.Levels, one => reader.ReadLevelMeaning(one), one => Space.Words.Of(one.Level)),
            TestStandards = Read(RecordKind.TestStandard, FileKind.TestStandards, one => reader.ReadTestStandard(one), one => one.Code.Value),
            Needs = Read(RecordKind.Need, FileKind.Needs, one => reader.ReadNeedRule(one), one => one.Id.Value),
            Claims = Read(RecordKind.Claim, FileKind.Efficacy, one => reader.ReadClaim(one), one => one.Id.Value),
            MixingHazards = Read(RecordKind.Mixing, FileKind.Mixing, one => reader.ReadMixingHazard(one), one => one.Id.Value, one => !IsHarmless(one)),
            HarmlessMeetings =
                Read(RecordKind.HarmlessMeeting, FileKind.Mixing, one => reader.ReadHarmlessMeeting(one), one => one.Id.Value, IsHarmless),
            PersonRules = Read(RecordKind.PersonRule, FileKind.Persons, one => reader.ReadPersonRule(one), one => one.Id.Value),
            Protections = Read(RecordKind.Protection, FileKind.Protection, one => reader.ReadProtection(one), one => one.Id.Value),
            InstructionWords = Read(RecordKind.InstructionWord, FileKind.InstructionWords, one => reader.ReadInstructionWord(one), one => one.Id.Value),
            Occasions = Read(RecordKind.Occasion, FileKind.Occasions, one => reader.ReadOccasion(one), one => one.Id.Value),
        };
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

        static bool IsHarmless(RecordFields record) => record.Has("harmless");

        IReadOnlyList<T> Read<T>(RecordKind kind, FileKind file, Func<RecordFields, T?> read, Func<T, string> idOf, Func<RecordFields, bool>? isOne = null)
            where T : class =>
            places.Read(kind, RecordsOf(files, file).Where(one => isOne is null || isOne(one)), read, idOf);
    }

    private static IEnumerable<RecordFields> RecordsOf(List<DataFile> files, FileKind kind) =>
        files.Where(file => file.Kind == kind).SelectMany(file => file.Records);

    private static string? VersionOf(List<DataFile> files) => files
        .Where(file => file.Kind == FileKind.Version)
        .Select(file => file.Root is YamlMapping root ? new RecordFields(root, file.Faults).Text("version") : null)
        .FirstOrDefault();
}
