using Compat.Planning;

namespace Compat.Cli.Wording;

/// <summary>Says which products of the shelf do not serve parts, and why: one reason once, with all the products it holds for, and what holds of every part once for all of them.</summary>
public sealed class ClosedWording
{
    private readonly PlanWording _words;
    private readonly Names _names;
    private readonly Said[] _everywhere;

    private sealed record Said(ProductId Product, PlanRole Role, string Reason, string? Detail);

    /// <summary>Looks for what closes a product on every part alike.</summary>
    /// <param name="parts">The parts that stand under one heading.</param>
    /// <param name="words">How the plan says its parts and products.</param>
    /// <param name="names">The names of everything else.</param>
    public ClosedWording(IEnumerable<PlannedPart> parts, PlanWording words, Names names)
    {
        _words = words;
        _names = names;
        var said = parts.Where(part => part.Closed.Count > 0).Select(All).ToArray();
        _everywhere = said.Length < 2 ? [] : said.Skip(1).Aggregate<Said[], IEnumerable<Said>>(said[0], (held, other) => held.Intersect(other)).ToArray();
    }

    /// <summary>A line for each reason that holds of every part.</summary>
    public IEnumerable<string> Everywhere => Lines(_everywhere);

    /// <summary>A line for each reason of this part that does not hold of all, in the order in which the products first give it.</summary>
    public IEnumerable<string> Of(PlannedPart part) => Lines(All(part).Except(_everywhere));

    private Said[] All(PlannedPart part) => part.Closed.Select(closed => Of(closed, part)).ToArray();

    private IEnumerable<string> Lines(IEnumerable<Said> said)
    {
        foreach (var reason in said.GroupBy(one => one.Reason))
        {
            var products = reason.GroupBy(one => one.Product).Select(OneProduct).ToArray();
            yield return products.Length == 1 ? $"{products[0]}: {reason.Key}" : $"these {products.Length} products: {reason.Key}: {string.Join("; ", products)}";
        }
    }

    private string OneProduct(IGrouping<ProductId, Said> of)
    {
        var name = _words.Product(of.Key) + (of.All(one => one.Role == PlanRole.Clean) ? " as cleaner" : of.Any(one => one.Role == PlanRole.Clean) ? ", as cleaner too" : "");
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
            ClosureCode.DoesNotKill => new(closed.Product, closed.Role, string.Join("; ", DoesNotKill(closure.Kill, window, question)), null),
            ClosureCode.PartDoesNotStandIt => new(closed.Product, closed.Role, closure.NotListed ? "the device's instructions do not list it" : closure.ByItsUse ? "the part does not stand how it is used or taken off" : closure.Forbidden ? "the part does not stand it" : "nobody knows that the part stands it", Because(closure)),
            _ => new(closed.Product, closed.Role, WindowWording.Of(closure, window, question, _names), null),
        };
    }

    /// <summary>The reasons without the product's name, which stands beside them; what differs only in what is to be reached or killed is said once.</summary>
    private IEnumerable<string> DoesNotKill(IReadOnlyList<KillReason> reasons, Window window, Question question)
    {
        foreach (var same in reasons.GroupBy(reason => (reason.Code, How: reason.Code == KillReasonCode.OutsideClaims ? KillWording.Elsewhere(reason.Arguments[1], question) : null)))
        {
            string Targets(int index, string joined) => string.Join(joined, same.Select(reason => KillWording.Meet(reason.Arguments[index], _names)).Distinct());
            if (same.Key.Code == KillReasonCode.LabelClaimsLess) yield return $"no label claim says that it {Targets(1, " or ")}, and by its label claims alone it is judged";
            else if (same.Key.How is { } how) yield return $"on record it {Targets(0, " and ")}{how} ({WindowWording.Named(same.SelectMany(reason => reason.Arguments.Skip(2)).Distinct())})";
            else foreach (var text in same.Select(reason => Of(reason, window, question)).Distinct()) yield return text;
        }
    }

    private string Of(KillReason reason, Window window, Question question) => reason.Code switch
    {
        KillReasonCode.CompositionNotFull => "it has no label claim, and of what is not known in full nothing published of an ingredient counts",
        KillReasonCode.WaterTooHard => "the water at hand is harder than its label allows",
        _ => ReasonWording.Lower(KillWording.Of(reason, window, question, _names)).TrimEnd('.'),
    };

    private string? Because(WindowClosure closure)
    {
        var text = string.Join(" and ", closure.Ingredients.Select(id => "its " + _names.Agent(id)));
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
