namespace Compat.Curation.Reviewing;

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
