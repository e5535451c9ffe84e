namespace Compat.Planning;

/// <summary>Parts that could take steps in common: the fewest steps are found by allowing one more at a time, then the least contact time, then the ordinals from the first part on.</summary>
internal sealed class StepGroup
{
    private readonly StepOption[][] _options;
    private readonly CancellationToken _cancel;
    private readonly int[] _only;
    private readonly int[] _leastOwn;
    private int _most;
    private decimal? _wettest;
    private bool _wettestIncluded;
    private int[] _found = [];

    public StepGroup(StepOption[][] options, CancellationToken cancel)
    {
        _options = options;
        _cancel = cancel;
        _only = options.Select(_ => -1).ToArray();
        _leastOwn = options.Select(one => one.Min(option => option.Own)).ToArray();
    }

    /// <summary>The place of the option chosen for each part.</summary>
    public int[] Solve()
    {
        while (!Find()) _most++;
        do _wettest = ContactTime(_found);
        while (Find());
        _wettestIncluded = true;
        var best = _found;
        for (var part = 0; part < _options.Length; part++)
        {
            for (_only[part] = 0; _only[part] < best[part] && !Find(); _only[part]++) { }
            if (_only[part] < best[part]) best = _found;
        }

        return best;
    }

    private decimal ContactTime(int[] chosen) => chosen.Select((place, part) => _options[part][place].ContactTime).Sum();

    private bool Find() => Descend(new ulong[_options[0][0].Shared.Length], _options.Select(_ => -1).ToArray());

    /// <summary>Whether the choice can be completed within the limits; if so, it is in <see cref="_found"/>.</summary>
    private bool Descend(ulong[] used, int[] chosen)
    {
        _cancel.ThrowIfCancellationRequested();
        int[] open;
        do
            if (Look(used, chosen) is not { } left) return false;
            else open = left;
        while (Settle(ref used, chosen, open));
        var part = -1;
        for (var p = 0; p < open.Length; p++)
            if (chosen[p] < 0 && (part < 0 || open[p] < open[part])) part = p;
        if (part < 0)
        {
            _found = chosen;
            return true;
        }

        foreach (var place in Fitting(used, chosen, part).OrderBy(place => Extra(used, part, place)).ThenBy(place => _options[part][place].ContactTime))
        {
            var next = (int[])chosen.Clone();
            next[part] = place;
            if (Descend(Bits.Union(used, _options[part][place].Shared), next)) return true;
        }

        return false;
    }

    /// <summary>How many steps may still be added beyond the least that each part adds by itself.</summary>
    private int Slack(ulong[] used, int[] chosen)
    {
        var slack = _most - Bits.Count(used, 0, used.Length);
        for (var p = 0; p < chosen.Length; p++) slack -= chosen[p] < 0 ? _leastOwn[p] : _options[p][chosen[p]].Own;
        return slack;
    }

    private int Extra(ulong[] used, int part, int place) => Bits.CountWithout(_options[part][place].Shared, used) + _options[part][place].Own - _leastOwn[part];

    /// <summary>The options of a part that the steps left allow.</summary>
    private IEnumerable<int> Fitting(ulong[] used, int[] chosen, int part)
    {
        var slack = Slack(used, chosen);
        return Enumerable.Range(0, _options[part].Length).Where(place => (_only[part] < 0 || _only[part] == place) && Extra(used, part, place) <= slack);
    }

    /// <summary>How many options each open part has left; null where the limits cannot be kept.</summary>
    private int[]? Look(ulong[] used, int[] chosen)
    {
        var (slack, added, wet) = (Slack(used, chosen), 0, 0m);
        var packed = (ulong[])used.Clone();
        var left = new int[chosen.Length];
        for (var p = 0; p < chosen.Length; p++)
        {
            if (chosen[p] >= 0)
            {
                wet += _options[p][chosen[p]].ContactTime;
                continue;
            }

            var places = Fitting(used, chosen, p).ToArray();
            if (places.Length == 0) return null;
            left[p] = places.Length;
            wet += places.Min(place => _options[p][place].ContactTime);
            var reached = Bits.Without(places.Select(place => _options[p][place].Shared).Aggregate(Bits.Union), used);
            if (Bits.Meet(reached, Bits.Without(packed, used))) continue;
            packed = Bits.Union(packed, reached);
            added += places.Min(place => Extra(used, p, place));
        }

        if (slack < 0 || added > slack) return null;
        return _wettest is { } limit && (wet > limit || (wet == limit && !_wettestIncluded)) ? null : left;
    }

    /// <summary>Takes for a part what costs no step and no contact time, and what is its only option; whether steps came with it, so that the others must be looked at anew.</summary>
    private bool Settle(ref ulong[] used, int[] chosen, int[] open)
    {
        for (var p = 0; p < chosen.Length; p++)
        {
            if (chosen[p] >= 0) continue;
            var places = Fitting(used, chosen, p).ToArray();
            var driest = places.Min(place => _options[p][place].ContactTime);
            var now = used;
            var free = Array.FindIndex(places, place => Extra(now, p, place) == 0 && _options[p][place].ContactTime == driest);
            if (free < 0 && open[p] > 1) continue;
            chosen[p] = places[Math.Max(free, 0)];
            if (free >= 0) continue;
            used = Bits.Union(used, _options[p][chosen[p]].Shared);
            return true;
        }

        return false;
    }
}
