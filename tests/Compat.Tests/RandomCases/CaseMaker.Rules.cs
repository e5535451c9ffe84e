using Compat.Tests.Reference;

namespace Compat.Tests.RandomCases;

internal sealed partial class CaseMaker
{
    private static readonly Damage SomeDamage = new()
    {
        Mechanism = Mechanism.Swelling,
        Onset = Onset.FirstUse,
        Lasting = true,
        Consequence = Consequence.Looks,
    };

    private void MakeRules()
    {
        var shipped = Enumerable.Range(1, One(3, 4, 5, 6)).Select(i => RandomRule(new("base.r-" + i), site: false)).ToArray();
        _data = _data with { Rules = [.. shipped, .. Narrowed(shipped)] };
        if (_site is not null) _site = _site with
        {
            Rules = Enumerable.Range(1, One(1, 2, 3, 4)).Select(i => RandomRule(new("site.r-" + i), site: true)).ToArray(),
        };
        MakeOverrides();
    }

    /// <summary>Sometimes an 'allowed' once more over a part of its strengths or exposure times, with a duty that the part asked cannot meet.</summary>
    private IEnumerable<Rule> Narrowed(Rule[] rules)
    {
        foreach (var rule in rules.Where(r => r.Allows && Chance(35)))
        {
            var when = rule.When;
            if (when.Strength.Statement == AxisStatement.Within && when.Strength.Range is { Lower: null, Upper: > 1 } strength)
                when = when with { Strength = AxisLimit.Within(new(1, Chance(50), strength.Upper, strength.UpperIncluded)) };
            else if (when.ExposureTime.Statement == AxisStatement.Within && when.ExposureTime.Range is { Upper: > 30 })
                when = when with { ExposureTime = AxisLimit.Within(RandomStretch(30, true, Chance(50))) };
            else
                continue;
            yield return rule with { Id = new(rule.Id.Value + "-narrow"), When = when, Duties = [DutyNotMet()] };
        }
    }

    private Duty DutyNotMet()
    {
        var type = _question.Part ?? _site?.Devices.SelectMany(d => d.Parts).FirstOrDefault(p => p.Id == _question.DevicePart)?.OneOfTypes[0];
        var wettest = type is null ? ApplicationMethod.Immerse : _trees.Wettest(type);
        return wettest < ApplicationMethod.Immerse || type is null
            ? new() { Kind = DutyKind.TakeOff, Ways = [DutyWay.By(ApplicationMethod.Immerse)] }
            : new() { Kind = DutyKind.Dry, Ways = [DutyWay.By(_trees.Never(type).FirstOrDefault(Act.HeatDrying))] };
    }

    private Rule RandomRule(RuleId id, bool site)
    {
        var target = RandomTarget(site);
        var byProduct = site && _site!.Products.Count > 0 && Chance(_question.Product is null ? 15 : 50);
        var agent = byProduct ? null : RandomAgentOfRule();
        return RandomRule(id, target, agent, Chance(70), site);
    }

