using System.Diagnostics.CodeAnalysis;
using Compat.Snapshots;
using Compat.Validation;

namespace Compat.Planning;

/// <summary>What a dilution is asked for: a stock, the strength wanted, and how much of it.</summary>
public sealed record DilutionQuestion
{
    /// <summary>The agent class whose strength is meant.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The strength of the stock; a range where its label gives one.</summary>
    public required Strength Stock { get; init; }

    /// <summary>The strength wanted; a range where any within it will do.</summary>
    public required Strength Wanted { get; init; }

    /// <summary>How much finished liquid, in litres; null where <see cref="Kilograms"/> is given.</summary>
    public decimal? Litres { get; init; }

    /// <summary>How much finished liquid, in kilograms: for strengths by mass whose density nobody knows.</summary>
    public decimal? Kilograms { get; init; }

    /// <summary>Whether the stock is a powder or tablet; its strength is a share of its mass then.</summary>
    public bool IsPowder { get; init; }

    /// <summary>The density of a liquid stock in kg/L, where its strength is by mass and the wanted one by volume.</summary>
    public decimal? StockDensity { get; init; }

    /// <summary>The temperature at which volumes are measured, in °C; matters to ethanol.</summary>
    public decimal Temperature { get; init; } = 20m;
}

/// <summary>How to make a dilution. Figures are rounded to six digits.</summary>
public sealed record DilutionRecipe
{
    /// <summary>The question.</summary>
    public required DilutionQuestion Question { get; init; }

    /// <summary>How much stock, in litres; a range where any within it will do. Null where it is weighed.</summary>
    public Interval? StockLitres { get; init; }

    /// <summary>How much stock, in grams, where it is weighed: a powder, or strengths by mass.</summary>
    public Interval? StockGrams { get; init; }

    /// <summary>How much water to add to the least stock, in litres. Null where only making up to the volume is sure.</summary>
    public decimal? WaterLitres { get; init; }

    /// <summary>How much water to add, in grams, where the recipe goes by mass.</summary>
    public decimal? WaterGrams { get; init; }

    /// <summary>By how much the mixture is less than its two volumes, in litres; 0 where it was not asked of a formula.</summary>
    public decimal ContractionLitres { get; init; }

    /// <summary>The strength reached with the least stock, in the unit wanted, over the whole range of the label.</summary>
    public required Strength Reached { get; init; }

    /// <summary>The identity of the knowledge base whose figures were used.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }
}

/// <summary>Says how much stock and water make a dilution.</summary>
public static class Dilution
{
    /// <summary>The agent whose mixtures with water the density formula describes.</summary>
    internal static AgentId Ethanol { get; } = new("ethanol");

    /// <summary>Works a dilution out, or says why it cannot be made.</summary>
    /// <remarks>
    /// The least stock is reckoned at the lowest strength of its label, so that the strength wanted is reached in any case.
    /// Liquids are made up to the volume; for ethanol the contraction is reckoned in, for another agent by volume only making up is sure.
    /// </remarks>
    /// <param name="knowledgeBase">The knowledge base with the agent's density or share of available chlorine.</param>
    /// <param name="question">What is asked.</param>
    /// <param name="recipe">How it is made, or null.</param>
    /// <param name="problems">All that is wrong; empty where nothing is.</param>
    /// <returns>Whether there is a recipe.</returns>
    public static bool TryMake(KnowledgeBase knowledgeBase, DilutionQuestion question, [NotNullWhen(true)] out DilutionRecipe? recipe,
        out IReadOnlyList<Problem> problems)
    {
        recipe = null;
        problems = DilutionValidation.Check(knowledgeBase, question);
        if (problems.Count > 0) return false;
        var agent = knowledgeBase.Data.Agents.First(a => a.Id == question.Agent);
        var found = new List<Problem>();
        try
        {
            recipe = question.Agent == Ethanol && !question.IsPowder
                ? EthanolDilution.Make(question, agent, knowledgeBase.Identity, found)
                : Plain(question, knowledgeBase.Compiled.Agent(question.Agent), knowledgeBase.Identity, found);
        }
        catch (OverflowException)
        {
            found.Add(DilutionValidation.Problem("not-measurable", "from", $"`{question.Stock}` and `{question.Wanted}` lie too far apart"));
        }

        problems = found;
        return recipe is not null;
    }

