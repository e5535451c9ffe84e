namespace Compat.Deciding;

/// <summary>One thing that is asked: the agent, an ingredient, the water of a mixture, or the sum of ingredients of one class.</summary>
internal sealed record Component
{
    /// <summary>The name for the reader; null for an agent asked alone.</summary>
    public string? Name { get; init; }

    public required int Agent { get; init; }

    /// <summary>Percent of the agent's basis at dilution 1; whole where strength is no question.</summary>
    public required Interval Strength { get; init; }

    /// <summary>Whether only a live 'not allowed' counts (water, sums).</summary>
    public bool OnlyForbids { get; init; }

    /// <summary>Whether no class covers it.</summary>
    public bool Unknown { get; init; }

    public required IReadOnlyList<Duty> Duties { get; init; }
}

/// <summary>A stretch of dilutions with the pH the liquid has there.</summary>
internal readonly record struct PhSegment(Stretch Dilution, Interval Ph);

/// <summary>What is brought onto the part: its components and what is uncertain or free about it.</summary>
internal sealed record Substance
{
    public required IReadOnlyList<Component> Components { get; init; }

    public Product? Product { get; init; }

    public required bool LeavesNothing { get; init; }

    /// <summary>Dilutions considered: exactly 1 for an agent.</summary>
    public required Interval Dilution { get; init; }

    public required AxisTreatment DilutionTreatment { get; init; }

    public required bool StrengthStated { get; init; }

    public required PhSegment[] Ph { get; init; }

    /// <summary>Whether there is no value of some axis at which it could be brought onto the part, or nothing in it that could be permitted. Of nothing nothing
    /// follows.</summary>
    public bool IsNothing =>
        Dilution.IsEmpty || Temperature.IsEmpty || Methods.IsEmpty || Ph.Length == 0 || Array.Exists(Ph, segment => segment.Ph.IsEmpty)
        || Components.All(component => component.OnlyForbids) || Components.Any(component => component.Strength.IsEmpty);

    /// <summary>All the pH that occurs over the dilutions considered.</summary>
    public Interval WholePh => PhWithin(Stretch.Whole) ?? Interval.Closed(-1m, 15m);

    public required Interval Temperature { get; init; }

    public required MethodSet Methods { get; init; }

    /// <summary>The dilutions, stretch by stretch of pH, at which a component can have a strength and the liquid a pH; of what has no strength of its own, the
    /// pH alone decides.</summary>
    public IEnumerable<Stretch> DilutionsAt(Component? component, Stretch strength, Stretch ph, Stretch within)
    {
        var dilution = within.Intersect(Stretch.Of(Dilution));
        if (component is not null)
        {
            if (Product is not null) dilution = dilution.Intersect(Dilutions.WhereSome(component.Strength, strength));
            else if (!strength.Meets(Stretch.Of(component.Strength))) yield break;
        }

        foreach (var segment in Ph)
        {
            var here = dilution.Intersect(segment.Dilution);
            if (!here.IsEmpty && ph.Meets(Stretch.Of(segment.Ph))) yield return here;
        }
    }

    /// <summary>All the pH that occurs over some dilutions; null where no segment meets them.</summary>
    public Interval? PhWithin(Stretch dilutions)
    {
        Interval? hull = null;
        foreach (var segment in Ph)
            if (segment.Dilution.Meets(dilutions)) hull = hull?.Hull(segment.Ph) ?? segment.Ph;
        return hull;
    }
}

/// <summary>Turns an agent or product of a question into components. The question passed validation.</summary>
internal static class SubstanceResolver
{
    private static readonly Interval Fraction = Interval.Closed(0m, 100m);

    public static Substance Resolve(CompiledBase kb, Question question) =>
        question.Agent is { } agent ? OfAgent(kb, question, kb.Agent(agent))
        : question is { Dilution: null, Ph: null, Temperature: null, Method: null }
            ? kb.AsItStands(question.Product!, id => OfProduct(kb, new Question { Product = id }, kb.Product(id)))
        : OfProduct(kb, question, kb.Product(question.Product!));

