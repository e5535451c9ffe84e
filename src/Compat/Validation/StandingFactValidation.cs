namespace Compat.Validation;

/// <summary>Checks standing rules on claims, patients, binding and mixing, and that the data keeps them.</summary>
internal static class StandingFactValidation
{
    private const string Code = "breaks-standing-rule";

    public static void Check(Scope scope)
    {
        foreach (var standing in scope.Data.StandingRules.Where(s => !s.SpeaksOfRules))
        {
            var at = new Field(scope, RecordKind.StandingRule, standing.Id.Value);
            Shape(scope, standing, at);
            if (!scope.Agents.ContainsKey(standing.Agent)) continue;
            switch (standing.Demand)
            {
                case StandingDemand.NeverAbove: NeverAbove(scope, standing, standing.NeverAbove!.Value); break;
                case StandingDemand.NeverForPatient: NeverForPatient(scope, standing, at); break;
                case StandingDemand.BoundBy: BoundBy(scope, standing, at); break;
                default: Mixing(scope, standing, at); break;
            }
        }
    }

    private static void Shape(Scope scope, StandingRule standing, Field at)
    {
        var demands = new[] { standing.AlwaysWith is not null, standing.NeverAbove is not null, standing.Patient is not null, standing.BoundBy is not null,
            standing.MixingWith is not null, standing.MixingWithSoil is not null };
        if (demands.Count(d => d) > 1) at.Wrong("one-demand", "a standing rule demands exactly one thing");
        if (standing.Material is not null || (standing.Part is not null && standing.Demand != StandingDemand.NeverForPatient))
            at[standing.Material is not null ? "material" : "part"].Wrong("target-of-fact", "this demand holds for the agent, not for a part or material");
        if (standing.MixingWith is { } other) at["mixing-with"].Knows(scope.Agents, other, "agent");
        if (standing.Demand == StandingDemand.NeverAbove)
            foreach (var axis in new[] { Axis.Dilution, Axis.ExposureTime, Axis.Uses })
                if (standing.When.On(axis).Statement != AxisStatement.NotNamed)
                    at["when." + Words.Of(axis)].Wrong("axis-of-no-claim", $"claims have no axis of {Words.Of(axis)}", "leave it out");
        if (standing.Demand is StandingDemand.BoundBy or StandingDemand.MixingOnRecord && !standing.When.Equals(ExposureBox.Unbounded))
            at["when"].Wrong("when-of-fact", "this demand holds at every exposure", "leave `when` out");
    }

    /// <summary>
    /// A claim for a kind of part is bound like any other. A product's label is not, nor what counts as no claim, nor a blend, which is not the bare agent.
    /// </summary>
    private static void NeverAbove(Scope scope, StandingRule standing, Level most)
    {
        foreach (var claim in scope.Data.Claims)
        {
            if (claim.Refuted is not null || claim.Kind == ClaimKind.Label || claim.With.Count > 0) continue;
            if (!ClaimValidation.Kin(scope, claim.Agent, standing.Agent)) continue;
            var above = claim.Reaches > most;
            if ((!above && (most != Level.Cleaned || claim.Kills.Count == 0)) || !Meet(standing.When, claim.When)) continue;
            new Field(scope, RecordKind.Claim, claim.Id.Value)[above ? "reaches" : "kills"]
                .Wrong(Code, $"`{claim.Id}` breaks the standing rule `{standing.Id}`: nothing above `{Words.Of(most)}` there", standing.Reason);
        }
    }

    private static bool Meet(ExposureBox box, ClaimBox claim) =>
        Boxes.Meet(box.Strength, claim.Strength) && Boxes.Meet(box.Temperature, claim.Temperature) && Boxes.Meet(box.Ph, claim.Ph)
            && Boxes.Meet(box.Methods, claim.Methods);

    private static void NeverForPatient(Scope scope, StandingRule standing, Field at)
    {
        if (scope.Data.PersonRules.Any(Covers)) return;
        at.Wrong(Code, $"no person rule forbids `{standing.Agent}` for `{Words.Of(standing.Patient!.Value)}` as `{standing.Id}` demands", standing.Reason);

        bool Covers(PersonRule rule) =>
            rule.Verdict == PersonVerdict.NotAllowed && !rule.Occupied && rule.Patients.Contains(standing.Patient!.Value)
            && scope.LiesIn(standing.Agent, rule.Agent) && LiesIn(standing.When, rule.When)
            && (rule.For.Count == 0 || (standing.Part is { } part && scope.Upward(part).Any(p => rule.For.Contains(p.Id))));
    }

    private static bool LiesIn(ExposureBox inner, ExposureBox outer)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var (i, o) = (inner.On(axis), outer.On(axis));
            if (o.Statement == AxisStatement.Within && (i.Statement != AxisStatement.Within || !i.Range.LiesIn(o.Range))) return false;
        }

        return outer.Methods.Statement != AxisStatement.Within
            || (inner.Methods.Statement == AxisStatement.Within && inner.Methods.Methods.Methods.All(outer.Methods.Methods.Contains));
    }

    private static void BoundBy(Scope scope, StandingRule standing, Field at)
    {
        var words = standing.BoundBy!;
        var line = scope.Upward(standing.Agent).ToArray();
        var says = line.SelectMany(a => a.BoundBy).Any(text => text.Contains(words, StringComparison.OrdinalIgnoreCase))
            || line.SelectMany(a => a.InactivatedBy).Any(id => id.Value == words || (scope.Agents.TryGetValue(id, out var agent) && agent.Name == words));
        if (!says) at["bound-by"].Wrong(Code, $"the record of `{standing.Agent}` does not say that it is bound by `{words}`", standing.Reason);
    }

    private static void Mixing(Scope scope, StandingRule standing, Field at)
    {
        var always = scope.Data.MixingHazards.Where(h => h.Strength is null && h.WithStrength is null).ToArray();
        var known = standing.MixingWith is { } other
            ? always.Any(h => h.WithAgent is { } with && (Pair(h.Agent, with, other) || Pair(with, h.Agent, other)))
            : always.Any(h => h.WithSoil == standing.MixingWithSoil && scope.LiesIn(standing.Agent, h.Agent));
        if (known) return;
        var partner = standing.MixingWith?.Value ?? Words.Of(standing.MixingWithSoil!.Value);
        at[standing.MixingWith is null ? "mixing-with-soil" : "mixing-with"]
            .Wrong(Code, $"no hazard of mixing `{standing.Agent}` with `{partner}` at every strength is on record", standing.Reason);

        bool Pair(AgentId one, AgentId two, AgentId with) => scope.LiesIn(standing.Agent, one) && scope.LiesIn(with, two);
    }
}
