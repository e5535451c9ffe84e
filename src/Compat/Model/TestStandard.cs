namespace Compat.Model;

/// <summary>The field of use that a test is written for. On a device only the first two show anything.</summary>
public enum TestField
{
    /// <summary>Where disinfection is medically indicated.</summary>
    Medical,

    /// <summary>Hard surfaces, no field named.</summary>
    AnySurface,

    /// <summary>Food, industrial, domestic and institutional areas.</summary>
    FoodAndHousehold,

    /// <summary>Animals and where they are kept.</summary>
    Veterinary,

    /// <summary>Water in pipes, towers and pools.</summary>
    WaterSystems,

    /// <summary>Substances and products under development; says nothing of a use.</summary>
    Development,
}

/// <summary>How near a test comes to use.</summary>
public enum TestStep
{
    /// <summary>Phase 1: whether it kills at all.</summary>
    Basic,

    /// <summary>Phase 2, step 1: organisms in the liquid.</summary>
    Suspension,

    /// <summary>Phase 2, step 2: organisms dried on what is disinfected, as in use.</summary>
    Practical,
}

/// <summary>What a test is a test of.</summary>
public enum TestedOn
{
    /// <summary>Surfaces: wiped, sprayed or flooded.</summary>
    Surfaces,

    /// <summary>Instruments: immersed.</summary>
    Instruments,

    /// <summary>Hands and skin.</summary>
    Skin,

    /// <summary>Water in pipes, towers and pools.</summary>
    Water,
}

/// <summary>A published test that a label's claim may rest on, and how far it reaches.</summary>
[Record(Validation.RecordKind.TestStandard)]
public sealed record TestStandard
{
    /// <summary>Its code, without an edition.</summary>
    public required TestCode Code { get; init; }

    /// <summary>What it is, in a few words of our own.</summary>
    [Remark]
    public required string Name { get; init; }

    /// <summary>The field of use it is written for.</summary>
    public required TestField Field { get; init; }

    /// <summary>How near it comes to use.</summary>
    public required TestStep Step { get; init; }

    /// <summary>What it is a test of; at least one.</summary>
    public IReadOnlyList<TestedOn> On { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Whether it wipes: then it speaks of wiping only.</summary>
    public bool Wiping { get; init; }

    /// <summary>The most that it can show to be killed: whole groups, or organisms where it tests no more than these.</summary>
    public IReadOnlyList<OrganismTarget> Shows { get; init => field = Frozen.Of(value); } = [];

    /// <summary>Where the statements of this record come from.</summary>
    [Remark]
    public IReadOnlyList<SourceId> Sources { get; init => field = Frozen.Of(value); } = [];

    /// <summary>A remark for the reader.</summary>
    [Remark]
    public string? Note { get; init; }

    /// <summary>Whether it says anything of a method on a device.</summary>
    internal bool SpeaksOf(ApplicationMethod method) =>
        Field is TestField.Medical or TestField.AnySurface && method switch
        {
            <= ApplicationMethod.WetWipe => On.Contains(TestedOn.Surfaces),
            ApplicationMethod.Spray => !Wiping && On.Contains(TestedOn.Surfaces),
            ApplicationMethod.Chamber => false,
            _ => !Wiping && (On.Contains(TestedOn.Surfaces) || On.Contains(TestedOn.Instruments)),
        };

    /// <summary>
    /// Whether it can show that a group or an organism is killed: by name, or, where the organism needs no claim of its own, as one of its group.
    /// </summary>
    internal bool CanShow(KnowledgeData data, OrganismTarget target) =>
        Shows.Contains(target)
            || (data.Organisms.FirstOrDefault(o => o.Id == target.Organism) is { OwnClaim: false } organism
            && Shows.Contains(OrganismTarget.Of(organism.Group)));
}