    /// <summary>The least and most of the stock, as multiples of the finished liquid (of a powder: grams in a litre of it); null where none does.</summary>
    internal static Interval? Shares(DilutionQuestion question, Interval stock, Interval wanted, List<Problem> found)
    {
        var (least, strongest) = (stock.Lower!.Value, stock.Upper!.Value);
        if (wanted.Lower > least && !question.IsPowder)
        {
            found.Add(DilutionValidation.Problem(
                "cannot-strengthen", "to", $"`{question.Wanted}` is stronger than the stock, `{question.Stock}`, may be",
                    "dilution only weakens: take a stronger stock"));
            return null;
        }

        var (from, to) = (wanted.Lower!.Value / least, wanted.IsPoint ? wanted.Lower.Value / least : (wanted.Upper ?? strongest) / strongest);
        if (to >= from) return new(from, true, question.IsPowder ? to : Math.Min(to, 1m), true);
        found.Add(DilutionValidation.Problem(
            "stock-too-uncertain", "from",
                $"the stock's range `{question.Stock}` is wider than the range wanted, `{question.Wanted}`: no dilution is inside for all of it",
                "measure the stock, or widen what is wanted"));
        return null;
    }

    /// <summary>A recipe of everything but ethanol.</summary>
    private static DilutionRecipe? Plain(DilutionQuestion question, AgentTraits agent, IReadOnlyList<DataIdentity> identity, List<Problem> found)
    {
        if (DilutionContent.Of(question, agent, found) is not { } content) return null;
        if (Shares(question, content.Stock, content.Wanted, found) is not { } shares) return null;
        var factor = content.Stock.Upper!.Value / content.Stock.Lower!.Value;
        var reached = new Strength(Interval.Closed(question.Wanted.Range.Lower!.Value, Six(question.Wanted.Range.Lower.Value * factor)), question.Wanted.Unit);
        var byMass = content.ByMass;
        var amount = byMass ? question.Kilograms!.Value * 1000m : question.Litres!.Value;
        var stock = Interval.Closed(Six(shares.Lower!.Value * amount), Six(shares.Upper!.Value * amount));
        var weighed = byMass || question.IsPowder;
        return new()
        {
            Question = question,
            StockLitres = weighed ? null : stock,
            StockGrams = weighed ? stock : null,
            WaterLitres = weighed || question.Wanted.Unit.Basis == StrengthBasis.VolumePerVolume ? null : amount - stock.Lower,
            WaterGrams = byMass ? amount - stock.Lower : null,
            Reached = reached,
            Identity = identity,
        };
    }

    /// <summary>The nearest figure of six digits.</summary>
    internal static decimal Six(decimal value)
    {
        var (down, up) = (Rounding.Down(value), Rounding.Up(value));
        return value - down <= up - value ? down : up;
    }
}

/// <summary>Says what is wrong with the question of a dilution before anything is reckoned.</summary>
internal static class DilutionValidation
{
    private const decimal MostLitres = 1_000_000m;

    public static Problem Problem(string code, string field, string message, string? help = null) =>
        new(code, new ProblemPlace(RecordKind.Question, "", field), message, help);

