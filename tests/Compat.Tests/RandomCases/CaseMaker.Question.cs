namespace Compat.Tests.RandomCases;

internal sealed partial class CaseMaker
{
    /// <summary>What is asked: the part or materials, the agent or product.</summary>
    private void MakeSubject()
    {
        var question = new Question { OnlyPart = true };
        var part = One(_data.Parts.Skip(1).ToArray()).Id;
        if (_site is { Devices.Count: > 0 } && Chance(65))
            question = question with
            {
                Device = DeviceName,
                DevicePart = One(_site.Devices[0].Parts).Id,
                Materials = Chance(15) ? Slots() : [],
                Serial = One<SerialNumber?>(null, new SerialNumber("AB", 1), new SerialNumber("AB", 5), new SerialNumber("C", 1), new SerialNumber("D", 1)),
            };
        else if (_shape != Shape.Map && Chance(15))
            question = question with { Materials = Slots() };
        else
            question = question with { Part = part, Materials = _shape != Shape.Map && Chance(30) ? Slots() : [] };
        var asked = _shape != Shape.Map && _site is { Products.Count: > 0 } && Chance(70);
        _question = question with
        {
            MaterialsKnown = question.Materials.Count > 0 ? One<bool?>(null, null, true, false) : null,
            Product = asked ? ProductName : null,
            Agent = asked ? null : One(_data.Agents.Skip(Chance(4) ? 0 : 1).ToArray()).Id,
            Acts = question.Part is not null && Chance(10) ? [One(Enum.GetValues<Act>())] : [],
        };
    }

    private void MakeExposure()
    {
        if (_shape == Shape.Map) return;
        var product = _question.Product is null ? null : _site!.Products[0];
        var basis = _question.Agent is { } agent ? _trees.Basis(agent) : null;
        var chamber = _question.Agent is { } gas && _trees.Line(gas).Any(a => a.Chamber);
        _question = _question with
        {
            Method = Stated() ? chamber ? ApplicationMethod.Chamber : (ApplicationMethod)_random.Next(1, Chance(50) ? 3 : 6) : null,
            Strength = basis is { } of && Stated() ? new Strength(Asked(Axis.Strength), StrengthUnit.PercentOf(CanBeAskedIn(_question.Agent!, of))) : null,
            Dilution = product is not null && (product.StrengthOf == StrengthOf.Concentrate ? Stated() : IsPoint || Chance(10)) ? Asked(Axis.Dilution) : null,
            ExposureTime = Stated() ? Chance(10) ? Interval.Exactly(Interval.WithoutEnd) : Asked(Axis.ExposureTime) : null,
            Temperature = Stated() ? Asked(Axis.Temperature) : null,
            Ph = Stated() ? Asked(Axis.Ph) : null,
            Uses = Stated() ? (int)Value(Axis.Uses) : null,
        };
        if (product is { StrengthOf: not StrengthOf.Concentrate } && IsPoint) _question = _question with { Dilution = Interval.Exactly(1) };
    }

    /// <summary>Another basis than the agent's own one time in four, where the figures to convert it are on record.</summary>
    private StrengthBasis CanBeAskedIn(AgentId agent, StrengthBasis own)
    {
        var asked = Chance(75) ? own : One(Enum.GetValues<StrengthBasis>());
        var record = _trees.Line(agent)[0];
        var chlorine = IsChlorine(asked) == IsChlorine(own) || (IsChlorine(own) && record.AvailableChlorine is not null);
        var volume = asked == own || record.Density is not null || (asked != StrengthBasis.VolumePerVolume && own != StrengthBasis.VolumePerVolume);
        return chlorine && volume ? asked : own;
    }

    private static bool IsChlorine(StrengthBasis basis) => basis is StrengthBasis.AvailableChlorineMassPerMass or StrengthBasis.AvailableChlorineMassPerVolume;

    private bool Stated() => IsPoint || Chance(60);

    private Interval Asked(Axis axis)
    {
        var (a, b) = (Value(axis), Value(axis));
        if (IsPoint || a == b || Chance(70)) return Interval.Exactly(a);
        return new(Math.Min(a, b), Chance(60), Math.Max(a, b), Chance(60));
    }

    /// <summary>A boundary of the axis, a value between two, or one beyond.</summary>
    private decimal Value(Axis axis)
    {
        var pool = _pool[axis];
        var last = axis == Axis.Dilution ? 1 : pool[^1] + (axis == Axis.Ph ? 1 : 10);
        var first = axis == Axis.Uses ? 1 : pool[0] / 2;
        decimal[] all = [first, .. pool, .. axis == Axis.Uses ? pool.Select(v => v + 1) : pool.Zip(pool.Skip(1), (a, b) => (a + b) / 2), last];
        return One(all);
    }
}
