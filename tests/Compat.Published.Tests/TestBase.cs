namespace Compat.Published.Tests;

/// <summary>The shipped agents and conventions with one rule of our own, to read a conversion off an answer.</summary>
internal static class TestBase
{
    private static readonly MaterialId Material = new("ceramic");

    /// <summary>Allows an agent on one material up to (or from) a strength, in percent of its basis.</summary>
    public static KnowledgeBase WithOneRule(string agent, decimal percent, bool atLeast = false)
    {
        var data = KnowledgeBase.Shipped.Data;
        var rule = new Rule
        {
            Id = new("ceramic.one"),
            Target = RuleTarget.On(Material),
            Agent = new(agent),
            Allows = true,
            WholeClass = true,
            KnownBy = KnownBy.Published,
            When = new()
            {
                Strength = AxisLimit.Within(atLeast ? Interval.AtLeast(percent) : Interval.AtMost(percent)),
                ExposureTime = AxisLimit.Any,
                Temperature = AxisLimit.Any,
                Ph = AxisLimit.Any,
                Uses = AxisLimit.Any,
                Methods = MethodLimit.Any,
            },
            Why = "a worked example",
            Sources = [data.Sources[0].Id],
            Reviewed = new(2026, 11, 25),
        };
        var water = rule with { Id = new("ceramic.water"), Agent = new("water"), WholeClass = true, When = rule.When with { Strength = default } };
        var problems = KnowledgeBase.TryBuild(data with { Rules = [rule, water], StandingRules = [] }, out var knowledge);
        return knowledge ?? throw new InvalidOperationException(string.Join("; ", problems));
    }

    public static Question Question(string agent, Strength strength) =>
        new() { Materials = [new MaterialSlot(Material)], Agent = new(agent), Strength = strength, Method = ApplicationMethod.DampWipe };

    /// <summary>Lays a site with one concentrate over a knowledge base and asks it.</summary>
    public static Answer AskConcentrate(KnowledgeBase knowledge, string agent, Strength stock, decimal? dilution) =>
        Ask(knowledge, agent, stock, StrengthOf.Concentrate, null, dilution);

    /// <summary>Lays a site with one liquid of a known density over a knowledge base and asks it.</summary>
    public static Answer AskLiquid(KnowledgeBase knowledge, string agent, Strength strength, decimal density) =>
        Ask(knowledge, agent, strength, StrengthOf.Liquid, density, null);

    private static Answer Ask(KnowledgeBase knowledge, string agent, Strength stock, StrengthOf of, decimal? density, decimal? dilution)
    {
        var product = new Product
        {
            Id = new("stock"),
            Name = "stock of a worked example",
            Composition = Composition.Full,
            StrengthOf = of,
            Density = density,
            Ingredients = [new() { Agent = new(agent), Strength = stock }],
            Dilution = of == StrengthOf.Concentrate ? new Interval(0m, false, 1m, true) : null,
        };
        var laid = knowledge.With(new Site { Id = new("bench"), Name = "bench of a worked example", Products = [product] });
        return laid.Ask(new Question
        {
            Materials = [new MaterialSlot(Material)],
            Product = product.Id,
            Dilution = dilution is { } share ? Interval.Exactly(share) : null,
            Method = ApplicationMethod.DampWipe,
        });
    }
}
