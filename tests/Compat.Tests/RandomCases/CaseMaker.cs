using Compat.Tests.Reference;

namespace Compat.Tests.RandomCases;

/// <summary>What is asked in a random case.</summary>
internal enum Shape
{
    /// <summary>Every axis stated, one value each.</summary>
    Point,

    /// <summary>Axes left out, stated or uncertain.</summary>
    Region,

    /// <summary>A part type and an agent, no axis stated.</summary>
    Map,

    /// <summary>Kill and people judged beside the part; axes left out, stated or uncertain.</summary>
    Whole,

    /// <summary>Kill and people judged beside the part; every axis stated, one value each.</summary>
    WholePoint,
}

/// <summary>Makes one random knowledge base, site and question, valid by construction. All that is random comes from one seed.</summary>
internal sealed partial class CaseMaker
{
    private const decimal WindowShare = 0.1m, WindowLeast = 15;
    private static readonly CalendarDate Day = new(2026, 1, 1);
    private readonly Random _random;
    private readonly Shape _shape;
    private readonly HashSet<Axis> _varied = [];
    private readonly Dictionary<Axis, decimal[]> _pool = [];
    private readonly bool _methodsVary;
    private KnowledgeData _data = new();
    private Site? _site;
    private Question _question = new();
    private ReferenceTrees _trees = null!;

    private CaseMaker(int seed, Shape shape)
    {
        _random = new(seed);
        _shape = shape;
        _methodsVary = Chance(60);
        var axes = Shuffled(Axis.Strength, Axis.ExposureTime, Axis.Temperature, Axis.Ph, Axis.Uses);
        foreach (var axis in axes.Take(_methodsVary ? 2 : 3)) _varied.Add(axis);
        if (_varied.Contains(Axis.Strength)) _varied.Add(Axis.Dilution);
        _pool[Axis.Strength] = Pool(1, 5, 20, 50, 70);
        _pool[Axis.Dilution] = Pool(0.01m, 0.02m, 0.1m, 0.5m);
        _pool[Axis.ExposureTime] = Pool(30, 60, 120, 600);
        _pool[Axis.Temperature] = Pool(10, 20, 25, 40);
        _pool[Axis.Ph] = Pool(4, 7, 9, 11);
        _pool[Axis.Uses] = Pool(1, 2, 10, 100);
    }

    private bool IsWhole => _shape is Shape.Whole or Shape.WholePoint;

    private bool IsPoint => _shape is Shape.Point or Shape.WholePoint;

    public static Case Make(int seed, Shape shape)
    {
        var maker = new CaseMaker(seed, shape);
        maker.MakeTrees();
        if (maker.Chance(60)) maker.MakeSite();
        maker.MakeSubject();
        maker.MakeRules();
        maker.MakeExposure();
        if (maker.IsWhole) maker.MakeWhole();
        return new(seed, maker._data, maker._site, maker._question);
    }

    private void MakeTrees()
    {
        _data = new()
        {
            Version = "random",
            Sources =
            [
                new() { Id = new("s-read"), Kind = SourceKind.Handbook, Title = "read" },
                new() { Id = new("s-recalled"), Kind = SourceKind.Paper, Title = "recalled", Recalled = true },
                new() { Id = new("common-practice"), Kind = SourceKind.CommonPractice, Title = "practice", Trust = Trust.Weak },
            ],
            Materials = [new() { Id = Material.Root, Name = "root" }],
            Parts = [new() { Id = PartType.Root, Name = "root" }],
            Agents = [new() { Id = AgentClass.Root, Name = "root" }],
            Conventions = Conventions(),
        };
        for (var i = 1; i <= 4; i++)
        {
            _data = _data with
            {
                Materials = [.. _data.Materials, new()
            {
                Id = new("m-" + i), Name = "m" + i,
                Under = One(Shallow(_data.Materials, m => m.Id, m => m.Under)),
                Delicate = Chance(25) ? One(Enum.GetValues<Delicacy>()) : null,
                DeclaredOnlySuffices = Chance(25),
            }]
            };
        }

        for (var i = 1; i <= One(3, 4); i++) _data = _data with { Parts = [.. _data.Parts, RandomPart(new("p-" + i))] };
        if (Chance(60)) _data = _data with
        {
            Agents = [.. _data.Agents, new() { Id = new("water"), Name = "water", Under = AgentClass.Root, Leaves = Residue.Salts }],
        };
        for (var i = 1; i <= One(3, 4); i++) _data = _data with { Agents = [.. _data.Agents, RandomAgent(new("a-" + i))] };
        _trees = new(_data, []);
    }

