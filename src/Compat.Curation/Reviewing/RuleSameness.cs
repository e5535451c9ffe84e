using Compat.Curation.Checking;

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

    private static bool AreSame(CompiledBase kb, CompiledRule one, CompiledBase otherKb, CompiledRule other) =>
        one.Allows == other.Allows && one.Rule.Target.Equals(other.Rule.Target) && Equals(one.Rule.Agent, other.Rule.Agent)
        && Equals(one.Rule.Product, other.Rule.Product) && Equals(one.Rule.CompositionDated, other.Rule.CompositionDated)
        && one.Box.Equals(other.Box) && SaySameOfAxes(one.Rule.When, other.Rule.When)
        && one.Rule.WholeClass == other.Rule.WholeClass && RecordDifference.AreSame(one.Rule.SeenWith, other.Rule.SeenWith)
        && RecordDifference.AreSame(one.Rule.Overrides, other.Rule.Overrides) && RecordDifference.AreSame(one.Rule.Duties, other.Rule.Duties)
        && RecordDifference.AreSame(one.Rule.Damage, other.Rule.Damage) && Equals(one.Rule.Edition, other.Rule.Edition)
        && Effect.Evidence(kb, one.Rule) == Effect.Evidence(otherKb, other.Rule) && Decider.IsWellFounded(kb, one) == Decider.IsWellFounded(otherKb, other);

    private static bool SaySameOfAxes(ExposureBox one, ExposureBox other)
    {
        if ((one.Methods.Statement == AxisStatement.Unstated) != (other.Methods.Statement == AxisStatement.Unstated)) return false;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            if ((one.On(axis).Statement == AxisStatement.Unstated) != (other.On(axis).Statement == AxisStatement.Unstated)) return false;
        return true;
    }
}
