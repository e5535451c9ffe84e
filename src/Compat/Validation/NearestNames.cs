namespace Compat.Validation;

/// <summary>Finds the known names that are near a wrong one.</summary>
public static class NearestNames
{
    /// <summary>
    /// Up to three known names within a few slips (insert, drop, change or swap of letters: one in three, at most four), or that hold the wrong one whole;
    /// nearest first.
    /// </summary>
    public static IReadOnlyList<string> Of(string wrong, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(wrong);
        ArgumentNullException.ThrowIfNull(known);
        var limit = Math.Min(4, Math.Max(1, wrong.Length / 3));
        return known
            .Distinct()
            .Select(name => (name, distance: wrong.Length >= 4 && name.Contains(wrong) ? 1 : Distance(wrong, name, limit)))
            .Where(pair => pair.distance <= limit)
            .OrderBy(pair => pair.distance).ThenBy(pair => pair.name, StringComparer.Ordinal)
            .Take(3).Select(pair => pair.name).ToArray();
    }

    /// <summary>The help line that offers near names, or null where none is near.</summary>
    public static string? Help(string wrong, IEnumerable<string> known)
    {
        var near = Of(wrong, known);
        return near.Count == 0 ? null : "did you mean " + string.Join(" or ", near.Select(name => $"`{name}`")) + "?";
    }

    private static int Distance(string a, string b, int limit)
    {
        if (Math.Abs(a.Length - b.Length) > limit) return limit + 1;
        var before = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++) last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                row[j] = Math.Min(Math.Min(row[j - 1], last[j]) + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) row[j] = Math.Min(row[j], before[j - 2] + 1);
            }

            (before, last, row) = (last, row, before);
        }

        return last[b.Length];
    }
}
