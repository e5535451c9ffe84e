using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>
/// Finds a claim that promises more than another one lets stand: a level or a group of organisms, where something of it is on record as not killed.
/// </summary>
internal sealed class LooserClaims(Ground ground)
{
    private readonly CompiledBase _kb = ground.Kb;
    private readonly ClaimAxes _axes = new(ground.Kb);

    public IEnumerable<Finding> Find() =>
        from claim in _kb.Data.Claims
        where claim.Refuted is null
        from denied in _kb.Data.Claims.Where(other => other != claim && MayMeet(claim, other))
            .SelectMany(other => Denied(claim, other).Where(one => !KilledByOthers(claim, other, one.Target))
                .Select(one => (Other: other, one.Target, one.Promise, one.Field)))
            .GroupBy(one => (one.Target, one.Promise, one.Field), one => one.Other)
        select new Finding
        {
            Kind = FindingKind.LooserClaim,
            IsFault = true,
            Message = $"`{claim.Id}` {denied.Key.Promise}, and at one of its exposures "
                + (denied.Key.Target is null ? "that was refuted" : "it is on record as not killed"),
            Involved = [new(new ProblemPlace(RecordKind.Claim, claim.Id.Value, denied.Key.Field), "promises it"), .. denied
                .Select(other => new Involved(new ProblemPlace(RecordKind.Claim, other.Id.Value), "speaks against it"))],
            Agent = claim.Agent.Value,
            Help = denied.Key.Target?.Organism is { } organism ? $"write `does-not-kill: [{organism}]`, or narrow a box"
                : "narrow a box, or leave out what is not shown",
        };

    private int At(Claim claim) => _kb.Agents[claim.Agent.Value];

    /// <summary>
    /// Whether both can speak of one use: of one agent, one part, one liquid, at one exposure. What is refuted of soil says nothing of what is cleaned first.
    /// </summary>
    private bool MayMeet(Claim claim, Claim other) =>
        (_kb.Agents.IsAtOrBelow(At(claim), At(other)) || _kb.Agents.IsAtOrBelow(At(other), At(claim)))
        && SharedParts(claim, other).Any()
        && claim.With.All(partner => other.With.Any(named => _kb.Agents.IsAtOrBelow(_kb.Agents[partner.Agent.Value], _kb.Agents[named.Agent.Value])))
        && (other.StandsSoil.Count == 0 || !claim.Needs.Contains(ClaimNeed.CleanFirst) || other.StandsSoil.Any(claim.StandsSoil.Contains))
        && Overlap(claim, other) is not null;

    /// <summary>The topmost parts of which both speak.</summary>
    private IEnumerable<int> SharedParts(Claim one, Claim two)
    {
        int[] Parts(Claim claim) => claim.For.Count == 0 ? [_kb.Parts[PartType.Root.Value]] : claim.For.Select(part => _kb.Parts[part.Value]).ToArray();
        foreach (var a in Parts(one))
        {
            foreach (var b in Parts(two))
            {
                if (_kb.Parts.IsAtOrBelow(a, b)) yield return a;
                else if (_kb.Parts.IsAtOrBelow(b, a)) yield return b;
            }
        }
    }

    /// <summary>What a claim promises that another denies; the target is null where it is the level itself.</summary>
    private IEnumerable<(OrganismTarget? Target, string Promise, string Field)> Denied(Claim claim, Claim other)
    {
        if (other.Refuted is not null && other.Reaches is { } refuted && claim.Reaches >= refuted)
            yield return (null, $"reaches `{Words.Of(claim.Reaches.Value)}`", "reaches");
        var included = _kb.Data.Levels.FirstOrDefault(level => level.Level == claim.Reaches)?.Includes ?? [];
        foreach (var target in other.DoesNotKill.Concat(other.Refuted is null ? [] : other.Kills).Distinct())
        {
            if (claim.DoesNotKill.Contains(target)) continue;
            var group = target.Group ?? _kb.Data.Organisms.First(organism => organism.Id == target.Organism).Group;
            if (included.Contains(group)) yield return (target, $"reaches `{Words.Of(claim.Reaches!.Value)}`, which includes `{target}`", "reaches");
            else if (claim.Kills.Contains(OrganismTarget.Of(group)))
                yield return (target, target.Group is null ? $"kills `{Words.Of(group)}`, `{target}` among them" : $"kills `{target}`", "kills");
        }
    }

