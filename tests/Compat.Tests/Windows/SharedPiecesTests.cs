namespace Compat.Tests.Windows;

/// <summary>
/// A whole answer reads its window off the pieces that its own verdict was read off; asked for the window alone, they are collected anew. Both must say the
/// same.
/// </summary>
public sealed class SharedPiecesTests
{
    private static readonly KnowledgeBase Kb = KnowledgeBase.Shipped.With(Shelf());

    [Fact]
    public void WindowOfAWholeAnswer_IsTheWindowAskedAlone()
    {
        var open = 0;
        foreach (var question in Questions())
        {
            if (Kb.Ask(question).Window is not { } within) continue;
            var alone = Kb.WindowOf(question);
            Assert.Equal(Said(alone), Said(within));
            open += alone.IsOpen ? 1 : 0;
        }

        Assert.True(open > 5, $"{open} open windows");
    }

    private static IEnumerable<Question> Questions() =>
        from asked in Kb.Data.Parts.Select((part, i) => (part.Id, i))
        let part = new Question { Part = asked.Id, TouchedBy = TouchedBy.Hand }
        from question in (asked.i % 6 == 1 ? Kb.Sites[0].Products.Select(product => part with { Product = product.Id }) : [])
            .Append(part with { Agent = new AgentId("isopropanol"), Strength = Exactly(70m, StrengthBasis.VolumePerVolume) })
        select question;

    private static string Said(Window window) => string.Join(
        "\n",
        window.Boxes.Select(
            box => $"{box.Method} {box.ContactTime} {box.ExposureTime} {box.Dilution} {box.Temperature} {box.Ph} {box.Uses} {box.Reached} "
                + $"{string.Join(",", box.DecidedBy)} {string.Join(",", box.Claims.Select(claim => claim.Id))}")
            .Append($"{window.BoxCount} {window.Closure?.Code} {window.Closure?.ContactTime} {window.Closure?.ExposureTime} "
                + $"{string.Join(",", window.Closure?.Rules ?? [])}")
            .Concat((window.Closure?.Kill ?? []).Select(reason => $"{reason.Code} {string.Join(",", reason.Arguments)}")));

    private static Site Shelf() => new()
    {
        Id = new SiteId("shelf"),
        Name = "invented",
        Products =
        [
            Of("spirit", StrengthOf.Liquid, ("isopropanol", Exactly(70m, StrengthBasis.VolumePerVolume))),
            Of("mixed", StrengthOf.Liquid, ("ethanol", Between(30m, 40m, StrengthBasis.VolumePerVolume)),
                ("isopropanol", Exactly(20m, StrengthBasis.VolumePerVolume))),
            Of("quat", StrengthOf.Liquid, ("benzalkonium-chloride", Between(0.1m, 0.2m, StrengthBasis.MassPerMass))),
            Of("stock", StrengthOf.Concentrate, ("sodium-hypochlorite", Between(4m, 5m, StrengthBasis.MassPerMass))),
            Of("peroxide", StrengthOf.Liquid, ("hydrogen-peroxide", Between(1m, 1.4m, StrengthBasis.MassPerMass))),
        ],
    };

    private static Strength Exactly(decimal percent, StrengthBasis basis) => Between(percent, percent, basis);

    private static Strength Between(decimal least, decimal most, StrengthBasis basis) => new(Interval.Closed(least, most), StrengthUnit.PercentOf(basis));

    private static Product Of(string id, StrengthOf of, params (string Agent, Strength Strength)[] ingredients) => new()
    {
        Id = new ProductId(id),
        Name = id,
        Composition = Composition.Full,
        StrengthOf = of,
        Density = of == StrengthOf.Concentrate ? 1.07m : null,
        Ingredients = ingredients.Select(one => new Ingredient { Agent = new AgentId(one.Agent), Strength = one.Strength }).ToArray(),
    };
}
