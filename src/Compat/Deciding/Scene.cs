namespace Compat.Deciding;

/// <summary>A rule as it can apply in a scene: with the exposure times at which it holds for one variant.</summary>
internal sealed class Candidate(CompiledRule rule, Run exposureTime)
{
    /// <summary>The cells in which it applies.</summary>
    public readonly Box<Run> Cells = rule.Cells with { ExposureTime = exposureTime };

    public CompiledRule Rule { get; } = rule;
}

/// <summary>One variant with the candidates of its voices: 0 is the part and device, then one a material.</summary>
/// <param name="Variant">The variant.</param>
/// <param name="Voices">Candidates by voice.</param>
/// <param name="DutiesOnly">The 'allowed' rules on its types whose permission does not pass to it, but whose duties do.</param>
internal sealed record VariantVoices(PartVariant Variant, int[][] Voices, int[] DutiesOnly);

/// <summary>All rules that can speak of one component on a part, by variant and voice.</summary>
internal sealed class Scene
{
    private readonly CompiledBase _kb;
    private readonly List<Candidate> _candidates = [];
    private readonly Dictionary<CompiledRule, List<int>> _numbers = [];

    public Scene(CompiledBase kb, IReadOnlyList<PartVariant> variants, Substance substance, Component component, bool exposureTimeWithoutEnd)
    {
        _kb = kb;
        Substance = substance;
        Component = component;
        Variants = variants.Select(variant => new VariantVoices(variant, Voices(variant, exposureTimeWithoutEnd), Numbers(Reach.NotPassing(_kb, variant), variant, exposureTimeWithoutEnd))).ToArray();
        Overriders = new int[_candidates.Count][];
        for (var i = 0; i < _candidates.Count; i++) Overriders[i] = OverridersOf(_candidates[i].Rule);
    }

    public Substance Substance { get; }

    public Component Component { get; }

    public IReadOnlyList<VariantVoices> Variants { get; }

    public IReadOnlyList<Candidate> Candidates => _candidates;

    /// <summary>For each candidate those that override it.</summary>
    public int[][] Overriders { get; }

    /// <summary>Whether the exposure time ends only without end on a variant, whatever is asked.</summary>
    public bool EndsNowhere(PartVariant variant) => variant.EndingWays(Substance.LeavesNothing).Count == 0;

    /// <summary>Whether it stays on a variant for good: nothing takes it off, and it does not dry away.</summary>
    public bool StaysForGood(PartVariant variant) => !Substance.LeavesNothing && EndsNowhere(variant);

    private int[][] Voices(PartVariant variant, bool withoutEnd)
    {
        var voices = new int[variant.Materials.Length + 1][];
        voices[0] = Numbers(Reach.PartAndDevice(_kb, variant), variant, withoutEnd);
        for (var m = 0; m < variant.Materials.Length; m++) voices[m + 1] = Numbers(Reach.OfMaterial(_kb, variant.Materials[m]), variant, withoutEnd);
        return voices;
    }

    private int[] Numbers(IEnumerable<CompiledRule> rules, PartVariant variant, bool withoutEnd)
    {
        var numbers = new List<int>();
        foreach (var rule in rules)
            if (Speaks(rule) && Number(rule, variant, withoutEnd) is >= 0 and var number && !numbers.Contains(number)) numbers.Add(number);
        return numbers.ToArray();
    }

    private int[] OverridersOf(CompiledRule rule)
    {
        var numbers = new List<int>();
        for (var i = 0; i < _candidates.Count; i++)
            if (_candidates[i].Rule.Overrides(rule)) numbers.Add(i);
        return numbers.ToArray();
    }

    private bool Speaks(CompiledRule rule) => Reach.Speaks(_kb, rule, Substance.Product, Component);

    /// <summary>Numbers a rule with the exposure times asked at which it holds; -1 where there are none.</summary>
    private int Number(CompiledRule rule, PartVariant variant, bool withoutEnd)
    {
        if (Reach.ExposureTimes(_kb, rule, !withoutEnd && EndsNowhere(variant), Substance.LeavesNothing) is not { } exposureTime) return -1;
        if (!_numbers.TryGetValue(rule, out var numbers)) _numbers[rule] = numbers = [];
        foreach (var number in numbers)
            if (_candidates[number].Cells.ExposureTime.Equals(exposureTime)) return number;
        numbers.Add(_candidates.Count);
        _candidates.Add(new Candidate(rule, exposureTime));
        return _candidates.Count - 1;
    }
}
