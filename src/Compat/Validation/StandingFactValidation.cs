namespace Compat.Validation;

/// <summary>Checks standing rules on claims, patients, binding and mixing, and that the data keeps them.</summary>
internal static class StandingFactValidation
{
    private const string Code = "breaks-standing-rule";

    public static void Check(Scope scope)
    {
        foreach (var standing in scope.Data.StandingRules.Where(s => !s.SpeaksOfRules))
        {
            var place = new ProblemPlace(RecordKind.StandingRule, standing.Id.Value);
            Shape(scope, standing, place);
            if (!scope.Agents.ContainsKey(standing.Agent)) continue;
            switch (standing.Demand)
            {
                case StandingDemand.NeverAbove: NeverAbove(scope, standing, standing.NeverAbove!.Value); break;
                case StandingDemand.NeverForPatient: NeverForPatient(scope, standing, place); break;
                case StandingDemand.BoundBy: BoundBy(scope, standing, place); break;
                default: Mixing(scope, standing, place); break;
            }
        }
    }

    private static void Shape(Scope scope, StandingRule standing, ProblemPlace place)
    {
        var demands = new[] { standing.AlwaysWith is not null, standing.NeverAbove is not null, standing.Patient is not null, standing.BoundBy is not null, standing.MixingWith is not null, standing.MixingWithSoil is not null };
        if (demands.Count(d => d) > 1) scope.Add("one-demand", place, "a standing rule demands exactly one thing");
        if (standing.Material is not null || (standing.Part is not null && standing.Demand != StandingDemand.NeverForPatient))
            scope.Add("target-of-fact", place with { Field = standing.Material is not null ? "material" : "part" }, "this demand holds for the agent, not for a part or material");
        if (standing.MixingWith is { } other) scope.Knows(scope.Agents, other, place, "mixing-with", "agent");
        if (standing.Demand == StandingDemand.NeverAbove)
            foreach (var axis in new[] { Axis.Dilution, Axis.ExposureTime, Axis.Uses })
                if (standing.When.On(axis).Statement != AxisStatement.NotNamed)
                    scope.Add("axis-of-no-claim", place with { Field = "when." + Words.Of(axis) }, $"claims have no axis of {Words.Of(axis)}", "leave it out");
        if (standing.Demand is StandingDemand.BoundBy or StandingDemand.MixingOnRecord && !standing.When.Equals(ExposureBox.Unbounded))
            scope.Add("when-of-fact", place with { Field = "when" }, "this demand holds at every exposure", "leave `when` out");
    }

    /// <summary>A claim for a kind of part is bound like any other. A product's label is not, nor what counts as no claim, nor a blend, which is not the bare agent.</summary>
    private static void NeverAbove(Scope scope, StandingRule standing, Level most)
    {
        foreach (var claim in scope.Data.Claims)
        {
            if (claim.Refuted is not null || claim.Kind == ClaimKind.Label || claim.With.Count > 0) continue;
            if (!RecordFacts.LiesIn(scope, claim.Agent, standing.Agent) && !RecordFacts.LiesIn(scope, standing.Agent, claim.Agent)) continue;
            var above = claim.Reaches > most;
            if ((!above && (most != Level.Cleaned || claim.Kills.Count == 0)) || !Overlap(standing.When, claim.When)) continue;
            scope.Add(Code, new ProblemPlace(RecordKind.Claim, claim.Id.Value, above ? "reaches" : "kills"), $"`{claim.Id}` breaks the standing rule `{standing.Id}`: nothing above `{Words.Of(most)}` there", standing.Reason);
        }
    }

    /// <summary>An axis that one of the two does not bound is taken to meet, 'unstated' too.</summary>
    private static bool Overlap(ExposureBox box, ClaimBox claim)
    {
        return Meet(box.Strength, claim.Strength) && Meet(box.Temperature, claim.Temperature) && Meet(box.Ph, claim.Ph)
            && (box.Methods.Statement != AxisStatement.Within || claim.Methods.Statement != AxisStatement.Within || !box.Methods.Methods.Intersect(claim.Methods.Methods).IsEmpty);

        static bool Meet(AxisLimit x, AxisLimit y) =>
            x.Statement != AxisStatement.Within || y.Statement != AxisStatement.Within || !x.Range.Intersect(y.Range).IsEmpty;
    }

    private static void NeverForPatient(Scope scope, StandingRule standing, ProblemPlace place)
    {
        if (scope.Data.PersonRules.Any(Covers)) return;
        scope.Add(Code, place, $"no person rule forbids `{standing.Agent}` for `{Words.Of(standing.Patient!.Value)}` as `{standing.Id}` demands", standing.Reason);

        bool Covers(PersonRule rule) =>
            rule.Verdict == PersonVerdict.NotAllowed && !rule.Occupied && rule.Patients.Contains(standing.Patient!.Value)
            && RecordFacts.LiesIn(scope, standing.Agent, rule.Agent) && LiesIn(standing.When, rule.When)
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

    private static void BoundBy(Scope scope, StandingRule standing, ProblemPlace place)
    {
        var words = standing.BoundBy!;
        var line = scope.Upward(standing.Agent).ToArray();
        var says = line.SelectMany(a => a.BoundBy).Any(text => text.Contains(words, StringComparison.OrdinalIgnoreCase))
            || line.SelectMany(a => a.InactivatedBy).Any(id => id.Value == words || (scope.Agents.TryGetValue(id, out var agent) && agent.Name == words));
        if (!says) scope.Add(Code, place with { Field = "bound-by" }, $"the record of `{standing.Agent}` does not say that it is bound by `{words}`", standing.Reason);
    }

    private static void Mixing(Scope scope, StandingRule standing, ProblemPlace place)
    {
        var always = scope.Data.MixingHazards.Where(h => h.Strength is null && h.WithStrength is null).ToArray();
        var known = standing.MixingWith is { } other
            ? always.Any(h => h.WithAgent is { } with && (Pair(h.Agent, with, other) || Pair(with, h.Agent, other)))
            : always.Any(h => h.WithSoil == standing.MixingWithSoil && RecordFacts.LiesIn(scope, standing.Agent, h.Agent));
        if (known) return;
        var partner = standing.MixingWith?.Value ?? Words.Of(standing.MixingWithSoil!.Value);
        scope.Add(Code, place with { Field = standing.MixingWith is null ? "mixing-with-soil" : "mixing-with" }, $"no hazard of mixing `{standing.Agent}` with `{partner}` at every strength is on record", standing.Reason);

        bool Pair(AgentId one, AgentId two, AgentId with) => RecordFacts.LiesIn(scope, standing.Agent, one) && RecordFacts.LiesIn(scope, with, two);
    }
}
