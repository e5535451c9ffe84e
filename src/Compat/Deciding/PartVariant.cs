namespace Compat.Deciding;

/// <summary>One choice for every one-of of a part: the worst variant counts.</summary>
internal sealed record PartVariant
{
    /// <summary>The chosen members, for the reader; null where there was no choice.</summary>
    public string? Member { get; init; }

    /// <summary>The part type, or -1 where materials alone are asked.</summary>
    public required int Part { get; init; }

    public required int[] Materials { get; init; }

    public required bool MaterialsKnown { get; init; }

    /// <summary>Whether the materials are stated by a device part or the question in place of the type's.</summary>
    public bool MaterialsStated { get; init; }

    /// <summary>Whether an 'allowed' of the type reaches it: stated materials lie at or below those of the type.</summary>
    public bool TypeAllowedReaches { get; init; } = true;

    public required ApplicationMethod Wettest { get; init; }

    public required IReadOnlyList<Act> Never { get; init; }

    public required Geometry Geometry { get; init; }

    public required IReadOnlyList<Duty> Duties { get; init; }

    public Device? Device { get; init; }

    public DevicePartId? DevicePart { get; init; }

    /// <summary>The editions of the device's instructions that speak.</summary>
    public IReadOnlyList<InstructionsEdition> Editions { get; init; } = [];

    public bool MaterialsAlone => Part < 0;

    public bool Stands(ApplicationMethod method) =>
        MaterialsAlone || method == ApplicationMethod.Chamber || method <= Wettest;

    public bool Stands(DutyWay way) =>
        MaterialsAlone || ((way.Method is not { } method || Stands(method)) && (way.Act is not { } act || !NeverStands(act)));

    public bool NeverStands(Act act)
    {
        for (var i = 0; i < Never.Count; i++)
            if (Never[i] == act) return true;
        return false;
    }

    /// <summary>A duty without ways can always be met; else one way must be stood.</summary>
    public bool CanMeet(Duty duty)
    {
        for (var i = 0; i < duty.Ways.Count; i++)
            if (Stands(duty.Ways[i])) return true;
        return duty.Ways.Count == 0;
    }

    /// <summary>The first of some duties that can be met in no way; null where all can.</summary>
    public Duty? FirstUnmet(IReadOnlyList<Duty> duties)
    {
        for (var i = 0; i < duties.Count; i++)
            if (!CanMeet(duties[i])) return duties[i];
        return null;
    }

    /// <summary>The ways by which the part stands an end of the exposure time; in a gap only running liquid reaches.</summary>
    public IReadOnlyList<DutyWay> EndingWays(bool leavesNothing)
    {
        var ways = new List<DutyWay>();
        var open = Geometry == Geometry.Open || MaterialsAlone;
        if (leavesNothing && open)
        {
            ways.Add(DutyWay.Air);
            if (Stands(DutyWay.By(Act.SoftCloth))) ways.Add(DutyWay.By(Act.SoftCloth));
            return ways;
        }

        if (open) AddWet(ApplicationMethod.DampWipe);
        if (open) AddWet(ApplicationMethod.WetWipe);
        AddWet(ApplicationMethod.Rinse);
        AddWet(ApplicationMethod.Immerse);
        return ways;

        void AddWet(ApplicationMethod method)
        {
            if (Stands(method)) ways.Add(new DutyWay { Method = method, Water = WaterGrade.Running });
        }
    }
}