    public static IReadOnlyList<Problem> Check(KnowledgeBase knowledgeBase, DilutionQuestion question)
    {
        List<Problem> found = [.. Given.Check((nameof(knowledgeBase), knowledgeBase)), .. SnapshotWriter.FaultsOf(question)];
        if (found.Count > 0) return found;
        if (knowledgeBase.Data.Agents.All(a => a.Id != question.Agent))
            found.Add(Problem("unknown-agent", "agent", $"there is no agent `{question.Agent}`",
                NearestNames.Help(question.Agent.Value, knowledgeBase.Data.Agents.Select(a => a.Id.Value))));
        var agent = knowledgeBase.Data.Agents.FirstOrDefault(a => a.Id == question.Agent);
        foreach (var (field, strength) in new[] { ("from", question.Stock), ("to", question.Wanted) })
            if (agent is not null && !strength.Unit.Suits(agent))
                found.Add(Problem("no-conversion", field, $"`{strength.Unit}` counts oxygen from hydrogen peroxide, and `{question.Agent}` is another agent"));
        Strength(found, "from", question.Stock, true);
        Strength(found, "to", question.Wanted, false);
        Amount(found, question);
        if (question.IsPowder && question.Stock.Unit.Basis is not (StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass))
            found.Add(Problem("powder-by-mass", "from", $"a powder's strength is a share of its mass, read `{question.Stock.Unit}`",
                "write it in `% w/w` or `% w/w available chlorine`"));
        if (question.StockDensity is < KnowledgeValidation.LeastDensity or > KnowledgeValidation.MostDensity)
            found.Add(Problem("outside-axis", "density", KnowledgeValidation.DensityRange));
        if (question.StockDensity is not null && question.IsPowder)
            found.Add(Problem("powder-density", "density", "a powder is weighed: its density is not needed"));
        Temperature(found, question);
        return found;
    }

    private static void Strength(List<Problem> found, string field, Strength strength, bool needsUpper)
    {
        var range = strength.Range;
        var isFraction = strength.Unit.Basis is not (StrengthBasis.MassPerVolume or StrengthBasis.AvailableChlorineMassPerVolume);
        if (range.IsEmpty) found.Add(Problem("empty-range", field, $"nothing lies in `{strength}`"));
        else if (range.Lower is not > 0m) found.Add(Problem("no-least", field, $"`{strength}` has no lower end above 0", "state at least how strong"));
        else if (!range.LowerIncluded || (range.Upper is not null && !range.UpperIncluded))
            found.Add(Problem("open-end", field, $"`{strength}` leaves an end out", "a recipe needs figures that may be reached: write `1000..1200 ppm w/v`"));
        else if (needsUpper && range.Upper is null) found.Add(Problem("no-most", field, $"`{strength}` has no upper end", "state the range of the label"));
        else if (isFraction && (strength.Percent.Upper ?? strength.Percent.Lower) > 100m)
            found.Add(Problem("outside-axis", field, $"`{strength}` is more than 100 %"));
    }

    private static void Amount(List<Problem> found, DilutionQuestion question)
    {
        var byMass = question.Wanted.Unit.Basis is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;
        if (question.Litres is not null == question.Kilograms is not null)
            found.Add(Problem("one-amount", "volume", "a recipe needs the finished amount once: a volume or a mass"));
        else if ((question.Litres ?? question.Kilograms) is <= 0m or > MostLitres)
            found.Add(Problem("outside-axis", question.Litres is null ? "mass" : "volume", "an amount lies above 0 and up to 1,000,000"));
        else if (byMass && question.Kilograms is null && question.Agent != Dilution.Ethanol)
            found.Add(Problem("by-mass", "volume", $"`{question.Wanted.Unit}` counts mass: a volume of it is known only with its density",
                "give the finished amount as a mass"));
        else if (!byMass && question.Litres is null)
            found.Add(Problem("by-volume", "mass", $"`{question.Wanted.Unit}` counts in a volume", "give the finished amount as a volume"));
    }

    private static void Temperature(List<Problem> found, DilutionQuestion question)
    {
        if (question.Agent != Dilution.Ethanol)
        {
            if (question.Temperature != 20m)
                found.Add(Problem("temperature-not-used", "temperature", $"volumes of `{question.Agent}` are reckoned at 20 °C only",
                    "leave the temperature out"));
        }
        else if (question.Temperature < (decimal)EthanolWater.LowestTemperature || question.Temperature > (decimal)EthanolWater.HighestTemperature)
        {
            found.Add(Problem("outside-axis", "temperature",
                $"the density formula of ethanol holds from {EthanolWater.LowestTemperature} to {EthanolWater.HighestTemperature} °C"));
        }
    }
}

