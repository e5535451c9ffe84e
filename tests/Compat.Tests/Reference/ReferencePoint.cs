using Compat.Exposures;
using Compat.Knowledge;
using Compat.Sites;

namespace Compat.Tests.Reference;

/// <summary>One point, one variant of the part, one component of what is asked: the numbered steps.</summary>
internal sealed partial class ReferenceEvaluator
{
    /// <summary>The voice of rules that permit and override nothing here, but whose duties join.</summary>
    private const int DutiesOnly = -1;

    private sealed record Exposure(ApplicationMethod Method, decimal Residence, decimal Dilution, decimal Temperature, decimal Ph, decimal Uses, decimal Strength);

    /// <summary>A rule that reaches a voice, with its box as filled in.</summary>
    private sealed class Applicable(Rule rule, int voice, Dictionary<Axis, Interval> box)
    {
        public Rule Rule => rule;
        public int Voice => voice;
        public Dictionary<Axis, Interval> Box => box;
    }

    private PointTruth Judge(Variant v, Component c, Exposure asked)
    {
        static PointTruth Says(Verdict verdict, string step, params IReadOnlyList<Rule>[] voices) => new(verdict, step, voices);

        // 1. Barrier.
        if (v.Type is not null && asked.Method != ApplicationMethod.Chamber && asked.Method > v.Wettest) return Says(Verdict.NotAllowed, "1 barrier");
        if (v.Type is not null && _question.Acts.Any(v.Never.Contains)) return Says(Verdict.NotAllowed, "1 barrier");

        // 2. Residence ends only by an act.
        var e = asked with { Residence = EffectiveResidence(v, asked.Residence) };

        // 3. Applicable.
        var applicable = _reaching[(v, c)].Where(a => Holds(a, e)).ToArray();

        // 4. Set aside.
        bool Overrides(Applicable q, Applicable a) => ((q.Voice == a.Voice && q.Voice != DutiesOnly) || q.Voice == 0) && q.Rule.Overrides.Contains(a.Rule.Id);
        bool Acts(Applicable a) => a.Rule.Edition is not null || !applicable.Any(q => !q.Rule.Allows && Overrides(q, a));
        bool IsSetAside(Applicable a) => a.Rule.Edition is null && applicable.Any(q => Overrides(q, a) && Acts(q));
        var live = applicable.Where(a => !IsSetAside(a)).ToArray();

        // 5. A live 'not allowed' in any voice.
        if (live.Any(a => !a.Rule.Allows)) return Says(Verdict.NotAllowed, "5 forbidden");
        if (c.OnlyForbids) return Says(Verdict.Allowed, "only 'not allowed' counts");

        // 6. Instructions with only-listed.
        bool Lists(InstructionsEdition i) => applicable.Any(a => a.Rule.Allows && a.Rule.Edition == i.Id);
        if (v.Speaking.Any(i => i.OnlyListed && !Lists(i))) return Says(Verdict.NotAllowed, "6 not listed");

        // 7. The agent's and part's own duties.
        var own = _components.Where(x => !x.OnlyForbids).SelectMany(x => _trees.Duties(x.Agent)).Concat(v.Type is null ? [] : _trees.Duties(v.Type));
        if (!own.All(d => CanBeMet(d, v))) return Says(Verdict.NotAllowed, "7 own duties");

        // 8. A live 'allowed': of the part or device; else of each material.
        IReadOnlyList<Rule> Allowing(int voice) => live.Where(a => a.Voice == voice && a.Rule.Allows && (a.Rule.Edition is null || v.Speaking.All(Lists))).Select(a => a.Rule).ToArray();
        var part = Allowing(0);
        var materials = Enumerable.Range(1, v.Materials.Count).Select(Allowing).ToArray();
        var byMaterials = v.MaterialsKnown && materials.Length > 0 && materials.All(m => m.Count > 0);
        if (part.Count == 0 && !byMaterials) return Says(Verdict.NotEstablished, "8 no evidence");
        if (_product is { Composition: not Composition.Full })
        {
            // Section 3: what is not fully declared needs evidence on the product itself.
            bool OnProduct(IReadOnlyList<Rule> voice) => voice.Any(r => r.Product is not null);
            bool Suffices(MaterialId m) => _product.Composition == Composition.DeclaredHazardousOnly && _trees.DeclaredOnly(m);
            var covered = OnProduct(part) || (v.MaterialsKnown && materials.Length > 0 && materials.Zip(v.Materials).All(m => Suffices(m.Second) || OnProduct(m.First)));
            if (!covered) return Says(Verdict.NotEstablished, "8 composition not known");
        }

        // 9. Duties of that voice.
        var deciding = part.Count > 0 ? [part] : materials;
        var accompanying = live.Where(a => a.Voice is 0 or DutiesOnly).Select(a => a.Rule);
        if (!deciding.SelectMany(voice => voice).Concat(accompanying).SelectMany(r => r.Duties).All(d => CanBeMet(d, v))) return Says(Verdict.NotEstablished, "9 duties");
        return Says(Verdict.Allowed, part.Count > 0 ? "8 by the part" : "8 by its materials", deciding);
    }

