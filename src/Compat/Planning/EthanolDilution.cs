using Compat.Validation;

namespace Compat.Planning;

/// <summary>Dilutions of ethanol: masses add up, volumes do not.</summary>
internal static class EthanolDilution
{
    public static DilutionRecipe? Make(DilutionQuestion question, AgentClass ethanol, IReadOnlyList<DataIdentity> identity, List<Problem> found)
    {
        if (MassShares(question.Stock, ethanol, "from", found) is not { } stock || MassShares(question.Wanted, ethanol, "to", found) is not { } wanted) return null;
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
            Reached = new(Interval.Closed(question.Wanted.Range.Lower!.Value, InUnit(shares.Lower.Value * stock.Upper!.Value, question.Wanted.Unit, ethanol, question.Wanted.Range.Lower.Value)), question.Wanted.Unit),
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
                found.Add(DilutionValidation.Problem("figure-missing", field, $"`{strength.Unit}` is no strength of ethanol", "write it in `% v/v` or `% w/w`"));
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
