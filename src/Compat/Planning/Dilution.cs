using System.Diagnostics.CodeAnalysis;
using Compat.Validation;

namespace Compat.Planning;

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
    public static bool TryMake(KnowledgeBase knowledgeBase, DilutionQuestion question, [NotNullWhen(true)] out DilutionRecipe? recipe, out IReadOnlyList<Problem> problems)
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
                "cannot-strengthen", "to", $"`{question.Wanted}` is stronger than the stock, `{question.Stock}`, may be", "dilution only weakens: take a stronger stock"));
            return null;
        }

        var (from, to) = (wanted.Lower!.Value / least, wanted.IsPoint ? wanted.Lower.Value / least : (wanted.Upper ?? strongest) / strongest);
        if (to >= from) return new(from, true, question.IsPowder ? to : Math.Min(to, 1m), true);
        found.Add(DilutionValidation.Problem(
            "stock-too-uncertain", "from", $"the stock's range `{question.Stock}` is wider than the range wanted, `{question.Wanted}`: no dilution is inside for all of it", "measure the stock, or widen what is wanted"));
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
