namespace Compat.Evaluation;

/// <summary>Turns a strength into percent of an agent's basis.</summary>
internal static class StrengthConversion
{
    /// <summary>Within one basis exact. Through a density, or the share of available chlorine, rounded outward to six digits. Null where a figure is missing.</summary>
    /// <param name="stated">The strength.</param>
    /// <param name="agent">The agent, with its basis.</param>
    /// <param name="density">The liquid's density in kg/L, where known.</param>
    /// <param name="densities">The densities a liquid may have where it is not.</param>
    public static Interval? Convert(Strength stated, AgentTraits agent, decimal? density, Interval densities)
    {
        var percent = stated.Percent;
        var from = stated.Unit.Basis;
        var to = agent.Basis!.Basis;
        if (from == to) return percent;
        if (IsChlorine(from) != IsChlorine(to))
        {
            if (IsChlorine(from) || agent.Agent.AvailableChlorine is not { } share) return null;
            percent = Outward(percent, share, share);
            from = from == StrengthBasis.MassPerMass ? StrengthBasis.AvailableChlorineMassPerMass
                : from == StrengthBasis.MassPerVolume ? StrengthBasis.AvailableChlorineMassPerVolume : from;
            if (from == to) return percent;
        }

        var (lightest, heaviest) = density is { } known ? (known, known) : (densities.Lower ?? 0.7m, densities.Upper ?? 1.5m);
        if (IsMassInMass(from)) percent = Outward(percent, lightest, heaviest);
        else if (from == StrengthBasis.VolumePerVolume)
        {
            if (agent.Agent.Density is not { } pure) return null;
            percent = Outward(percent, pure, pure);
        }

        if (IsMassInMass(to)) return Outward(percent, 1m / heaviest, 1m / lightest);
        if (to != StrengthBasis.VolumePerVolume) return percent;
        return agent.Agent.Density is { } own ? Outward(percent, 1m / own, 1m / own) : null;
    }

    private static bool IsChlorine(StrengthBasis basis) =>
        basis is StrengthBasis.AvailableChlorineMassPerMass or StrengthBasis.AvailableChlorineMassPerVolume;

    private static bool IsMassInMass(StrengthBasis basis) => basis is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;

    private static Interval Outward(Interval percent, decimal least, decimal most) => new(
        percent.Lower is { } low ? Rounding.Down(low * least) : null, percent.LowerIncluded,
        percent.Upper is { } high ? Rounding.Up(high * most) : null, percent.UpperIncluded);
}
