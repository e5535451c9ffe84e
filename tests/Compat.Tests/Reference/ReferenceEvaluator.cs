using Compat.Tests.RandomCases;

namespace Compat.Tests.Reference;

/// <summary>What one point answers: the verdict, the clause (P1 to P8) that decided and, of an 'allowed', the rules that allow, voice by
/// voice.</summary>
internal sealed record PointTruth(Verdict Verdict, string Step, Rule[][] Allowing);
/// <summary>One way the person can choose: one value where an axis is free, else all that is asked.</summary>
internal sealed record Choice(ApplicationMethod Method, Interval ExposureTime, Interval Dilution);
/// <summary>The part asked with one choice for every one-of and one set of editions that speak.</summary>
internal sealed record Variant(PartId? Type, InstructionsEdition[] Speaking, MaterialId[] Materials, MaterialId[] Named, bool Known,
    ApplicationMethod Wettest, Geometry Geometry);
/// <summary>One thing that reaches the part, with its strength undiluted in percent of its basis.</summary>
internal sealed record Component(AgentId Agent, Interval Strength, bool OnlyForbids = false, bool Unknown = false);
/// <summary>A rule that reaches a voice, with what it says of each axis.</summary>
internal sealed record Reaching(Rule Rule, int Voice, Interval[] Box);

