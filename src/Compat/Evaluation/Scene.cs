using Compat.Knowledge;

namespace Compat.Evaluation;

/// <summary>A rule as it can apply in a scene: with the residences at which it holds for one variant.</summary>
internal sealed record Candidate(CompiledRule Rule, int ResidenceLow, int ResidenceHigh);

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

    public Scene(CompiledBase kb, IReadOnlyList<PartVariant> variants, Substance substance, Component component, bool residenceWithoutEnd)
    {
        _kb = kb;
        Substance = substance;
        Component = component;
        Variants = variants.Select(variant => new VariantVoices(variant, Voices(variant, residenceWithoutEnd), Numbers(NotPassing(variant), variant, residenceWithoutEnd))).ToArray();
        Overriders = new int[_candidates.Count][];
        for (var i = 0; i < _candidates.Count; i++) Overriders[i] = OverridersOf(_candidates[i].Rule);
    }

    public Substance Substance { get; }

    public Component Component { get; }

    public IReadOnlyList<VariantVoices> Variants { get; }

    public IReadOnlyList<Candidate> Candidates => _candidates;

    /// <summary>For each candidate those that override it.</summary>
    public int[][] Overriders { get; }

    /// <summary>Whether the residence ends only without end on a variant, whatever is asked.</summary>
    public bool EndsNowhere(PartVariant variant) => variant.EndingWays(Substance.LeavesNothing).Count == 0;

    private int[][] Voices(PartVariant variant, bool withoutEnd)
    {
        var voices = new int[variant.Materials.Length + 1][];
        voices[0] = Numbers(OnPartAndDevice(variant), variant, withoutEnd);
        for (var m = 0; m < variant.Materials.Length; m++) voices[m + 1] = Numbers(OnMaterial(variant.Materials[m]), variant, withoutEnd);
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
            if (_candidates[i].Rule.Overridden.Contains(rule)) numbers.Add(i);
        return numbers.ToArray();
    }

    private IEnumerable<(CompiledRule Rule, bool Passes)> OnTypes(PartVariant variant)
    {
        for (var node = variant.Part; node >= 0; node = _kb.Parts.Parent(node))
            foreach (var rule in _kb.RulesOnPart(node)) yield return (rule, !rule.Allows || AllowedPasses(variant, node));
    }

    private IEnumerable<CompiledRule> NotPassing(PartVariant variant)
    {
        foreach (var (rule, passes) in OnTypes(variant))
            if (!passes) yield return rule;
    }

    private IEnumerable<CompiledRule> OnPartAndDevice(PartVariant variant)
    {
        foreach (var (rule, passes) in OnTypes(variant))
            if (passes) yield return rule;

        if (variant.Device is null) yield break;
        foreach (var rule in _kb.RulesOnDevice(variant.Device.Id))
        {
            var ofPart = rule.Rule.Target.DevicePart is null || rule.Rule.Target.DevicePart == variant.DevicePart;
            var speaks = rule.Rule.Edition is null || variant.Editions.Any(edition => edition.Id == rule.Rule.Edition);
            if (ofPart && speaks) yield return rule;
        }
    }

    /// <summary>An 'allowed' passes down only where the type it is written on has every delicate material for certain.</summary>
    private bool AllowedPasses(PartVariant variant, int writtenOn)
    {
        if (!variant.TypeAllowedReaches) return false;
        if (variant.Part == writtenOn && !variant.MaterialsStated) return true;
        foreach (var material in variant.Materials)
            if (_kb.IsDelicate(material) && !IsCertain(writtenOn, material)) return false;
        return true;
    }

    private bool IsCertain(int part, int material)
    {
        foreach (var id in _kb.Part(part).CertainMaterials)
            if (_kb.Materials[id.Value] == material) return true;
        return false;
    }

    private IEnumerable<CompiledRule> OnMaterial(int material)
    {
        for (var node = material; node >= 0; node = _kb.Materials.Parent(node))
        {
            foreach (var rule in _kb.RulesOnMaterial(node))
                if (!rule.Allows || node == material || !_kb.IsDelicate(material)) yield return rule;
        }
    }

    private bool Speaks(CompiledRule rule)
    {
        if (rule.Agent < 0)
            return Substance.Product is { } product && product.Id == rule.Rule.Product && product.CompositionDated == rule.Rule.CompositionDated;
        if (Component.Unknown) return !rule.Allows && rule.Agent == Component.Agent;
        if (!_kb.Agents.IsAtOrBelow(Component.Agent, rule.Agent)) return false;
        if (!rule.Allows || rule.Rule.WholeClass) return true;
        foreach (var seen in rule.SeenWith)
            if (_kb.Agents.IsAtOrBelow(Component.Agent, seen)) return true;
        return rule.SeenWith.Length == 0 && rule.Agent == Component.Agent;
    }

    /// <summary>Numbers a rule with the residences asked at which it holds; -1 where there are none.</summary>
    private int Number(CompiledRule rule, PartVariant variant, bool withoutEnd)
    {
        var table = _kb.Tables[(int)Axis.Residence];
        int low = rule.Low[(int)Axis.Residence], high = rule.High[(int)Axis.Residence];
        if (!withoutEnd && EndsNowhere(variant))
        {
            var box = rule.Box[(int)Axis.Residence];
            if (!Substance.LeavesNothing)
            {
                if (!box.Contains(Interval.WithoutEnd)) return -1;
                (low, high) = (0, table.LastCell);
            }
            else if (_kb.Convention(ConventionKey.DryingTime).Range.Upper is { } drying)
            {
                if (box.Contains(drying)) low = 0;
                else if (box.Upper is { } upper && upper <= drying) return -1;
            }
        }

        if (!_numbers.TryGetValue(rule, out var numbers)) _numbers[rule] = numbers = [];
        foreach (var number in numbers)
            if (_candidates[number].ResidenceLow == low && _candidates[number].ResidenceHigh == high) return number;
        numbers.Add(_candidates.Count);
        _candidates.Add(new Candidate(rule, low, high));
        return _candidates.Count - 1;
    }
}
