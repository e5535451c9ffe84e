namespace Compat.Deciding;

/// <summary>A rule as it can apply in a scene: with the exposure times at which it holds for one variant.</summary>
internal sealed class Candidate(CompiledBase kb, CompiledRule rule, Run exposureTime)
{
    /// <summary>The cells in which it applies.</summary>
    public readonly Box<Run> Cells = rule.Cells with { ExposureTime = exposureTime };

    public readonly CompiledRule Rule = rule;

    /// <summary>Whether it is known by instructions, a test or a publication that was read.</summary>
    public readonly bool IsWellFounded = kb.IsWellFounded(rule);

    /// <summary>Whether it has a duty that a part may be unable to meet.</summary>
    public readonly bool HasWays = rule.Rule.Duties.Any(duty => duty.Ways.Count > 0);
}

/// <summary>One variant with the candidates of its voices.</summary>
internal sealed class VariantVoices
{
    public VariantVoices(
        CompiledBase kb, Scene scene, PartVariant variant, Func<IEnumerable<CompiledRule>, PartVariant, (int[] All, int Forbidding)> candidatesOf)
    {
        Variant = variant;
        Voices = new int[variant.Materials.Length + 1][];
        Forbidding = new int[Voices.Length];
        (Voices[0], Forbidding[0]) = candidatesOf(Reach.PartAndDevice(kb, variant), variant);
        for (var voice = 1; voice < Voices.Length; voice++)
            (Voices[voice], Forbidding[voice]) = candidatesOf(Reach.OfMaterial(kb, variant.Materials[voice - 1]), variant);
        DutiesOnly = candidatesOf(Reach.NotPassing(kb, variant), variant).All;
        DeclaredSuffices = Array.ConvertAll(variant.Materials, kb.DeclaredOnlySuffices);
        UnmetOwn = variant.FirstUnmet(scene.Component.Duties) ?? variant.FirstUnmet(variant.Duties);
        EndsNowhere = scene.EndsNowhere(variant);
    }

    public PartVariant Variant { get; }

    /// <summary>Candidates by voice, those that forbid first: 0 is the part and device, then one a material.</summary>
    public int[][] Voices { get; }

    /// <summary>How many candidates of each voice forbid.</summary>
    public int[] Forbidding { get; }

    /// <summary>The 'allowed' rules on its types whose permission does not pass to it, but whose duties do.</summary>
    public int[] DutiesOnly { get; }

    /// <summary>For each material whether what a product leaves undeclared does not matter to it.</summary>
    public bool[] DeclaredSuffices { get; }

    /// <summary>The first duty of the agent or the part that can be met in no way; null where all can.</summary>
    public Duty? UnmetOwn { get; }

    /// <summary>Whether a finite exposure time does not end on it.</summary>
    public bool EndsNowhere { get; }

    /// <summary>Whether its materials can permit: all are known, and it has some.</summary>
    public bool MaterialsAreKnown => Variant.MaterialsKnown && Variant.Materials.Length > 0;
}

/// <summary>All rules that can speak of one component on a part, by variant and voice.</summary>
internal sealed class Scene
{
    private readonly CompiledBase _kb;
    private readonly bool _withoutEnd;
    private readonly List<Candidate> _found = [];
    private readonly Dictionary<CompiledRule, List<int>> _numbers = [];

    public Scene(CompiledBase kb, IReadOnlyList<PartVariant> variants, Substance substance, Component component, bool exposureTimeWithoutEnd)
    {
        (_kb, _withoutEnd) = (kb, exposureTimeWithoutEnd);
        (Product, LeavesNothing, Component) = (substance.Product, substance.LeavesNothing, component);
        Variants = variants.Select(variant => new VariantVoices(kb, this, variant, Numbers)).ToArray();
        Candidates = _found.ToArray();
        Overriders = OverridersOf(Candidates);
        HasOverrides = Array.Exists(Overriders, by => by.Length > 0);
    }

    /// <summary>The product the component is of, or null.</summary>
    public Product? Product { get; }

    /// <summary>Whether the whole liquid leaves nothing.</summary>
    public bool LeavesNothing { get; }

    public Component Component { get; }

    public IReadOnlyList<VariantVoices> Variants { get; }

    public Candidate[] Candidates { get; }

    /// <summary>For each candidate those that override it.</summary>
    public int[][] Overriders { get; }

    /// <summary>Whether some candidate overrides another.</summary>
    public bool HasOverrides { get; }

    /// <summary>Whether a finite exposure time does not end on a variant.</summary>
    public bool EndsNowhere(PartVariant variant) => variant.EndingWays(LeavesNothing).Count == 0;

    /// <summary>The name of a material.</summary>
    public string NameOf(int material) => _kb.Data.Materials[material].Id.Value;

    private (int[] All, int Forbidding) Numbers(IEnumerable<CompiledRule> rules, PartVariant variant)
    {
        List<int> forbidding = [], allowing = [];
        foreach (var rule in rules)
        {
            if (!Reach.Speaks(_kb, rule, Product, Component) || Number(rule, variant) is not (>= 0 and var number)) continue;
            var own = rule.Allows ? allowing : forbidding;
            if (!own.Contains(number)) own.Add(number);
        }

        return (forbidding.Count + allowing.Count == 0 ? [] : [.. forbidding, .. allowing], forbidding.Count);
    }

    /// <summary>Numbers a rule with the exposure times asked at which it holds; -1 where there are none.</summary>
    private int Number(CompiledRule rule, PartVariant variant)
    {
        if (Reach.ExposureTimes(_kb, rule, !_withoutEnd && EndsNowhere(variant), LeavesNothing) is not { } exposureTime) return -1;
        if (!_numbers.TryGetValue(rule, out var numbers)) _numbers[rule] = numbers = [];
        foreach (var number in numbers)
            if (_found[number].Cells.ExposureTime.Equals(exposureTime)) return number;
        numbers.Add(_found.Count);
        _found.Add(new Candidate(_kb, rule, exposureTime));
        return _found.Count - 1;
    }

    private static int[][] OverridersOf(Candidate[] candidates)
    {
        var lists = new List<int>?[candidates.Length];
        for (var by = 0; by < lists.Length; by++)
        {
            if (candidates[by].Rule.Overridden.Length == 0) continue;
            for (var i = 0; i < lists.Length; i++)
                if (candidates[by].Rule.Overrides(candidates[i].Rule)) (lists[i] ??= []).Add(by);
        }

        return Array.ConvertAll(lists, list => list?.ToArray() ?? []);
    }
}