/// <summary>A direct reading of what an answer means: slow, obvious, and sharing nothing with the engine but the records.</summary>
internal sealed partial class ReferenceEvaluator
{
    /// <summary>The voice of the part and device (materials: 1, 2, …), and that of rules of which only the duties join.</summary>
    private const int PartVoice = 0, DutiesOnly = -1;
    private static readonly Axis[] _axes = Enum.GetValues<Axis>();
    private readonly Question _question;
    private readonly Product? _product;
    private readonly Device? _device;
    private readonly (Variant Variant, Component Component, Reaching[] Rules)[] _judged;
    private readonly AgentClass[] _agent;
    public ReferenceEvaluator(KnowledgeData data, IReadOnlyList<Site> sites, Question question)
        : this(new ReferenceTrees(data, sites), sites, question) { }
    public ReferenceEvaluator(ReferenceTrees trees, IReadOnlyList<Site> sites, Question question)
    {
        (Trees, _question) = (trees, question);
        _product = sites.SelectMany(s => s.Products).SingleOrDefault(p => p.Id == question.Product);
        _device = sites.SelectMany(s => s.Devices).SingleOrDefault(d => d.Id == question.Device);
        _agent = question.Agent is null ? [] : Trees.Line(question.Agent);
        var strength = question.Strength is { } asked ? InBasis(asked.Percent, asked.Unit.Basis, question.Agent!, null) : Usual(u => u.Strength);
        Components = _product is null ? [new(question.Agent!, strength ?? Trees.WholeStrength(question.Agent!))] : ComponentsOf(_product);
        _judged = (from v in Variants() from c in Components select (v, c, RulesThatReach(v, c).ToArray())).ToArray();
        Samples = new(Trees, _product, Components);
    }
    public Samples Samples { get; }
    public ReferenceTrees Trees { get; }
    public Component[] Components { get; }
    public IEnumerable<Component> Ingredients => Components.Where(c => !c.OnlyForbids);
    public bool DilutionIsFree => _product?.StrengthOf == StrengthOf.Concentrate && _question.Dilution is null;
    public Interval? Usual(Func<UsualRange, Interval?> which) => ReferenceTrees.Nearest(_agent, a => which(a.Usual));
    /// <summary>A fully stated point; of the uses, this one alone.</summary>
    public PointTruth Point() => AllAt(Choices().Single(), Interval.Exactly(_question.Uses ?? 1)).MinBy(p => p.Verdict)!;
    /// <summary>A region, clause G1: one good choice of the free axes is enough; uses left out are judged at 1.</summary>
    public Verdict Region() => IsNothing() ? Verdict.NotEstablished
        : Choices().Max(c => Of(c, Interval.Closed(1, _question.Uses ?? 1))) is var best && best < Verdict.Allowed ? best
        : IsPlain() ? Verdict.Allowed : Verdict.AllowedWithinLimits;
    /// <summary>Of nothing nothing follows, clause G6: no choice, a component that has no point, or none that could be permitted.</summary>
    private bool IsNothing() => !Choices().Any() || !Ingredients.Any()
        || Components.Any(k => !Choices().Any(c => AllAt(c, Interval.Closed(1, _question.Uses ?? 1), k).Any()));
    /// <summary>The worst answer over all uncertain values of a choice, for every number of uses in a range.</summary>
    public Verdict Of(Choice choice, Interval uses) => AllAt(choice, uses).Min(p => p.Verdict);
    public IEnumerable<Choice> Choices() =>
        from method in _question.Method is { } stated ? [stated] : _agent.Any(a => a.Chamber) ? [ApplicationMethod.Chamber] : MethodSet.Ladder.Methods
        from exposureTime in _question.ExposureTime is { } asked ? [asked] : Samples.On(Axis.ExposureTime, Interval.Whole).Select(Interval.Exactly)
        from dilution in !DilutionIsFree ? [_question.Dilution ?? Interval.Exactly(1)]
            : Samples.On(Axis.Dilution, _product!.Dilution ?? Interval.Whole).Select(Interval.Exactly)
        select new Choice(method, exposureTime, dilution);
    /// <summary>Every uncertain value of a choice, in every variant, of every component.</summary>
    public IEnumerable<PointTruth> AllAt(Choice choice, Interval uses, Component? only = null)
    {
        var (exposureTimes, numbers) = (Samples.On(Axis.ExposureTime, choice.ExposureTime), Samples.On(Axis.Uses, uses));
        var temperature = _question.Temperature ?? _product?.Temperature ?? Usual(u => u.Temperature);
        var temperatures = Samples.On(Axis.Temperature, temperature ?? Trees.Convention(ConventionKey.AssumedTemperature).Range);
        return from d in Samples.On(Axis.Dilution, choice.Dilution)
               let phs = Samples.On(Axis.Ph, _question.Ph ?? (_product is null ? Usual(u => u.Ph) ?? Interval.Whole : PhAt(_product, d)))
               from one in _judged.Where(one => only is null || one.Component == only)
               let strengths = Samples.On(Axis.Strength, one.Component.Strength.Scale(d))
               from at in Cross<decimal>([strengths, [d], exposureTimes, temperatures, phs, numbers])
               select Judge(one.Variant, one.Component, one.Rules, choice.Method, at);
    }
    /// <summary>Plain 'allowed', clause G5: every axis stated, or `any` in every deciding rule; nothing filled in; all of it allowed; well
    /// founded.</summary>
    private bool IsPlain()
    {
        var q = _question;
        var hasStrength = q.Agent is null || q.Strength is not null || Trees.Basis(q.Agent) is null;
        bool[] stated = [hasStrength, !DilutionIsFree, q.ExposureTime is not null, q.Temperature is not null, q.Ph is not null, q.Uses is not null];
        static bool Suffices(AxisStatement says, bool stated) => says == AxisStatement.Any || (stated && says != AxisStatement.Unstated);
        bool OnAll(ExposureBox b) => _axes.All(a => Suffices(b.On(a).Statement, stated[(int)a])) && Suffices(b.Methods.Statement, q.Method != null);
        bool IsWellFounded(Rule r) => r.KnownBy is KnownBy.Test or KnownBy.Instructions or KnownBy.Published
            && Trees.Sources.Any(s => r.Sources.Contains(s.Id) && !s.Recalled && s.Kind != SourceKind.CommonPractice && s.Trust != Trust.Weak);
        if ((q.Part ?? (object?)_device) is null || (_device is not null && _judged.Any(one => one.Variant.Speaking.Length == 0))) return false;
        return Choices().SelectMany(c => AllAt(c, q.Uses is { } n ? Interval.Closed(1, n) : Interval.AtLeast(1)))
            .All(p => p.Verdict == Verdict.Allowed && p.Allowing.All(voice => voice.All(r => OnAll(r.When)) && voice.Any(IsWellFounded)));
    }

    /// <summary>Every way to take one of each.</summary>
    public static IEnumerable<T[]> Cross<T>(IEnumerable<IEnumerable<T>> each) => each.Aggregate((IEnumerable<T[]>)[[]], (ways, some) =>
        ways.SelectMany(_ => some, (taken, one) => (T[])[.. taken, one]));

