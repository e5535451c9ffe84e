namespace Compat.Model;

/// <summary>The records of a knowledge base before they are checked and compiled. The order of the lists means nothing.</summary>
public sealed record KnowledgeData
{
    /// <summary>What names this state of the data, for people: a date or version.</summary>
    public string Version { get; init; } = "unversioned";

    /// <summary>Materials.</summary>
    public IReadOnlyList<Material> Materials { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Part types.</summary>
    public IReadOnlyList<PartType> Parts { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Agent classes.</summary>
    public IReadOnlyList<AgentClass> Agents { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Sources.</summary>
    public IReadOnlyList<Source> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Rules.</summary>
    public IReadOnlyList<Rule> Rules { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Conventions.</summary>
    public IReadOnlyList<Convention> Conventions { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Standing rules.</summary>
    public IReadOnlyList<StandingRule> StandingRules { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Organisms.</summary>
    public IReadOnlyList<Organism> Organisms { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What each level includes.</summary>
    public IReadOnlyList<LevelMeaning> Levels { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Tests that claims of labels rest on.</summary>
    public IReadOnlyList<TestStandard> TestStandards { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What each contact asks.</summary>
    public IReadOnlyList<NeedRule> Needs { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Claims of efficacy.</summary>
    public IReadOnlyList<Claim> Claims { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Hazards of mixing.</summary>
    public IReadOnlyList<MixingHazard> MixingHazards { get; init => field = Frozen.Of(value); } = [];

    /// <summary>What is on record as harmless where two meet.</summary>
    public IReadOnlyList<HarmlessMeeting> HarmlessMeetings { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Person rules.</summary>
    public IReadOnlyList<PersonRule> PersonRules { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Protection of staff.</summary>
    public IReadOnlyList<Protection> Protections { get; init => field = Frozen.Of(value); } = [];

    /// <summary>How words of instructions are read.</summary>
    public IReadOnlyList<InstructionWord> InstructionWords { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Occasions.</summary>
    public IReadOnlyList<Occasion> Occasions { get; init => field = Frozen.Of(value); } = [];
}
