namespace Compat.Planning;

/// <summary>A part of the device with what it needs, and what is clear before any product is looked at.</summary>
/// <param name="Ordinal">Its place in the device.</param>
/// <param name="Part">The part.</param>
/// <param name="Question">The question that asks it, without a product.</param>
/// <param name="Need">What it needs.</param>
/// <param name="Settled">Why nothing need be chosen for it; null where something must.</param>
/// <param name="ToBeCleaned">Whether what touches it asks that it is cleaned: a higher level that is asked comes on top of that.</param>
internal sealed record PartCase(int Ordinal, DevicePart Part, Question Question, Need Need, PlanReason? Settled, bool ToBeCleaned = false)
{
    /// <summary>Whether it is cleaned before it is disinfected, whatever the product.</summary>
    public bool NeedsCleaning => Need.CleanFirst || Need.Soil.Count > 0 || ToBeCleaned || Need.Level == Level.Cleaned;

    public static IReadOnlyList<PartCase> All(CompiledBase kb, PlanQuestion question, Occasion? occasion) =>
        kb.Devices[question.Device].Parts.Select((part, ordinal) => Of(kb, question, occasion, part, ordinal)).ToArray();

    /// <remarks>A level never makes a part that is kept dry need something, nor stands in for a contact that nobody knows: it only raises.</remarks>
    private static PartCase Of(CompiledBase kb, PlanQuestion asked, Occasion? occasion, DevicePart part, int ordinal)
    {
        var question = new Question
        {
            Device = asked.Device,
            DevicePart = part.Id,
            Serial = asked.Serial,
            Against = asked.Against,
            Occupied = asked.Occupied,
            Soil = asked.SoilOn.TryGetValue(part.Id, out var own) ? own : asked.Soil,
        };
        var plain = NeedMaker.Of(kb, question);
        if (plain.KeptDry) return new(ordinal, part, question, plain, plain.SoiledWhereDry ? PlanReason.SoiledWhereDry : PlanReason.KeptDry);
        var need = NeedMaker.Of(kb, question with { Level = asked.Level }, occasion?.AtLeast);
        question = question with { Level = need.Origin is NeedOrigin.Asked or NeedOrigin.Occasion ? need.Level : null };
        var settled = occasion is { Parts.Count: > 0 } && plain.TouchedBy is { } contact && !occasion.Parts.Contains(contact) ? PlanReason.NotOnThisOccasion
            : plain.Level is null ? PlanReason.ContactNotKnown
            : (PlanReason?)null;
        return new(ordinal, part, question, need, settled, plain.Level == Level.Cleaned);
    }
}
