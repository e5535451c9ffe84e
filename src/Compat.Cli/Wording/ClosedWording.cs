using Compat.Kill;
using Compat.Plans;
using Compat.Windows;

namespace Compat.Cli.Wording;

/// <summary>Says which products of the shelf do not serve a part, and why: one reason once, with all the products it holds for.</summary>
public sealed class ClosedWording(PlanWording words, Names names)
{
    private sealed record Said(ProductId Product, PlanRole Role, string Reason, string? Detail);

    /// <summary>A line for each reason, in the order in which the products first give it.</summary>
    public IEnumerable<string> Of(PlannedPart part)
    {
        var said = part.Closed.Select(closed => Of(closed, part)).ToArray();
        foreach (var reason in said.GroupBy(one => one.Reason))
        {
            var products = reason.GroupBy(one => one.Product).Select(OneProduct).ToArray();
            yield return products.Length == 1 ? $"{products[0]}: {reason.Key}" : $"these {products.Length} products: {reason.Key}: {string.Join("; ", products)}";
        }
    }

    private string OneProduct(IGrouping<ProductId, Said> of)
    {
        var name = words.Product(of.Key) + (of.All(one => one.Role == PlanRole.Clean) ? " as cleaner" : of.Any(one => one.Role == PlanRole.Clean) ? ", as cleaner too" : "");
        var details = of.Select(one => one.Detail).OfType<string>().Distinct().ToArray();
        return details.Length == 0 ? name : $"{name} ({string.Join("; ", details)})";
    }

    private Said Of(ClosedProduct closed, PlannedPart part)
    {
        if (closed.Missing is { } missing) return new(closed.Product, closed.Role, Of(missing), null);
        if (closed.Closure is not { } closure) return new(closed.Product, closed.Role, "closed", null);
        var question = part.Question with { Product = closed.Product };
        var window = new Window { Need = part.Need, Closure = closure, Identity = [] };
        return closure.Code switch
        {
            ClosureCode.DoesNotKill => new(closed.Product, closed.Role, string.Join(" ", closure.Kill.Select(reason => Of(reason, window, question)).Distinct()), null),
            ClosureCode.PartDoesNotStandIt => new(closed.Product, closed.Role, closure.NotListed ? "the device's instructions do not list it" : closure.ByItsUse ? "the part does not stand how it is used or taken off" : closure.Forbidden ? "the part does not stand it" : "nobody knows that the part stands it", Because(closure)),
            _ => new(closed.Product, closed.Role, WindowWording.Of(closure, window, question, names), null),
        };
    }

    /// <summary>The reason without the product's name: it stands beside it.</summary>
    private string Of(KillReason reason, Window window, Question question) => reason.Code switch
    {
        KillReasonCode.LabelClaimsLess => $"no label claim says that it {KillWording.Meet(reason.Arguments[1], names)}, and by its label claims alone it is judged",
        KillReasonCode.CompositionNotFull => "it has no label claim, and of what is not known in full nothing published of an ingredient counts",
        KillReasonCode.WaterTooHard => "the water at hand is harder than its label allows",
        _ => ReasonWording.Lower(KillWording.Of(reason, window, question, names)).TrimEnd('.'),
    };

    private string? Because(WindowClosure closure)
    {
        var text = string.Join(" and ", closure.Ingredients.Select(id => "its " + names.Agent(id)));
        if (closure.Rules.Count > 0) text += (text.Length > 0 ? ": " : "") + WindowWording.Named(closure.Rules.Select(rule => rule.Value));
        return text.Length == 0 ? null : text;
    }

    private static string Of(MissingThing missing) => missing.Code switch
    {
        MissingCode.Water => $"{missing.Arguments[0]} water is not at hand",
        MissingCode.DryingAir => "clean compressed air is not at hand",
        MissingCode.Gloves => "no glove at hand holds" + (missing.Arguments.Count == 0 ? "" : ": " + string.Join(" or ", missing.Arguments) + " would"),
        MissingCode.Removes => "its label does not say that it takes off " + string.Join(", ", missing.Arguments),
        _ => $"it must never meet {missing.Arguments[0]} (`{missing.Arguments[1]}`)",
    };
}
