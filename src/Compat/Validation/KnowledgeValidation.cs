using Compat.Snapshots;

namespace Compat.Validation;

/// <summary>Checks the records of a knowledge base: what no schema of a single file can say.</summary>
internal static class KnowledgeValidation
{
    /// <summary>The densities that a liquid may have, in kg/L.</summary>
    public const decimal LeastDensity = 0.1m, MostDensity = 25m;

    public const string DensityRange = "a density lies in 0.1..25 kg/L";

    /// <summary>How many variants the materials of one part may make.</summary>
    public const int MostVariants = 64;

    public static IReadOnlyList<Problem> Check(KnowledgeData? data) =>
        SnapshotWriter.FaultsOf(data) is { Count: > 0 } faults ? faults : CheckRead(data!);

    /// <summary>Checks records that were read from a snapshot: what reading has shown already is not looked at again.</summary>
    public static IReadOnlyList<Problem> CheckRead(KnowledgeData data)
    {
        var scope = new Scope(data, []);
        scope.Duplicates(data.Materials, RecordKind.Material, m => m.Id.Value);
        scope.Duplicates(data.Parts, RecordKind.Part, p => p.Id.Value);
        scope.Duplicates(data.Agents, RecordKind.Agent, a => a.Id.Value);
        scope.Duplicates(data.Sources, RecordKind.Source, s => s.Id.Value);
        scope.Duplicates(data.Rules, RecordKind.Rule, r => r.Id.Value);
        scope.Duplicates(data.Conventions, RecordKind.Convention, c => Words.Of(c.Key));
        scope.Duplicates(data.StandingRules, RecordKind.StandingRule, s => s.Id.Value);
        TreeValidation.Check(scope, scope.Materials, RecordKind.Material, "material", Material.Root, m => m.Id, m => m.Under);
        TreeValidation.Check(scope, scope.Parts, RecordKind.Part, "part", PartType.Root, p => p.Id, p => p.Under);
        TreeValidation.Check(scope, scope.Agents, RecordKind.Agent, "agent", AgentClass.Root, a => a.Id, a => a.Under);
        if (scope.Problems.Any(problem => problem.Code == TreeValidation.TooDeep)) return scope.Problems;
        foreach (var material in scope.Materials.Values)
            new Field(scope, RecordKind.Material, material.Id.Value)["sources"].KnowsAll(scope.Sources, material.Sources, "source");
        foreach (var part in scope.Parts.Values) Part(scope, part);
        foreach (var agent in scope.Agents.Values) Agent(scope, agent);
        foreach (var rule in scope.Rules.Values) RuleValidation.Check(scope, rule, inSite: false);
        OverrideValidation.Check(scope, scope.Rules.Values);
        foreach (var standing in data.StandingRules) Standing(scope, standing);
        EfficacyValidation.Check(scope);
        ClaimValidation.Check(scope);
        MixingValidation.Check(scope);
        PeopleValidation.Check(scope);
        InstructionWordValidation.Check(scope);
        OccasionValidation.Check(scope);
        StandingFactValidation.Check(scope);
        Conventions(scope);
        return scope.Problems;
    }

    public static void Slots(Scope scope, Field at, IReadOnlyList<MaterialSlot> slots)
    {
        for (var i = 0; i < slots.Count; i++)
        {
            var members = slots[i].OneOf;
            if (members.Count == 0) at[i].Wrong("empty-one-of", "`one-of` names nothing");
            else if (members.Count == 1) at[i].Knows(scope.Materials, members[0], "material");
            else at[i]["one-of"].KnowsAll(scope.Materials, members, "material");
        }

        if (MaterialList.Variants(slots) > MostVariants) at.Wrong("too-many-variants", $"the choices of `one-of` make more than {MostVariants} variants");
    }

