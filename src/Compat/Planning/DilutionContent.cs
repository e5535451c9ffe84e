using Compat.Validation;

namespace Compat.Planning;

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
            return Missing(found, "density", $"`{question.Stock.Unit}` and `{question.Wanted.Unit}` meet only through the density of the stock", "give the stock's density in kg/L");
        }

        // What is wanted counts in a volume: grams in a litre, or litres in a litre.
        var inVolume = to == StrengthBasis.VolumePerVolume;
        wanted = wanted.Scale(inVolume ? 0.01m : 10m);
        if (question.IsPowder) return inVolume ? Missing(found, "powder", "a powder has no strength by volume", "write the wanted strength in `% w/v`") : new(stock.Scale(0.01m), wanted, false);
        Interval grams;
        if (from == StrengthBasis.VolumePerVolume)
        {
            if (inVolume) return new(stock.Scale(0.01m), wanted, false);
            if (agent.Density is not { } pure) return Missing(found, "from", $"the density of `{agent.Id}` is not on record, and `{question.Stock.Unit}` turns into `{question.Wanted.Unit}` only through it", null);
            grams = stock.Scale(10m * pure);
        }
        else if (!IsMassInMass(from)) grams = stock.Scale(10m);
        else if (question.StockDensity is { } density) grams = stock.Scale(10m * density);
        else return Missing(found, "density", $"`{question.Stock.Unit}` turns into `{question.Wanted.Unit}` only through the density of the stock", "give the stock's density in kg/L; it is on its data sheet");
        if (!inVolume) return new(grams, wanted, false);
        return agent.Density is { } own
            ? new(grams.Scale(0.001m / own), wanted, false)
            : Missing(found, "to", $"the density of `{agent.Id}` is not on record, and `{question.Stock.Unit}` turns into `{question.Wanted.Unit}` only through it", null);
    }

    /// <summary>The stock in percent of what the wanted strength counts: the agent itself, or its available chlorine.</summary>
    private static Interval? Chlorine(DilutionQuestion question, AgentTraits traits, List<Problem> found)
    {
        var (from, to) = (IsChlorine(question.Stock.Unit.Basis), IsChlorine(question.Wanted.Unit.Basis));
        if (from == to) return question.Stock.Percent;
        if (traits.AvailableChlorine is { Lower: { } least, Upper: { } most } && question.Stock.Unit.Basis != StrengthBasis.VolumePerVolume)
        {
            var stock = question.Stock.Percent;
            return to ? Interval.Closed(stock.Lower!.Value * least, stock.Upper!.Value * most) : Interval.Closed(stock.Lower!.Value / most, stock.Upper!.Value / least);
        }

        Missing(found, "from", $"`{question.Stock.Unit}` and `{question.Wanted.Unit}` count different things, and the share of available chlorine of `{traits.Agent.Id}` is not on record", "name the agent itself, for example `sodium-hypochlorite`, or write both in one of the two");
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