    /// <summary>All the strengths an agent can have, in percent of its basis.</summary>
    public static Interval WholeStrength(StrengthUnit? basis) =>
        basis is null ? Interval.Whole
        : basis.Basis is StrengthBasis.MassPerVolume or StrengthBasis.AvailableChlorineMassPerVolume ? Interval.AtLeast(0m) : Fraction;

    /// <summary>What of a range an axis has.</summary>
    private static Interval On(Axis axis, Interval range) => range.Intersect(Axes.RangeOf(axis));

    private static Substance OfAgent(CompiledBase kb, Question question, AgentTraits traits)
    {
        var whole = WholeStrength(traits.Basis);
        var strength = traits.Basis is null ? Interval.Whole
            : question.Strength is { } stated ? StrengthConversion.OfAgentAlone(stated, traits, kb.Convention(ConventionKey.SolutionDensity).Range)!.Value
            : traits.Strength ?? whole;
        strength = strength.Intersect(whole);
        return new Substance
        {
            Components = [new Component { Agent = kb.Agents[traits.Agent.Id.Value], Strength = strength, Duties = traits.Duties }],
            LeavesNothing = traits.Leaves == Residue.Nothing,
            Dilution = Interval.Exactly(1m),
            DilutionTreatment = AxisTreatment.Exactly,
            StrengthStated = traits.Basis is null || question.Strength is not null,
            Ph = [new PhSegment(Stretch.Whole, On(Axis.Ph, question.Ph ?? traits.Ph ?? Interval.Whole))],
            Temperature = On(Axis.Temperature, question.Temperature ?? traits.Temperature ?? kb.Convention(ConventionKey.AssumedTemperature).Range),
            Methods = question.Method is { } method ? MethodSet.Of(method) : traits.Chamber ? MethodSet.Of(ApplicationMethod.Chamber) : MethodSet.Ladder,
        };
    }

    private static Substance OfProduct(CompiledBase kb, Question question, Product product)
    {
        var components = new List<Component>();
        foreach (var ingredient in product.Ingredients)
        {
            if (ingredient.Agent is null)
            {
                components.Add(new Component
                {
                    Name = ingredient.Unknown,
                    Agent = kb.Agents[AgentClass.Root.Value],
                    Strength = Interval.Whole,
                    Unknown = true,
                    Duties = []
                });
                continue;
            }

            var traits = kb.Agent(ingredient.Agent);
            components.Add(new Component
            {
                Name = traits.Agent.Id.Value,
                Agent = kb.Agents[ingredient.Agent.Value],
                Strength = StrengthInProduct(kb, product, ingredient, traits),
                Duties = traits.Duties
            });
        }

        var leavesNothing = components.All(c => !c.Unknown && kb.Agent(c.Agent).Leaves == Residue.Nothing);
        components.AddRange(Sums(kb, components));
        if (product.Composition == Composition.Full && kb.Agents.TryFind("water", out var water))
            components.Add(new Component { Name = "water", Agent = water, Strength = WholeStrength(kb.Agent(water).Basis), OnlyForbids = true, Duties = [] });

        var concentrate = product.StrengthOf == StrengthOf.Concentrate;
        var dilution = On(Axis.Dilution, question.Dilution ?? (concentrate ? product.Dilution ?? Interval.Whole : Interval.Exactly(1m)));
        return new Substance
        {
            Components = components,
            Product = product,
            LeavesNothing = leavesNothing,
            Dilution = dilution,
            DilutionTreatment = concentrate && question.Dilution is null ? AxisTreatment.Free : dilution.IsPoint ? AxisTreatment.Exactly
                : AxisTreatment.Uncertain,
            StrengthStated = true,
            Ph = question.Ph is { } ph ? [new PhSegment(Stretch.Whole, On(Axis.Ph, ph))]
                : ProductPh.Segments(product, kb.Convention(ConventionKey.WaterPh).Range).Where(segment => segment.Dilution.Meets(Stretch.Of(dilution)))
                    .ToArray(),
            Temperature = On(Axis.Temperature, question.Temperature ?? product.Temperature ?? kb.Convention(ConventionKey.AssumedTemperature).Range),
            Methods = question.Method is { } method ? MethodSet.Of(method) : MethodSet.Ladder,
        };
    }

