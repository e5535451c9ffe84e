namespace Compat.Planning;

/// <summary>Chooses an option for each part so that the distinct steps are fewest, then the contact time is least, then the ordinals.</summary>
/// <remarks>
/// One step may serve several parts, so that the parts cannot be chosen for one by one. Steps of parts with one option cost the others nothing. The other parts
/// fall into groups with no further step in common; the groups are searched apart, for all three levels add up over them or are compared part by part. In a
/// group
/// one step more is allowed at a time, until some choice keeps to it: of a part that no step taken so far serves each option is tried. With the fewest steps
/// given, each part takes the best of its options that needs no other.
/// </remarks>
internal sealed class StepSearch
{
    private readonly Option[][] _parts;
    private readonly bool[] _taken;
    private readonly CancellationToken _cancel;
    private decimal _contactTime;
    private Option[]? _best;

    private StepSearch(IEnumerable<ChoiceOption[]> parts, HashSet<int> given, CancellationToken cancel)
    {
        _cancel = cancel;
        var places = new Dictionary<int, int>();
        _parts = parts.Select(
            options => options.Select(option => new Option(option, option.Steps.Distinct().Where(step => !given.Contains(step)).Select(PlaceOf).ToArray()))
            .ToArray()).ToArray();
        _taken = new bool[places.Count];

        int PlaceOf(int step)
        {
            if (!places.TryGetValue(step, out var place)) places[step] = place = places.Count;
            return place;
        }
    }

    /// <summary>The option chosen for each part.</summary>
    /// <param name="parts">For each part its options; at least one.</param>
    /// <param name="cancel">Stops it.</param>
    public static ChoiceOption[] Solve(IReadOnlyList<IEnumerable<ChoiceOption>> parts, CancellationToken cancel)
    {
        var options = parts.Select(part => Needed(part.ToArray())).ToArray();
        var given = new HashSet<int>(options.Where(part => part.Length == 1).SelectMany(part => part[0].Steps));
        var chosen = options.Select(part => part[0]).ToArray();
        foreach (var group in Groups(options, given))
        {
            var found = new StepSearch(group.Select(part => options[part]), given, cancel).Solve();
            for (var i = 0; i < found.Length; i++) chosen[group[i]] = found[i].Source;
        }

        return chosen;
    }

    /// <summary>The options of a part but those in whose place another, no step more, is never worse.</summary>
    private static ChoiceOption[] Needed(ChoiceOption[] options)
    {
        var steps = options.Select(option => new HashSet<int>(option.Steps)).ToArray();
        return options.Where((option, i) => !options.Where((other, j) => Order(other).CompareTo(Order(option)) < 0 && steps[j].IsSubsetOf(steps[i])).Any())
            .ToArray();
    }

    private static (decimal, int) Order(ChoiceOption option) => (option.ContactTime, option.Ordinal);

    /// <summary>The parts with more than one option, those that could take a further step in common together.</summary>
    private static IEnumerable<int[]> Groups(ChoiceOption[][] options, HashSet<int> given)
    {
        var groups = new List<(int[] Parts, HashSet<int> Steps)>();
        for (var part = 0; part < options.Length; part++)
        {
            if (options[part].Length == 1) continue;
            var steps = new HashSet<int>(options[part].SelectMany(option => option.Steps).Where(step => !given.Contains(step)));
            var touched = groups.Where(group => group.Steps.Overlaps(steps)).ToArray();
            groups.RemoveAll(touched.Contains);
            groups.Add(([.. touched.SelectMany(group => group.Parts), part], [.. touched.SelectMany(group => group.Steps), .. steps]));
        }

        return groups.Select(group => group.Parts.OrderBy(part => part).ToArray());
    }

    private Option[] Solve()
    {
        for (var most = 0; _best is null; most++) Walk(most);
        return _best;
    }

    /// <summary>Completes the steps taken so far by at most so many.</summary>
    private void Walk(int room)
    {
        _cancel.ThrowIfCancellationRequested();
        var (needed, counted) = Needed(room);
        if (needed > room) return;
        var driest = new Option[_parts.Length];
        var first = new int[_parts.Length];
        Option[]? open = null;
        for (var part = 0; part < _parts.Length; part++)
        {
            // What takes none of the steps counted leaves them all still to be taken.
            var fitting = Array.FindAll(_parts[part], option => Extra(option) is var extra && extra <= room
                && (extra <= room - needed || Array.Exists(option.Steps, step => counted[step])));
            if (fitting.Length == 0) return;
            driest[part] = fitting.Aggregate((one, other) => Order(other.Source).CompareTo(Order(one.Source)) < 0 ? other : one);
            first[part] = fitting.Min(option => option.Source.Ordinal);
            if (!Array.Exists(fitting, option => Extra(option) == 0) && (open is null || fitting.Length < open.Length)) open = fitting;
        }

        var contactTime = driest.Sum(option => option.Source.ContactTime);
        if (_best is not null && Compare(contactTime, first) >= 0) return;
        if (open is null)
        {
            // As no choice keeps to fewer steps, there is no room left: all that fits takes no step more.
            if (_best is null || Compare(contactTime, driest.Select(option => option.Source.Ordinal).ToArray()) < 0)
                (_best, _contactTime) = (driest, contactTime);
            return;
        }

        foreach (var option in open.OrderBy(Extra).ThenBy(option => Order(option.Source)).ToArray())
        {
            var added = Array.FindAll(option.Steps, step => !_taken[step]);
            foreach (var step in added) _taken[step] = true;
            Walk(room - added.Length);
            foreach (var step in added) _taken[step] = false;
        }
    }

    /// <summary>How many steps are needed at least: those of parts that have no step in common, added up; and the steps they choose from.</summary>
    private (int Needed, bool[] Counted) Needed(int room)
    {
        var (needed, counted) = (0, new bool[_taken.Length]);
        foreach (var options in _parts)
        {
            var least = options.Min(Extra);
            if (least == 0) continue;
            var steps = options.Where(option => Extra(option) <= room).SelectMany(option => option.Steps).Where(step => !_taken[step]).ToArray();
            if (Array.Exists(steps, step => counted[step])) continue;
            needed += least;
            foreach (var step in steps) counted[step] = true;
        }

        return (needed, counted);
    }

    private int Extra(Option option)
    {
        var extra = 0;
        foreach (var step in option.Steps)
            if (!_taken[step]) extra++;
        return extra;
    }

    private int Compare(decimal contactTime, int[] ordinals)
    {
        var order = contactTime.CompareTo(_contactTime);
        for (var part = 0; order == 0 && part < ordinals.Length; part++) order = ordinals[part].CompareTo(_best![part].Source.Ordinal);
        return order;
    }

    /// <summary>An option, and its steps beyond those that are taken anyhow.</summary>
    private sealed record Option(ChoiceOption Source, int[] Steps);
}
