namespace Compat.Deciding;

/// <summary>The materials of a part: those of its type with what its device part and the question name laid on them.</summary>
/// <param name="Slots">The entries; those that are still the type's own come first.</param>
/// <param name="OfType">How many of them are the type's own.</param>
/// <param name="IsKnown">Whether these are all.</param>
internal sealed record MaterialList(IReadOnlyList<MaterialSlot> Slots, int OfType, bool IsKnown)
{
    /// <summary>The list of one type.</summary>
    /// <param name="ofType">What the type has.</param>
    /// <param name="known">Whether that is all.</param>
    /// <param name="part">The device part, if one is asked.</param>
    /// <param name="question">The question; null where none is asked.</param>
    /// <param name="isAtOrBelow">Whether the first material is the second or lies below it.</param>
    public static MaterialList Of(IReadOnlyList<MaterialSlot> ofType, bool known, DevicePart? part, Question? question, Func<MaterialId, MaterialId, bool> isAtOrBelow)
    {
        var list = new MaterialList(ofType, ofType.Count, known);
        if (part?.Materials is { } ofPart) list = list.With(ofPart, part.MaterialsKnown, isAtOrBelow);
        return question is null ? list : list.With(question.Materials, question.MaterialsKnown, isAtOrBelow);
    }

    /// <summary>How many ways there are to take one of each entry.</summary>
    public static long Variants(IEnumerable<MaterialSlot> slots) => slots.Aggregate(1L, (n, slot) => Math.Min(1_000_000, n * Math.Max(1, slot.OneOf.Count)));

    private MaterialList With(IReadOnlyList<MaterialSlot> named, bool? isAll, Func<MaterialId, MaterialId, bool> isAtOrBelow)
    {
        if (named.Count == 0) return this;
        if (isAll == true) return new MaterialList(named, 0, true);
        var decided = new HashSet<int>();
        var laid = new List<MaterialSlot>();
        foreach (var slot in named)
        {
            if (slot.OneOf.All(name => Slots.Any(entry => entry.OneOf.All(one => isAtOrBelow(one, name))))) continue;
            var at = Decided(slot, isAtOrBelow);
            if (at >= 0) decided.Add(at);
            laid.Add(at < 0 ? slot : new MaterialSlot([.. slot.OneOf.Union(Slots[at].OneOf.Where(one => slot.OneOf.Any(name => isAtOrBelow(one, name))))]));
        }

        MaterialSlot[] left = [.. Slots.Where((_, at) => !decided.Contains(at)), .. laid];
        return new MaterialList(left, OfType - decided.Count(at => at < OfType), isAll ?? IsKnown);
    }

    /// <summary>The one entry with several candidates that a name is about, or -1.</summary>
    private int Decided(MaterialSlot named, Func<MaterialId, MaterialId, bool> isAtOrBelow)
    {
        var found = -1;
        for (var at = 0; at < Slots.Count; at++)
        {
            if (Slots[at].OneOf.Count < 2 || !named.OneOf.Any(name => IsAbout(Slots[at], name))) continue;
            if (found >= 0) return -1;
            found = at;
        }

        return found >= 0 && named.OneOf.All(name => IsAbout(Slots[found], name)) ? found : -1;

        bool IsAbout(MaterialSlot entry, MaterialId name) => entry.OneOf.Any(one => isAtOrBelow(one, name) || isAtOrBelow(name, one));
    }
}
