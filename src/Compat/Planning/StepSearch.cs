namespace Compat.Planning;

/// <summary>Chooses an option for each part so that the distinct steps are fewest, then the contact time is least, then the ordinals.</summary>
/// <remarks>
/// One step may serve several parts, so that the parts cannot be chosen for one by one. What is certain is taken first: steps of parts with one option cost the
/// others nothing, steps that only one part could take are merely counted, and options that another of the part makes needless go. The parts that are left fall
/// into groups with no step in common; the groups are searched apart, for all three levels add up over them or are compared part by part.
/// </remarks>
internal sealed class StepSearch
{
    private readonly CancellationToken _cancel;
    private readonly List<ReadyOption>[] _options;

    /// <summary>Prepares the search.</summary>
    /// <param name="parts">For each part its options, by ordinal; at least one.</param>
    /// <param name="cancel">Stops it.</param>
    public StepSearch(IReadOnlyList<IReadOnlyList<ReadyOption>> parts, CancellationToken cancel)
    {
        _cancel = cancel;
        _options = parts.Select(options => options.ToList()).ToArray();
    }

    /// <summary>The option chosen for each part.</summary>
    public ReadyOption[] Solve()
    {
        StepOption[][] cut;
        do cut = Cut();
        while (DropNeedless(cut));
        var chosen = _options.Select(options => options[0]).ToArray();
        foreach (var group in Groups(cut))
        {
            var places = new StepGroup(group.Select(part => cut[part]).ToArray(), _cancel).Solve();
            for (var i = 0; i < places.Length; i++) chosen[group[i]] = _options[group[i]][places[i]];
        }

        return chosen;
    }

    /// <summary>What is left of each option beside the steps that are taken anyhow: the steps that several parts could take, and the count of the others.</summary>
    private StepOption[][] Cut()
    {
        var taken = new HashSet<int>(_options.Where(options => options.Count == 1).SelectMany(options => options[0].Steps));
        var shared = _options.Where(options => options.Count > 1).SelectMany(options => options.SelectMany(option => option.Steps).Distinct()).Where(step => !taken.Contains(step))
            .GroupBy(step => step).Where(group => group.Count() > 1).Select((group, place) => (group.Key, place)).ToDictionary(one => one.Key, one => one.place);
        var words = (shared.Count + 63) / 64;
        return _options.Select(options => options.Count == 1 ? [] : options.Select(option =>
        {
            var steps = new ulong[words];
            var own = 0;
            foreach (var step in option.Steps)
            {
                if (shared.TryGetValue(step, out var place)) steps[place / 64] |= 1UL << (place % 64);
                else if (!taken.Contains(step)) own++;
            }

            return new StepOption(steps, own, option.Source.ContactTime, option.Source.Ordinal);
        }).ToArray()).ToArray();
    }

    private bool DropNeedless(StepOption[][] cut)
    {
        var dropped = false;
        for (var part = 0; part < cut.Length; part++)
        {
            var options = cut[part];
            for (var i = options.Length - 1; i >= 0; i--)
            {
                if (!options.Any(other => other.MakesNeedless(options[i]))) continue;
                _options[part].RemoveAt(i);
                dropped = true;
            }
        }

        return dropped;
    }

    /// <summary>The parts with more than one option, those that could take a step in common together.</summary>
    private static IEnumerable<int[]> Groups(StepOption[][] cut)
    {
        var groups = new List<(List<int> Parts, ulong[] Steps)>();
        for (var part = 0; part < cut.Length; part++)
        {
            if (cut[part].Length == 0) continue;
            var steps = cut[part].Select(option => option.Shared).Aggregate(Bits.Union);
            var touched = groups.Where(group => Bits.Meet(group.Steps, steps)).ToArray();
            groups.RemoveAll(touched.Contains);
            groups.Add(([.. touched.SelectMany(group => group.Parts), part], touched.Select(group => group.Steps).Aggregate(steps, Bits.Union)));
        }

        return groups.Select(group => group.Parts.OrderBy(part => part).ToArray());
    }
}

/// <summary>What of an option still counts.</summary>
/// <param name="Shared">Steps that other parts could take too, as bits.</param>
/// <param name="Own">How many further steps it has, which no other part could take.</param>
/// <param name="ContactTime">Its contact time.</param>
/// <param name="Ordinal">Its ordinal.</param>
internal sealed record StepOption(ulong[] Shared, int Own, decimal ContactTime, int Ordinal)
{
    /// <summary>Whether no choice with the other is ever better than the same choice with this one in its place.</summary>
    public bool MakesNeedless(StepOption other) =>
        (Own, ContactTime, Ordinal).CompareTo((other.Own, other.ContactTime, other.Ordinal)) < 0 && Bits.CountWithout(Shared, other.Shared) == 0;
}
