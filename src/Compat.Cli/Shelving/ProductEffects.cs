namespace Compat.Cli.Shelving;

/// <summary>Says what each fact about a new product opens or closes on the devices of the site so far.</summary>
internal sealed class ProductEffects(KnowledgeBase below, Site site)
{
    private readonly (Device Device, DevicePart Part)[] _parts = site.Devices
        .SelectMany(device => device.Parts.Select(part => (device, part)))
        .DistinctBy(pair => (pair.device.Instructions.Count > 0 ? pair.device.Id.Value : "", string.Join('|', pair.part.OneOfTypes), pair.part.Materials is null ? "" : pair.device.Id.Value + pair.part.Id.Value))
        .ToArray();

    private enum State
    {
        Closed,
        NotKnown,
        Spared,
        Reached,
    }

    private State[]? _before;

    /// <summary>Whether there are devices to say anything about.</summary>
    public bool HasDevices => _parts.Length > 0;

    /// <summary>What a fact changed: held against the states after the fact before. Null where there are no devices, or nothing can be said of the product so far.</summary>
    /// <param name="fact">The fact.</param>
    /// <param name="sofar">The product with it.</param>
    public string? After(string fact, Product sofar)
    {
        if (!HasDevices || StatesOf(sofar) is not { } after) return null;
        var text = $"{fact}: {Change(_before, after)}";
        _before = after;
        return text;
    }

    /// <summary>One line a fact, in the order of a safety data sheet: what it is, and what it changed.</summary>
    public IEnumerable<string> Of(Product product)
    {
        if (!HasDevices)
        {
            yield return "there are no devices yet: what it may be used on shows once there are";
            yield break;
        }

        foreach (var (fact, step) in Steps(product))
            if (After(fact, step) is { } said) yield return said;
    }

    private static IEnumerable<(string Fact, Product Step)> Steps(Product product)
    {
        var bare = product with { Ph = [], LabelClaims = [], ContactTimes = [], Density = null };
        for (var i = 1; i <= product.Ingredients.Count; i++)
        {
            var last = product.Ingredients[i - 1];
            yield return ($"{last.Agent?.Value ?? last.Unknown}{(last.Strength is { } strength ? " " + strength : ", no figure")}", bare with { Ingredients = product.Ingredients.Take(i).ToArray() });
        }

        if (product.Density is not null) yield return ("density", bare = bare with { Density = product.Density });
        if (product.Ph.Count > 0) yield return ("pH " + string.Join(", ", product.Ph.Select(ph => $"{ph.Value} ({Words.Of(ph.Of)})")), bare = bare with { Ph = product.Ph });
        for (var i = 1; i <= product.LabelClaims.Count; i++)
            yield return ($"label claim {product.LabelClaims[i - 1].Id}", bare with { LabelClaims = product.LabelClaims.Take(i).ToArray(), ContactTimes = product.ContactTimes });
    }

    private State[]? StatesOf(Product step)
    {
        below.TryWith(site with { Products = [.. site.Products, step] }, out var kb);
        return kb is null ? null : _parts.Select(pair => StateOf(kb, step, pair.Device, pair.Part)).ToArray();
    }

    private static State StateOf(KnowledgeBase kb, Product product, Device device, DevicePart part)
    {
        var question = new Question { Device = device.Id, DevicePart = part.Id, Product = product.Id };
        if (!kb.TryAsk(question, out var answer, out _)) return State.NotKnown;
        return answer.PartVerdict == Verdict.NotAllowed ? State.Closed
            : answer.Window is { IsOpen: true } ? State.Reached
            : answer.PartVerdict == Verdict.NotEstablished ? State.NotKnown
            : State.Spared;
    }

    private string Change(State[]? before, State[] after)
    {
        var pieces = new List<string>();
        foreach (var (state, words) in new[] { (State.Closed, "closed"), (State.NotKnown, "not known"), (State.Spared, "spared"), (State.Reached, "level reached") })
        {
            var changed = _parts.Where((_, i) => after[i] == state && (before is null || before[i] != state)).ToArray();
            if (changed.Length == 0) continue;
            var names = changed.Select(pair => string.Join(" or ", pair.Part.OneOfTypes)).Distinct().ToArray();
            pieces.Add($"{words}: {string.Join(", ", names.Take(8))}{(names.Length > 8 ? $" and {names.Length - 8} more" : "")}");
        }

        return pieces.Count == 0 ? "changes nothing" : string.Join("; ", pieces);
    }
}