    /// <summary>Whether claims that name an organism kill it wherever the two meet: what one leaves out, another may kill.</summary>
    private bool KilledByOthers(Claim claim, Claim other, OrganismTarget? target)
    {
        if (target?.Organism is null || Overlap(claim, other) is not { } meeting) return false;
        var agent = _kb.Agents.IsAtOrBelow(At(claim), At(other)) ? At(claim) : At(other);
        var killers = Reach.Claims(_kb, agent).Where(one => one.With.Count == 0 && one.Kills.Contains(target) && one.Needs.All(claim.Needs.Contains)).ToArray();
        return SharedParts(claim, other).All(part => meeting.Methods.Methods.All(method => Subtraction.MaximalBoxes(
            meeting with { Methods = MethodSet.Of(method) }, killers.Where(one => Reach.IsFor(_kb, one.For, part)).Select(Box)).Count == 0));
    }

    /// <summary>The exposures of a claim at which another one binds that says no; null where there are none.</summary>
    private Box<Stretch>? Overlap(Claim claim, Claim other) =>
        Box(claim).Intersect(KillReasons.WithWeaker(Box(other))) is { IsEmpty: false } shared ? shared : null;

    private Box<Stretch> Box(Claim claim) => _axes.Of(claim.When, claim.Agent, Stretch.Whole);
}

/// <summary>Finds claims of labels that say more than their tests show: a group of the level they reach, or what they say is killed.</summary>
/// <remarks>The engine takes such a claim for no more than its tests show; who wrote it may not know that.</remarks>
internal sealed class ClaimsBeyondTests(Ground ground)
{
    public IEnumerable<Finding> Find()
    {
        foreach (var product in ground.Kb.Sites.SelectMany(site => site.Products))
            for (var i = 0; i < product.LabelClaims.Count; i++)
                if (product.LabelClaims[i] is { ShownBy.Count: > 0 } claim && Of(product, claim, i) is { } finding) yield return finding;
    }

    private Finding? Of(Product product, LabelClaim claim, int index)
    {
        var tests = claim.ShownBy.Select(code => ground.Kb.Data.TestStandards.First(test => test.Code == code)).ToArray();
        var used = new KillClaim { Origin = ClaimOrigin.Label, Id = claim.Id.Value, ShownBy = tests };
        var methods = new ClaimAxes(ground.Kb).Methods(claim.When.Methods, product)
            .Intersect(product.Methods.IsEmpty ? MethodSet.Ladder : product.Methods).Methods;
        var missing = methods.GroupBy(method => string.Join(", ", NotShown(used, claim, method))).Where(group => group.Key.Length > 0).ToArray();
        if (missing.Length == 0) return null;
        var where = missing.Select(group => group.Key + (group.Count() == methods.Count ? "" : $" by {string.Join(", ", group.Select(Words.Of))}"));
        var says = claim.Reaches is { } level ? $"reaches {Words.Of(level)}" : $"kills {string.Join(", ", claim.Kills)}";
        var idle = tests.Where(test => !methods.Any(test.SpeaksOf))
            .Select(test => $"`{test.Code}` ({Words.Of(test.Field)}, on {string.Join(" and ", test.On.Select(Words.Of))})").ToArray();
        return new Finding
        {
            Kind = FindingKind.ClaimBeyondTests,
            IsFault = true,
            Message = $"the label claim `{claim.Id}` of `{product.Id}` {says}, and its tests do not show that it kills {string.Join("; ", where)}",
            Involved = [new(new ProblemPlace(RecordKind.Product, product.Id.Value, $"label-claims.{index}.shown-by"), "its tests")],
            Agent = product.Id.Value,
            Help = (idle.Length == 0 ? "" : $"{string.Join(", ", idle)} shows nothing of how it is used here; ")
                + "name the tests that the label names for it, or write the claim no wider than they are",
        };
    }

    private IEnumerable<OrganismTarget> NotShown(KillClaim used, LabelClaim claim, ApplicationMethod method) =>
        (claim.Reaches is { } level ? LabelTests.NotShown(ground.Kb, used, level, method).Select(OrganismTarget.Of) : [])
            .Concat(claim.Kills.Where(target => !LabelTests.Show(ground.Kb, used, target, method))).Distinct();
}
