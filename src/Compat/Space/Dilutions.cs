namespace Compat.Space;

/// <summary>The dilutions d at which d times a range of strengths lies in some strengths: with some of it, or with all. Limits are exact quotients.</summary>
internal static class Dilutions
{
    /// <summary>The dilutions at which some strength of the range does.</summary>
    /// <param name="atOne">The strengths undiluted.</param>
    /// <param name="inside">The strengths in which it is to lie.</param>
    public static Stretch WhereSome(Interval atOne, Stretch inside)
    {
        if (inside.IsEmpty) return default;
        Cut from = Cut.Start, to = Cut.End;
        if (inside.From is { } least && atOne.Upper is { } high)
        {
            var touches = !least.After && atOne.UpperIncluded;
            if (high > 0m) from = new Cut(least.Numerator, high, !touches);
            else if (least.Numerator > 0m || (least.Numerator == 0m && !touches)) return default;
        }

        if (inside.To is { } most)
        {
            var low = atOne.Lower ?? 0m;
            var touches = most.After && (atOne.Lower is null || atOne.LowerIncluded);
            if (low > 0m) to = new Cut(most.Numerator, low, touches);
            else if (most.Numerator < 0m || (most.Numerator == 0m && !touches)) return default;
        }

        return new Stretch(from, to);
    }

    /// <summary>The dilutions at which every strength of the range does: at which none lies before or after.</summary>
    /// <param name="atOne">The strengths undiluted.</param>
    /// <param name="inside">The strengths in which it is to lie.</param>
    public static Stretch WhereAll(Interval atOne, Stretch inside) => inside.IsEmpty ? default
        : Stretch.Whole.After(WhereSome(atOne, Stretch.Whole.Before(inside))).Before(WhereSome(atOne, Stretch.Whole.After(inside)));
}
