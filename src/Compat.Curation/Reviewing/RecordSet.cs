using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>The records of one kind in a knowledge base: how they are listed, named and put back.</summary>
internal sealed class RecordSet
{
    /// <summary>Fields in which only the wording, the date of review or a name for people stands.</summary>
    private static readonly HashSet<string> Words =
        ["name", "also-called", "note", "why", "reason", "reviewed", "title", "publisher", "edition", "section", "address", "agent-rests-on", "with-agent-rests-on"];

    private RecordSet(RecordKind kind, Func<KnowledgeData, IEnumerable<KeyValuePair<string, object>>> of, Func<KnowledgeData, IEnumerable<object>, KnowledgeData> with) =>
        (Kind, Of, With) = (kind, of, with);

    /// <summary>All kinds of record.</summary>
    public static IReadOnlyList<RecordSet> All { get; } =
    [
        Make(RecordKind.Source, data => data.Sources, one => one.Id.Value, (data, all) => data with { Sources = all }),
        Make(RecordKind.Material, data => data.Materials, one => one.Id.Value, (data, all) => data with { Materials = all }),
        Make(RecordKind.Part, data => data.Parts, one => one.Id.Value, (data, all) => data with { Parts = all }),
        Make(RecordKind.Agent, data => data.Agents, one => one.Id.Value, (data, all) => data with { Agents = all }),
        Make(RecordKind.Rule, data => data.Rules, one => one.Id.Value, (data, all) => data with { Rules = all }),
        Make(RecordKind.Convention, data => data.Conventions, one => Space.Words.Of(one.Key), (data, all) => data with { Conventions = all }),
        Make(RecordKind.StandingRule, data => data.StandingRules, one => one.Id.Value, (data, all) => data with { StandingRules = all }),
        Make(RecordKind.Organism, data => data.Organisms, one => one.Id.Value, (data, all) => data with { Organisms = all }),
        Make(RecordKind.Level, data => data.Levels, one => Space.Words.Of(one.Level), (data, all) => data with { Levels = all }),
        Make(RecordKind.TestStandard, data => data.TestStandards, one => one.Code.Value, (data, all) => data with { TestStandards = all }),
        Make(RecordKind.Need, data => data.Needs, one => one.Id.Value, (data, all) => data with { Needs = all }),
        Make(RecordKind.Claim, data => data.Claims, one => one.Id.Value, (data, all) => data with { Claims = all }),
        Make(RecordKind.Mixing, data => data.MixingHazards, one => one.Id.Value, (data, all) => data with { MixingHazards = all }),
        Make(RecordKind.PersonRule, data => data.PersonRules, one => one.Id.Value, (data, all) => data with { PersonRules = all }),
        Make(RecordKind.Protection, data => data.Protections, one => one.Id.Value, (data, all) => data with { Protections = all }),
        Make(RecordKind.InstructionWord, data => data.InstructionWords, one => one.Id.Value, (data, all) => data with { InstructionWords = all }),
        Make(RecordKind.Occasion, data => data.Occasions, one => one.Id.Value, (data, all) => data with { Occasions = all }),
        Make(RecordKind.HarmlessMeeting, data => data.HarmlessMeetings, one => one.Id.Value, (data, all) => data with { HarmlessMeetings = all }),
    ];

    /// <summary>The kind.</summary>
    public RecordKind Kind { get; }

    /// <summary>The records with their ids, as a file names them.</summary>
    public Func<KnowledgeData, IEnumerable<KeyValuePair<string, object>>> Of { get; }

    /// <summary>The data with other records of the kind.</summary>
    public Func<KnowledgeData, IEnumerable<object>, KnowledgeData> With { get; }

    /// <summary>The set of a kind.</summary>
    public static RecordSet For(RecordKind kind) => All.First(set => set.Kind == kind);

    /// <summary>Whether a difference in a field changes no answer: of a source only its kind, whether it was read and how far it is trusted count.</summary>
    public bool IsWording(string field) =>
        field == "id" || (Kind == RecordKind.Source ? field is not ("kind" or "recalled" or "trust") : Words.Contains(field));

    private static RecordSet Make<T>(RecordKind kind, Func<KnowledgeData, IReadOnlyList<T>> of, Func<T, string> id, Func<KnowledgeData, T[], KnowledgeData> with) where T : class =>
        new(kind, data => of(data).Select(one => new KeyValuePair<string, object>(id(one), one)), (data, all) => with(data, all.Cast<T>().ToArray()));
}
