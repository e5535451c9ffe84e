namespace Compat.Tests.Plans;

/// <summary>
/// Random sites over the shipped data without its rules, so that the rules of the site alone decide what a part stands. All that is random comes from one seed.
/// </summary>
internal sealed class RandomSites
{
    public static readonly DeviceId Device = new("trolley");
    private static readonly CalendarDate Day = new(2026, 1, 1);
    private static readonly Lazy<KnowledgeBase> Bare = new(() =>
        KnowledgeBase.TryBuild(KnowledgeBase.Shipped.Data with { Rules = [], StandingRules = [] }, out var kb) is { Count: > 0 } problems
            ? throw new InvalidOperationException(problems[0].ToString()) : kb!);

    private static readonly (string Agent, StrengthBasis Basis, decimal Percent, bool Concentrate)[] Stock =
    [
        ("isopropanol", StrengthBasis.VolumePerVolume, 70m, false),
        ("benzalkonium-chloride", StrengthBasis.MassPerMass, 0.2m, false),
        ("hydrogen-peroxide", StrengthBasis.MassPerMass, 1m, false),
        ("nonionic-surfactant", StrengthBasis.MassPerMass, 1m, false),
        ("sodium-hypochlorite", StrengthBasis.MassPerMass, 5m, true),
        ("citric-acid", StrengthBasis.MassPerMass, 5m, true),
    ];

    private static readonly string[] Types = ["handle", "trolley-frame", "housing-metal-painted", "tray", "hinge", "castor", "mains-inlet", "cable-jacket"];
    private readonly Random _random;

    private RandomSites(int seed) => _random = new(seed);

    public static Site Make(int seed) => new RandomSites(seed).Site();

    public static KnowledgeBase Over(Site site) => Bare.Value.With(site);

    public static Site Without(Site site, Product product) => site with
    {
        Products = site.Products.Where(one => one.Id != product.Id).ToArray(),
        Rules = site.Rules.Where(rule => rule.Product != product.Id).ToArray(),
    };

    private Site Site()
    {
        var products = Stock.Where(_ => Chance(75)).DefaultIfEmpty(Stock[0]).Select(Product).ToArray();
        var parts = Enumerable.Range(0, _random.Next(2, 5))
            .Select(i =>
                new DevicePart { Id = new("part-" + i), OneOfTypes = [new(Pick(Types))], Soil = Chance(30) ? [] : Chance(50) ? [SoilKind.Grease] : null })
                    .ToArray();
        var rules = from product in products
                    from part in parts
                    where Chance(75)
                    select Rule(product, part);
        return new()
        {
            Id = new("ward"),
            Name = "ward",
            Sources = [new() { Id = new("ward-test"), Kind = SourceKind.SiteTest, Title = "an invented test" }],
            Here = new()
            {
                Temperature = Interval.Closed(18m, 26m),
                Water = [WaterGrade.Running],
                Cloths = Chance(50) ? ["cotton", "microfibre"] : [],
                Gloves = Chance(30) ? ["butyl"] : [],
            },
            Products = products,
            Devices = [new() { Id = Device, Name = "trolley", Parts = parts }],
            Rules = rules.ToArray(),
        };
    }

    private Product Product((string Agent, StrengthBasis Basis, decimal Percent, bool Concentrate) stock) => new()
    {
        Id = new("with-" + stock.Agent),
        Name = "product with " + stock.Agent,
        Composition = Composition.Full,
        CompositionDated = Day,
        StrengthOf = stock.Concentrate ? StrengthOf.Concentrate : StrengthOf.Liquid,
        Dilution = stock.Concentrate ? Interval.Closed(0.01m, 0.1m) : null,
        Ingredients = [new() { Agent = new(stock.Agent), Strength = new(Interval.Exactly(stock.Percent), StrengthUnit.PercentOf(stock.Basis)) }],
        Density = 1m,
        Temperature = Interval.Closed(15m, 30m),
        LabelClaims = Enumerable.Range(0, _random.Next(0, 3)).Select(i => Claim(i, stock.Concentrate)).ToArray(),
        Removes = Chance(50) ? [SoilKind.Dust, SoilKind.Grease, SoilKind.Gel, SoilKind.Blood, SoilKind.Mucus, SoilKind.Residue] : [],
        BoundByCloths = Chance(30) ? ["cotton"] : [],
    };

    /// <summary>Tests of the shipped data that show each group of a high level, by wiping too.</summary>
    public static IReadOnlyList<TestCode> ShowingAll { get; } = [new("EN 13727"), new("EN 13624"), new("EN 14348"), new("EN 14476"), new("EN 16615")];

    private LabelClaim Claim(int number, bool concentrate) => new()
    {
        Id = new("claim-" + number),
        When = new()
        {
            ContactTime = AxisLimit.Within(Interval.AtLeast(Pick(30m, 60m, 300m, 600m))),
            Dilution = concentrate ? AxisLimit.Within(Interval.Closed(Pick(0.01m, 0.02m, 0.05m), 0.1m)) : default,
            Temperature = AxisLimit.Within(Interval.AtLeast(Pick(15m, 20m))),
            Methods = MethodLimit.Within(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Immerse),
        },
        Reaches = Pick(Level.Low, Level.Intermediate, Level.High),
        Needs = Chance(20) ? [ClaimNeed.CleanFirst] : [],
        ShownBy = ShowingAll,
    };

    private Rule Rule(Product product, DevicePart part) => new()
    {
        Id = new($"{product.Id}.{part.Id}"),
        Target = RuleTarget.On(Device, part.Id),
        Product = product.Id,
        CompositionDated = Day,
        When = new()
        {
            Dilution = product.StrengthOf == StrengthOf.Concentrate ? AxisLimit.Within(Interval.Closed(0.01m, Pick(0.03m, 0.1m)))
                : AxisLimit.Within(Interval.Exactly(1m)),
            ExposureTime = Chance(30) ? AxisLimit.Any : AxisLimit.Within(Interval.AtMost(Pick(60m, 120m, 600m, 900m))),
            Temperature = AxisLimit.Within(Interval.Closed(10m, Pick(24m, 30m))),
            Ph = AxisLimit.Any,
            Uses = Chance(40) ? AxisLimit.Any : AxisLimit.Within(Interval.AtMost(Pick(1m, 100m, 500m))),
            Methods = MethodLimit.Within(
                [.. new[] { ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Immerse }.Where(_ => Chance(80))
                .DefaultIfEmpty(ApplicationMethod.WetWipe)]),
        },
        Allows = true,
        CountsTowards = Pick(Mechanism.LegendWear, Mechanism.StressCracking),
        Why = "An invented rule.",
        KnownBy = KnownBy.Practice,
        Sources = [new("ward-test")],
        Reviewed = Day,
    };

    private bool Chance(int percent) => _random.Next(100) < percent;

    private T Pick<T>(params T[] from) => from[_random.Next(from.Length)];
}
