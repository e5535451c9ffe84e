namespace Compat.Deciding;

/// <summary>A run of cells on each axis, held by value.</summary>
internal struct CellRange
{
    public int StrengthLow, StrengthHigh, DilutionLow, DilutionHigh, ExposureTimeLow, ExposureTimeHigh;
    public int TemperatureLow, TemperatureHigh, PhLow, PhHigh, UsesLow, UsesHigh;

    public readonly int Low(Axis axis) => axis switch
    {
        Axis.Strength => StrengthLow,
        Axis.Dilution => DilutionLow,
        Axis.ExposureTime => ExposureTimeLow,
        Axis.Temperature => TemperatureLow,
        Axis.Ph => PhLow,
        _ => UsesLow,
    };

    public readonly int High(Axis axis) => axis switch
    {
        Axis.Strength => StrengthHigh,
        Axis.Dilution => DilutionHigh,
        Axis.ExposureTime => ExposureTimeHigh,
        Axis.Temperature => TemperatureHigh,
        Axis.Ph => PhHigh,
        _ => UsesHigh,
    };

    /// <summary>The same box with another run on one axis.</summary>
    public readonly CellRange With(Axis axis, int low, int high)
    {
        var box = this;
        switch (axis)
        {
            case Axis.Strength: (box.StrengthLow, box.StrengthHigh) = (low, high); break;
            case Axis.Dilution: (box.DilutionLow, box.DilutionHigh) = (low, high); break;
            case Axis.ExposureTime: (box.ExposureTimeLow, box.ExposureTimeHigh) = (low, high); break;
            case Axis.Temperature: (box.TemperatureLow, box.TemperatureHigh) = (low, high); break;
            case Axis.Ph: (box.PhLow, box.PhHigh) = (low, high); break;
            default: (box.UsesLow, box.UsesHigh) = (low, high); break;
        }

        return box;
    }
}
