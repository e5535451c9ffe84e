using Compat.Planning;

namespace Compat.Tests.Plans;

/// <summary>Tries every choice of a small task and keeps the best, by the definition of each level and nothing else.</summary>
internal static class EveryChoice
{
    public static Choice Best(ChoiceTask task)
    {
        var parts = task.Parts.OrderBy(part => part.Ordinal).ToArray();
        var possible = parts.Select(part => part.Options.Where(option => Possible(task, option)).OrderBy(option => option.Ordinal).ToArray()).ToArray();
        Choice? best = null;
        Try([]);
        return best!;

        void Try(ChoiceOption?[] chosen)
        {
            if (chosen.Length < parts.Length)
            {
                foreach (var option in possible[chosen.Length]) Try([.. chosen, option]);
                Try([.. chosen, null]);
                return;
            }

            var products = chosen.SelectMany(option => option?.Products ?? []).Select(used => used.Product).Distinct().Order().ToArray();
            if (products.Length > task.MaxProducts || task.NeverInOnePlan.Any(pair => products.Contains(pair.One) && products.Contains(pair.Other))) return;
            var choice = Judge(parts, possible, chosen, products);
            if (best is null || Compare(choice, best) < 0) best = choice;
        }
    }

    private static bool Possible(ChoiceTask task, ChoiceOption option)
    {
        var products = option.Products.Select(used => used.Product).ToHashSet();
        return option.Shares.Values.All(share => share <= Fraction.One)
            && !task.NeverOnOnePart.Any(pair => products.Contains(pair.One) && products.Contains(pair.Other));
    }

    private static Choice Judge(ChoicePart[] parts, ChoiceOption[][] possible, ChoiceOption?[] chosen, int[] products)
    {
        var served = parts.Select((part, i) => (part, option: chosen[i], i)).Where(one => one.option is not null)
            .Select(one => new ChosenOption(one.part, one.option!, one.option!.Harm - possible[one.i].Min(option => option.Harm))).ToArray();
        var shares = served.SelectMany(one => one.Option.Shares.Values).ToArray();
        return new()
        {
            Products = products,
            Served = served,
            NotServed = parts.Where((_, i) => chosen[i] is null).ToArray(),
            Cost = new(
                chosen.Count(option => option is null),
                served.Count(one => one.Excess > 0),
                served.Sum(one => one.Excess),
                products.Length,
                shares.DefaultIfEmpty().Max(),
                shares.Aggregate(default(Fraction), (sum, share) => sum + share),
                served.SelectMany(one => one.Option.Steps).Distinct().Count(),
                served.Sum(one => one.Option.ContactTime)),
        };
    }

    /// <summary>The options are tried in the order of the last level, so that a tie there cannot be.</summary>
    private static int Compare(Choice one, Choice other)
    {
        var order = one.Cost.CompareTo(other.Cost);
        return order != 0 ? order : one.Products.Zip(other.Products, (a, b) => a.CompareTo(b)).FirstOrDefault(difference => difference != 0);
    }
}