    private static Interval StrengthInProduct(CompiledBase kb, Product product, Ingredient ingredient, AgentTraits traits)
    {
        var whole = WholeStrength(traits.Basis);
        if (traits.Basis is null) return Interval.Whole;
        if (ingredient.Strength is not { } stated) return Fraction;
        var percent = stated.Percent;
        if (product.StrengthOf == StrengthOf.WholeWipe)
        {
            var highest = product.LiquidShare is { } share && percent.Upper is { } high
                ? Math.Min(100m, Rounding.Up(Math.Min(high, 100m * share), share, out _)) : 100m;
            percent = new Interval(percent.Lower ?? 0m, percent.Lower is null || percent.LowerIncluded, highest, true);
        }

        if (!stated.Unit.Suits(traits.Agent)) return whole;
        var inPercent = new Strength(percent, StrengthUnit.PercentOf(stated.Unit.Basis));
        var converted = StrengthConversion.Convert(inPercent, traits, product.Density, kb.Convention(ConventionKey.SolutionDensity).Range);
        return converted?.Intersect(whole) ?? whole;
    }

    /// <summary>For every class with two or more ingredients at or below it: from the least of them to their sum.</summary>
    private static List<Component> Sums(CompiledBase kb, List<Component> ingredients)
    {
        var sums = new List<Component>();
        for (var node = 0; node < kb.Agents.Count; node++)
        {
            var members = ingredients.Where(c => !c.Unknown && kb.Agents.IsAtOrBelow(c.Agent, node)).ToArray();
            if (members.Length < 2) continue;
            var traits = kb.Agent(node);
            var strength = Interval.Whole;
            if (traits.Basis is not null)
            {
                var least = members.Select(m => m.Strength.Lower ?? 0m).Min();
                decimal? sum = members.All(m => m.Strength.Upper is not null) ? members.Sum(m => m.Strength.Upper!.Value) : null;
                strength = new Interval(least, true, sum, true).Intersect(WholeStrength(traits.Basis));
            }

            sums.Add(new Component { Name = traits.Agent.Id.Value, Agent = node, Strength = strength, OnlyForbids = true, Duties = [] });
        }

        return sums;
    }
}

/// <summary>Turns a strength into percent of an agent's basis.</summary>
internal static class StrengthConversion
{
    /// <summary>Within one basis exact. Else by way of the mass in a volume, rounded outward once, to six digits, both ends included; what is over 100 % of a
    /// share counts as 100 %. Null where a figure is missing.</summary>
    /// <param name="stated">The strength.</param>
    /// <param name="agent">The agent, with its basis.</param>
    /// <param name="density">The liquid's density in kg/L, where known.</param>
    /// <param name="densities">The densities a liquid may have where it is not.</param>
    public static Interval? Convert(Strength stated, AgentTraits agent, decimal? density, Interval densities)
    {
        if (!stated.Unit.Suits(agent.Agent)) return null;
        var percent = stated.Percent;
        var from = stated.Unit.Basis;
        var to = agent.Basis!.Basis;
        if (from == to) return percent;
        var (leastShare, mostShare) = (1m, 1m);
        if (IsChlorine(from) != IsChlorine(to))
        {
            if (IsChlorine(from) || agent.AvailableChlorine is not { } chlorine) return null;
            (leastShare, mostShare) = (chlorine.Lower!.Value, chlorine.Upper!.Value);
        }

        var (lightest, heaviest) = density is { } known ? (known, known) : (densities.Lower ?? 0.7m, densities.Upper ?? 1.5m);
        if (IsMassInMass(from) && IsMassInMass(to)) (lightest, heaviest) = (1m, 1m);
        if (MassInVolume(from) is not { } factor || MassInVolume(to) is not { } divisor) return null;
        var whole = SubstanceResolver.WholeStrength(agent.Basis);
        var least = percent.Lower is { } low ? Rounding.Down(low * leastShare * factor.Least / divisor.Most) : 0m;
        decimal? most = percent.Upper is { } high ? Rounding.Up(high * mostShare * factor.Most / divisor.Least) : null;
        return new Interval(whole.Upper is { } all && least > all ? all : least, true, most, true).Intersect(whole);

        (decimal Least, decimal Most)? MassInVolume(StrengthBasis basis) =>
            IsMassInMass(basis) ? (lightest, heaviest)
            : basis != StrengthBasis.VolumePerVolume ? (1m, 1m)
            : agent.Agent.Density is { } pure ? (pure, pure) : null;
    }

