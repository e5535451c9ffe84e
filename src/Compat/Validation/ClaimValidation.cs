namespace Compat.Validation;

/// <summary>Checks claims of efficacy.</summary>
internal static class ClaimValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.Claims, RecordKind.Claim, c => c.Id.Value);
        foreach (var claim in scope.Data.Claims)
        {
            var at = new Field(scope, RecordKind.Claim, claim.Id.Value);
            at.Sources(claim.Sources, "the claim");
            at["why"].Said(claim.Why, "no-why", "the claim does not say why");
            at["for"].KnowsAll(scope.Parts, claim.For, "part");
            if (at["agent"].Knows(scope.Agents, claim.Agent, "agent")) Box(scope, claim, at);
            for (var i = 0; i < claim.With.Count; i++) Partner(scope, claim, i, at["with"][i]);
            What(at, claim.Reaches, claim.Kills, claim.DoesNotKill, "reaches");
            if (claim.Refuted is { } refuted) at["refuted"].Said(refuted, "no-refuted", "what speaks against the claim is not said");
        }
    }

    /// <summary>Another ingredient of a blend: known, no kin of the claim's agent or of the others, at a strength where it has a basis.</summary>
    private static void Partner(Scope scope, Claim claim, int index, Field at)
    {
        var (agent, strength) = (claim.With[index].Agent, claim.With[index].Strength);
        if (!at["agent"].Knows(scope.Agents, agent, "agent")) return;
        if (claim.With.Take(index).Any(other => Kin(scope, other.Agent, agent)))
            at["agent"].Wrong("listed-twice", $"`{agent}` is listed twice, by itself or by what it belongs to");
        else if (Kin(scope, claim.Agent, agent))
            at["agent"].Wrong("blend-with-itself", $"`{agent}` is the agent of the claim, or above or below it", "name what else must be in the liquid");
        if (scope.Basis(agent) is not { } basis)
        {
            if (strength.Statement != AxisStatement.NotNamed)
                at["strength"].Wrong("no-basis", $"`{agent}` has no basis for a strength", "name the agent's `basis`, or leave the strength out");
        }
        else if (strength.Statement is AxisStatement.NotNamed or AxisStatement.Unstated)
            at.Wrong("blend-without-strength", $"a blend says how much `{agent}` must be in it",
                "write `strength`: a range, or `any` where the source says so");
        else if (strength.Statement == AxisStatement.Within) at["strength"].Strength(strength.Range, basis);
    }

    /// <summary>Whether one of two lies at or below the other.</summary>
    public static bool Kin(Scope scope, AgentId one, AgentId other) => scope.LiesIn(one, other) || scope.LiesIn(other, one);

    /// <summary>Checks the level and the organisms of a claim.</summary>
    public static void What(Field at, Level? reaches, IReadOnlyList<OrganismTarget> kills, IReadOnlyList<OrganismTarget> doesNotKill, string levelKey)
    {
        if (reaches is null && kills.Count == 0) at.Wrong("claims-nothing", "a claim names the level it reaches or what it kills");
        if (reaches == Level.Cleaned) at[levelKey].Wrong("reaches-cleaned", "`cleaned` is no level of killing");
        var not = at["does-not-kill"];
        Targets(at["kills"], kills);
        Targets(not, doesNotKill);
        for (var i = 0; i < doesNotKill.Count; i++)
        {
            var target = doesNotKill[i];
            if (kills.Contains(target)) not[i].Wrong("kills-and-not", $"`{target}` is killed and not killed by one claim");
            else if (reaches is { } level && target.Group is { } group && at.Scope.Data.Levels.Any(l => l.Level == level && l.Includes.Contains(group)))
                not[i].Wrong("level-without-group", $"`{Words.Of(level)}` includes `{target}`, which the claim says is not killed");
        }
    }

    /// <summary>Checks groups and organisms: known, each listed once.</summary>
    public static void Targets(Field at, IReadOnlyList<OrganismTarget> targets)
    {
        if (targets.Count == 0) return;
        var organisms = at.Scope.Organisms;
        for (var i = 0; i < targets.Count; i++)
        {
            if (targets[i].Organism is { } organism && !organisms.Contains(organism))
                at[i].Wrong("unknown-organism", $"unknown organism or group `{organism}`",
                    NearestNames.Help(organism.Value, organisms.Select(o => o.Value).Concat(Words.All<OrganismGroup>())));
            if (targets.Take(i).Contains(targets[i])) at[i].Wrong("listed-twice", $"`{targets[i]}` is listed twice");
        }
    }

    private static void Box(Scope scope, Claim claim, Field at)
    {
        var (box, when) = (claim.When, at["when"]);
        var basis = scope.Basis(claim.Agent);
        Strength(when["strength"], claim.Agent, box.Strength);
        Conditions(when, box);
        if (box.Dilution.Statement != AxisStatement.NotNamed)
            when["dilution"].Wrong("dilution-of-agent", "a claim of an agent names `strength`, not `dilution`");
        when.Named(
            "a claim", "the source",
            ("strength", basis is null ? null : box.Strength.Statement), ("temperature", box.Temperature.Statement), ("ph", box.Ph.Statement),
                ("methods", box.Methods.Statement));
        if (claim.Bath is { } bath) Bath(at["bath"], claim.Agent, bath);
    }

    /// <summary>Checks the strength of a claim against the basis of its agent.</summary>
    public static void Strength(Field at, AgentId agent, AxisLimit limit)
    {
        if (at.Scope.Basis(agent) is not { } basis)
        {
            if (limit.Statement != AxisStatement.NotNamed)
                at.Wrong("no-basis", $"`{agent}` has no basis for a strength", "name the agent's `basis`, or make the claim of an agent that has one");
        }
        else if (limit.Statement == AxisStatement.Within) at.Strength(limit.Range, basis);
        else if (limit.Statement == AxisStatement.Unstated && at.Scope.Upward(agent).All(a => a.Usual.Strength is null))
            at.Wrong("no-usual-strength", $"`unstated` needs a usual strength of `{agent}` on record");
    }

    /// <summary>
    /// Checks contact time, temperature, pH and methods of a claim. Without a contact time nothing is killed, so a claim states the least one.
    /// </summary>
    public static void Conditions(Field when, ClaimBox box)
    {
        if (box.ContactTime.Statement != AxisStatement.Within || box.ContactTime.Range.Lower is null)
            when["contact-time"].Wrong("no-contact-time", "a claim states the least contact time", "write `>= 1 min`");
        else when["contact-time"].Range(box.ContactTime, Axis.ExposureTime, "contact time");
        when["temperature"].Range(box.Temperature, Axis.Temperature);
        when["ph"].Range(box.Ph, Axis.Ph);
        when["methods"].SomeMethod(box.Methods);
    }

    /// <summary>Checks how a bath is kept.</summary>
    public static void Bath(Field at, AgentId agent, BathUse bath)
    {
        at["reuse"].Time(bath.Reuse);
        if (bath.Minimum is not { } minimum) return;
        if (at.Scope.Basis(agent) is not { } basis) at["minimum"].Wrong("no-basis", $"`{agent}` has no basis for a strength");
        else if (minimum.Lower is null) at["minimum"].Wrong("no-minimum", "a minimum has a lower end", "write `>=` before it");
        else at["minimum"].Strength(minimum, basis);
    }
}
