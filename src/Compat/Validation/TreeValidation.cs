namespace Compat.Validation;

/// <summary>Checks that records form one tree under their root.</summary>
internal static class TreeValidation
{
    /// <summary>The problem after which nothing else is checked: every walk up such a tree would take too long.</summary>
    public const string TooDeep = "tree-too-deep";

    private const int MostLevels = 64;

    public static void Check<TId, T>(Scope scope, RecordsById<TId, T> records, RecordKind kind, string what, TId root, Func<T, TId> id, Func<T, TId?> under) where TId : Id where T : class
    {
        if (!records.ContainsKey(root)) scope.Add("no-root", new ProblemPlace(kind, root.Value), $"the tree has no root `{root}`");
        foreach (var one in records.Values)
        {
            var key = id(one);
            var place = new ProblemPlace(kind, key.Value, "under");
            var parent = under(one);
            if (parent is null)
            {
                if (key != root) scope.Add("no-parent", place, $"`{key}` does not say what it is under", $"name a parent; the root is `{root}`");
                continue;
            }

            if (key == root)
            {
                scope.Add("root-with-parent", place, $"the root `{root}` is under nothing");
                continue;
            }

            if (!scope.Knows(records, parent, place, "under", what)) continue;
            var seen = new HashSet<TId> { key };
            for (var at = parent; at is not null && records.TryGetValue(at, out var record); at = under(record))
            {
                if (seen.Add(at))
                {
                    if (seen.Count <= MostLevels) continue;
                    scope.Add(TooDeep, place, $"`{key}` lies more than {MostLevels} levels below the root");
                    break;
                }

                if (at == key) scope.Add("tree-cycle", place, $"`{key}` lies under itself, through `{parent}`");
                break;
            }
        }
    }
}