    private static void Part(Scope scope, PartType part)
    {
        var at = new Field(scope, RecordKind.Part, part.Id.Value);
        if (part.Materials is { } slots) Slots(scope, at["materials"], slots);
        else if (part.MaterialsKnown is not null) at["materials-known"].Wrong("known-without-materials", "`materials-known` without `materials`");
        at["dry-before-power"].Time(part.DryBeforePower);
        if (part.WaterIngress is { Numeral: < 0 or > 9 })
            at["water-ingress.code"].Wrong("outside-axis", "the numeral of protection against water lies in 0..9");
        if (part.WaterIngress is not null || part.Wettest is not null) Mark(scope, part, at[part.Wettest is null ? "water-ingress.code" : "wettest"]);
        at["duties"].Duties(part.Duties);
        at["sources"].KnowsAll(scope.Sources, part.Sources, "source");
    }

    /// <summary>A part that is marked against water, or lies below one that is, is no wetter than its mark was tested for.</summary>
    private static void Mark(Scope scope, PartType part, Field at)
    {
        if (scope.Stated(part.Id, p => p.WaterIngress) is not { } mark || scope.Stated(part.Id, p => p.Wettest) is not { } wettest
            || IngressOf(wettest) is not { } key) return;
        if (scope.Data.Conventions.FirstOrDefault(c => c.Key == key) is not { } carries || carries.Range.Contains(mark.Numeral)) return;
        at.Wrong(
            "mark-too-weak", $"`{part.Id}` stands `{Words.Of(wettest)}`, which {mark.Code} does not carry",
            $"`{Words.Of(wettest)}` needs a numeral in {carries.Range} (convention `{Words.Of(key)}`)");
    }

    private static ConventionKey? IngressOf(ApplicationMethod method) => method switch
    {
        ApplicationMethod.WetWipe => ConventionKey.IngressWetWipe,
        ApplicationMethod.Spray => ConventionKey.IngressSpray,
        ApplicationMethod.Rinse => ConventionKey.IngressRinse,
        ApplicationMethod.Immerse => ConventionKey.IngressImmerse,
        _ => null,
    };

    private static void Agent(Scope scope, AgentClass agent)
    {
        var at = new Field(scope, RecordKind.Agent, agent.Id.Value);
        if (agent.Basis is { } basis && agent.Under is { } under && scope.Basis(under) is { } above && above.Basis != basis.Basis)
            at["basis"].Wrong("other-basis", $"`{basis}` is another basis than that of the class above, `{above}`", "a child has its parent's basis");
        for (var i = 0; i < agent.Cas.Count; i++)
            if (!CasNumber.IsValid(agent.Cas[i]))
                at["cas"][i].Wrong("bad-cas", $"`{agent.Cas[i]}` is no CAS number", "digits-2 digits-check digit, and the check digit must fit");
        for (var i = 0; i < agent.Ec.Count; i++)
            if (!EcNumber.IsValid(agent.Ec[i]))
                at["ec"][i].Wrong("bad-ec", $"`{agent.Ec[i]}` is no EC number", "3 digits-3 digits-check digit, and the check digit must fit");
        var usual = at["usual"];
        if (agent.Usual.Strength is { } strength)
        {
            if (scope.Basis(agent.Id) is { } own) usual["strength"].Strength(strength, own);
            else usual["strength"].Wrong("no-basis", $"`{agent.Id}` has no basis for a strength");
        }

        if (agent.Usual.Ph is { } ph) usual["ph"].Range(ph, Axis.Ph, "pH");
        if (agent.Usual.Temperature is { } temperature) usual["temperature"].Range(temperature, Axis.Temperature);
        at["inactivated-by"].KnowsAll(scope.Agents, agent.InactivatedBy, "agent");
        Density(at["density"], agent.Density);
        if (agent.AvailableChlorine is < 0.001m or > 3m) at["available-chlorine"].Wrong("outside-axis", "a share of available chlorine lies in 0.001..3");
        if (agent.Cas.Count > 1)
        {
            // A figure by mass belongs to one substance: salts, hydrates and isomers differ in it.
            foreach (var (field, has) in new[] { ("available-chlorine", agent.AvailableChlorine is not null), ("density", agent.Density is not null) })
                if (has)
                    at[field].Wrong("one-figure", $"`{agent.Id}` has {agent.Cas.Count} CAS numbers and one `{field}`",
                        "give each number an agent of its own below this one, with its own figure");
        }

        at["duties"].Duties(agent.Duties);
        at["sources"].KnowsAll(scope.Sources, agent.Sources, "source");
        usual["sources"].KnowsAll(scope.Sources, agent.Usual.Sources, "source");
    }

