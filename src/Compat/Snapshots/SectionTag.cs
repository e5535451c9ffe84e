namespace Compat.Snapshots;

/// <summary>The sections behind the first records of a snapshot. Numbers are never reused; a reader skips one it does not know.</summary>
internal enum SectionTag
{
    PartCare = 1,
    StandingFacts = 2,
    Organisms = 3,
    Levels = 4,
    Needs = 5,
    Claims = 6,
    MixingHazards = 7,
    PersonRules = 8,
    Protections = 9,
    InstructionWords = 10,
    Occasions = 11,
    Orders = 12,
    RuleRemarks = 13,
}
