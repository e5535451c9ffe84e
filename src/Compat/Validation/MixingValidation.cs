using Compat.Mixing;

namespace Compat.Validation;

/// <summary>Checks hazards of mixing.</summary>
internal static class MixingValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.MixingHazards, RecordKind.Mixing, m => m.Id.Value);
        foreach (var hazard in scope.Data.MixingHazards)
        {
            var place = new ProblemPlace(RecordKind.Mixing, hazard.Id.Value);
            RecordFacts.Sources(scope, place, hazard.Sources, "the hazard");
            RecordFacts.Text(scope, place, "why", hazard.Why, "the hazard does not say why");
            scope.Knows(scope.Agents, hazard.Agent, place, "agent", "agent");
            if (hazard.WithAgent is { } agent) scope.Knows(scope.Agents, agent, place, "with-agent", "agent");
            if (hazard.WithMaterial is { } material) scope.Knows(scope.Materials, material, place, "with-material", "material");
            var partners = (hazard.WithAgent is null ? 0 : 1) + (hazard.WithSoil is null ? 0 : 1) + (hazard.WithMaterial is null ? 0 : 1);
            if (partners != 1) scope.Add("one-partner", place, "a hazard of mixing names exactly one other agent, soil or material");
            if (hazard.WithAgent == hazard.Agent) scope.Add("mixes-with-itself", place with { Field = "with-agent" }, $"`{hazard.Agent}` is named on both sides");
            if (hazard.Effects.Count == 0) scope.Add("no-effect", place with { Field = "effects" }, "a hazard names at least one effect");
            if (hazard.SeparatedBy.Count > 1 && hazard.SeparatedBy.Contains(Separation.Nothing))
                scope.Add("nothing-and-more", place with { Field = "separated-by" }, "`nothing` excludes what stands beside it");
        }
    }
}
