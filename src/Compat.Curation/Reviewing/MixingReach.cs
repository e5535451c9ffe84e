using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Asks of every agent with every agent, soil and material what is on record where they meet, on both sides.</summary>
internal sealed class MixingReach(ReachSides sides, FactList found)
{
    private readonly KnowledgeBase _before = KnowledgeBase.OfChecked(sides.Before.Data, []);
    private readonly KnowledgeBase _after = KnowledgeBase.OfChecked(sides.After.Data, []);
    private readonly HashSet<string> _moved = Moved(sides);
    private readonly HashSet<string> _movedMaterials = [.. sides.Materials
        .Where(id => !sides.LineOfMaterial(true, id).SequenceEqual(sides.LineOfMaterial(false, id)))
        .SelectMany(id => sides.LineOfMaterial(true, id).Concat(sides.LineOfMaterial(false, id)))];

    private Meeting[] _edited = [];

    public static void Look(ReachSides sides, FactList found)
    {
        if (sides.AnyEdited(RecordKind.Mixing, RecordKind.Agent, RecordKind.Material)) new MixingReach(sides, found).Look();
    }

    private void Look()
    {
        _edited = Edited().ToArray();
        var agents = sides.Agents;
        for (var i = 0; i < agents.Count; i++)
        {
            var first = new AgentId(agents[i]);
            for (var j = i; j < agents.Count; j++) Look(first, MixingPartner.Of(new AgentId(agents[j])));
            foreach (var soil in Enum.GetValues<SoilKind>()) Look(first, MixingPartner.Of(soil));
            foreach (var material in sides.Materials) Look(first, MixingPartner.Of(new MaterialId(material)));
        }
    }

    private void Look(AgentId first, MixingPartner other)
    {
        if (!MayDiffer(first, other)) return;
        var place = new FactPlace(first.Value, other.ToString());
        var (answeredBefore, answered) = (Answer(_before, first, other), Answer(_after, first, other));
        Harmless(answeredBefore?.Harmless ?? [], answered?.Harmless ?? [], place);
        var (was, now) = (answeredBefore?.Hazards ?? [], answered?.Hazards ?? []);
        if (RecordDifference.AreSame(was.Select(one => Said(one, true)), now.Select(one => Said(one, false)))) return;
        var less = was.Where(hazard => !now.Any(one => AsksAsMuch(one, hazard))).ToArray();
        var more = now.Where(hazard => !was.Any(one => AsksAsMuch(one, hazard))).ToArray();
        foreach (var hazard in less) Add(ChangeKind.Loosened, hazard, Less(hazard, now), place);
        foreach (var hazard in more) Add(ChangeKind.Tightened, hazard, $"`{hazard.Hazard.Id}` is on record ({Line(hazard)})", place);
        if (less.Length + more.Length > 0) return;
        foreach (var hazard in was
            .Where(one => !now.Any(other => other.Hazard.Id == one.Hazard.Id))) Add(ChangeKind.EvidenceWeakened, hazard,
            $"`{hazard.Hazard.Id}` says so no more, another record still does", place);
        foreach (var hazard in now
            .Where(one => !was.Any(other => other.Hazard.Id == one.Hazard.Id))) Add(ChangeKind.EvidenceStrengthened, hazard,
            $"`{hazard.Hazard.Id}` says so too", place);
        foreach (var hazard in now
            .Where(one => was.Any(other => other.Hazard.Id == one.Hazard.Id && !RecordDifference.AreSame(Said(other, true), Said(one, false)))))
            Add(ChangeKind.Tightened, hazard, $"`{hazard.Hazard.Id}` is another, and what is asked is no less", place);
    }

    /// <summary>What is said to be harmless there since something has moved; a record that is new, gone or another is told of as such.</summary>
    private void Harmless(IReadOnlyList<HarmlessMeeting> was, IReadOnlyList<HarmlessMeeting> now, FactPlace place)
    {
        foreach (var record in now
            .Where(one => !was.Any(other => SaySame(one, other)))) Tell(record, ChangeKind.Loosened, "says now that nothing harmful happens");
        foreach (var record in was
            .Where(one => !now.Any(other => SaySame(one, other)))) Tell(record, ChangeKind.Tightened, "says no longer that nothing harmful happens");

        void Tell(HarmlessMeeting record, ChangeKind kind, string text)
        {
            if (!sides.IsEdited(RecordKind.HarmlessMeeting, record.Id.Value)) Add(RecordKind.HarmlessMeeting, record.Id, kind, $"`{record.Id}` {text}", place);
        }
    }

    private static bool SaySame(HarmlessMeeting one, HarmlessMeeting other) =>
        RecordDifference.AreSameBut(one, other, nameof(one.Sources));

    private void Add(ChangeKind kind, FoundHazard hazard, string text, FactPlace place) => Add(RecordKind.Mixing, hazard.Hazard.Id, kind, text, place);

    private void Add(RecordKind about, MixingHazardId id, ChangeKind kind, string text, FactPlace place) =>
        found.Add(about, kind, text, place,
            found.Causes(about, [id.Value], [place.Subject, .. sides.Agents.Contains(place.With) ? [place.With!] : Array.Empty<string>()])
            .Concat(sides.Materials.Contains(place.With) && !sides.IsEdited(about, id.Value) ? sides.EditsAbove(RecordKind.Material, place.With!) : []));

    /// <summary>What is no longer said, or said how much weaker.</summary>
    private static string Less(FoundHazard hazard, IReadOnlyList<FoundHazard> now)
    {
        var name = $"`{hazard.Hazard.Id}` ({Line(hazard)})";
        if (now.FirstOrDefault(one => one.Hazard.Id == hazard.Hazard.Id) is not { } still) return $"{name} is no longer on record";
        var fields = RecordDifference.Fields(hazard.Hazard, still.Hazard).Where(field => !RecordSet.For(RecordKind.Mixing).IsWording(field)).ToArray();
        var severity = still.Hazard.Severity == hazard.Hazard.Severity ? "" : ", now " + Words.Of(still.Hazard.Severity);
        return $"{name} asks less{(fields.Length == 0 ? "" : $": {string.Join(", ", fields)}")}{severity}";
    }