    public static void Density(Field at, decimal? density)
    {
        if (density is < LeastDensity or > MostDensity) at.Wrong("outside-axis", DensityRange);
    }

    private static void Standing(Scope scope, StandingRule standing)
    {
        var at = new Field(scope, RecordKind.StandingRule, standing.Id.Value);
        if (standing.SpeaksOfRules && standing.Part is null == standing.Material is null)
            at.Wrong("one-target", "a standing rule holds for exactly one part type or material");
        if (standing.Part is { } part) at["part"].Knows(scope.Parts, part, "part");
        if (standing.Material is { } material) at["material"].Knows(scope.Materials, material, "material");
        if (at["agent"].Knows(scope.Agents, standing.Agent, "agent")) at["when"].Box(standing.When, standing.Agent);
        at["sources"].KnowsAll(scope.Sources, standing.Sources, "source");
    }

    private static void Conventions(Scope scope)
    {
        foreach (var key in Enum.GetValues<ConventionKey>())
        {
            var named = Words.Of(key);
            var record = new Field(scope, RecordKind.Convention, named);
            var at = record["value"];
            if (scope.Data.Conventions.FirstOrDefault(c => c.Key == key) is not { } convention)
                record.Wrong("no-convention", $"the convention `{named}` is missing");
            else if (key == ConventionKey.DamageOrder) Order(at, Words.All<Consequence>(), convention.Consequences.Select(Words.Of));
            else if (Convention.NamesOrder(key)) Order(at, Words.All<Hazard>(), convention.Hazards.Select(Words.Of));
            else if (Convention.NamesMethods(key) ? convention.Methods.IsEmpty : convention.Range.IsEmpty || convention.Range.IsWhole)
                at.Wrong("empty-convention", $"the convention `{named}` names no value");
            else if (key is ConventionKey.WindowShare or ConventionKey.WindowLeast or ConventionKey.MostProducts or ConventionKey.UsesShare
                && convention.Range.Upper is null)
                at.Wrong("convention-without-end", $"the convention `{named}` names no upper end", "write `= ` or `<= ` before the figure");
            else if (!Convention.NamesMethods(key)) at.Range(convention.Range, ValuesOf(key), $"the convention `{named}`");
        }
    }

    /// <summary>The values that the figure of a convention can have.</summary>
    private static Interval ValuesOf(ConventionKey key) => key switch
    {
        ConventionKey.UnstatedTemperature or ConventionKey.AssumedTemperature or ConventionKey.ClaimTemperature => Axes.RangeOf(Axis.Temperature),
        ConventionKey.UnstatedPh or ConventionKey.WaterPh or ConventionKey.PurifiedWaterPh => Axes.RangeOf(Axis.Ph),
        ConventionKey.UnstatedExposureTime => Axes.RangeOf(Axis.ExposureTime),
        ConventionKey.UnstatedUses => Axes.RangeOf(Axis.Uses),
        ConventionKey.UnstatedDilution => Axes.RangeOf(Axis.Dilution),
        ConventionKey.SolutionDensity => Interval.Closed(LeastDensity, MostDensity),
        ConventionKey.MostProducts => Interval.Closed(1m, 32m),
        ConventionKey.UsesShare => new(0m, false, 1_000_000m, true),
        _ => Interval.AtLeast(0m),
    };

    /// <summary>An order names every word once: what it leaves out would be in no class.</summary>
    private static void Order(Field at, IEnumerable<string> all, IEnumerable<string> named)
    {
        var order = named.ToArray();
        var missing = all.Except(order).ToArray();
        if (missing.Length > 0)
            at.Wrong("convention-order", $"the order leaves out {string.Join(", ", missing.Select(word => $"`{word}`"))}",
                "name every word once, the mildest first");
        else if (order.Distinct().Count() < order.Length)
            at.Wrong("convention-order", "the order names a word twice", "name every word once, the mildest first");
    }
}
