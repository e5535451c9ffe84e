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

    /// <summary>Whether there is no value of some axis at which it could be brought onto the part, or nothing in it that could be permitted. Of nothing nothing follows.</summary>
    public bool IsNothing =>
        Dilution.IsEmpty || Temperature.IsEmpty || Methods.IsEmpty || Ph.Length == 0 || Array.Exists(Ph, segment => segment.Ph.IsEmpty)
        || Components.All(component => component.OnlyForbids) || Components.Any(component => component.Strength.IsEmpty);

    /// <summary>All the pH that occurs over the dilutions considered.</summary>
    public Interval WholePh => PhWithin(Stretch.Whole) ?? Interval.Closed(-1m, 15m);

    public required Interval Temperature { get; init; }

    public required MethodSet Methods { get; init; }

    /// <summary>The dilutions, stretch by stretch of pH, at which a component can have a strength and the liquid a pH; of what has no strength of its own, the pH alone decides.</summary>
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