    private PartType RandomPart(PartId id)
    {
        var states = Chance(75);
        return new()
        {
            Id = id,
            Name = id.Value,
            Under = One(Shallow(_data.Parts, p => p.Id, p => p.Under)),
            Materials = states ? Slots() : null,
            MaterialsKnown = states ? One<bool?>(null, null, true, false) : null,
            Wettest = Chance(85)
                ? One(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Spray, ApplicationMethod.Rinse, ApplicationMethod.Immerse,
                ApplicationMethod.Immerse) : null,
            Never = Chance(45) ? Enum.GetValues<Act>().Where(_ => Chance(40)).ToArray() : null,
            Geometry = Chance(40) ? One(Enum.GetValues<Geometry>()) : null,
            Duties = Chance(15) ? [RandomDuty()] : [],
        };
    }

    private AgentClass RandomAgent(AgentId id)
    {
        var under = One(Shallow(_data.Agents.Where(a => a.Id.Value != "water").ToArray(), a => a.Id, a => a.Under));
        var inherited = new ReferenceTrees(_data, []).Basis(under);
        var basis = inherited is null && (under == AgentClass.Root ? Chance(80) : Chance(30))
            ? StrengthUnit.PercentOf(One(StrengthBasis.VolumePerVolume, StrengthBasis.VolumePerVolume, StrengthBasis.MassPerMass, StrengthBasis.MassPerVolume,
                StrengthBasis.AvailableChlorineMassPerMass, StrengthBasis.AvailableChlorineMassPerVolume)) : null;
        return new()
        {
            Id = id,
            Name = id.Value,
            Under = under,
            Basis = basis,
            Density = Chance(60) ? 0.8m : null,
            AvailableChlorine = Chance(60) ? One(0.95m, 0.55m) : null,
            Usual = new()
            {
                Strength = Chance(60) && (inherited is not null || basis is not null) ? Between(Axis.Strength) : null,
                Ph = Chance(60) ? Between(Axis.Ph) : null,
                Temperature = Chance(40) ? Between(Axis.Temperature) : null,
                Sources = [new("s-read")],
            },
            Leaves = Chance(70) ? One(Residue.Nothing, Residue.Nothing, Residue.Film, Residue.Salts) : null,
            Chamber = Chance(4),
            Duties = Chance(15) ? [RandomDuty()] : [],
        };
    }

