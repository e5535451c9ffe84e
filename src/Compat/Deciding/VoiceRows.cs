namespace Compat.Deciding;

/// <summary>The rules of one voice that speak of one component.</summary>
/// <param name="Forbidding">Those that forbid.</param>
/// <param name="Allowing">Those that allow.</param>
internal sealed record VoiceRows(VoiceRow[] Forbidding, VoiceRow[] Allowing)
{
    public static VoiceRows None { get; } = new([], []);

    /// <summary>Gathers the rows of some rules.</summary>
    /// <param name="index">The index they are made for.</param>
    /// <param name="rules">The rules that reach the voice, whatever they speak of.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="ending">How an exposure time ends on the part.</param>
    /// <param name="inFull">Whether those that others make needless are kept, all in the order of the rules.</param>
    public static VoiceRows Of(VerdictIndex index, IEnumerable<CompiledRule> rules, AskedComponent asked, ExposureTimeEnding ending, bool inFull)
    {
        List<VoiceRow> forbidding = [], allowing = [];
        foreach (var rule in rules)
        {
            if (!Reach.Speaks(index.Base, rule, asked.Product, asked.Component)) continue;
            if (Reach.ExposureTimes(index.Base, rule, ending != ExposureTimeEnding.Ends, ending == ExposureTimeEnding.DriesOnly) is not { } exposureTime) continue;
            (rule.Allows ? allowing : forbidding).Add(new VoiceRow(rule, exposureTime, index.TraitsOf(rule)));
        }

        return forbidding.Count + allowing.Count == 0 ? None
            : inFull ? new VoiceRows(forbidding.ToArray(), allowing.ToArray())
            : new VoiceRows(Needed(forbidding, row => row).ToArray(), Needed(allowing, row => row).ToArray());
    }

    /// <summary>What has a row that none makes needless, the broadest first.</summary>
    public static List<T> Needed<T>(IEnumerable<T> all, Func<T, VoiceRow> rowOf)
    {
        var needed = new List<T>();
        foreach (var one in all.OrderByDescending(one => rowOf(one).Breadth))
            if (!needed.Exists(other => rowOf(one).IsNeedlessBeside(rowOf(other)))) needed.Add(one);
        return needed;
    }
}

/// <summary>What is asked of a rule whether it speaks of it.</summary>
/// <param name="Product">The product, or null.</param>
/// <param name="Component">The component.</param>
internal readonly record struct AskedComponent(Product? Product, Component Component);

/// <summary>How a finite exposure time ends on a part.</summary>
internal enum ExposureTimeEnding
{
    /// <summary>As asked.</summary>
    Ends,

    /// <summary>Not at all.</summary>
    Never,

    /// <summary>By drying, not before the drying time.</summary>
    DriesOnly,
}