    /// <summary>The strength of an agent asked by itself, which is in water alone: ethanol by mass is read by volume by the density formula of its
    /// mixtures.</summary>
    public static Interval? OfAgentAlone(Strength stated, AgentTraits agent, Interval densities)
    {
        var mass = stated.Percent;
        if (agent.Agent.Id != Planning.Dilution.Ethanol
            || (stated.Unit.Basis, agent.Basis!.Basis) != (StrengthBasis.MassPerMass, StrengthBasis.VolumePerVolume) || !mass.LiesIn(Interval.Closed(0m, 100m)))
            return Convert(stated, agent, null, densities);
        var least = Rounding.Down((decimal)Planning.EthanolWater.VolumePercent((double)mass.Lower!.Value));
        return Interval.Closed(least, Math.Min(100m, Rounding.Up((decimal)Planning.EthanolWater.VolumePercent((double)mass.Upper!.Value))));
    }

    private static bool IsChlorine(StrengthBasis basis) =>
        basis is StrengthBasis.AvailableChlorineMassPerMass or StrengthBasis.AvailableChlorineMassPerVolume;

    private static bool IsMassInMass(StrengthBasis basis) => basis is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;
}

/// <summary>The pH of a product over its dilution: the stated values, and between two of them the hull of both.</summary>
internal static class ProductPh
{
    private static readonly Interval Unknown = Interval.Closed(-1m, 15m);

    public static IReadOnlyList<PhSegment> Segments(Product product, Interval water)
    {
        var known = product.Ph
            .Where(ph => !product.NeedsActivation || ph.Of is PhState.Activated or PhState.InUse)
            .Select(ph => (At: Where(ph.Of, product), ph.Value)).ToList();
        if (known.Count == 0) return [new PhSegment(Stretch.Whole, Unknown)];

        var ends = known.SelectMany(k => new[] { Stretch.Of(k.At).From!, Stretch.Of(k.At).To! }).ToList();
        ends.Sort();
        var segments = new List<PhSegment>();
        var from = Cut.Start;
        foreach (var end in ends.Append(Cut.End))
        {
            var span = new Stretch(from, end);
            if (!span.IsEmpty) segments.Add(new PhSegment(span, At(span, known, water)));
            from = end;
        }

        return segments;
    }

    private static Interval Where(PhState state, Product product) => state switch
    {
        PhState.OnePercent => Interval.Exactly(0.01m),
        PhState.InUse => product.Dilution ?? Interval.Exactly(1m),
        _ => Interval.Exactly(1m),
    };

    private static Interval At(Stretch span, List<(Interval At, Interval Value)> known, Interval water)
    {
        var here = known.Where(k => span.Meets(Stretch.Of(k.At))).Select(k => k.Value).ToArray();
        if (here.Length > 0) return here.Aggregate((a, b) => a.Hull(b));
        var below = known.Where(k => span.From is { } from && Stretch.Of(k.At).To!.CompareTo(from) <= 0).ToArray();
        var above = known.Where(k => span.To is { } to && Stretch.Of(k.At).From!.CompareTo(to) >= 0).ToArray();
        if (above.Length == 0) return Unknown;
        var nearestAbove = above.Min(k => k.At.Lower!.Value);
        var hull = above.Where(k => k.At.Lower == nearestAbove).Select(k => k.Value).Aggregate((a, b) => a.Hull(b));
        if (below.Length == 0) return hull.Hull(water);
        var nearestBelow = below.Max(k => k.At.Upper!.Value);
        return below.Where(k => k.At.Upper == nearestBelow).Select(k => k.Value).Aggregate(hull, (a, b) => a.Hull(b));
    }
}
