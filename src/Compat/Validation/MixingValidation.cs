namespace Compat.Validation;

/// <summary>Checks hazards of mixing, and what is on record as harmless.</summary>
internal static class MixingValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.MixingHazards, RecordKind.Mixing, m => m.Id.Value);
        scope.Duplicates(scope.Data.HarmlessMeetings, RecordKind.HarmlessMeeting, m => m.Id.Value);
        var hazards = new HashSet<MixingHazardId>(scope.Data.MixingHazards.Select(m => m.Id));
        foreach (var hazard in scope.Data.MixingHazards)
        {
            var at = new Field(scope, RecordKind.Mixing, hazard.Id.Value);
            Common(scope, at, hazard.Agent, hazard.WithAgent, hazard.WithSoil, hazard.WithMaterial, hazard.Sources);
            at["why"].Said(hazard.Why, "no-why", "the hazard does not say why");
            if (hazard.Effects.Count == 0) at["effects"].Wrong("no-effect", "a hazard names at least one effect");
            if (hazard.SeparatedBy.Count > 1 && hazard.SeparatedBy.Contains(Separation.Nothing))
                at["separated-by"].Wrong("nothing-and-more", "`nothing` excludes what stands beside it");
            Strength(scope, at["when.strength"], hazard.Agent, hazard.Strength);
            Strength(scope, at["when.with-strength"], hazard.WithAgent, hazard.WithStrength);
            if (hazard.WithAgent is null && hazard.WithAgentRestsOn is not null) NoOther(at["rests-on.with-agent"]);
        }

        foreach (var meeting in scope.Data.HarmlessMeetings)
        {
            var at = new Field(scope, RecordKind.HarmlessMeeting, meeting.Id.Value);
            if (hazards.Contains(meeting.Id))
                at["id"].Wrong("duplicate-id", $"`{meeting.Id}` is a hazard as well", "ids are never reused; give it another name or remove one");
            Common(scope, at, meeting.Agent, meeting.WithAgent, meeting.WithSoil, meeting.WithMaterial, meeting.Sources);
            at["harmless"].Said(meeting.Why, "no-harmless", "it does not say why it is harmless");
        }
    }

    private static void Common(Scope scope, Field at, AgentId one, AgentId? withAgent, SoilKind? withSoil, MaterialId? withMaterial,
        IReadOnlyList<SourceId> sources)
    {
        at.Sources(sources, "the record");
        at["agent"].Knows(scope.Agents, one, "agent");
        if (withAgent is not null) at["with-agent"].Knows(scope.Agents, withAgent, "agent");
        if (withMaterial is not null) at["with-material"].Knows(scope.Materials, withMaterial, "material");
        var partners = (withAgent is null ? 0 : 1) + (withSoil is null ? 0 : 1) + (withMaterial is null ? 0 : 1);
        if (partners != 1) at.Wrong("one-partner", "a record of mixing names exactly one other agent, soil or material");
        if (withAgent == one) at["with-agent"].Wrong("mixes-with-itself", $"`{one}` is named on both sides");
    }

    private static void Strength(Scope scope, Field at, AgentId? agent, Interval? strength)
    {
        if (strength is not { } range) return;
        if (agent is null) NoOther(at);
        else if (scope.Basis(agent) is { } basis) at.Strength(range, basis);
        else if (scope.Agents.ContainsKey(agent))
            at.Wrong("no-basis", $"`{agent}` has no basis for a strength", "name the agent's `basis`, or write the hazard on an agent that has one");
    }

    private static void NoOther(Field at) =>
        at.Wrong("no-other-agent", "this speaks of the other agent, and none is named", "leave it out");
}
