namespace Compat.Tests.RandomCases;

internal sealed partial class CaseMaker
{
    private static readonly ProductId ProductName = new("product-1");
    private static readonly DeviceId DeviceName = new("device-1");

    private void MakeSite() => _site = new()
    {
        Id = new("site-1"),
        Name = "site",
        Products = Chance(75) ? [RandomProduct()] : [],
        Devices = Chance(70) ? [RandomDevice()] : [],
    };

    private Product RandomProduct()
    {
        var agents = Shuffled(_data.Agents.Where(a => a.Id != AgentClass.Root && a.Id.Value != "water").Select(a => a.Id).ToArray());
        if (agents.Length == 0) agents = [AgentClass.Root];
        var kind = One(StrengthOf.Liquid, StrengthOf.Liquid, StrengthOf.WholeWipe, StrengthOf.Concentrate, StrengthOf.Concentrate);
        var ingredients = Enumerable.Range(0, One(1, 2, 2, 3)).Select(_ => RandomIngredient(One(agents.Take(2).ToArray()))).ToList();
        var share = kind == StrengthOf.WholeWipe && Chance(60) ? One(0.8m, 0.7m) : (decimal?)null;
        if (share is { } liquid) MeetStrengthInLiquid(ingredients[0], liquid);
        if (kind == StrengthOf.Concentrate && Chance(60)) ingredients[0] = MeetStrengthDiluted(ingredients[0]);
        if (Chance(10)) ingredients.Add(new() { Unknown = "perfume" });
        var activation = Chance(15);
        var states = kind == StrengthOf.Concentrate ? Enum.GetValues<PhState>() : [PhState.Concentrate, PhState.InUse, PhState.Activated];
        return new()
        {
            Id = ProductName,
            Name = "product",
            Composition = One(Composition.Full, Composition.Full, Composition.DeclaredHazardousOnly, Composition.Partial),
            CompositionDated = Chance(30) ? Day : null,
            StrengthOf = kind,
            LiquidShare = share,
            Ingredients = ingredients,
            Density = Chance(50) ? One(0.8m, 1m, 1.25m) : null,
            Ph = Shuffled(states).Where(s => (s == PhState.Activated) == activation || s == PhState.InUse).Take(One(0, 1, 1, 2))
                .Select(s => new MeasuredPh(Between(Axis.Ph), s)).ToArray(),
            Dilution = kind == StrengthOf.Concentrate && Chance(60) ? Between(Axis.Dilution) : null,
            Temperature = Chance(30) ? Between(Axis.Temperature) : null,
            NeedsActivation = activation,
        };
    }

    private Ingredient RandomIngredient(AgentId agent)
    {
        var basis = Chance(80) ? _trees.Basis(agent) : One(StrengthBasis.VolumePerVolume, StrengthBasis.MassPerMass, StrengthBasis.MassPerVolume);
        var (a, b) = (One(0.5m, 1, 2.5m, 5, 10, 20, 25), One(0.5m, 1, 2.5m, 5, 10, 20, 25));
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        var range = _random.Next(10) switch
        {
            < 5 => Interval.Exactly(a),
            5 => Interval.Below(a),
            6 => Interval.Above(a),
            7 or 8 when low < high => new(low, Chance(50), high, Chance(50)),
            _ => Interval.Closed(low, high),
        };
        return new() { Agent = agent, Strength = Chance(90) && basis is { } of ? new Strength(range, StrengthUnit.PercentOf(of)) : null };
    }

    /// <summary>
    /// Lets rules begin and end where the strength of an ingredient lies if all of it is in the liquid, rounded up to six digits: 0.7 divides few figures.
    /// </summary>
    private void MeetStrengthInLiquid(Ingredient ingredient, decimal share)
    {
        if (ingredient.Strength?.Percent.Upper is not { } high) return;
        var (quotient, step) = (high / share, 0.00001m);
        while (quotient >= step * 1_000_000) step *= 10;
        while (quotient < step * 100_000) step /= 10;
        _pool[Axis.Strength] = [.. _pool[Axis.Strength].Skip(1).Append(decimal.Ceiling(quotient / step) * step).Order()];
    }

    /// <summary>Lets dilutions be asked at which an end of an ingredient's strength, often open, just comes to where rules begin and end.</summary>
    private Ingredient MeetStrengthDiluted(Ingredient ingredient)
    {
        if (ingredient.Strength is not { } stated) return ingredient;
        var (range, boundary) = (stated.Percent, _pool[Axis.Strength][0]);
        if (Chance(60)) range = Chance(50) ? Interval.Below(One(5m, 10, 20)) : new(One(5m, 10, 20), false, 25, true);
        var ends = new[] { range.Lower, range.Upper }.OfType<decimal>().Where(end => end > boundary).ToArray();
        if (ends.Length == 0) return ingredient;
        var dilution = boundary / ends[0];
        _pool[Axis.Strength] = [boundary, boundary, _pool[Axis.Strength][^1]];
        _pool[Axis.Dilution] = [.. _pool[Axis.Dilution].Skip(1).Append(dilution).Append(dilution).Order()];
        return ingredient with { Strength = new Strength(range, stated.Unit) };
    }

    private Device RandomDevice()
    {
        var types = _data.Parts.Skip(1).Select(p => p.Id).ToArray();
        InstructionsEdition[] editions =
        [
            new() { Id = new("e-1"), Dated = Day, Serials = Serials(), OnlyListed = Chance(25), Source = new("s-read") },
            new()
            {
                Id = new("e-2"),
                Dated = new(2026, 6, 1),
                Serials = Serials(),
                OnlyListed = Chance(25),
                Replaces = Chance(60) ? [new("e-1")] : [],
                Source = new("s-read"),
            },
        ];
        editions = editions.Take(One(0, 1, 1, 2)).ToArray();
        return new()
        {
            Id = DeviceName,
            Name = "device",
            Parts = Enumerable.Range(1, One(1, 2)).Select(i =>
            {
                var oneOf = Shuffled(types).Take(Chance(25) ? 2 : 1).ToArray();
                var stated = Chance(35);
                var wetter = editions.Length > 0 && Chance(20);
                return new DevicePart
                {
                    Id = new("part-" + i),
                    OneOfTypes = oneOf,
                    Materials = stated ? Slots() : null,
                    MaterialsKnown = stated ? One<bool?>(null, true, false) : null,
                    Wettest = wetter ? ApplicationMethod.Immerse : Chance(25) ? oneOf.Min(t => _trees.Wettest(t)) : null,
                    WettestFrom = wetter ? One(editions).Id : null,
                    Geometry = Chance(25) ? One(Enum.GetValues<Geometry>()) : null,
                };
            }).ToArray(),
            Instructions = editions,
        };
    }

    private SerialRange[] Serials() => One<SerialRange[]>([], [], [new("AB", 1, 9)], [new("AB", 5, long.MaxValue)], [new("AB", 5, 9), new("C", 1, 1)]);
}
