using Compat.Snapshots;
using Compat.Validation;

namespace Compat.Planning;

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
            found.Add(Problem("unknown-agent", "agent", $"there is no agent `{question.Agent}`", NearestNames.Help(question.Agent.Value, knowledgeBase.Data.Agents.Select(a => a.Id.Value))));
        var agent = knowledgeBase.Data.Agents.FirstOrDefault(a => a.Id == question.Agent);
        foreach (var (field, strength) in new[] { ("from", question.Stock), ("to", question.Wanted) })
            if (agent is not null && !strength.Unit.Suits(agent)) found.Add(Problem("no-conversion", field, $"`{strength.Unit}` counts oxygen from hydrogen peroxide, and `{question.Agent}` is another agent"));
        Strength(found, "from", question.Stock, true);
        Strength(found, "to", question.Wanted, false);
        Amount(found, question);
        if (question.IsPowder && question.Stock.Unit.Basis is not (StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass))
            found.Add(Problem("powder-by-mass", "from", $"a powder's strength is a share of its mass, read `{question.Stock.Unit}`", "write it in `% w/w` or `% w/w available chlorine`"));
        if (question.StockDensity is < KnowledgeValidation.LeastDensity or > KnowledgeValidation.MostDensity) found.Add(Problem("outside-axis", "density", KnowledgeValidation.DensityRange));
        if (question.StockDensity is not null && question.IsPowder) found.Add(Problem("powder-density", "density", "a powder is weighed: its density is not needed"));
        Temperature(found, question);
        return found;
    }

    private static void Strength(List<Problem> found, string field, Strength strength, bool needsUpper)
    {
        var range = strength.Range;
        var isFraction = strength.Unit.Basis is not (StrengthBasis.MassPerVolume or StrengthBasis.AvailableChlorineMassPerVolume);
        if (range.IsEmpty) found.Add(Problem("empty-range", field, $"nothing lies in `{strength}`"));
        else if (range.Lower is not > 0m) found.Add(Problem("no-least", field, $"`{strength}` has no lower end above 0", "state at least how strong"));
        else if (!range.LowerIncluded || (range.Upper is not null && !range.UpperIncluded)) found.Add(Problem("open-end", field, $"`{strength}` leaves an end out", "a recipe needs figures that may be reached: write `1000..1200 ppm w/v`"));
        else if (needsUpper && range.Upper is null) found.Add(Problem("no-most", field, $"`{strength}` has no upper end", "state the range of the label"));
        else if (isFraction && (strength.Percent.Upper ?? strength.Percent.Lower) > 100m) found.Add(Problem("outside-axis", field, $"`{strength}` is more than 100 %"));
    }

    private static void Amount(List<Problem> found, DilutionQuestion question)
    {
        var byMass = question.Wanted.Unit.Basis is StrengthBasis.MassPerMass or StrengthBasis.AvailableChlorineMassPerMass;
        if (question.Litres is not null == question.Kilograms is not null) found.Add(Problem("one-amount", "volume", "a recipe needs the finished amount once: a volume or a mass"));
        else if ((question.Litres ?? question.Kilograms) is <= 0m or > MostLitres) found.Add(Problem("outside-axis", question.Litres is null ? "mass" : "volume", "an amount lies above 0 and up to 1,000,000"));
        else if (byMass && question.Kilograms is null && question.Agent != Dilution.Ethanol) found.Add(Problem("by-mass", "volume", $"`{question.Wanted.Unit}` counts mass: a volume of it is known only with its density", "give the finished amount as a mass"));
        else if (!byMass && question.Litres is null) found.Add(Problem("by-volume", "mass", $"`{question.Wanted.Unit}` counts in a volume", "give the finished amount as a volume"));
    }

    private static void Temperature(List<Problem> found, DilutionQuestion question)
    {
        if (question.Agent != Dilution.Ethanol)
        {
            if (question.Temperature != 20m) found.Add(Problem("temperature-not-used", "temperature", $"volumes of `{question.Agent}` are reckoned at 20 °C only", "leave the temperature out"));
        }
        else if (question.Temperature < (decimal)EthanolWater.LowestTemperature || question.Temperature > (decimal)EthanolWater.HighestTemperature)
        {
            found.Add(Problem("outside-axis", "temperature", $"the density formula of ethanol holds from {EthanolWater.LowestTemperature} to {EthanolWater.HighestTemperature} °C"));
        }
    }
}
