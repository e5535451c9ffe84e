namespace Compat.Validation;

/// <summary>Checks that records form one tree under their root.</summary>
internal static class TreeValidation
{
    /// <summary>The problem after which nothing else is checked: every walk up such a tree would take too long.</summary>
    public const string TooDeep = "tree-too-deep";

    private const int MostLevels = 64;

    public static void Check<TId, T>(
        Scope scope, RecordsById<TId, T> records, RecordKind kind, string what, TId root, Func<T, TId> id, Func<T, TId?> under) where TId : Id where T : class
    {
        if (!records.ContainsKey(root)) new Field(scope, kind, root.Value).Wrong("no-root", $"the tree has no root `{root}`");
        foreach (var one in records.Values)
        {
            var key = id(one);
            var at = new Field(scope, kind, key.Value)["under"];
            var parent = under(one);
            if (parent is null)
            {
                if (key != root) at.Wrong("no-parent", $"`{key}` does not say what it is under", $"name a parent; the root is `{root}`");
                continue;
            }

            if (key == root)
            {
                at.Wrong("root-with-parent", $"the root `{root}` is under nothing");
                continue;
            }

            if (!at.Knows(records, parent, what)) continue;
            var seen = new HashSet<TId> { key };
            for (var up = parent; up is not null && records.TryGetValue(up, out var record); up = under(record))
            {
                if (seen.Add(up))
                {
                    if (seen.Count <= MostLevels) continue;
                    at.Wrong(TooDeep, $"`{key}` lies more than {MostLevels} levels below the root");
                    break;
                }

                if (up == key) at.Wrong("tree-cycle", $"`{key}` lies under itself, through `{parent}`");
                break;
            }
        }
    }
}
