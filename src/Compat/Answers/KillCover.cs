namespace Compat.Answers;

/// <summary>One thing that must be reached: a level, a group or an organism.</summary>
internal sealed record KillTarget(Level? Level, OrganismTarget? Against)
{
    public override string ToString() => Level is { } level ? Words.Of(level) : Against!.ToString();
}

/// <summary>Finds the exposures at which what is needed is not shown to be killed: clauses K1 to K4.</summary>
internal sealed class KillCover(CompiledBase kb, Substance substance, IReadOnlyList<PartVariant> variants, Need need)
{
    /// <summary>What must be reached, all at once. A level stands for the groups it includes.</summary>
    public IReadOnlyList<KillTarget> Targets { get; } =
    [
        .. need.Level is { } level && level > Level.Cleaned && !need.KeptDry ? new[] { new KillTarget(level, null) } : [],
        .. need.Against.Select(target => new KillTarget(null, target)),
    ];

    /// <summary>The holes of one set of claims on one method: exposures at which some target is not met.</summary>
    public IEnumerable<Box<Stretch>> Holes(ClaimSet set, ApplicationMethod method) => Targets.SelectMany(target => HolesOf(set, target, method));

    /// <summary>The exposures at which one target is not met.</summary>
    public IEnumerable<Box<Stretch>> HolesOf(ClaimSet set, KillTarget target, ApplicationMethod method)
    {
        var seen = new List<ClaimOnAxes[]>();
        var whole = Box<Stretch>.Whole with
        {
            Methods = MethodSet.Of(method),
            ContactTime = Stretch.Positive,
            Dilution = Stretch.Of(Axes.RangeOf(Axis.Dilution)),
        };
        foreach (var variant in variants)
        {
            var claims = set.Claims.Where(claim => Serves(claim, target, method, variant)).ToArray();
            if (seen.Any(other => other.SequenceEqual(claims))) continue;
            seen.Add(claims);
            foreach (var open in Subtraction.MaximalBoxes(whole, claims.Select(claim => claim.Box)))
                foreach (var hole in Laid(set.Component, open)) yield return hole;
        }
    }

    /// <summary>Whether a claim serves a target on a method and variant, whatever the exposure.</summary>
    public bool Serves(ClaimOnAxes claim, KillTarget target, ApplicationMethod method, PartVariant variant) =>
        claim.Methods.Contains(method) && claim.SpeaksOf(kb, variant) && ReachesInto(claim, method, variant) && Meets(claim, target, method);

    /// <summary>Whether a claim meets a target by some method it holds for.</summary>
    public bool Meets(ClaimOnAxes claim, KillTarget target) => claim.Methods.Methods.Any(method => Meets(claim, target, method));

    /// <summary>Whether a claim meets a target by a method.</summary>
    private bool Meets(ClaimOnAxes claim, KillTarget target, ApplicationMethod method)
    {
        if (target.Level is { } level)
        {
            if (!(claim.Claim.Reaches >= level)) return false;
            return level switch
            {
                Level.Sterile => claim.Claim.Origin == ClaimOrigin.Instructions,
                Level.High => claim.Claim.Origin != ClaimOrigin.Published || (claim.Claim.NamesThePart && claim.OfGuideline),
                _ => true,
            } && LabelTests.Show(kb, claim.Claim, level, method);
        }

        return KillExceptions.Kills(kb, claim.Claim, target.Against!, method);
    }

    /// <summary>Clause K18. A bore or pores are reached by wiping and spraying only where a claim names the part.</summary>
    public static bool ReachesInto(ClaimOnAxes claim, ApplicationMethod method, PartVariant variant) =>
        variant.Geometry is not (Geometry.Lumen or Geometry.Porous) || method > ApplicationMethod.Spray || claim.Claim.NamesThePart;

    /// <summary>Lays an uncovered box on the axes of a window: where a strength it holds is met.</summary>
    private IEnumerable<Box<Stretch>> Laid(Component? component, Box<Stretch> open)
    {
        if (!open.Temperature.Meets(Stretch.Of(substance.Temperature))) yield break;
        foreach (var dilution in substance.DilutionsAt(component, open.Strength, open.Ph, open.Dilution)) yield return open with { Dilution = dilution };
    }
}
