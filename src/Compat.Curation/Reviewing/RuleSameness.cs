namespace Compat.Curation.Reviewing;

/// <summary>Which rules of two knowledge bases decide alike: under one id the same box, conventions filled in, and all else that an answer shows.</summary>
internal sealed class RuleSameness
{
    private readonly int[] _before;
    private readonly int[] _after;
    private readonly bool[] _changed;

    public RuleSameness(CompiledBase before, CompiledBase after)
    {
        var numbers = new Dictionary<RuleId, int>(before.Rules.Length + 16);
        _before = before.Rules.Select(rule => Number(rule.Rule.Id)).ToArray();
        _after = after.Rules.Select(rule => Number(rule.Rule.Id)).ToArray();
        _changed = new bool[numbers.Count];
        Array.Fill(_changed, true);
        var pairs = new CompiledRule?[numbers.Count];
        for (var i = 0; i < _before.Length; i++) pairs[_before[i]] = before.Rules[i];
        for (var i = 0; i < _after.Length; i++)
            if (pairs[_after[i]] is { } other) _changed[_after[i]] = !AreSame(before, other, after, after.Rules[i]);

        int Number(RuleId id)
        {
            if (!numbers.TryGetValue(id, out var number)) numbers[id] = number = numbers.Count;
            return number;
        }
    }

    /// <summary>A number that the rule shares with the one of its id on the other side.</summary>
    public int NumberOf(CompiledRule rule, bool isBefore) => (isBefore ? _before : _after)[rule.Index];

    /// <summary>Whether a rule, by its number, is on one side only or says something else on the other.</summary>
    public bool IsChanged(int number) => _changed[number];

    /// <summary>The box counts with its conventions filled in, and a source by what it says, not by its id. All else that decides must be the same.</summary>
    private static bool AreSame(CompiledBase kb, CompiledRule one, CompiledBase otherKb, CompiledRule other) =>
        one.Box.Equals(other.Box) && SaySameOfAxes(one.Rule.When, other.Rule.When)
        && RecordDifference.AreSameBut(one.Rule, other.Rule, nameof(Rule.When), nameof(Rule.Sources)) && CiteSame(kb, one.Rule, otherKb, other.Rule);

    private static bool CiteSame(CompiledBase kb, Rule one, CompiledBase otherKb, Rule other)
    {
        var (own, others) = (Sources(kb, one), Sources(otherKb, other));
        return own.Length == others.Length
            && own.All(source => others
                .Any(cited => ReferenceEquals(source, cited) || (source is not null && cited is not null && RecordDifference.AreSameBut(source, cited))));

        static Source?[] Sources(CompiledBase kb, Rule rule) =>
            rule.Sources.Select(id => kb.SourcesById.TryGetValue(id, out var source) ? source : null).ToArray();
    }

    private static bool SaySameOfAxes(ExposureBox one, ExposureBox other) =>
        (one.Methods.Statement == AxisStatement.Unstated) == (other.Methods.Statement == AxisStatement.Unstated) && one.SilentOn.SequenceEqual(other.SilentOn);
}
