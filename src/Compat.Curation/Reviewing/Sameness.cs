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

/// <summary>What decides beside the rules: facts of a subject and of an agent.</summary>
internal static class SubjectFacts
{
    /// <summary>Whether a subject has the same variants on both sides, each with the same facts, in the same order.</summary>
    public static bool AreSame(ReviewSide before, ReviewSubject one, ReviewSide after, ReviewSubject other)
    {
        if (one.Parts.Count != other.Parts.Count) return false;
        for (var i = 0; i < one.Parts.Count; i++)
        {
            PartVariant a = one.Parts[i], b = other.Parts[i];
            if (!RecordDifference.AreSameBut(a, b, nameof(a.Part), nameof(a.Materials), nameof(a.Device))
                || !MaterialsOf(before, a).SequenceEqual(MaterialsOf(after, b))) return false;
        }

        return true;
    }

    /// <summary>Whether an agent has the same unit, residue and duties on both sides, and all else that can decide where every axis is stated.</summary>
    public static bool AreSame(AgentTraits one, AgentTraits other) =>
        one.Basis?.Basis == other.Basis?.Basis && (one.Leaves == Model.Residue.Nothing) == (other.Leaves == Model.Residue.Nothing)
        && RecordDifference.AreSameBut(one, other, BesideStated);

    /// <summary>What fills in an axis that is left out or tells how a strength is counted, and what is compared in its own way.</summary>
    private static readonly string[] BesideStated = [nameof(AgentTraits.Agent), nameof(AgentTraits.Basis), nameof(AgentTraits.Leaves),
        nameof(AgentTraits.Strength),
        nameof(AgentTraits.Ph), nameof(AgentTraits.Temperature), nameof(AgentTraits.Chamber), nameof(AgentTraits.AvailableChlorine)];

    /// <summary>Whether strengths of an agent can be compared: they have one unit, or before no rule could speak of strength.</summary>
    public static bool AreComparable(AgentTraits before, AgentTraits after) => before.Basis is null || before.Basis.Basis == after.Basis?.Basis;

    /// <summary>The rules that reach a subject, each with its variant and voice, by the numbers both sides share.</summary>
    public static HashSet<long> Reaching(ReviewSide side, ReviewSubject subject, RuleSameness rules)
    {
        var reached = new HashSet<long>();
        for (var variant = 0; variant < subject.Variants.Count; variant++)
        {
            var one = subject.Variants[variant];
            Add(one.Voice, variant, 0);
            Add(Reach.NotPassing(side.Kb, one.Variant), variant, 1);
            for (var m = 0; m < one.Variant.Materials.Length; m++) Add(side.Ground.OfMaterial(one.Variant.Materials[m]), variant, m + 2);
        }

        return reached;

        void Add(IEnumerable<CompiledRule> some, int variant, int voice)
        {
            foreach (var rule in some) reached.Add(((long)((variant * 1024) + voice) << 32) | (uint)rules.NumberOf(rule, side.IsBefore));
        }
    }

    private static IEnumerable<string> MaterialsOf(ReviewSide side, PartVariant variant) =>
        variant.Materials.Select(material => side.Kb.Data.Materials[material].Id.Value);
}
