using System.Diagnostics.CodeAnalysis;
using Compat.Validation;

namespace Compat.Planning;

/// <summary>A concentrate diluted as its label says.</summary>
/// <param name="Product">The product.</param>
/// <param name="Litres">How much finished liquid, in litres.</param>
/// <param name="StockLitres">How much of the product, in litres, from the weakest to the strongest dilution of the label.</param>
/// <param name="Reached">The strength of each declared ingredient in the finished liquid, over the range of the label and of its dilution, rounded outward to six digits.</param>
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
    public static bool TryMake(KnowledgeBase knowledgeBase, ProductId product, decimal litres, [NotNullWhen(true)] out LabelDilution? dilution, out IReadOnlyList<Problem> problems)
    {
        dilution = null;
        problems = Given.Check((nameof(knowledgeBase), knowledgeBase), (nameof(product), product));
        if (problems.Count > 0) return false;
        var found = new List<Problem>();
        var known = knowledgeBase.Sites.SelectMany(site => site.Products).FirstOrDefault(p => p.Id == product);
        if (known is null) found.Add(DilutionValidation.Problem("unknown-product", "product", $"there is no product `{product}`", NearestNames.Help(product.Value, knowledgeBase.Sites.SelectMany(site => site.Products).Select(p => p.Id.Value))));
        else if (known.StrengthOf != StrengthOf.Concentrate) found.Add(DilutionValidation.Problem("no-concentrate", "product", $"`{product}` is no concentrate: it is used as it stands"));
        else if (known.Dilution is not { Lower: not null, Upper: not null }) found.Add(DilutionValidation.Problem("no-label-dilution", "product", $"no dilution of `{product}` is on record", "write its label's `dilution` into the site file, or say the strength wanted"));
        if (litres is <= 0m or > 1_000_000m) found.Add(DilutionValidation.Problem("outside-axis", "volume", "an amount lies above 0 and up to 1,000,000 litres"));
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

    /// <summary>What is left of a strength; one by mass counts in the volume then, through the density of the concentrate or the densities it may have.</summary>
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
