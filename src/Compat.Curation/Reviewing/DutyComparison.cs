namespace Compat.Curation.Reviewing;

/// <summary>Tells whether duties ask at least as much as others.</summary>
internal static class DutyComparison
{
    /// <summary>The duties that nothing on the other side meets.</summary>
    public static IEnumerable<Duty> NotMet(IReadOnlyList<Duty> asked, IReadOnlyList<Duty> by) => asked.Where(duty => !by.Any(other => Meets(other, duty)));

    /// <summary>The duties that nothing on the other side meets; of one that speaks of several parts only what is left out there.</summary>
    public static IEnumerable<Duty> Lost(IReadOnlyList<Duty> asked, IReadOnlyList<Duty> by) => NotMet(asked, by).Select(duty =>
        by.FirstOrDefault(other => other.Kind == duty.Kind && other.Parts.Any(duty.Parts.Contains) && Meets(other, duty with { Parts = [] })) is { } still
            ? duty with { Parts = duty.Parts.Except(still.Parts).ToArray() } : duty);

    /// <summary>Whether doing one duty meets the other: of its kind, no way easier, no figure looser. Words of what to wear or look for are not weighed: others are no match.</summary>
    private static bool Meets(Duty duty, Duty asked) =>
        duty.Kind == asked.Kind
        && (asked.Within is not { } least || duty.Within <= least)
        && asked.Parts.All(duty.Parts.Contains)
        && (asked.AfterUses is not { } uses || duty.AfterUses <= uses)
        && (asked.Note is null || asked.Note == duty.Note || IsOfWays(asked.Kind))
        && (asked.Ways.Count == 0 || (duty.Ways.Count > 0 && duty.Ways.All(way => asked.Ways.Any(one => Serves(way, one)))));

    private static bool IsOfWays(DutyKind kind) => kind is DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry or DutyKind.KeepOff;

    private static bool Serves(DutyWay way, DutyWay asked) =>
        way.Act == asked.Act && (asked.Method is null ? way.Method is null : way.Method >= asked.Method && IsWipe(way.Method) == IsWipe(asked.Method))
        && !(asked.Water is { } water && !(way.Water >= water)) && (way.Times ?? 0) >= (asked.Times ?? 0)
        && (way.Seconds ?? 0) >= (asked.Seconds ?? 0) && (way.Litres ?? 0) >= (asked.Litres ?? 0);

    private static bool IsWipe(ApplicationMethod? method) => method is ApplicationMethod.DryWipe or ApplicationMethod.DampWipe or ApplicationMethod.WetWipe;
}
