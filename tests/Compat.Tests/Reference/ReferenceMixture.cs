using Compat.Exposures;
using Compat.Knowledge;
using Compat.Sites;

namespace Compat.Tests.Reference;

/// <summary>One thing that reaches the part: an agent, an ingredient, the water around them, or ingredients of one class together.</summary>
internal sealed class Component(AgentId agent, Func<decimal, Interval> strengthAt, bool onlyForbids = false, bool unknown = false)
{
    public AgentId Agent => agent;
    public Func<decimal, Interval> StrengthAt => strengthAt;
    public bool OnlyForbids => onlyForbids;
    public bool Unknown => unknown;
}

/// <summary>Products: what they are asked as, how strong at a dilution, at which pH.</summary>
internal sealed class ReferenceMixture(ReferenceTrees trees)
{
    public List<Component> Components(Product product)
    {
        var stated = product.Ingredients.Select(i => i.Agent is { } agent
            ? new Component(agent, d => StrengthAt(product, i, agent, d))
            : new Component(AgentClass.Root, _ => Interval.Whole, unknown: true)).ToList();
        var all = stated.ToList();
        if (product.Composition == Composition.Full && trees.Agents.FirstOrDefault(a => a.Value == "water") is { } water)
            all.Add(new(water, _ => Interval.Closed(0, 100), onlyForbids: true));
        foreach (var @class in trees.Agents)
        {
            // Ingredients of one class add up, in the product as it stands; then d times every strength in that range.
            var members = stated.Where(c => trees.Below(c.Agent, @class)).ToArray();
            if (members.Length >= 2) all.Add(new(@class, d => Sum(@class, members.Select(m => m.StrengthAt(1)).ToArray()).Scale(d), onlyForbids: true));
        }

        return all;
    }

    private Interval Sum(AgentId @class, Interval[] members)
    {
        if (trees.Basis(@class) is not { } basis) return Interval.Whole;
        var high = members.Any(m => m.Upper is null) ? (decimal?)null : members.Sum(m => m.Upper!.Value);
        if (IsFraction(basis) && !(high <= 100)) high = 100;
        return new(members.Min(m => m.Lower ?? 0), true, high, true);
    }

    public static bool IsFraction(StrengthBasis basis) => basis is StrengthBasis.VolumePerVolume or StrengthBasis.MassPerMass;

    private Interval StrengthAt(Product product, Ingredient ingredient, AgentId agent, decimal d)
    {
        if (trees.Basis(agent) is not { } basis) return Interval.Whole;
        if (ingredient.Strength is not { } strength) return Interval.Closed(0, 100 * d);
        var low = strength.Percent.Lower ?? 0;
        var high = strength.Percent.Upper ?? 100;
        if (product.StrengthOf == StrengthOf.WholeWipe)
            high = product.LiquidShare is { } share ? Math.Min(100, high / share) : 100;
        return Convert(Interval.Closed(d * low, d * high), strength.Unit.Basis, basis, product.Density, trees.Density(agent), d);
    }

    private Interval Convert(Interval percent, StrengthBasis from, StrengthBasis to, decimal? productDensity, decimal? agentDensity, decimal d)
    {
        if (from == to) return percent;
        var liquid = productDensity is { } known ? Interval.Exactly(known) : trees.Convention(ConventionKey.SolutionDensity).Range;
        var (low, high) = (percent.Lower!.Value, percent.Upper!.Value);
        if (from == StrengthBasis.MassPerMass) (low, high) = (low * liquid.Lower!.Value, high * liquid.Upper!.Value);
        if (from == StrengthBasis.VolumePerVolume || to == StrengthBasis.VolumePerVolume)
        {
            if (agentDensity is not { } pure) return IsFraction(to) ? Interval.Closed(0, 100 * d) : Interval.AtLeast(0);
            if (from == StrengthBasis.VolumePerVolume) (low, high) = (low * pure, high * pure);
            if (to == StrengthBasis.VolumePerVolume) (low, high) = (low / pure, high / pure);
        }

        if (to == StrengthBasis.MassPerMass) (low, high) = (low / liquid.Upper!.Value, high / liquid.Lower!.Value);
        if (IsFraction(to)) high = Math.Min(high, 100);
        return Interval.Closed(SixDigits(low, Math.Floor), SixDigits(high, Math.Ceiling));
    }

    private static decimal SixDigits(decimal value, Func<decimal, decimal> round)
    {
        var scale = 1m;
        if (value == 0) return 0;
        while (value * scale < 100_000) scale *= 10;
        while (value * scale >= 1_000_000) scale /= 10;
        return round(value * scale) / scale;
    }

    /// <summary>pH at a dilution: as measured there, else the hull of the nearest on either side, water at 0.</summary>
    public Interval PhAt(Product product, decimal d)
    {
        var known = product.Ph
            .Where(p => !product.NeedsActivation || p.Of is PhState.Activated or PhState.InUse)
            .Select(p => (p.Value, At: p.Of switch
            {
                PhState.OnePercent => Interval.Exactly(0.01m),
                PhState.InUse when product.Dilution is { } label => label,
                _ => Interval.Exactly(1),
            })).ToArray();
        if (known.Length == 0) return Interval.Whole;
        var here = known.Where(k => k.At.Contains(d)).Select(k => k.Value).ToArray();
        if (here.Length > 0) return here.Aggregate((a, b) => a.Hull(b));
        var above = known.Where(k => k.At.Lower >= d).ToArray();
        if (above.Length == 0) return Interval.Whole;
        var nearestAbove = above.Where(k => k.At.Lower == above.Min(a => a.At.Lower)).Select(k => k.Value).Aggregate((a, b) => a.Hull(b));
        var below = known.Where(k => k.At.Upper <= d).ToArray();
        var nearestBelow = below.Length == 0 ? trees.Convention(ConventionKey.WaterPh).Range
            : below.Where(k => k.At.Upper == below.Max(b => b.At.Upper)).Select(k => k.Value).Aggregate((a, b) => a.Hull(b));
        return nearestAbove.Hull(nearestBelow);
    }
}