/// <summary>Stock and finished liquid counted alike: grams (or litres) of what the wanted strength counts, in one litre, gram or kilogram.</summary>
/// <param name="Stock">What one litre of the stock holds; one gram where it is weighed.</param>
/// <param name="Wanted">What one litre, or gram, of the finished liquid is to hold.</param>
/// <param name="ByMass">Whether finished liquid is weighed.</param>
internal readonly record struct DilutionContent(Interval Stock, Interval Wanted, bool ByMass)
{
    /// <summary>Counts both; null where a figure is missing, which is noted.</summary>
    public static DilutionContent? Of(DilutionQuestion question, AgentTraits traits, List<Problem> found)
    {
        var agent = traits.Agent;
        var (from, to) = (question.Stock.Unit.Basis, question.Wanted.Unit.Basis);
        if (Chlorine(question, traits, found) is not { } stock) return null;
        var wanted = question.Wanted.Percent;
        if (IsMassInMass(to))
        {
            if (IsMassInMass(from)) return new(stock, wanted, true);
            if (question.StockDensity is { } heavy && from != StrengthBasis.VolumePerVolume) return new(stock.Scale(1m / heavy), wanted, true);
            return Missing(found, "density", $"`{question.Stock.Unit}` and `{question.Wanted.Unit}` meet only through the density of the stock",
                "give the stock's density in kg/L");
        }

        // What is wanted counts in a volume: grams in a litre, or litres in a litre.
        var inVolume = to == StrengthBasis.VolumePerVolume;
        wanted = wanted.Scale(inVolume ? 0.01m : 10m);
        if (question.IsPowder)
            return inVolume ? Missing(found, "powder", "a powder has no strength by volume", "write the wanted strength in `% w/v`")
                : new(stock.Scale(0.01m), wanted, false);
        Interval grams;
        if (from == StrengthBasis.VolumePerVolume)
        {
            if (inVolume) return new(stock.Scale(0.01m), wanted, false);
            if (agent.Density is not { } pure)
                return Missing(found, "from",
                    $"the density of `{agent.Id}` is not on record, and `{question.Stock.Unit}` turns into `{question.Wanted.Unit}` only through it", null);
            grams = stock.Scale(10m * pure);
        }
        else if (!IsMassInMass(from)) grams = stock.Scale(10m);
        else if (question.StockDensity is { } density) grams = stock.Scale(10m * density);
        else return Missing(found, "density", $"`{question.Stock.Unit}` turns into `{question.Wanted.Unit}` only through the density of the stock",
            "give the stock's density in kg/L; it is on its data sheet");
        if (!inVolume) return new(grams, wanted, false);
        return agent.Density is { } own
            ? new(grams.Scale(0.001m / own), wanted, false)
            : Missing(found, "to",
            $"the density of `{agent.Id}` is not on record, and `{question.Stock.Unit}` turns into `{question.Wanted.Unit}` only through it", null);
    }

    /// <summary>The stock in percent of what the wanted strength counts: the agent itself, or its available chlorine.</summary>
    private static Interval? Chlorine(DilutionQuestion question, AgentTraits traits, List<Problem> found)
    {
        var (from, to) = (IsChlorine(question.Stock.Unit.Basis), IsChlorine(question.Wanted.Unit.Basis));
        if (from == to) return question.Stock.Percent;
        if (traits.AvailableChlorine is { Lower: { } least, Upper: { } most } && question.Stock.Unit.Basis != StrengthBasis.VolumePerVolume)
        {
            var stock = question.Stock.Percent;
            return to ? Interval.Closed(stock.Lower!.Value * least, stock.Upper!.Value * most)
                : Interval.Closed(stock.Lower!.Value / most, stock.Upper!.Value / least);
        }

        Missing(
            found, "from",
            $"`{question.Stock.Unit}` and `{question.Wanted.Unit}` count different things, and the share of available chlorine of `{traits.Agent.Id}` "
            + "is not on record",
            "name the agent itself, for example `sodium-hypochlorite`, or write both in one of the two");
        return null;
    }

    private static DilutionContent? Missing(List<Problem> found, string field, string message, string? help)
    {
        found.Add(DilutionValidation.Problem("figure-missing", field, message, help));
        return null;
    }

    private static bool IsChlorine(StrengthBasis basis) => basis is StrengthBasis.AvailableChlorineMassPerMass or StrengthBasis.AvailableChlorineMassPerVolume;

    private static bool IsMassInMass(StrengthBasis basis) => basis is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;
}