    /// <summary>For each possible serial number the editions that cover it, save those that an edition covering it replaces: clauses R22 and
    /// R23.</summary>
    private IEnumerable<InstructionsEdition[]> SpeakingSets()
    {
        static bool Covers(InstructionsEdition e, SerialNumber s) => e.Serials.Count == 0 || e.Serials.Any(r => r.Contains(s));
        var all = _device?.Instructions ?? [];
        return (_question.Serial is { } given ? [given] : Samples.Serials(_device))
            .Select(s => all.Where(e => Covers(e, s) && !all.Any(i => i.Replaces.Contains(e.Id) && Covers(i, s))).ToArray())
            .DistinctBy(set => string.Join(" ", set.Select(e => e.Id)));
    }

    private Component[] ComponentsOf(Product product)
    {
        var ingredients = product.Ingredients.Select(i => i.Agent is null ? new Component(AgentClass.Root, Interval.Whole, Unknown: true)
            : new(i.Agent, InProduct(i, i.Agent, product))).ToArray();
        var water = Trees.Agents.Where(a => a.Value == "water" && product.Composition == Composition.Full);
        var sums = from agents in Trees.Agents
                   let members = ingredients.Where(i => !i.Unknown && Trees.Below(i.Agent, agents)).Select(i => i.Strength).ToArray()
                   where members.Length >= 2
                   let together = new Interval(members.Min(m => m.Lower ?? 0), true, members.Aggregate((decimal?)0, (sum, m) => sum + m.Upper), true)
                   select new Component(agents, together.Intersect(Trees.WholeStrength(agents)), OnlyForbids: true);
        return [.. ingredients, .. water.Select(a => new Component(a, Trees.WholeStrength(a), OnlyForbids: true)), .. sums];
    }

    private Interval InProduct(Ingredient ingredient, AgentId agent, Product product)
    {
        if (Trees.Basis(agent) is null) return Interval.Whole;
        if (ingredient.Strength is not { } stated) return Interval.Closed(0, 100);
        var percent = product.StrengthOf != StrengthOf.WholeWipe ? stated.Percent
            : new(stated.Percent.Lower ?? 0, stated.Percent.Lower is null || stated.Percent.LowerIncluded,
                Math.Min(100, SixDigits(stated.Percent.Upper / product.LiquidShare, Math.Ceiling) ?? 100), true);
        return InBasis(percent, stated.Unit.Basis, agent, product.Density) ?? Trees.WholeStrength(agent);
    }

    /// <summary>A strength in percent of an agent's basis, clauses M5 and M6, by way of the mass in a volume; rounded outward; null where a figure
    /// is missing.</summary>
    private Interval? InBasis(Interval percent, StrengthBasis from, AgentId agent, decimal? density)
    {
        static bool IsChlorine(StrengthBasis b) => b is StrengthBasis.AvailableChlorineMassPerMass or StrengthBasis.AvailableChlorineMassPerVolume;
        static bool IsInMass(StrengthBasis b) => b is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;
        static Interval? Exactly(decimal? value) => value is { } v ? Interval.Exactly(v) : null;
        var (own, to) = (Trees.Line(agent)[0], Trees.Basis(agent)!.Value);
        if (from == to) return percent.Intersect(Trees.WholeStrength(agent));
        var liquid = Exactly(IsInMass(from) && IsInMass(to) ? 1 : density) ?? Trees.Convention(ConventionKey.SolutionDensity).Range;
        Interval? MassInVolume(StrengthBasis b) => b == StrengthBasis.VolumePerVolume ? Exactly(own.Density) : IsInMass(b) ? liquid : Exactly(1);
        var chlorine = IsChlorine(from) == IsChlorine(to) ? Exactly(1) : IsChlorine(to) && own.AvailableChlorine > 0 ? Trees.Chlorine(agent) : null;
        if (chlorine is null || MassInVolume(from) is not { } factor || MassInVolume(to) is not { } divisor) return null;
        var whole = Trees.WholeStrength(agent);
        var low = SixDigits(percent.Lower * chlorine.Value.Lower * factor.Lower / divisor.Upper, Math.Floor);
        var high = SixDigits(percent.Upper * chlorine.Value.Upper * factor.Upper / divisor.Lower, Math.Ceiling);
        return new Interval(low > whole.Upper ? whole.Upper : low, true, high, true).Intersect(whole);
    }