    private Rule RandomRule(RuleId id, RuleTarget target, AgentId? agent, bool allows, bool site)
    {
        var below = _data.Agents.Select(a => a.Id).Where(a => agent is not null && a != agent && _trees.Below(a, agent)).ToArray();
        var seenWith = allows && below.Length > 0 && Chance(60) ? Shuffled(below).Take(One(1, 2)).ToArray() : [];
        var edition = site && target.Device is not null && _site!.Devices[0].Instructions.Count > 0
            && Chance(60) ? One(_site.Devices[0].Instructions).Id : null;
        var product = agent is null ? _site!.Products[0] : null;
        var when = new ExposureBox
        {
            Strength = agent is not null && _trees.Basis(agent) is not null
                ? Limit(Axis.Strength, allows, ReferenceTrees.Nearest(_trees.Line(agent), a => a.Usual.Strength) is not null) : default,
            Dilution = agent is null ? Limit(Axis.Dilution, allows) : default,
            ExposureTime = Limit(Axis.ExposureTime, allows),
            Temperature = Limit(Axis.Temperature, allows),
            Ph = Limit(Axis.Ph, allows),
            Uses = Limit(Axis.Uses, allows),
            Methods = Methods(allows),
        };
        return new()
        {
            Id = id,
            Target = target,
            Agent = agent,
            Product = product?.Id,
            CompositionDated = product is null ? null : Chance(90) ? product.CompositionDated : new CalendarDate(2025, 1, 1),
            When = when,
            Allows = allows,
            SeenWith = seenWith,
            WholeClass = allows && below.Length > 0 && seenWith.Length == 0,
            Damage = allows ? null : SomeDamage,
            CountsTowards = allows && when.Uses.Statement is AxisStatement.Within or AxisStatement.Unstated ? Mechanism.LegendWear : null,
            Duties = Chance(35) ? [RandomDuty()] : [],
            Why = "made at random",
            KnownBy = edition is not null ? KnownBy.Instructions : !allows ? null : One(KnownBy.Published, KnownBy.Published, KnownBy.Practice),
            Edition = edition,
            Sources = [One(new SourceId("s-read"), new SourceId("s-read"), new SourceId("s-recalled"), new SourceId("common-practice"))],
            Reviewed = Day,
        };
    }

    private RuleTarget RandomTarget(bool site)
    {
        if (site && _site!.Devices.Count > 0 && Chance(60))
            return Chance(50) ? RuleTarget.On(DeviceName)
                : RuleTarget.On(DeviceName, _question.DevicePart is { } asked && Chance(80) ? asked : One(_site.Devices[0].Parts).Id);
        var part = _site?.Devices.SelectMany(d => d.Parts).FirstOrDefault(p => p.Id == _question.DevicePart);
        PartId[] types = part is not null ? [.. part.OneOfTypes] : _question.Part is { } type ? [type] : [];
        var materials = _question.Materials.Concat(part?.Materials ?? []).SelectMany(s => s.OneOf).Concat(types.SelectMany(Candidates));
        var nearParts = _data.Parts.Select(p => p.Id).Where(p => types.Any(t => _trees.Below(t, p))).ToArray();
        var nearMaterials = _data.Materials.Select(m => m.Id).Where(m => materials.Any(x => _trees.Below(x, m))).ToArray();
        if (types.Length > 0 && Chance(55)) return RuleTarget.On(Chance(90) ? One(nearParts) : One(_data.Parts).Id);
        return RuleTarget.On(nearMaterials.Length > 0 && Chance(90) ? One(nearMaterials) : One(_data.Materials).Id);
    }

    private IEnumerable<MaterialId> Candidates(PartId type) => _trees.Materials(type).SelectMany(s => s.OneOf);

    private AgentId RandomAgentOfRule()
    {
        var asked = _question.Agent is { } agent ? [agent] : _site!.Products[0].Ingredients.Select(i => i.Agent).OfType<AgentId>().ToArray();
        var near = _data.Agents.Select(a => a.Id).Where(a => asked.Any(x => _trees.Below(x, a))).ToArray();
        return near.Length > 0 && Chance(88) ? One(near) : One(_data.Agents).Id;
    }

    private AxisLimit Limit(Axis axis, bool allows, bool mayBeUnstated = true)
    {
        if (!_varied.Contains(axis) || Chance(35)) return allows ? AxisLimit.Any : One(AxisLimit.Any, default);
        if (allows && mayBeUnstated && Chance(15)) return AxisLimit.Unstated;
        return AxisLimit.Within(axis is Axis.ExposureTime or Axis.Uses ? RandomStretch(One(_pool[axis]), allows, Chance(50)) : RandomRange(axis));
    }

    /// <summary>Of exposure time and uses: an 'allowed' ends somewhere, a 'not allowed' starts somewhere.</summary>
    private static Interval RandomStretch(decimal end, bool allows, bool included) => allows ? new(null, false, end, included || end == 1)
        : new(end, included, null, false);