    private static string Line(FoundHazard hazard) =>
        $"{string.Join(", ", hazard.Hazard.Effects.Select(Words.Of))}; {Words.Of(hazard.Hazard.Severity)}"
            + $"{(hazard.Hazard.OnlyWhere is { } where ? "; only " + where : "")}{(hazard.OnlySome ? "; of some of them" : "")}";

    /// <summary>What an answer says of a hazard: whether it is meant whole, every field but wording, and in what its strengths are counted.</summary>
    private SaidHazard Said(FoundHazard one, bool isBefore) => new(
        one.OnlySome,
        one.Hazard with { Why = "", Reviewed = default, Sources = [], AgentRestsOn = null, WithAgentRestsOn = null },
        one.Hazard.Strength is null ? null : sides.UnitsOf(one.Hazard.Agent.Value).Of(isBefore)?.Basis,
        one.Hazard.WithStrength is null ? null : sides.UnitsOf(one.Hazard.WithAgent!.Value).Of(isBefore)?.Basis);

    /// <summary>Whether a hazard asks at least what another does. A field that none of these lines names must be the same, or not narrowed.</summary>
    private bool AsksAsMuch(FoundHazard one, FoundHazard other)
    {
        var (a, b) = (one.Hazard, other.Hazard);
        return (!one.OnlySome || other.OnlySome) && a.Severity <= b.Severity && b.Effects.All(a.Effects.Contains) && b.Forms.All(a.Forms.Contains)
            && ((a.Strength is null && a.WithStrength is null)
                || (a.Agent == b.Agent && a.WithAgent == b.WithAgent && Holds(a.Agent, a.Strength, b.Strength)
                && Holds(a.WithAgent, a.WithStrength, b.WithStrength)))
            && (b.SeparatedBy.Count == 0 ? a.SeparatedBy.Count == 0 : a.SeparatedBy.Count > 0 && a.SeparatedBy.All(b.SeparatedBy.Contains))
            && RecordDifference.IsSameOrUnset(
                a, b, nameof(a.Agent), nameof(a.WithAgent), nameof(a.WithSoil), nameof(a.WithMaterial), nameof(a.Effects), nameof(a.Forms), nameof(a.Severity),
                nameof(a.SeparatedBy), nameof(a.Strength), nameof(a.WithStrength));
    }

    /// <summary>Whether the strengths at which a record speaks of an agent hold those at which another does, counted alike on both sides.</summary>
    private bool Holds(AgentId? agent, Interval? at, Interval? other) =>
        at is not { } box || (other is { } within && within.LiesIn(box) && sides.UnitsOf(agent!.Value).IsOne);

    private static MixingAnswer? Answer(KnowledgeBase kb, AgentId first, MixingPartner other) =>
        Mixture.TryJudge(kb, MixingPartner.Of(first), other, out var answer, out _) ? answer : null;

    /// <summary>Whether one of the two, or what stands below it, has moved, or an edited record can speak of both: more than differ, never fewer.</summary>
    private bool MayDiffer(AgentId first, MixingPartner other) =>
        _moved.Contains(first.Value) || (other.Agent is { } agent && _moved.Contains(agent.Value))
            || (other.Material is { } material && _movedMaterials.Contains(material.Value))
        || _edited.Any(meeting => meeting.MayBe(first.Value, other));

    /// <summary>What an edited record can speak of, on either side: what stands above or below what it names.</summary>
    private IEnumerable<Meeting> Edited()
    {
        foreach (var isBefore in new[] { true, false })
            foreach (var hazard in sides.Of(isBefore).Data.MixingHazards.Where(hazard => sides.IsEdited(RecordKind.Mixing, hazard.Id.Value)))
                yield return new(Near(hazard.Agent), hazard.WithAgent is { } with ? Near(with) : [], hazard.WithMaterial is not null, hazard.WithSoil);
    }

    private HashSet<string> Near(AgentId agent) =>
        [.. sides.Agents.Where(id => IsNear(true, id, agent.Value) || IsNear(false, id, agent.Value))];

    private bool IsNear(bool isBefore, string id, string other) =>
        sides.LineOfAgent(isBefore, id).Contains(other) || sides.LineOfAgent(isBefore, other).Contains(id);

    /// <summary>The agents above which something has changed, or whose strength is counted otherwise, and all that stood or stand above these.</summary>
    private static HashSet<string> Moved(ReachSides sides) =>
        [.. sides.After.Data.Agents.Concat(sides.Before.Data.Agents).Select(agent => agent.Id.Value).Distinct()
            .Where(id => sides.HasMovedAgent(id) || !sides.UnitsOf(id).IsOne)
            .SelectMany(id => sides.LineOfAgent(true, id).Concat(sides.LineOfAgent(false, id)))];

    private sealed record SaidHazard(bool OnlySome, MixingHazard Hazard, StrengthBasis? Strength, StrengthBasis? WithStrength);

    private sealed record Meeting(HashSet<string> Agents, HashSet<string> With, bool WithMaterial, SoilKind? WithSoil)
    {
        public bool MayBe(string first, MixingPartner other) =>
            other.Agent is { } agent ? (Agents.Contains(first) && With.Contains(agent.Value)) || (With.Contains(first) && Agents.Contains(agent.Value))
            : Agents.Contains(first) && (other.Material is null ? WithSoil == other.Soil : WithMaterial);
    }
}
