namespace Compat.Deciding;

/// <summary>Turns a strength into percent of an agent's basis.</summary>
internal static class StrengthConversion
{
    /// <summary>Within one basis exact. Else by way of the mass in a volume, rounded outward once, to six digits, both ends included; what is over 100 % of a share counts as 100 %. Null where a figure is missing.</summary>
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

    /// <summary>The strength of an agent asked by itself, which is in water alone: ethanol by mass is read by volume by the density formula of its mixtures.</summary>
    public static Interval? OfAgentAlone(Strength stated, AgentTraits agent, Interval densities)
    {
        var mass = stated.Percent;
        if (agent.Agent.Id != Planning.Dilution.Ethanol || (stated.Unit.Basis, agent.Basis!.Basis) != (StrengthBasis.MassPerMass, StrengthBasis.VolumePerVolume) || !mass.LiesIn(Interval.Closed(0m, 100m)))
            return Convert(stated, agent, null, densities);
        var least = Rounding.Down((decimal)Planning.EthanolWater.VolumePercent((double)mass.Lower!.Value));
        return Interval.Closed(least, Math.Min(100m, Rounding.Up((decimal)Planning.EthanolWater.VolumePercent((double)mass.Upper!.Value))));
    }

    private static bool IsChlorine(StrengthBasis basis) =>
        basis is StrengthBasis.AvailableChlorineMassPerMass or StrengthBasis.AvailableChlorineMassPerVolume;

    private static bool IsMassInMass(StrengthBasis basis) => basis is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;
}
