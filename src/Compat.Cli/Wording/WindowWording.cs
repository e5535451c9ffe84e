namespace Compat.Cli.Wording;

/// <summary>Says a window: how it works, or what closes it.</summary>
public static class WindowWording
{
    private const int MostNamed = 3;

    /// <summary>The shortest contact time that works and the longest exposure time that is stood; of an open window.</summary>
    public static string Summary(Window window)
    {
        var longest = window.LongestExposureTime!.Value;
        var stands = longest == Interval.WithoutEnd ? "the part stands it for any time" : $"the part stands it up to {FigureWording.Duration(longest)}";
        return window.ShortestContactTime!.Value is var wet && wet == 0m
            ? $"no contact time is needed; {stands}"
            : $"it works from {FigureWording.Duration(wet)} wet; {stands}";
    }

    /// <summary>A box, every axis named, with what to do about each.</summary>
    public static string Of(WindowBox box, StrengthUnit? unit)
    {
        var parts = new List<string> { Words.Of(box.Method) };
        if (box.Strength is { } strength) parts.Add("strength " + FigureWording.Strength(strength, unit));
        if (box.Dilution is { } dilution) parts.Add(ExposureWording.Dilution(dilution));
        if (Wet(box) is { } wet) parts.Add(wet);
        parts.Add(box.ExposureTime.Upper is not { } last || last == Interval.WithoutEnd ? "it may stay on" : "off the part " + (box.ExposureTime.UpperIncluded ? "by " : "before ") + FigureWording.Duration(last));
        parts.Add(Measured(FigureWording.Temperature(box.Temperature), "any temperature", box.Temperature is { Lower: null or -40m, Upper: null or 200m }, box.MeasureTemperature));
        parts.Add(Measured("pH " + FigureWording.Ph(box.Ph), "any pH", box.Ph is { Lower: null or -1m, Upper: null or 15m }, box.MeasurePh));
        parts.Add(FigureWording.CountOfUses(box.Uses));
        return string.Join("; ", parts);
    }

    /// <summary>What closes a window, as a sentence without a final stop, with the pair that closes it.</summary>
    public static string Of(WindowClosure closure, Window window, Question question, Names names)
    {
        string Argument(int index) => index < closure.Arguments.Count ? closure.Arguments[index] : "";
        var text = closure.Code switch
        {
            ClosureCode.DoesNotKill => string.Join(" ", closure.Kill.Select(reason => KillWording.Of(reason, window, question, names)).Distinct()).TrimEnd('.'),
            ClosureCode.PartDoesNotStandIt when closure.NotListed => "the device's instructions do not list it",
            ClosureCode.PartDoesNotStandIt when closure.ByItsUse => "the part does not stand how it is used or taken off",
            ClosureCode.PartDoesNotStandIt => (closure.Forbidden ? "the part does not stand " : "nobody knows that the part stands ") + (closure.Ingredients.Count == 0 ? "it" : "its " + string.Join(", its ", closure.Ingredients.Select(names.Agent))),
            ClosureCode.HarmsPeople => "a rule on people forbids it",
            ClosureCode.KillsTooSlowly => $"kills in {Time(closure.ContactTime)}; this part stands {Time(closure.ExposureTime)}",
            ClosureCode.TooNarrow => $"kills in {Time(closure.ContactTime)}; this part stands {Time(closure.ExposureTime)}: too narrow to hit",
            ClosureCode.OtherMethods => $"kills by {Argument(0)}; this part stands {Argument(1)}",
            ClosureCode.OtherStrength => "kills at strengths or dilutions that this part does not stand",
            ClosureCode.OtherConditions => "kills at temperatures or a pH that this part does not stand",
            _ => "for high level the part's own rule or its instructions must spare it; only its materials are known to stand it",
        };
        var pair = new List<string>();
        if (closure.Claims.Count > 0) pair.Add("on the side of kill: " + Named(closure.Claims.Select(claim => claim.Id)));
        if (closure.Rules.Count > 0) pair.Add("on the side of the part: " + Named(closure.Rules.Select(rule => rule.Value)));
        if (closure.Code == ClosureCode.HarmsPeople) pair.Add(Named(closure.Arguments));
        return pair.Count == 0 ? text : $"{text} ({string.Join("; ", pair)})";
    }

    private static string? Wet(WindowBox box)
    {
        if (box.Reached == ContactTimeReached.NotNeeded) return null;
        var time = FigureWording.Duration(box.ContactTime.Lower ?? 0m);
        return box.Reached switch
        {
            ContactTimeReached.ByItself when box.Method >= ApplicationMethod.Rinse => $"for at least {time}",
            ContactTimeReached.ByItself => $"keep visibly wet for {time}, which it does by itself",
            ContactTimeReached.WipeAgain => $"keep visibly wet for {time}, wipe again as often as it takes",
            _ => $"keep visibly wet for {time}, time it: how long it stays wet is not on record",
        };
    }

    private static string Measured(string range, string any, bool isAny, bool measure) => isAny ? any : measure ? range + ", measure it" : range;

    private static string Time(decimal? seconds) =>
        seconds is not { } time ? "a time not on record" : time == Interval.WithoutEnd ? "any time" : FigureWording.Duration(time);

    /// <summary>The first few ids; the rest is counted.</summary>
    internal static string Named(IEnumerable<string> ids)
    {
        var all = ids.Distinct().Select(id => $"`{id}`").ToArray();
        return string.Join(", ", all.Take(MostNamed)) + (all.Length > MostNamed ? $" and {all.Length - MostNamed} more" : "");
    }
}
