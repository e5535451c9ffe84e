using Compat.Curation.Writing;
using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking;

/// <summary>What a walk over every grid point of every subject and agent finds: slow, and sharing nothing with the check but the records.</summary>
internal sealed class NaiveCheck
{
    private readonly KnowledgeData _data;
    private readonly IReadOnlyList<Site> _sites;
    private readonly ReferenceTrees _trees;
    private readonly Dictionary<RuleId, Role> _roles;
    private readonly HashSet<EditionId> _speaking = [];

    /// <param name="data">The base.</param>
    /// <param name="sites">Its sites: their devices are asked about with every set of editions that may speak, their products on everything.</param>
    public NaiveCheck(KnowledgeData data, params IReadOnlyList<Site> sites)
    {
        (_data, _sites) = (data, sites);
        _trees = new ReferenceTrees(data, sites);
        _roles = _trees.Rules.ToDictionary(rule => rule.Id, _ => Role.Silent);
        foreach (var brought in Agents().Concat(Products()))
        {
            foreach (var material in data.Materials) Walk(brought with { Materials = [new MaterialSlot(material.Id)] });
            foreach (var part in data.Parts) Walk(brought with { Part = part.Id });
            foreach (var device in sites.SelectMany(site => site.Devices))
                foreach (var part in device.Parts) Walk(brought with { Device = device.Id, DevicePart = part.Id });
        }
    }

    private enum Role
    {
        Silent,
        Idle,
        Repeats,
        Decides,
    }

    /// <summary>Pairs that contradict each other.</summary>
    public HashSet<(RuleId, RuleId)> Contradictions { get; } = [];

    /// <summary>Pairs of which the second takes a piece out of the first.</summary>
    public HashSet<(RuleId, RuleId)> Refinements { get; } = [];

    /// <summary>Standing rules that some answer breaks.</summary>
    public HashSet<StandingRuleId> Broken { get; } = [];

    /// <summary>Rules of an edition that speaks for no serial number any more.</summary>
    public IEnumerable<RuleId> Superseded => _trees.Rules.Where(rule => rule.Edition is { } edition && !_speaking.Contains(edition)).Select(rule => rule.Id);

    /// <summary>Rules that decide nothing and repeat nothing, though they speak.</summary>
    public IEnumerable<RuleId> Dead => _roles.Where(pair => pair.Value < Role.Repeats).Select(pair => pair.Key).Except(Superseded);

    /// <summary>Rules that only repeat others.</summary>
    public IEnumerable<RuleId> Redundant => _roles.Where(pair => pair.Value == Role.Repeats).Select(pair => pair.Key);

    /// <summary>Whether, at the one point of a question, both rules are live in voices that must not disagree.</summary>
    public static bool Shows(KnowledgeData data, Question question, RuleId allowed, RuleId forbids) =>
        new ReferenceEvaluator(data, [], question).EveryPoint()
            .Any(point => Meeting(point).Any(pair => pair.Allowed.Id == allowed && pair.Forbids.Id == forbids));

    /// <summary>A question over every exposure.</summary>
    public static Question Whole(ReferenceTrees trees, Question question) => AnyExposure(question) with
    {
        Strength = trees.Basis(question.Agent!) is { } basis
            ? new Strength(trees.WholeStrength(question.Agent!), StrengthUnit.PercentOf(basis)) : null,
    };

    private IEnumerable<Question> Agents() => _data.Agents.Select(agent => Whole(_trees, new Question { Agent = agent.Id }));

    private IEnumerable<Question> Products() => _sites.SelectMany(site => site.Products).Select(product => AnyExposure(new Question
    {
        Product = product.Id,
        Dilution = product.StrengthOf == StrengthOf.Concentrate ? new(0, false, 1, true) : null,
    }));

    private static Question AnyExposure(Question question) => question with
    {
        ExposureTime = Interval.Above(0),
        Temperature = Interval.Closed(-40, 200),
        Ph = Interval.Closed(-1, 15),
    };