    private static bool CanBeMet(Duty duty, Variant v) => duty.Ways.Count == 0 || v.Type is null
        || duty.Ways.Any(w => !(w.Method > v.Wettest) && (w.Act is not { } act || !v.Never.Contains(act)));

    private decimal EffectiveResidence(Variant v, decimal asked)
    {
        if (v.Type is null || asked == Interval.WithoutEnd) return asked;
        var narrow = v.Geometry != Geometry.Open;
        if (_components.Where(c => !c.OnlyForbids).All(c => !c.Unknown && _trees.LeavesNothing(c.Agent)))
        {
            var ends = !narrow || ApplicationMethod.Rinse <= v.Wettest;
            return ends ? asked : Math.Max(asked, _trees.Convention(ConventionKey.DryingTime).Range.Upper!.Value);
        }

        ApplicationMethod[] ways = narrow ? [ApplicationMethod.Rinse, ApplicationMethod.Immerse]
            : [ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Rinse, ApplicationMethod.Immerse];
        return ways.Any(w => w <= v.Wettest) ? asked : Interval.WithoutEnd;
    }

    private bool Holds(Applicable a, Exposure e) => _trees.HoldsMethod(a.Rule, e.Method) && a.Box.All(axis => axis.Value.Contains(axis.Key switch
    {
        Axis.Strength => e.Strength,
        Axis.Dilution => e.Dilution,
        Axis.Residence => e.Residence,
        Axis.Temperature => e.Temperature,
        Axis.Ph => e.Ph,
        _ => e.Uses,
    }));

    private IEnumerable<Applicable> Reaching(Variant v, Component c)
    {
        foreach (var rule in _trees.Rules.Where(r => _trees.ReachesAgent(r, _product, c.Agent, c.Unknown)))
        {
            var box = Enum.GetValues<Axis>().Where(axis => axis != (rule.Product is null ? Axis.Dilution : Axis.Strength)).ToDictionary(axis => axis, axis => _trees.Filled(rule, axis, _product));
            if (_trees.ReachesPart(rule, v)) yield return new(rule, 0, box);
            if (_trees.ReachesWithDutiesOnly(rule, v)) yield return new(rule, DutiesOnly, box);
            for (var m = 0; m < v.Materials.Count; m++)
                if (_trees.ReachesMaterial(rule, v.Materials[m])) yield return new(rule, m + 1, box);
        }
    }

    /// <summary>One of: judged for each.</summary>
    private IEnumerable<Variant> Variants()
    {
        var part = _device?.Parts.Single(p => p.Id == _question.DevicePart);
        foreach (var (speaking, type) in SpeakingSets().SelectMany(_ => part?.OneOfTypes.Select(t => (PartId?)t) ?? [_question.Part], (set, type) => (set, type)))
        {
            var stated = part?.Materials ?? (_question.Materials.Count > 0 ? _question.Materials : null);
            var typeStates = type is null ? null : _trees.StatesMaterials(type);
            IEnumerable<IEnumerable<MaterialId>> choices = [[]];
            foreach (var slot in stated ?? typeStates?.Materials ?? [])
                choices = choices.SelectMany(_ => slot.OneOf, (chosen, m) => chosen.Append(m));
            var wettest = part?.WettestFrom is { } from && speaking.All(e => e.Id != from) ? null : part?.Wettest;
            foreach (var materials in choices)
            {
                yield return new()
                {
                    Type = type,
                    Device = _device,
                    DevicePart = part?.Id,
                    Speaking = speaking,
                    Materials = materials.Distinct().ToArray(),
                    MaterialsStated = stated is not null,
                    MaterialsKnown = stated is not null ? part?.MaterialsKnown ?? true : typeStates is not null && (typeStates.MaterialsKnown ?? true),
                    Wettest = wettest ?? (type is null ? default : _trees.Wettest(type)),
                    Never = type is null ? [] : _trees.Never(type),
                    Geometry = part?.Geometry ?? (type is null ? default : _trees.Geometry(type)),
                };
            }
        }
    }

    /// <summary>For each possible serial number the editions that cover it, save those that an edition covering it replaces.</summary>
    private IEnumerable<IReadOnlyList<InstructionsEdition>> SpeakingSets()
    {
        static bool Covers(InstructionsEdition i, SerialNumber s) => i.Serials.Count == 0 || i.Serials.Any(r => r.Contains(s));
        var all = _device?.Instructions ?? [];
        var possible = _question.Serial is { } given ? [given]
            : all.SelectMany(i => i.Serials).SelectMany(r => new[] { r.First - 1, r.First, r.Last, r.Last == long.MaxValue ? r.Last : r.Last + 1 }.Select(n => new SerialNumber(r.Prefix, n)))
                .Append(new SerialNumber("NO-SUCH-PREFIX-", 1)).Where(s => s.Number >= 0);
        return possible.Select(s => all.Where(e => Covers(e, s) && !all.Any(i => i.Replaces.Contains(e.Id) && Covers(i, s))).ToArray())
            .DistinctBy(set => string.Join(" ", set.Select(e => e.Id)));
    }
}