    private static decimal? SixDigits(decimal? value, Func<decimal, decimal> round) => value is null or 0 ? value
        : value < 100_000 ? SixDigits(value * 10, round) / 10 : value >= 1_000_000 ? SixDigits(value / 10, round) * 10 : round(value.Value);
    public static IEnumerable<MeasuredPh> Measured(Product product) =>
        product.Ph.Where(p => !product.NeedsActivation || p.Of is PhState.Activated or PhState.InUse);

    /// <summary>Clause M11. The pH where it is stated; between, the hull of the nearest on either side, water being at 0; above the last
    /// unknown.</summary>
    public Interval PhAt(Product product, decimal d)
    {
        Interval At(PhState state) => state == PhState.OnePercent ? Interval.Exactly(0.01m)
            : state == PhState.InUse && product.Dilution is { } label ? label : Interval.Exactly(1);
        var water = (Value: Trees.Convention(ConventionKey.WaterPh).Range, At: Interval.Exactly(0));
        var stated = Measured(product).Select(p => (p.Value, At: At(p.Of))).Append(water).ToArray();
        var (here, above, below) = (stated.Where(p => p.At.Contains(d)), stated.Where(p => p.At.Lower >= d), stated.Where(p => p.At.Upper <= d));
        if (!here.Any() && !above.Any()) return Interval.Whole;
        var nearest = above.Where(p => p.At.Lower == above.Min(a => a.At.Lower)).Concat(below.Where(p => p.At.Upper == below.Max(b => b.At.Upper)));
        return ReferenceTrees.Hull((here.Any() ? here : nearest).Select(p => p.Value))!.Value;
    }

    private PointTruth Judge(Variant v, Component c, Reaching[] reaching, ApplicationMethod method, decimal[] at)
    {
        var tooWet = method != ApplicationMethod.Chamber && method > v.Wettest;
        if (v.Type is not null && (tooWet || _question.Acts.Any(Trees.Never(v.Type).Contains)))
            return new(Verdict.NotAllowed, "1 barrier", []);
        at[(int)Axis.ExposureTime] = EffectiveExposureTime(v, at[(int)Axis.ExposureTime]);
        var applicable = reaching.Where(r => Trees.Methods(r.Rule).Contains(method) && r.Box.Zip(at).All(x => x.First.Contains(x.Second))).ToArray();
        bool Reaches(int from, int to) => from == PartVoice || (from == to && from != DutiesOnly);
        bool Overrides(Reaching q, Reaching r) => Reaches(q.Voice, r.Voice) && q.Rule.Overrides.Contains(r.Rule.Id);
        bool Acts(Reaching r) => r.Rule.Edition is not null || !applicable.Any(q => !q.Rule.Allows && Overrides(q, r));
        var live = applicable.Where(r => r.Rule.Edition is not null || !applicable.Any(q => Overrides(q, r) && Acts(q))).ToArray();
        if (live.Any(r => !r.Rule.Allows)) return new(Verdict.NotAllowed, "4 forbidden", []);
        if (c.OnlyForbids) return new(Verdict.Allowed, "only a 'not allowed' counts", []);
        bool Lists(InstructionsEdition edition) => applicable.Any(r => r.Rule.Allows && r.Rule.Edition == edition.Id);
        if (v.Speaking.Any(e => e.OnlyListed && !Lists(e))) return new(Verdict.NotAllowed, "5 not listed", []);
        var own = Ingredients.SelectMany(i => Trees.Line(i.Agent)).SelectMany(a => a.Duties).Concat(Trees.Line(v.Type).SelectMany(p => p.Duties));
        if (!own.All(d => CanBeMet(d, v))) return new(Verdict.NotAllowed, "6 own duties", []);
        Rule[] In(int voice) => live.Where(r => r.Voice == voice && (r.Rule.Edition is null || v.Speaking.All(Lists))).Select(r => r.Rule).ToArray();
        var part = In(PartVoice);
        var materials = v.Known ? v.Materials.Select((_, m) => In(m + 1)).ToArray() : [];
        if (part.Length == 0 && (materials.Length == 0 || materials.Any(m => m.Length == 0))) return new(Verdict.NotEstablished, "7 no evidence", []);
        bool OnProduct(Rule[] voice) => voice.Any(r => r.Product is not null);
        bool Suffices(MaterialId m) => _product?.Composition == Composition.DeclaredHazardousOnly && Trees.Line(m).Any(x => x.DeclaredOnlySuffices);
        var covered = OnProduct(part) || (materials.Length > 0 && materials.Zip(v.Materials).All(m => OnProduct(m.First) || Suffices(m.Second)));
        if (_product is { Composition: not Composition.Full } && !covered) return new(Verdict.NotEstablished, "7 composition not known", []);
        var deciding = part.Length > 0 ? [part] : materials;
        var joining = deciding.SelectMany(voice => voice).Concat(live.Where(r => r.Voice is PartVoice or DutiesOnly).Select(r => r.Rule));
        if (!joining.SelectMany(r => r.Duties).All(d => CanBeMet(d, v))) return new(Verdict.NotEstablished, "8 duties", []);
        return new(Verdict.Allowed, part.Length > 0 ? "7 by the part" : "7 by its materials", deciding);
    }