    private Interval RandomRange(Axis axis)
    {
        var (a, b) = (One(_pool[axis]), One(_pool[axis]));
        var (low, high) = (Math.Min(a, b), Math.Max(a, b));
        return _random.Next(6) switch
        {
            0 => Interval.AtMost(a),
            1 => Interval.Below(a),
            2 => Interval.AtLeast(a),
            3 => Interval.Above(a),
            4 when low < high => new(low, Chance(50), high, Chance(50)),
            _ => Interval.Closed(low, high),
        };
    }

    private MethodLimit Methods(bool allows)
    {
        if (!_methodsVary || Chance(35)) return allows ? MethodLimit.Any : One(MethodLimit.Any, default);
        if (allows && Chance(15)) return MethodLimit.Unstated;
        var some = MethodSet.All.Methods.Where(_ => Chance(50)).ToArray();
        return MethodLimit.Within(some.Length == 0 ? [ApplicationMethod.DampWipe] : some);
    }

    // ---- Overrides: only of rules at or above, with boxes that overlap, later rules over earlier ones -------------

    private void MakeOverrides()
    {
        var all = _data.Rules.Select(r => (Rule: r, Site: false)).Concat((_site?.Rules ?? []).Select(r => (Rule: r, Site: true))).ToArray();
        for (var i = 1; i < all.Length; i++)
        {
            var overridden = all.Take(i).Where(r => MayOverride(all[i].Rule, r.Rule) && Chance(45)).Select(r => r.Rule.Id).ToArray();
            all[i].Rule = all[i].Rule with { Overrides = overridden };
        }

        _data = _data with { Rules = all.Where(r => !r.Site).Select(r => r.Rule).ToArray() };
        if (_site is not null) _site = _site with { Rules = all.Where(r => r.Site).Select(r => r.Rule).ToArray() };
    }

    private bool MayOverride(Rule q, Rule r) => r.Edition is null && AgentWithin(q, r) && TargetWithin(q.Target, r.Target) && Overlap(q, r);

    private bool AgentWithin(Rule q, Rule r)
    {
        if (r.Product is not null) return q.Product is not null && q.CompositionDated == r.CompositionDated;
        return q.Agent is not null ? _trees.Below(q.Agent, r.Agent!) : _site!.Products[0].Ingredients.Any(i => i.Agent is { } a && _trees.Below(a, r.Agent!));
    }

    private bool TargetWithin(RuleTarget q, RuleTarget r)
    {
        var parts = q.Device is null ? [] : _site!.Devices[0].Parts.Where(p => q.DevicePart is null || q.DevicePart == p.Id).ToArray();
        if (r.Device is not null) return q.Device is not null && (r.DevicePart is null || r.DevicePart == q.DevicePart);
        if (r.Part is { } part) return q.Part is { } p ? _trees.Below(p, part)
            : parts.Length > 0 && parts.All(d => d.OneOfTypes.All(t => _trees.Below(t, part)));
        var madeOf = q.Part is { } type ? Candidates(type)
            : parts.SelectMany(d => d.OneOfTypes.SelectMany(Candidates).Concat((d.Materials ?? []).SelectMany(s => s.OneOf)));
        return q.Material is { } m ? _trees.Below(m, r.Material!) : madeOf.Any(x => _trees.Below(x, r.Material!));
    }

    private bool Overlap(Rule q, Rule r)
    {
        var product = _site?.Products.FirstOrDefault();
        var numbers = Enum.GetValues<Axis>()
            .Where(a =>
                a switch { Axis.Strength => q.Agent is not null && r.Agent is not null, Axis.Dilution => q.Agent is null && r.Agent is null, _ => true });
        return numbers.All(a => !_trees.Filled(q, a, product).Intersect(_trees.Filled(r, a, product)).IsEmpty)
            && !_trees.Methods(q).Intersect(_trees.Methods(r)).IsEmpty;
    }
}
