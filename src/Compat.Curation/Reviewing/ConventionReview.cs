namespace Compat.Curation.Reviewing;

/// <summary>Says which way a figure of our own caution was moved. Figures that fill in what rules leave out show in the answers instead.</summary>
internal static class ConventionReview
{
    public static IEnumerable<FactChange> Of(Convention before, Convention after)
    {
        if (before.Order != after.Order) yield return new(ChangeKind.Loosened, $"the convention `{Words.Of(before.Key)}` goes {after.Order}, before {before.Order}: plans may take another product");
        bool? loosened = before.Key switch
        {
            ConventionKey.IngressWetWipe or ConventionKey.IngressSpray or ConventionKey.IngressRinse or ConventionKey.IngressImmerse => !after.Range.LiesIn(before.Range),
            ConventionKey.AssumedTemperature or ConventionKey.SolutionDensity or ConventionKey.WaterPh or ConventionKey.PurifiedWaterPh => !before.Range.LiesIn(after.Range),
            ConventionKey.WindowShare or ConventionKey.WindowLeast => Figure(after) < Figure(before),
            ConventionKey.UsesShare or ConventionKey.MostProducts => Figure(after) > Figure(before),
            _ => null,
        };
        if (loosened is null || before.Range.Equals(after.Range)) yield break;
        yield return new(loosened == true ? ChangeKind.Loosened : ChangeKind.Tightened, $"the convention `{Words.Of(before.Key)}` is {after.Range}, before {before.Range}");
    }

    private static decimal Figure(Convention one) => one.Range.Upper ?? one.Range.Lower ?? 0m;
}
