namespace Compat.Validation;

/// <summary>Checks claims of efficacy.</summary>
internal static class ClaimValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.Claims, RecordKind.Claim, c => c.Id.Value);
        foreach (var claim in scope.Data.Claims)
        {
            var place = new ProblemPlace(RecordKind.Claim, claim.Id.Value);
            RecordFacts.Sources(scope, place, claim.Sources, "the claim");
            RecordFacts.Text(scope, place, "why", claim.Why, "the claim does not say why");
            RecordFacts.Parts(scope, place, "for", claim.For);
            if (scope.Knows(scope.Agents, claim.Agent, place, "agent", "agent")) Box(scope, claim, place);
            Partners(scope, claim, place);
            What(scope, claim.Reaches, claim.Kills, claim.DoesNotKill, place, "", "reaches");
            if (claim.Refuted is { } refuted) RecordFacts.Text(scope, place, "refuted", refuted, "what speaks against the claim is not said");
        }
    }

    /// <summary>The other ingredients of a blend: known, no kin of the claim's agent or of each other, each at a strength where it has a basis.</summary>
    private static void Partners(Scope scope, Claim claim, ProblemPlace place)
    {
        for (var i = 0; i < claim.With.Count; i++)
        {
            var (agent, strength) = (claim.With[i].Agent, claim.With[i].Strength);
            var here = place with { Field = $"with.{i}" };
            if (!scope.Knows(scope.Agents, agent, here, $"with.{i}.agent", "agent")) continue;
            if (claim.With.Take(i).Any(other => Kin(other.Agent, agent)))
                scope.Add("listed-twice", here with { Field = $"with.{i}.agent" }, $"`{agent}` is listed twice, by itself or by what it belongs to");
            else if (Kin(claim.Agent, agent))
                scope.Add("blend-with-itself", here with { Field = $"with.{i}.agent" }, $"`{agent}` is the agent of the claim, or above or below it", "name what else must be in the liquid");
            var field = here with { Field = $"with.{i}.strength" };
            if (scope.Basis(agent) is not { } basis)
            {
                if (strength.Statement != AxisStatement.NotNamed)
                    scope.Add("no-basis", field, $"`{agent}` has no basis for a strength", "name the agent's `basis`, or leave the strength out");
            }
            else if (strength.Statement is AxisStatement.NotNamed or AxisStatement.Unstated)
                scope.Add("blend-without-strength", here, $"a blend says how much `{agent}` must be in it", "write `strength`: a range, or `any` where the source says so");
            else if (strength.Statement == AxisStatement.Within) BoxValidation.Strength(scope, place, $"with.{i}.strength", strength.Range, basis);
        }

        bool Kin(AgentId one, AgentId two) => RecordFacts.LiesIn(scope, one, two) || RecordFacts.LiesIn(scope, two, one);
    }

    /// <summary>Checks the level and the organisms of a claim.</summary>
    public static void What(Scope scope, Level? reaches, IReadOnlyList<OrganismTarget> kills, IReadOnlyList<OrganismTarget> doesNotKill, ProblemPlace place, string prefix, string levelKey)
    {
        var before = prefix.Length == 0 ? "" : prefix + ".";
        if (reaches is null && kills.Count == 0) scope.Add("claims-nothing", place with { Field = prefix }, "a claim names the level it reaches or what it kills");
        if (reaches == Level.Cleaned) scope.Add("reaches-cleaned", place with { Field = before + levelKey }, "`cleaned` is no level of killing");
        Targets(scope, kills, place, before + "kills");
        Targets(scope, doesNotKill, place, before + "does-not-kill");
        for (var i = 0; i < doesNotKill.Count; i++)
        {
            var target = doesNotKill[i];
            var here = place with { Field = $"{before}does-not-kill.{i}" };
            if (kills.Contains(target)) scope.Add("kills-and-not", here, $"`{target}` is killed and not killed by one claim");
            else if (reaches is { } level && target.Group is { } group && scope.Data.Levels.Any(l => l.Level == level && l.Includes.Contains(group)))
                scope.Add("level-without-group", here, $"`{Words.Of(level)}` includes `{target}`, which the claim says is not killed");
        }
    }

    /// <summary>Checks groups and organisms: known, each listed once.</summary>
    public static void Targets(Scope scope, IReadOnlyList<OrganismTarget> targets, ProblemPlace place, string field)
    {
        if (targets.Count == 0) return;
        var organisms = scope.Organisms;
        for (var i = 0; i < targets.Count; i++)
        {
            var here = place with { Field = $"{field}.{i}" };
            if (targets[i].Organism is { } organism && !organisms.Contains(organism))
                scope.Add("unknown-organism", here, $"unknown organism or group `{organism}`", NearestNames.Help(organism.Value, organisms.Select(o => o.Value).Concat(Words.All<OrganismGroup>())));
            if (targets.Take(i).Contains(targets[i])) scope.Add("listed-twice", here, $"`{targets[i]}` is listed twice");
        }
    }

    private static void Box(Scope scope, Claim claim, ProblemPlace place)
    {
        var box = claim.When;
        var basis = scope.Basis(claim.Agent);
        Strength(scope, claim.Agent, box.Strength, place with { Field = "when.strength" });
        ContactTime(scope, box.ContactTime, place with { Field = "when.contact-time" });
        Conditions(scope, box, place, "when");
        if (box.Dilution.Statement != AxisStatement.NotNamed)
            scope.Add("dilution-of-agent", place with { Field = "when.dilution" }, "a claim of an agent names `strength`, not `dilution`");
        var missing = new List<string>();
        if (basis is not null && box.Strength.Statement == AxisStatement.NotNamed) missing.Add("strength");
        if (box.Temperature.Statement == AxisStatement.NotNamed) missing.Add("temperature");
        if (box.Ph.Statement == AxisStatement.NotNamed) missing.Add("ph");
        if (box.Methods.Statement == AxisStatement.NotNamed) missing.Add("methods");
        if (missing.Count > 0)
            scope.Add("axis-not-named", place with { Field = "when" }, "a claim leaves " + string.Join(", ", missing) + " unnamed", "name every axis: a range, `any` where the source says so, or `unstated`");
        if (claim.Bath is { } bath) Bath(scope, claim.Agent, bath, basis, place);
    }

    /// <summary>Checks the strength of a claim against the basis of its agent.</summary>
    public static void Strength(Scope scope, AgentId agent, AxisLimit limit, ProblemPlace here)
    {
        if (scope.Basis(agent) is not { } basis)
        {
            if (limit.Statement != AxisStatement.NotNamed)
                scope.Add("no-basis", here, $"`{agent}` has no basis for a strength", "name the agent's `basis`, or make the claim of an agent that has one");
        }
        else if (limit.Statement == AxisStatement.Within) BoxValidation.Strength(scope, here, here.Field, limit.Range, basis);
        else if (limit.Statement == AxisStatement.Unstated && scope.Upward(agent).All(a => a.Usual.Strength is null))
            scope.Add("no-usual-strength", here, $"`unstated` needs a usual strength of `{agent}` on record");
    }

    /// <summary>Checks the temperature, the pH and the methods of a claim.</summary>
    public static void Conditions(Scope scope, ClaimBox box, ProblemPlace place, string field)
    {
        Limit(box.Temperature, "temperature", -40m, 200m);
        Limit(box.Ph, "ph", -1m, 15m);
        if (box.Methods.Statement == AxisStatement.Within && box.Methods.Methods.IsEmpty)
            scope.Add("no-methods", place with { Field = field + ".methods" }, "no method is named", "name at least one that carries an agent");

        void Limit(AxisLimit limit, string name, decimal least, decimal most)
        {
            if (limit.Statement == AxisStatement.Within) BoxValidation.Range(scope, place, $"{field}.{name}", limit.Range, least, most, true, name);
        }
    }

    /// <summary>Without a contact time nothing is killed, so a claim states the least one.</summary>
    public static void ContactTime(Scope scope, AxisLimit contactTime, ProblemPlace here)
    {
        if (contactTime.Statement != AxisStatement.Within || contactTime.Range.Lower is null)
            scope.Add("no-contact-time", here, "a claim states the least contact time", "write `>= 1 min`");
        else BoxValidation.Range(scope, here, here.Field, contactTime.Range, 0m, null, false, "contact time");
    }

    /// <summary>Checks how a bath is kept.</summary>
    public static void Bath(Scope scope, AgentId agent, BathUse bath, StrengthUnit? basis, ProblemPlace place)
    {
        if (bath.Reuse is <= 0m) scope.Add("outside-axis", place with { Field = "bath.reuse" }, "a time is above 0");
        if (bath.Minimum is not { } minimum) return;
        if (basis is null) scope.Add("no-basis", place with { Field = "bath.minimum" }, $"`{agent}` has no basis for a strength");
        else if (minimum.Lower is null) scope.Add("no-minimum", place with { Field = "bath.minimum" }, "a minimum has a lower end", "write `>=` before it");
        else BoxValidation.Strength(scope, place, "bath.minimum", minimum, basis);
    }
}