    private void Walk(Question question)
    {
        var asked = new ReferenceEvaluator(_data, _sites, question);
        _speaking.UnionWith(asked.Variants().SelectMany(variant => variant.Speaking).Select(edition => edition.Id));
        var without = _trees.Rules.ToDictionary(rule => rule.Id, rule => new Lazy<ReferenceEvaluator>(() => new ReferenceEvaluator(
            _data with { Rules = Without(_data.Rules, rule) },
            _sites.Select(site => site with { Rules = Without(site.Rules, rule) }).ToArray(),
            question)));
        var standing = question.Product is null && question.Device is null ? _data.StandingRules.Where(rule => HoldsFor(_trees, rule, question)).ToArray() : [];
        foreach (var point in asked.EveryPoint())
        {
            foreach (var (allowed, forbids) in Meeting(point))
                (StrictlyBelow(_trees, _sites, forbids, allowed) ? Refinements : Contradictions).Add((allowed.Id, forbids.Id));
            foreach (var rule in point.Heard.Where(h => h.IsLive).Select(h => h.Rule).Distinct().Where(rule => _roles[rule.Id] != Role.Decides))
            {
                var role = RoleAt(point, rule, point.Elsewhere(without[rule.Id].Value));
                if (role > _roles[rule.Id]) _roles[rule.Id] = role;
            }
        }

        foreach (var rule in standing)
            if (IsBroken(_data, [], rule, question)) Broken.Add(rule.Id);
    }

    private static IEnumerable<(Rule Allowed, Rule Forbids)> Meeting(GridPoint point) =>
        from a in point.Heard
        where a.IsLive && a.Rule.Allows
        from n in point.Heard
        where n.IsLive && !n.Rule.Allows && (a.Voice == n.Voice || a.Voice == 0) && !(n.Rule.Target.Device is not null && a.Rule.Target.Device is null)
        select (a.Rule, n.Rule);

    private static Rule[] Without(IReadOnlyList<Rule> rules, Rule rule) => rules.Where(other => other.Id != rule.Id).ToArray();

    /// <summary>Narrower in part, material, device, agent or product, and wider in none.</summary>
    public static bool StrictlyBelow(ReferenceTrees trees, IReadOnlyList<Site> sites, Rule rule, Rule other) =>
        IsTargetBelow(trees, sites, rule.Target, other.Target) && IsSubjectBelow(trees, sites, rule, other)
        && (rule.Agent != other.Agent || rule.Product != other.Product || !rule.Target.Equals(other.Target))
        && (rule.Agent is not { } agent || !other.SeenWith.Any(seen => trees.Below(seen, agent) && (seen != agent || rule.Target.Equals(other.Target))));

    private static bool IsTargetBelow(ReferenceTrees trees, IReadOnlyList<Site> sites, RuleTarget target, RuleTarget other)
    {
        if (other.Device is { } device) return target.Device == device && (other.DevicePart is null || target.DevicePart == other.DevicePart);
        if (other.Material is { } material) return target.Material is { } m && trees.Below(m, material);
        if (target.Part is { } part) return trees.Below(part, other.Part!);
        var parts = sites.SelectMany(site => site.Devices).Where(d => d.Id == target.Device).SelectMany(d => d.Parts)
            .Where(p => target.DevicePart is null || p.Id == target.DevicePart);
        return target.Device is not null && parts.SelectMany(p => p.OneOfTypes).All(type => trees.Below(type, other.Part!));
    }

    private static bool IsSubjectBelow(ReferenceTrees trees, IReadOnlyList<Site> sites, Rule rule, Rule other)
    {
        if (other.Agent is not { } agent) return rule.Product == other.Product;
        if (rule.Agent is { } own) return trees.Below(own, agent);
        var product = sites.SelectMany(site => site.Products).Single(p => p.Id == rule.Product);
        return agent == AgentClass.Root || product.Ingredients.Any(ingredient => ingredient.Agent is { } a && trees.Below(a, agent));
    }

    private Role RoleAt(GridPoint point, Rule rule, GridPoint elsewhere)
    {
        var after = elsewhere.Truth;
        var others = elsewhere.Heard.Where(h => h.IsLive && !h.Rule.Allows).Select(h => h.Rule).Distinct().ToArray();
        var forbids = point.Truth.Verdict == Verdict.NotAllowed && point.Truth.Step.StartsWith("4 forbidden", StringComparison.Ordinal);
        var same = point.Truth.Verdict == after.Verdict && point.Truth.Verdict switch
        {
            Verdict.NotAllowed => !forbids ? !after.Step.StartsWith("4 forbidden", StringComparison.Ordinal)
                : after.Step.StartsWith("4 forbidden", StringComparison.Ordinal)
                && others.Max(Evidence) == point.Heard.Where(h => h.IsLive && !h.Rule.Allows).Max(h => Evidence(h.Rule)),
            Verdict.Allowed => Says(point) == Says(elsewhere),
            _ => true,
        };
        if (!same) return Role.Decides;
        var deciding = forbids ? !rule.Allows : point.Truth.Allowing.Any(voice => voice.Contains(rule));
        return deciding ? Role.Repeats : Role.Idle;
    }

