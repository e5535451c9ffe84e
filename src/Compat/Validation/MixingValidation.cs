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
            var place = new ProblemPlace(RecordKind.Mixing, hazard.Id.Value);
            Common(scope, place, hazard.Agent, hazard.WithAgent, hazard.WithSoil, hazard.WithMaterial, hazard.Sources);
            RecordFacts.Text(scope, place, "why", hazard.Why, "the hazard does not say why");
            if (hazard.Effects.Count == 0) scope.Add("no-effect", place with { Field = "effects" }, "a hazard names at least one effect");
            if (hazard.SeparatedBy.Count > 1 && hazard.SeparatedBy.Contains(Separation.Nothing))
                scope.Add("nothing-and-more", place with { Field = "separated-by" }, "`nothing` excludes what stands beside it");
            Strength(scope, place with { Field = "when.strength" }, hazard.Agent, hazard.Strength);
            Strength(scope, place with { Field = "when.with-strength" }, hazard.WithAgent, hazard.WithStrength);
            if (hazard.WithAgent is null && hazard.WithAgentRestsOn is not null) NoOther(scope, place with { Field = "rests-on.with-agent" });
        }

        foreach (var meeting in scope.Data.HarmlessMeetings)
        {
            var place = new ProblemPlace(RecordKind.HarmlessMeeting, meeting.Id.Value);
            if (hazards.Contains(meeting.Id)) scope.Add("duplicate-id", place with { Field = "id" }, $"`{meeting.Id}` is a hazard as well", "ids are never reused; give it another name or remove one");
            Common(scope, place, meeting.Agent, meeting.WithAgent, meeting.WithSoil, meeting.WithMaterial, meeting.Sources);
            RecordFacts.Text(scope, place, "harmless", meeting.Why, "it does not say why it is harmless");
        }
    }

    private static void Common(Scope scope, ProblemPlace place, AgentId one, AgentId? withAgent, SoilKind? withSoil, MaterialId? withMaterial, IReadOnlyList<SourceId> sources)
    {
        RecordFacts.Sources(scope, place, sources, "the record");
        scope.Knows(scope.Agents, one, place, "agent", "agent");
        if (withAgent is not null) scope.Knows(scope.Agents, withAgent, place, "with-agent", "agent");
        if (withMaterial is not null) scope.Knows(scope.Materials, withMaterial, place, "with-material", "material");
        var partners = (withAgent is null ? 0 : 1) + (withSoil is null ? 0 : 1) + (withMaterial is null ? 0 : 1);
        if (partners != 1) scope.Add("one-partner", place, "a record of mixing names exactly one other agent, soil or material");
        if (withAgent == one) scope.Add("mixes-with-itself", place with { Field = "with-agent" }, $"`{one}` is named on both sides");
    }

    private static void Strength(Scope scope, ProblemPlace place, AgentId? agent, Interval? strength)
    {
        if (strength is not { } range) return;
        if (agent is null) NoOther(scope, place);
        else if (scope.Basis(agent) is { } basis) BoxValidation.Strength(scope, place, place.Field!, range, basis);
        else if (scope.Agents.ContainsKey(agent))
            scope.Add("no-basis", place, $"`{agent}` has no basis for a strength", "name the agent's `basis`, or write the hazard on an agent that has one");
    }

    private static void NoOther(Scope scope, ProblemPlace place) =>
        scope.Add("no-other-agent", place, "this speaks of the other agent, and none is named", "leave it out");
}
