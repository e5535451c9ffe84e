using System.Collections;

namespace Compat.Deciding;

/// <summary>Numbers of rules, gathered one by one.</summary>
/// <param name="room">Where they are gathered while there is room for them.</param>
internal struct RuleNumbers(int[] room)
{
    private int[]? _numbers = room;

    /// <summary>Where they were gathered last: more room than at first, where more was needed.</summary>
    public readonly int[]? Room => _numbers;

    public int Count { get; private set; }

    public void Add(int number)
    {
        if (_numbers is null) _numbers = new int[8];
        else if (Count == _numbers.Length) Array.Resize(ref _numbers, Count * 2);
        _numbers[Count++] = number;
    }

    /// <summary>Whether a number was added at or behind a place.</summary>
    public readonly bool Holds(int number, int from) => _numbers is not null && Array.IndexOf(_numbers, number, from, Count - from) >= 0;

    /// <summary>Takes back what was added at or behind a place.</summary>
    public void BackTo(int count) => Count = count;

    /// <summary>Each number once, in order, in an array of its own; what was gathered is spent.</summary>
    public readonly int[] Sorted()
    {
        if (Count == 0) return [];
        Array.Sort(_numbers!, 0, Count);
        var each = 1;
        for (var i = 1; i < Count; i++)
            if (_numbers![i] != _numbers[each - 1]) _numbers[each++] = _numbers[i];
        var sorted = new int[each];
        Array.Copy(_numbers!, sorted, each);
        return sorted;
    }
}

/// <summary>Rules of a base by number: the list holds no copies.</summary>
internal sealed class NumberedRules(CompiledBase kb, int[] numbers) : IReadOnlyList<Rule>, IReadOnlyList<RuleId>
{
    public int Count => numbers.Length;

    public Rule this[int index] => kb.Rules[numbers[index]].Rule;

    RuleId IReadOnlyList<RuleId>.this[int index] => this[index].Id;

    public IEnumerator<Rule> GetEnumerator()
    {
        foreach (var number in numbers) yield return kb.Rules[number].Rule;
    }

    IEnumerator<RuleId> IEnumerable<RuleId>.GetEnumerator()
    {
        foreach (var number in numbers) yield return kb.Rules[number].Rule.Id;
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