    private Convention[] Conventions() =>
    [
        Says(ConventionKey.UnstatedExposureTime, Interval.AtMost(One(_pool[Axis.ExposureTime]))),
        Says(ConventionKey.UnstatedTemperature, Between(Axis.Temperature)),
        Says(ConventionKey.UnstatedPh, Between(Axis.Ph)),
        Says(ConventionKey.UnstatedUses, Interval.AtMost(One(_pool[Axis.Uses]))),
        Says(ConventionKey.UnstatedDilution, Chance(50) ? Interval.Exactly(1) : Between(Axis.Dilution)),
        new() { Key = ConventionKey.UnstatedMethods, Methods = MethodSet.Of(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe), Reason = "narrow" },
        Says(ConventionKey.AssumedTemperature, Interval.Closed(15, 30)),
        // Its ends are boundaries of rules too: a rule that ends where a part is dry must be read on the right side of that end.
        Says(ConventionKey.DryingTime, Between(Axis.ExposureTime)),
        Says(ConventionKey.SolutionDensity, Interval.Closed(0.8m, 1.25m)),
        Says(ConventionKey.WaterPh, Interval.Closed(6.5m, 9.5m)),
        Says(ConventionKey.PurifiedWaterPh, Interval.Closed(5, 7.5m)),
        Says(ConventionKey.ClaimTemperature, Interval.Closed(20, 25)),
        new() { Key = ConventionKey.ClaimMethods, Methods = MethodSet.Of(ApplicationMethod.Immerse), Reason = "narrow" },
        Says(ConventionKey.WindowShare, Interval.Exactly(WindowShare)),
        Says(ConventionKey.WindowLeast, Interval.Exactly(WindowLeast)),
        Says(ConventionKey.MostProducts, Interval.Exactly(3)),
        Says(ConventionKey.UsesShare, Interval.AtMost(1)),
        new() { Key = ConventionKey.DamageOrder, Consequences = Enum.GetValues<Consequence>(), Reason = "caution" },
        new() { Key = ConventionKey.HazardOrder, Hazards = Enum.GetValues<Hazard>(), Reason = "caution" },
        Says(ConventionKey.IngressWetWipe, Interval.Closed(1, 8)),
        Says(ConventionKey.IngressSpray, Interval.Closed(4, 6)),
        Says(ConventionKey.IngressRinse, Interval.Closed(5, 6)),
        Says(ConventionKey.IngressImmerse, Interval.Closed(7, 8)),
    ];

    private static Convention Says(ConventionKey key, Interval range) => new() { Key = key, Range = range, Reason = "caution" };

    private Duty RandomDuty()
    {
        var kind = One(DutyKind.TakeOff, DutyKind.WipeDry, DutyKind.Dry, DutyKind.CleanFirst, DutyKind.NoPooling);
        DutyWay[] ways = kind switch
        {
            DutyKind.TakeOff =>
                [DutyWay.By(One(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Rinse)),
                    DutyWay.By(One(ApplicationMethod.Rinse, ApplicationMethod.Immerse))],
            DutyKind.WipeDry or DutyKind.Dry => [One(DutyWay.By(Act.SoftCloth), DutyWay.By(Act.HeatDrying), DutyWay.By(Act.CompressedAir), DutyWay.Air)],
            _ => [],
        };
        return new() { Kind = kind, Ways = Chance(50) ? ways : ways.Take(1).ToArray() };
    }

    private MaterialSlot[] Slots() => Enumerable.Range(0, One(1, 1, 2))
        .Select(_ => new MaterialSlot(Shuffled(_data.Materials.Skip(1).Select(m => m.Id).ToArray()).Take(Chance(20) ? 2 : 1).ToArray()))
        .DistinctBy(s => s.OneOf[0]).ToArray();

    /// <summary>The ids under which a record may stand so that no branch is deeper than three below the root.</summary>
    private static TId[] Shallow<TId, T>(IReadOnlyList<T> records, Func<T, TId> id, Func<T, TId?> under) where TId : Id
    {
        int Depth(TId at) => under(records.Single(r => id(r) == at)) is { } parent ? 1 + Depth(parent) : 0;
        return records.Select(id).Where(i => Depth(i) < 3).ToArray();
    }

    private decimal[] Pool(params decimal[] values) => Shuffled(values).Take(3).Order().ToArray();

    /// <summary>A closed range with both ends from the pool of the axis; a single value one time in four.</summary>
    private Interval Between(Axis axis)
    {
        var (a, b) = (One(_pool[axis]), One(_pool[axis]));
        return Interval.Closed(Math.Min(a, b), Math.Max(a, b));
    }

    private bool Chance(int percent) => _random.Next(100) < percent;

    private T One<T>(params IReadOnlyList<T> of) => of[_random.Next(of.Count)];

    private T[] Shuffled<T>(params T[] of)
    {
        var copy = of.ToArray();
        _random.Shuffle(copy);
        return copy;
    }
}
