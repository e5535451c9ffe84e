namespace Compat.Snapshots;

/// <summary>The sections of a snapshot, each the records of one kind. Numbers are never reused; a reader skips one it does not know.</summary>
internal enum SectionTag
{
    Materials = 1,
    Parts = 2,
    Agents = 3,
    Sources = 4,
    Rules = 5,
    Conventions = 6,
    StandingRules = 7,
    Organisms = 8,
    Levels = 9,
    Needs = 10,
    Claims = 11,
    MixingHazards = 12,
    PersonRules = 13,
    Protections = 14,
    InstructionWords = 15,
    Occasions = 16,
    HarmlessMeetings = 17,
    TestStandards = 18,
}
