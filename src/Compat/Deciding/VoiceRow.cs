namespace Compat.Deciding;

/// <summary>How a row lies to a box of cells.</summary>
internal enum Fit
{
    /// <summary>It applies nowhere in the box.</summary>
    Nowhere,

    /// <summary>It applies in a part of the box only.</summary>
    InPart,

    /// <summary>It applies in the whole box.</summary>
    Everywhere,
}

/// <summary>What else a verdict asks of a rule.</summary>
[Flags]
internal enum RowTraits : byte
{
    None = 0,

    /// <summary>It bounds another axis than strength and exposure time.</summary>
    BoundsOthers = 1,

    /// <summary>The source is silent on an axis: an 'allowed' by it is within limits.</summary>
    Unstated = 2,

    /// <summary>It is known by instructions, a test or a publication that was read.</summary>
    WellFounded = 4,

    /// <summary>It has a duty that a part may be unable to meet.</summary>
    HasWays = 8,

    /// <summary>It speaks of a product.</summary>
    OfProduct = 16,

    /// <summary>It overrides a rule or is overridden, or speaks for instructions: no other row makes it needless.</summary>
    Tied = 32,

    /// <summary>It has duties.</summary>
    HasDuties = 64,
}

/// <summary>One rule as it speaks of one component in one voice, laid out to be read in a row.</summary>
internal readonly struct VoiceRow
{
    private readonly int _strengthLow, _strengthHigh, _exposureTimeLow, _exposureTimeHigh;

    public VoiceRow(CompiledRule rule, Run exposureTime, RowTraits traits)
    {
        Rule = rule;
        (_strengthLow, _strengthHigh) = (rule.Cells.Strength.Low, rule.Cells.Strength.High);
        (_exposureTimeLow, _exposureTimeHigh) = (exposureTime.Low, exposureTime.High);
        Traits = traits;
        Methods = rule.Methods;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            if (rule.Rule.When.On(axis).Statement == AxisStatement.Any) Any |= (byte)(1 << (int)axis);
    }

    public CompiledRule Rule { get; }

    public MethodSet Methods { get; }

    public RowTraits Traits { get; }

    /// <summary>The axes on which it says `any`, one bit each.</summary>
    public byte Any { get; }

    public bool Is(RowTraits traits) => (Traits & traits) != 0;

    /// <summary>Where it applies in a box, its method aside.</summary>
    public Fit In(in CellRange box)
    {
        if (_strengthLow > box.StrengthHigh || _strengthHigh < box.StrengthLow || _exposureTimeLow > box.ExposureTimeHigh || _exposureTimeHigh < box.ExposureTimeLow) return Fit.Nowhere;
        var everywhere = _strengthLow <= box.StrengthLow && _strengthHigh >= box.StrengthHigh && _exposureTimeLow <= box.ExposureTimeLow && _exposureTimeHigh >= box.ExposureTimeHigh;
        if (Is(RowTraits.BoundsOthers))
        {
            for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            {
                if (axis is Axis.Strength or Axis.ExposureTime) continue;
                int low = Rule.Cells[axis].Low, high = Rule.Cells[axis].High;
                if (low > box.High(axis) || high < box.Low(axis)) return Fit.Nowhere;
                everywhere &= low <= box.Low(axis) && high >= box.High(axis);
            }
        }

        return everywhere ? Fit.Everywhere : Fit.InPart;
    }

    /// <summary>Cuts a box in which it applies in part along its first boundary there.</summary>
    public (CellRange Below, CellRange Above) Cut(in CellRange box)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var (low, high) = Run(axis);
            var last = low > box.Low(axis) ? low - 1 : high < box.High(axis) ? high : -1;
            if (last >= 0) return (box.With(axis, box.Low(axis), last), box.With(axis, last + 1, box.High(axis)));
        }

        throw new InvalidOperationException("the row applies in the whole box");
    }

    /// <summary>Whether a verdict is the same without this row, since the other says as much wherever it applies.</summary>
    public bool IsNeedlessBeside(in VoiceRow other)
    {
        if (Rule.Allows != other.Rule.Allows || Is(RowTraits.Tied) || other.Is(RowTraits.Tied)) return false;
        if (!Methods.Intersect(other.Methods).Equals(Methods)) return false;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var (low, high) = Run(axis);
            var (otherLow, otherHigh) = other.Run(axis);
            if (otherLow > low || otherHigh < high) return false;
        }

        return !Rule.Allows || ((Any & other.Any) == other.Any && !Is(RowTraits.HasWays) && AsWeak(RowTraits.Unstated, other) && AsWeak(RowTraits.WellFounded, other) && AsWeak(RowTraits.OfProduct, other));
    }

    /// <summary>How much of the axes that are read first it holds: what holds more is looked at first.</summary>
    public long Breadth => ((long)_strengthHigh - _strengthLow + 1) * ((long)_exposureTimeHigh - _exposureTimeLow + 1);

    private bool AsWeak(RowTraits trait, in VoiceRow other) => Is(trait) == other.Is(trait);

    private (int Low, int High) Run(Axis axis) => axis == Axis.ExposureTime ? (_exposureTimeLow, _exposureTimeHigh) : (Rule.Cells[axis].Low, Rule.Cells[axis].High);
}
