namespace Compat.Tests.Reference;

/// <summary>One entry of a list of materials; named, decided or added by the device part or the question, or the type's own.</summary>
internal sealed record Entry(MaterialId[] OneOf, bool Named);

/// <content>What a part is made of, clauses R5 to R13: the list of its type with what is named laid on it.</content>
internal sealed partial class ReferenceEvaluator
{
    public IEnumerable<Variant> Variants()
    {
        var part = _device?.Parts.Single(p => p.Id == _question.DevicePart);
        return from speaking in SpeakingSets()
               from type in part is null ? [_question.Part] : part.OneOfTypes.Cast<PartId?>()
               let own = Trees.Materials(type).Select(s => new Entry([.. s.OneOf], false)).ToArray()
               let known = type is null || Trees.Line(type).FirstOrDefault(p => p.Materials is not null) is { MaterialsKnown: not false }
               let ofPart = Layer(own, known, part?.Materials ?? [], part?.MaterialsKnown)
               let all = Layer(ofPart.List, ofPart.Known, _question.Materials, _question.MaterialsKnown)
               let wettest = part is { WettestFrom: { } edition } && speaking.All(e => e.Id != edition) ? null : part?.Wettest
               let geometry = part?.Geometry ?? ReferenceTrees.Nearest(Trees.Line(type), p => p.Geometry) ?? Geometry.Open
               from choice in Cross(all.List.Select(e => e.OneOf.Select(m => (Material: m, e.Named))))
               let materials = choice.Select(c => c.Material).Distinct().ToArray()
               select new Variant(type, speaking, materials, [.. choice.Where(c => c.Named).Select(c => c.Material)], all.Known,
                   wettest ?? Trees.Wettest(type), geometry);
    }

    /// <summary>A list of materials with what is named laid on it, or in its place where that is all.</summary>
    private (Entry[] List, bool Known) Layer(Entry[] under, bool known, IReadOnlyList<MaterialSlot> named, bool? all)
    {
        if (named.Count == 0) return (under, known);
        if (all == true) return ([.. named.Select(n => new Entry([.. n.OneOf], true))], true);
        bool Meets(Entry e, MaterialId m) => e.OneOf.Any(of => Trees.Below(of, m) || Trees.Below(m, of));
        var (decided, laid) = (new List<Entry>(), new List<Entry>());
        foreach (var one in named.Select(n => n.OneOf).Where(n => !n.All(m => under.Any(e => e.OneOf.All(of => Trees.Below(of, m))))))
        {
            var about = under.Where(e => e.OneOf.Length > 1 && one.Any(m => Meets(e, m))).ToArray();
            var decides = about.Length == 1 && one.All(m => Meets(about[0], m));
            if (decides) decided.Add(about[0]);
            laid.Add(new([.. one.Concat(decides ? about[0].OneOf.Where(of => one.Any(m => Trees.Below(of, m))) : []).Distinct()], true));
        }

        return ([.. under.Except(decided), .. laid], all ?? known);
    }
}
