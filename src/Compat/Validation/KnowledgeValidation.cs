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
        foreach (var material in scope.Materials.Values) scope.CheckSources(material.Sources, new ProblemPlace(RecordKind.Material, material.Id.Value));
        foreach (var part in scope.Parts.Values) Part(scope, part);
        foreach (var agent in scope.Agents.Values) Agent(scope, agent);
        foreach (var rule in scope.Rules.Values) RuleValidation.Check(scope, rule, 0, inSite: false);
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

    public static void Slots(Scope scope, ProblemPlace place, string field, IReadOnlyList<MaterialSlot> slots)
    {
        for (var i = 0; i < slots.Count; i++)
        {
            if (slots[i].OneOf.Count == 0) scope.Add("empty-one-of", place with { Field = $"{field}.{i}" }, "`one-of` names nothing");
            for (var j = 0; j < slots[i].OneOf.Count; j++)
                scope.Knows(scope.Materials, slots[i].OneOf[j], place, slots[i].OneOf.Count > 1 ? $"{field}.{i}.one-of.{j}" : $"{field}.{i}", "material");
        }

        if (MaterialList.Variants(slots) > MostVariants) scope.Add("too-many-variants", place with { Field = field }, $"the choices of `one-of` make more than {MostVariants} variants");
    }

    private static void Part(Scope scope, PartType part)
    {
        var place = new ProblemPlace(RecordKind.Part, part.Id.Value);
        if (part.Materials is { } slots) Slots(scope, place, "materials", slots);
        else if (part.MaterialsKnown is not null) scope.Add("known-without-materials", place with { Field = "materials-known" }, "`materials-known` without `materials`");
        if (part.DryBeforePower is <= 0m) scope.Add("outside-axis", place with { Field = "dry-before-power" }, "a time is above 0");
        if (part.WaterIngress is { Numeral: < 0 or > 9 }) scope.Add("outside-axis", place with { Field = "water-ingress.code" }, "the numeral of protection against water lies in 0..9");
        if (part.WaterIngress is not null || part.Wettest is not null) Mark(scope, part, place);
        DutyValidation.Check(scope, place, part.Duties);
        scope.CheckSources(part.Sources, place);
    }

    /// <summary>A part that is marked against water, or lies below one that is, is no wetter than its mark was tested for.</summary>
    private static void Mark(Scope scope, PartType part, ProblemPlace place)
    {
        var line = scope.Upward(part.Id).ToArray();
        if (line.Select(p => p.WaterIngress).FirstOrDefault(mark => mark is not null) is not { } mark || line.Select(p => p.Wettest).FirstOrDefault(w => w is not null) is not { } wettest) return;
        if (IngressOf(wettest) is not { } key || scope.Data.Conventions.FirstOrDefault(c => c.Key == key) is not { } carries || carries.Range.Contains(mark.Numeral)) return;
        scope.Add(
            "mark-too-weak", place with { Field = part.Wettest is null ? "water-ingress.code" : "wettest" },
            $"`{part.Id}` stands `{Words.Of(wettest)}`, which {mark.Code} does not carry", $"`{Words.Of(wettest)}` needs a numeral in {carries.Range} (convention `{Words.Of(key)}`)");
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
        var place = new ProblemPlace(RecordKind.Agent, agent.Id.Value);
        if (agent.Basis is { } basis && agent.Under is { } under && scope.Basis(under) is { } above && above.Basis != basis.Basis)
            scope.Add("other-basis", place with { Field = "basis" }, $"`{basis}` is another basis than that of the class above, `{above}`", "a child has its parent's basis");
        for (var i = 0; i < agent.Cas.Count; i++)
            if (!CasNumber.IsValid(agent.Cas[i])) scope.Add("bad-cas", place with { Field = $"cas.{i}" }, $"`{agent.Cas[i]}` is no CAS number", "digits-2 digits-check digit, and the check digit must fit");
        for (var i = 0; i < agent.Ec.Count; i++)
            if (!EcNumber.IsValid(agent.Ec[i])) scope.Add("bad-ec", place with { Field = $"ec.{i}" }, $"`{agent.Ec[i]}` is no EC number", "3 digits-3 digits-check digit, and the check digit must fit");
        if (agent.Usual.Strength is { } strength)
        {
            if (scope.Basis(agent.Id) is { } own) BoxValidation.Strength(scope, place, "usual.strength", strength, own);
            else scope.Add("no-basis", place with { Field = "usual.strength" }, $"`{agent.Id}` has no basis for a strength");
        }

        if (agent.Usual.Ph is { } ph) BoxValidation.Range(scope, place, "usual.ph", ph, -1m, 15m, true, "pH");
        if (agent.Usual.Temperature is { } temperature) BoxValidation.Range(scope, place, "usual.temperature", temperature, -40m, 200m, true, "temperature");
        for (var i = 0; i < agent.InactivatedBy.Count; i++) scope.Knows(scope.Agents, agent.InactivatedBy[i], place, $"inactivated-by.{i}", "agent");
        if (agent.Density is < LeastDensity or > MostDensity) scope.Add("outside-axis", place with { Field = "density" }, DensityRange);
        if (agent.AvailableChlorine is < 0.001m or > 3m) scope.Add("outside-axis", place with { Field = "available-chlorine" }, "a share of available chlorine lies in 0.001..3");
        if (agent.Cas.Count > 1)
        {
            // A figure by mass belongs to one substance: salts, hydrates and isomers differ in it.
            foreach (var (field, has) in new[] { ("available-chlorine", agent.AvailableChlorine is not null), ("density", agent.Density is not null) })
                if (has) scope.Add("one-figure", place with { Field = field }, $"`{agent.Id}` has {agent.Cas.Count} CAS numbers and one `{field}`", "give each number an agent of its own below this one, with its own figure");
        }

        DutyValidation.Check(scope, place, agent.Duties);
        scope.CheckSources(agent.Sources, place);
        scope.CheckSources(agent.Usual.Sources, place, "usual.sources");
    }

    private static void Standing(Scope scope, StandingRule standing)
    {
        var place = new ProblemPlace(RecordKind.StandingRule, standing.Id.Value);
        if (standing.SpeaksOfRules && standing.Part is null == standing.Material is null) scope.Add("one-target", place, "a standing rule holds for exactly one part type or material");
        if (standing.Part is { } part) scope.Knows(scope.Parts, part, place, "part", "part");
        if (standing.Material is { } material) scope.Knows(scope.Materials, material, place, "material", "material");
        if (scope.Knows(scope.Agents, standing.Agent, place, "agent", "agent")) BoxValidation.Axes(scope, place, "when", standing.When, standing.Agent, false);
        scope.CheckSources(standing.Sources, place);
    }

    private static void Conventions(Scope scope)
    {
        foreach (var key in Enum.GetValues<ConventionKey>())
        {
            var convention = scope.Data.Conventions.FirstOrDefault(c => c.Key == key);
            var place = new ProblemPlace(RecordKind.Convention, Words.Of(key), "value");
            if (convention is null) scope.Add("no-convention", place with { Field = "" }, $"the convention `{Words.Of(key)}` is missing");
            else if (Convention.NamesOrder(key)) Order(scope, place, key == ConventionKey.DamageOrder ? Words.All<Consequence>() : Words.All<Hazard>(), key == ConventionKey.DamageOrder ? convention.Consequences.Select(Words.Of) : convention.Hazards.Select(Words.Of));
            else if (Convention.NamesMethods(key) ? convention.Methods.IsEmpty : convention.Range.IsEmpty || convention.Range.IsWhole)
                scope.Add("empty-convention", place, $"the convention `{Words.Of(key)}` names no value");
            else if (key is ConventionKey.WindowShare or ConventionKey.WindowLeast or ConventionKey.MostProducts or ConventionKey.UsesShare && convention.Range.Upper is null)
                scope.Add("convention-without-end", place, $"the convention `{Words.Of(key)}` names no upper end", "write `= ` or `<= ` before the figure");
            else if (!Convention.NamesMethods(key) && ValuesOf(key) is var values)
                BoxValidation.Range(scope, place, place.Field, convention.Range, values.Lower, values.Upper, values.LowerIncluded, $"the convention `{Words.Of(key)}`");
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
    private static void Order(Scope scope, ProblemPlace place, IEnumerable<string> all, IEnumerable<string> named)
    {
        var order = named.ToArray();
        var missing = all.Except(order).ToArray();
        if (missing.Length > 0) scope.Add("convention-order", place, $"the order leaves out {string.Join(", ", missing.Select(word => $"`{word}`"))}", "name every word once, the mildest first");
        else if (order.Distinct().Count() < order.Length) scope.Add("convention-order", place, "the order names a word twice", "name every word once, the mildest first");
    }
}
