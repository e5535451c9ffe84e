namespace Compat.Planning;

/// <summary>Finds the best choice of options for the parts of a plan. Exact: no choice is better, and of equal ones the ordinals decide.</summary>
/// <remarks>
/// <para>The levels, the first that differs deciding:</para>
/// <list type="number">
/// <item>Most parts served. All parts count the same.</item>
/// <item>Least harm beyond the mildest. A part's mildest option is the one of the least harm among all its own, whatever products the plan may hold and however
/// many. What counts is first how many parts are given an option of a worse class than that, then by how many classes over all parts. The sentence it stands for
/// is 'no part is given an agent of a worse class than the mildest product of the shelf that serves it, unless that would need more products than the plan may
/// hold'. Where none need be worse, none is, since a choice without any has the count nought and is never more than allowed; where some must be, the count keeps
/// the sentence for as many parts as can be, each part being promised the same, and the sum keeps the others as near to it as can be. The harm of an option is
/// the worst among its products, for a harsh cleaner is not made good by a mild disinfectant. A choice is never made to serve fewer parts for it, nor are
/// products spared for it: serving stands before, the count of products behind.</item>
/// <item>Fewest products.</item>
/// <item>Least share of the limits of use: first the largest share that any part gives away for any mechanism, then the sum of all. Exact fractions.</item>
/// <item>Fewest distinct steps: a step that serves several parts counts once.</item>
/// <item>Least contact time, added up over the parts.</item>
/// <item>The products, as ascending lists of ordinals, the least first; then the options, from the part of the least ordinal on, being served before not.</item>
/// </list>
/// <para>How: the products alone decide the first three levels, since with the products given each part is served by its mildest option among them without regard
/// to the others. So first the best reach is sought over sets of products, then every set of the fewest products with that reach. In each, shares are compared part
/// by part; only steps tie the parts together, and these are searched within the set.</para>
/// </remarks>
internal static class ChoiceSolver
{
    /// <summary>The best choice.</summary>
    /// <param name="task">What is chosen from; <see cref="ArgumentException"/> where two parts or two options of one have the same ordinal, a product excludes itself, or a share is below nought.</param>
    /// <param name="cancel">Stops the search by an <see cref="OperationCanceledException"/>: a task can be made hard on purpose.</param>
    public static Choice Solve(ChoiceTask task, CancellationToken cancel = default) => Solve(new ReadyTask(task), task.MaxProducts, cancel);

    /// <summary>The best choice, and the best one with at least one product fewer; null where it uses none.</summary>
    public static (Choice Choice, OneProductFewer? Fewer) SolveBoth(ChoiceTask task, CancellationToken cancel = default)
    {
        var ready = new ReadyTask(task);
        var choice = Solve(ready, task.MaxProducts, cancel);
        return (choice, choice.Products.Count == 0 ? null : new(choice, Solve(ready, choice.Products.Count - 1, cancel)));
    }

    private static Choice Solve(ReadyTask task, int maxProducts, CancellationToken cancel)
    {
        if (maxProducts < 0) throw new ArgumentOutOfRangeException(nameof(maxProducts), "the number of products is not below nought");
        var search = new ProductSearch(task, cancel);
        var reach = search.Best(Math.Min(maxProducts, task.Products.Count));
        var candidates = new List<ProductSet>();
        for (var size = 0; candidates.Count == 0; size++)
        {
            search.Each(size, reach, products =>
            {
                var set = new ProductSet(task, products);
                var order = candidates.Count == 0 ? -1 : set.CompareShares(candidates[0]);
                if (order < 0) candidates.Clear();
                if (order <= 0) candidates.Add(set);
            });
        }

        candidates.Sort((one, other) => one.CompareProducts(other));
        Choice? best = null;
        foreach (var set in candidates)
        {
            var choice = set.Choose(reach, cancel);
            if (best is null || choice.Cost.CompareTo(best.Cost) < 0) best = choice;
        }

        return best!;
    }
}
