namespace Compat.Curation.Checking;

/// <summary>A box of exposures of one subject to one speaker: where something is found.</summary>
internal sealed record Place(Subject Subject, Speaker Speaker, Box<Stretch> Box)
{
    /// <summary>What counts as much on each axis.</summary>
    private static decimal Scale(Axis axis) => axis switch { Axis.Dilution => 0.1m, Axis.ExposureTime => 60m, Axis.Ph => 1m, Axis.Uses => 1000m, _ => 20m };

    /// <summary>The pH that liquids have; the axis goes beyond it.</summary>
    private static readonly Interval Possible = Interval.Closed(0m, 14m);

    private MethodSet Methods => Box.Methods;

    /// <summary>The values of an axis, as far as they can be asked.</summary>
    public Interval Range(Axis axis) => Values(axis).ToInterval();

    private Stretch Values(Axis axis) =>
        axis == Axis.Dilution && Speaker.Substance.Product is not null ? Speaker.RealDilutions(Box) : Box[axis].Intersect(Speaker.Domain[axis]);

    /// <summary>The box as a rule would write it: an axis on which it holds everything is not named.</summary>
    public ExposureBox ToBox(Ground ground)
    {
        return new ExposureBox
        {
            Strength = ground.Kb.Agent(Speaker.Component.Agent).Basis is null || Speaker.Substance.Product is not null ? default : Limit(Axis.Strength),
            Dilution = Speaker.Substance.Product is null ? default : Limit(Axis.Dilution),
            ExposureTime = Limit(Axis.ExposureTime),
            Temperature = Limit(Axis.Temperature),
            Ph = Limit(Axis.Ph),
            Uses = Limit(Axis.Uses),
            Methods = Subject.Stood.Intersect(Methods).Equals(Subject.Stood) ? default : MethodLimit.Within(Methods.Methods.ToArray()),
        };

        AxisLimit Limit(Axis axis)
        {
            var domain = Speaker.Domain[axis];
            var values = Values(axis);
            if (domain.LiesIn(values)) return default;
            var range = values.ToInterval();
            var atStart = domain.From is { } from && values.From is { } start && start.CompareTo(from) <= 0;
            return AxisLimit.Within(atStart && range.Upper is not null ? new Interval(null, false, range.Upper, range.UpperIncluded) : range);
        }
    }

    /// <summary>How large the box is, as a share of all that can be asked; only for choosing one of several.</summary>
    public double Size()
    {
        double size = Methods.Methods.Count;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            if (axis is Axis.Strength or Axis.Dilution && Values(axis).IsEmpty) continue;
            var range = Range(axis);
            size *= Math.Max(1e-4, Bend(range.Upper, axis, 1.0) - Bend(range.Lower, axis, axis is Axis.Temperature or Axis.Ph ? -1.0 : 0.0));
        }

        return size;
    }

    private static double Bend(decimal? value, Axis axis, double without)
    {
        if (value is not { } known) return without;
        var share = (double)(known / Scale(axis));
        return share / (1 + Math.Abs(share));
    }

    /// <summary>A question at one point of the box; everyday values where the box holds them.</summary>
    public Question Witness(Ground ground)
    {
        var product = Speaker.Substance.Product;
        var basis = ground.Kb.Agent(Speaker.Component.Agent).Basis;
        var exposureTime = Pick(Axis.ExposureTime, 60m);
        return Subject.Ask with
        {
            Agent = product is null ? ground.Kb.Data.Agents[Speaker.Component.Agent].Id : null,
            Product = product?.Id,
            Strength = product is null && basis is not null
                ? new Strength(Interval.Exactly(Pick(Axis.Strength, UsualStrength(ground))), StrengthUnit.PercentOf(basis.Basis))
                : null,
            Dilution = product is not null && !Speaker.Substance.Dilution.IsPoint ? Interval.Exactly(Pick(Axis.Dilution, 1m)) : null,
            Method = Methods.Methods[0],
            ExposureTime = Interval.Exactly(exposureTime),
            Temperature = Interval.Exactly(Pick(Axis.Temperature, 20m)),
            Ph = Interval.Exactly(Pick(Axis.Ph, UsualPh(ground))),
            Uses = (int)Pick(Axis.Uses, 1m),
        };

        decimal Pick(Axis axis, decimal wished) => PointIn(Range(axis), axis, wished);
    }

    /// <summary>A neutral pH; where the box does not hold it, the middle of what the agent usually has.</summary>
    private decimal UsualPh(Ground ground) =>
        !Range(Axis.Ph).Contains(7m) && ground.Kb.Agent(Speaker.Component.Agent).Ph is { Lower: { } least, Upper: { } most } ? (least + most) / 2 : 7m;

    private decimal UsualStrength(Ground ground)
    {
        var usual = ground.Kb.Agent(Speaker.Component.Agent).Strength;
        return usual?.Upper ?? usual?.Lower ?? 10m;
    }

    /// <summary>A value of a range: the wished one, else an end that lies in it, else one between.</summary>
    private static decimal PointIn(Interval range, Axis axis, decimal wished)
    {
        if (axis == Axis.Ph && range.Intersect(Possible) is { IsEmpty: false } possible) range = possible;
        if (range.Contains(wished)) return wished;
        if (axis == Axis.Uses) return range.Lower is { } above ? (range.LowerIncluded ? decimal.Ceiling(above) : decimal.Floor(above) + 1) : 1m;
        if (range.Lower is { } low)
        {
            if (low >= wished && range.LowerIncluded) return low;
            if (range.Upper is not { } high) return low + Step(axis);
            if (high <= wished && range.UpperIncluded) return high;
            return range.LowerIncluded ? low : range.UpperIncluded ? high : Short(low, high);
        }

        var most = range.Upper!.Value;
        return range.UpperIncluded ? most : axis is Axis.Temperature or Axis.Ph ? most - Step(axis) : most / 2;
    }

    private static decimal Step(Axis axis) => axis switch { Axis.ExposureTime => 60m, Axis.Dilution => 0.01m, _ => 1m };

    /// <summary>A figure of few digits between two.</summary>
    private static decimal Short(decimal low, decimal high)
    {
        for (var digits = 0; digits < 12; digits++)
        {
            var middle = Math.Round((low + high) / 2, digits);
            if (middle > low && middle < high) return middle;
        }

        return (low + high) / 2;
    }
}
