namespace Compat.Deciding;

/// <summary>Turns an agent or product of a question into components. The question passed validation.</summary>
internal static class SubstanceResolver
{
    private static readonly Interval Fraction = Interval.Closed(0m, 100m);

    public static Substance Resolve(CompiledBase kb, Question question) =>
        question.Agent is { } agent ? OfAgent(kb, question, kb.Agent(agent))
        : question is { Dilution: null, Ph: null, Temperature: null, Method: null } ? kb.AsItStands(question.Product!, id => OfProduct(kb, new Question { Product = id }, kb.Product(id)))
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
                components.Add(new Component { Name = ingredient.Unknown, Agent = kb.Agents[AgentClass.Root.Value], Strength = Interval.Whole, Unknown = true, Duties = [] });
                continue;
            }

            var traits = kb.Agent(ingredient.Agent);
            components.Add(new Component { Name = traits.Agent.Id.Value, Agent = kb.Agents[ingredient.Agent.Value], Strength = StrengthInProduct(kb, product, ingredient, traits), Duties = traits.Duties });
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
            DilutionTreatment = concentrate && question.Dilution is null ? AxisTreatment.Free : dilution.IsPoint ? AxisTreatment.Exactly : AxisTreatment.Uncertain,
            StrengthStated = true,
            Ph = question.Ph is { } ph ? [new PhSegment(Stretch.Whole, On(Axis.Ph, ph))]
                : ProductPh.Segments(product, kb.Convention(ConventionKey.WaterPh).Range).Where(segment => segment.Dilution.Meets(Stretch.Of(dilution))).ToArray(),
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
            var highest = product.LiquidShare is { } share && percent.Upper is { } high ? Math.Min(100m, Rounding.Up(Math.Min(high, 100m * share), share, out _)) : 100m;
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
