namespace Compat.Tests.Reference;

/// <summary>What a record has: of its own, or from the nearest record above that states it: clauses R1 to R4. And what rules say once conventions
/// fill them.</summary>
internal sealed class ReferenceTrees(KnowledgeData data, IReadOnlyList<Site> sites)
{
    private readonly Dictionary<MaterialId, Material[]> _materials = Lines(data.Materials, m => m.Id, m => m.Under);
    private readonly Dictionary<PartId, PartType[]> _parts = Lines(data.Parts, p => p.Id, p => p.Under);
    private readonly Dictionary<AgentId, AgentClass[]> _agents = Lines(data.Agents, a => a.Id, a => a.Under);
    public IEnumerable<Rule> Rules => data.Rules.Concat(sites.SelectMany(s => s.Rules));
    public IEnumerable<Source> Sources => data.Sources.Concat(sites.SelectMany(s => s.Sources));
    public IEnumerable<AgentId> Agents => _agents.Keys;
    public Convention Convention(ConventionKey key) => data.Conventions.Single(c => c.Key == key);
    /// <summary>A record followed by those above it, the nearest first.</summary>
    public Material[] Line(MaterialId id) => _materials[id];
    public PartType[] Line(PartId? id) => id is null ? [] : _parts[id];
    public AgentClass[] Line(AgentId id) => _agents[id];
    public bool Below(MaterialId low, MaterialId high) => Line(low).Any(m => m.Id == high);
    public bool Below(PartId low, PartId high) => Line(low).Any(p => p.Id == high);
    public bool Below(AgentId low, AgentId high) => Line(low).Any(a => a.Id == high);
    public bool Passes(Rule rule, MaterialId from, MaterialId to) => to == from || (Below(to, from) && !(rule.Allows && Delicate(to)));
    public bool Delicate(MaterialId id) => Line(id).Any(m => m.Delicate is not null);
    public ApplicationMethod Wettest(PartId? id) => Nearest(Line(id), p => p.Wettest) ?? ApplicationMethod.DryWipe;
    public IReadOnlyList<Act> Never(PartId? id) => Nearest(Line(id), p => p.Never) ?? [];
    public IReadOnlyList<MaterialSlot> Materials(PartId? id) => Nearest(Line(id), p => p.Materials) ?? [];
    public Interval? Chlorine(AgentId id) => Hull(data.Agents.Where(a => Below(a.Id, id)).SelectMany(a => Exactly(a.AvailableChlorine)));
    private static Interval[] Exactly(decimal? value) => value is { } v ? [Interval.Exactly(v)] : [];
    public StrengthBasis? Basis(AgentId id) => Nearest(Line(id), a => a.Basis)?.Basis;

    /// <summary>Every strength an agent can have, in percent of its basis.</summary>
    public Interval WholeStrength(AgentId id) => Basis(id) is not { } basis ? Interval.Whole
        : basis is StrengthBasis.MassPerVolume or StrengthBasis.AvailableChlorineMassPerVolume ? Interval.AtLeast(0) : Interval.Closed(0, 100);
    /// <summary>Clause R30. What a rule says of an axis; an 'unstated' is the usual range on record, else the convention of that axis.</summary>
    public Interval Filled(Rule rule, Axis axis, Product? product)
    {
        if (rule.When.On(axis).Statement != AxisStatement.Unstated) return rule.When.On(axis).Range;
        var usual = axis == Axis.Strength ? Nearest(Line(rule.Agent!), a => a.Usual.Strength)
            : axis != Axis.Ph ? null : rule.Agent is not null ? Nearest(Line(rule.Agent), a => a.Usual.Ph)
            : Hull(ReferenceEvaluator.Measured(product!).Where(p => p.Of != PhState.OnePercent).Select(p => p.Value));
        return usual ?? Convention(Enum.Parse<ConventionKey>("Unstated" + axis)).Range;
    }
    public MethodSet Methods(Rule rule) => rule.When.Methods.Statement == AxisStatement.Within ? rule.When.Methods.Methods
        : rule.When.Methods.Statement == AxisStatement.Unstated ? Convention(ConventionKey.UnstatedMethods).Methods : MethodSet.All;
    public static TSaid? Nearest<T, TSaid>(T[] line, Func<T, TSaid?> says) => line.Select(says).FirstOrDefault(said => said is not null);
    public static Interval? Hull(IEnumerable<Interval> all) => all.Aggregate((Interval?)null, (hull, next) => hull?.Hull(next) ?? next);
    private static Dictionary<TId, T[]> Lines<TId, T>(IReadOnlyList<T> records, Func<T, TId> id, Func<T, TId?> under) where TId : Id
    {
        var byId = records.ToDictionary(id);
        T[] Line(T at) => under(at) is { } above ? [at, .. Line(byId[above])] : [at];
        return records.ToDictionary(id, Line);
    }
}