/// <summary>Dilutions of ethanol: masses add up, volumes do not.</summary>
internal static class EthanolDilution
{
    public static DilutionRecipe? Make(DilutionQuestion question, AgentClass ethanol, IReadOnlyList<DataIdentity> identity, List<Problem> found)
    {
        if (MassShares(question.Stock, ethanol, "from", found) is not { } stock || MassShares(question.Wanted, ethanol, "to", found) is not { } wanted)
            return null;
        if (Dilution.Shares(question, stock, wanted, found) is not { } shares) return null;
        var temperature = (double)question.Temperature;
        var grams = question.Kilograms is { } kilograms ? kilograms * 1000m : question.Litres!.Value * Density(wanted.Lower!.Value, temperature);
        var stockDensity = Density(stock.Lower!.Value, temperature);
        var (leastGrams, mostGrams) = (shares.Lower!.Value * grams, shares.Upper!.Value * grams);
        var waterGrams = grams - leastGrams;
        var finished = grams / Density(wanted.Lower!.Value, temperature);
        var waterLitres = waterGrams / Density(0m, temperature);
        return new()
        {
            Question = question,
            StockLitres = Interval.Closed(Dilution.Six(leastGrams / stockDensity), Dilution.Six(mostGrams / stockDensity)),
            StockGrams = question.Kilograms is null ? null : Interval.Closed(Dilution.Six(leastGrams), Dilution.Six(mostGrams)),
            WaterLitres = Dilution.Six(waterLitres),
            WaterGrams = question.Kilograms is null ? null : Dilution.Six(waterGrams),
            ContractionLitres = Dilution.Six(Math.Max(0m, (leastGrams / stockDensity) + waterLitres - finished)),
            Reached = new(
                Interval.Closed(question.Wanted.Range.Lower!.Value,
                InUnit(shares.Lower.Value * stock.Upper!.Value, question.Wanted.Unit, ethanol, question.Wanted.Range.Lower.Value)), question.Wanted.Unit),
            Identity = identity,
        };
    }

    /// <summary>A strength as percent of mass; null where it cannot be turned into one, which is noted.</summary>
    private static Interval? MassShares(Strength strength, AgentClass ethanol, string field, List<Problem> found)
    {
        var percent = strength.Percent;
        switch (strength.Unit.Basis)
        {
            case StrengthBasis.MassPerMass:
                return percent;
            case StrengthBasis.VolumePerVolume:
                break;
            case StrengthBasis.MassPerVolume when ethanol.Density is { } pure:
                percent = percent.Scale(1m / pure);
                break;
            default:
                found.Add(DilutionValidation.Problem("figure-missing", field, $"`{strength.Unit}` is no strength of ethanol",
                    "write it in `% v/v` or `% w/w`"));
                return null;
        }

        if ((percent.Upper ?? percent.Lower) > 100m)
        {
            found.Add(DilutionValidation.Problem("outside-axis", field, $"`{strength}` is more than pure ethanol"));
            return null;
        }

        return new(Mass(percent.Lower!.Value), true, percent.Upper is { } upper ? Mass(upper) : null, percent.Upper is not null);
    }

    private static decimal Mass(decimal volumePercent) => (decimal)EthanolWater.MassPercent((double)volumePercent);

    /// <summary>A density in grams per litre, which is kg/m³.</summary>
    private static decimal Density(decimal massPercent, double temperature) => (decimal)EthanolWater.Density((double)massPercent, temperature);

    /// <summary>A percent of mass in the unit wanted, at least the strength wanted itself.</summary>
    private static decimal InUnit(decimal massPercent, StrengthUnit unit, AgentClass ethanol, decimal least)
    {
        var percent = unit.Basis switch
        {
            StrengthBasis.MassPerMass => massPercent,
            StrengthBasis.VolumePerVolume => (decimal)EthanolWater.VolumePercent((double)massPercent),
            _ => (decimal)EthanolWater.VolumePercent((double)massPercent) * ethanol.Density!.Value,
        };
        return Math.Max(least, Dilution.Six(percent / unit.PercentPerUnit));
    }
}