    private string Says(GridPoint point)
    {
        var truth = point.Truth;
        if (truth.Allowing.Length == 0) return truth.Step;
        var rules = truth.Allowing.SelectMany(voice => voice).Distinct().ToArray();
        var duties = rules.Concat(point.Accompanying).SelectMany(rule => rule.Duties).Select(ExposureYaml.DutyText).Distinct().Order(StringComparer.Ordinal);
        var unstated = rules.SelectMany(
            rule => Enum.GetValues<Axis>().Where(axis => rule.When.On(axis).Statement == AxisStatement.Unstated)
            .Select(axis => $"{axis} {_trees.Filled(rule, axis, null)}")
            .Concat(rule.When.Methods.Statement == AxisStatement.Unstated ? ["methods"] : [])).Distinct().Order(StringComparer.Ordinal);
        var founded =
            truth.Allowing.All(voice => voice.Any(rule => rule.KnownBy is KnownBy.Test or KnownBy.Instructions or KnownBy.Published && Evidence(rule) >= 2));
        return $"{truth.Step} | {founded} {truth.Allowing.Min(voice => voice.Max(Evidence))} | {string.Join("; ", duties)} | {string.Join("; ", unstated)}";
    }

    private int Evidence(Rule rule) => Evidence(_data, rule);

    /// <summary>How strong the sources of a rule are, from 0 to 3.</summary>
    public static int Evidence(KnowledgeData data, Rule rule) => rule.Allows && rule.KnownBy == KnownBy.Practice ? 0 : rule.Sources.Max(id =>
    {
        var source = data.Sources.Single(one => one.Id == id);
        return source.Kind == SourceKind.CommonPractice
            || source.Trust == Trust.Weak ? 0 : source.Recalled ? 1 : source.Trust == Trust.NamedPublication ? 2 : 3;
    });

    /// <summary>Whether a standing rule holds for what is asked.</summary>
    public static bool HoldsFor(ReferenceTrees trees, StandingRule rule, Question question)
    {
        if (!trees.Below(question.Agent!, rule.Agent)) return false;
        if (rule.Part is { } part) return question.Part is { } asked && trees.Below(asked, part);
        var materials = question.Part is { } of ? trees.Materials(of).SelectMany(slot => slot.OneOf) : question.Materials.SelectMany(slot => slot.OneOf);
        return materials.Any(m => trees.Below(m, rule.Material!));
    }

    /// <summary>Standing rules that some agent breaks on some part of a device, with some serial number.</summary>
    public static HashSet<StandingRuleId> BrokenOnDevices(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        var trees = new ReferenceTrees(data, sites);
        return (from device in sites.SelectMany(site => site.Devices)
                from serial in Samples.Serials(device).Distinct()
                from part in device.Parts
                from agent in data.Agents
                let asked = new Question { Device = device.Id, DevicePart = part.Id, Serial = serial, Agent = agent.Id }
                let materials = new ReferenceEvaluator(trees, sites, asked).Variants().SelectMany(v => v.Materials).ToArray()
                from rule in data.StandingRules
                where trees.Below(agent.Id, rule.Agent) && HoldsFor(trees, rule, part, materials)
                where IsBroken(data, sites, rule, Whole(trees, asked))
                select rule.Id).ToHashSet();
    }

    private static bool HoldsFor(ReferenceTrees trees, StandingRule rule, DevicePart part, IEnumerable<MaterialId> materials)
    {
        if (rule.Part is { } type) return part.OneOfTypes.Any(one => trees.Below(one, type));
        return materials.Any(m => trees.Below(m, rule.Material!));
    }

    /// <summary>Whether at some point all variants, the worst of which counts, are allowed, and the duty is missing.</summary>
    private static bool IsBroken(KnowledgeData data, IReadOnlyList<Site> sites, StandingRule rule, Question question)
    {
        var strength = rule.When.Strength.Statement == AxisStatement.Within
            && question.Strength is { } whole ? new Strength(whole.Range.Intersect(rule.When.Strength.Range), whole.Unit) : question.Strength;
        if (strength is { Range.IsEmpty: true }) return false;
        var asked = question with
        {
            Strength = strength,
            ExposureTime = question.ExposureTime!.Value.Intersect(rule.When.ExposureTime.Range),
            Temperature = question.Temperature!.Value.Intersect(rule.When.Temperature.Range),
            Ph = question.Ph!.Value.Intersect(rule.When.Ph.Range),
        };
        if (asked.ExposureTime!.Value.IsEmpty || asked.Temperature!.Value.IsEmpty || asked.Ph!.Value.IsEmpty) return false;
        var methods = rule.When.Methods.Statement == AxisStatement.Within ? rule.When.Methods.Methods : MethodSet.All;
        return methods.Methods.Any(
            method => new ReferenceEvaluator(data, sites, asked with { Method = method }).AnyAllowed(rule.AlwaysWith, rule.When.Uses.Range));
    }
}