    public bool CanBeMet(Duty duty, Variant v) => duty.Ways.Count == 0 || v.Type is null
        || duty.Ways.Any(w => !(w.Method > v.Wettest) && (w.Act is not { } act || !Trees.Never(v.Type).Contains(act)));

    public decimal EffectiveExposureTime(Variant v, decimal asked)
    {
        var gone = Ingredients.All(i => !i.Unknown && ReferenceTrees.Nearest(Trees.Line(i.Agent), a => a.Leaves) == Residue.Nothing);
        var leastThatEnds = v.Geometry != Geometry.Open ? ApplicationMethod.Rinse : gone ? ApplicationMethod.DryWipe : ApplicationMethod.DampWipe;
        if (v.Type is null || asked == Interval.WithoutEnd || leastThatEnds <= v.Wettest) return asked;
        return gone ? Math.Max(asked, Trees.Convention(ConventionKey.DryingTime).Range.Upper!.Value) : Interval.WithoutEnd;
    }

    private IEnumerable<Reaching> RulesThatReach(Variant v, Component c) =>
        from rule in Trees.Rules
        where PassesToAgent(rule, c)
        from voice in VoicesReached(rule, v)
        select new Reaching(rule, voice, _axes.Select(axis => Trees.Filled(rule, axis, _product)).ToArray());

    private bool PassesToAgent(Rule rule, Component c) =>
        rule.Product is not null ? rule.Product == _question.Product && rule.CompositionDated == _product!.CompositionDated
        : c.Unknown ? !rule.Allows && rule.Agent == c.Agent
        : rule.SeenWith.Count > 0 ? rule.SeenWith.Any(seen => Trees.Below(c.Agent, seen))
        : rule.Allows && !rule.WholeClass ? c.Agent == rule.Agent : Trees.Below(c.Agent, rule.Agent!);

    private IEnumerable<int> VoicesReached(Rule rule, Variant v)
    {
        var target = rule.Target;
        if (target.Material is { } at)
            return Enumerable.Range(1, v.Materials.Length).Where(i => v.Materials[i - 1] is var m && Trees.Passes(rule, at, m));
        if (target.Part is { } type)
            return v.Type is null || !Trees.Below(v.Type, type) ? [] : !rule.Allows || PermissionPasses(type, v) ? [PartVoice] : [DutiesOnly];
        return target.Device == _question.Device && (target.DevicePart ?? _question.DevicePart) == _question.DevicePart
            && (rule.Edition is null || v.Speaking.Any(e => e.Id == rule.Edition)) ? [PartVoice] : [];
    }

    private bool PermissionPasses(PartId from, Variant v)
    {
        IEnumerable<MaterialId> Certain(PartId? id) => Trees.Materials(id).Where(s => s.OneOf.Count == 1).Select(s => s.OneOf[0]);
        if (!v.Named.All(m => Certain(v.Type).Any(of => Trees.Below(m, of)))) return false;
        return (from == v.Type && v.Named.Length == 0) || v.Materials.Where(Trees.Delicate).All(Certain(from).Contains);
    }
}