/// <summary>A concentrate diluted as its label says.</summary>
/// <param name="Product">The product.</param>
/// <param name="Litres">How much finished liquid, in litres.</param>
/// <param name="StockLitres">How much of the product, in litres, from the weakest to the strongest dilution of the label.</param>
/// <param name="Reached">The strength of each declared ingredient in the finished liquid, over the range of the label and of its dilution, rounded outward to
/// six digits.</param>
/// <param name="Identity">The identity of the knowledge base and of its sites.</param>
public sealed record LabelDilution(
    ProductId Product, decimal Litres, Interval StockLitres, IReadOnlyList<(AgentId Agent, Strength Strength)> Reached, IReadOnlyList<DataIdentity> Identity)
{
    /// <summary>Works a label's dilution out, or says why it cannot be made.</summary>
    /// <param name="knowledgeBase">The knowledge base with the site of the product.</param>
    /// <param name="product">The product.</param>
    /// <param name="litres">How much finished liquid, in litres, above 0.</param>
    /// <param name="dilution">The recipe, or null.</param>
    /// <param name="problems">All that is wrong; empty where nothing is.</param>
    /// <returns>Whether there is a recipe.</returns>
    public static bool TryMake(KnowledgeBase knowledgeBase, ProductId product, decimal litres, [NotNullWhen(true)] out LabelDilution? dilution,
        out IReadOnlyList<Problem> problems)
    {
        dilution = null;
        problems = Given.Check((nameof(knowledgeBase), knowledgeBase), (nameof(product), product));
        if (problems.Count > 0) return false;
        var found = new List<Problem>();
        var known = knowledgeBase.Sites.SelectMany(site => site.Products).FirstOrDefault(p => p.Id == product);
        if (known is null)
            found.Add(DilutionValidation.Problem("unknown-product", "product", $"there is no product `{product}`",
                NearestNames.Help(product.Value, knowledgeBase.Sites.SelectMany(site => site.Products).Select(p => p.Id.Value))));
        else if (known.StrengthOf != StrengthOf.Concentrate)
            found.Add(DilutionValidation.Problem("no-concentrate", "product", $"`{product}` is no concentrate: it is used as it stands"));
        else if (known.Dilution is not { Lower: not null, Upper: not null })
            found.Add(DilutionValidation.Problem("no-label-dilution", "product", $"no dilution of `{product}` is on record",
                "write its label's `dilution` into the site file, or say the strength wanted"));
        if (litres is <= 0m or > 1_000_000m)
            found.Add(DilutionValidation.Problem("outside-axis", "volume", "an amount lies above 0 and up to 1,000,000 litres"));
        problems = found;
        if (found.Count > 0) return false;
        var share = known!.Dilution!.Value;
        var densities = knowledgeBase.Data.Conventions.First(c => c.Key == ConventionKey.SolutionDensity).Range;
        var reached = known.Ingredients
            .Where(i => i is { Agent: not null, Strength: not null })
            .Select(i => (i.Agent!, InFinished(i.Strength!.Value, share, known.Density, densities)))
            .ToArray();
        dilution = new(product, litres, share.Scale(litres), reached, knowledgeBase.Identity);
        return true;
    }

    /// <summary>
    /// What is left of a strength; one by mass counts in the volume then, through the density of the concentrate or the densities it may have.
    /// </summary>
    private static Strength InFinished(Strength strength, Interval share, decimal? density, Interval densities)
    {
        var counted = strength.Unit.Basis switch
        {
            StrengthBasis.MassPerMass => StrengthBasis.MassPerVolume,
            StrengthBasis.AvailableChlorineMassPerMass => StrengthBasis.AvailableChlorineMassPerVolume,
            var basis => basis,
        };
        if (counted == strength.Unit.Basis) return new(Times(strength.Range, share), strength.Unit);
        var through = density is { } known ? Interval.Exactly(known) : densities;
        return new(Times(Times(strength.Percent, share), through), StrengthUnit.PercentOf(counted));
    }

    private static Interval Times(Interval range, Interval share) => new(
        range.Lower is { } low ? Rounding.Down(low * share.Lower!.Value) : null, range.LowerIncluded && share.LowerIncluded,
        range.Upper is { } high ? Rounding.Up(high * share.Upper!.Value) : null, range.UpperIncluded && share.UpperIncluded);
}
