namespace Compat.Validation;

/// <summary>Checks one rule against the records around it.</summary>
internal static class RuleValidation
{
    public static void Check(Scope scope, Rule rule, bool inSite)
    {
        var at = new Field(scope, RecordKind.Rule, rule.Id.Value);
        Target(scope, rule, at, inSite);
        Subject(scope, rule, at, inSite);
        at["sources"].KnowsAll(scope.Sources, rule.Sources, "source");
        at["duties"].Duties(rule.Duties);
        at["when"].Box(rule.When, rule.Agent, rule.Product is not null);
        if (rule.Sources.Count == 0) at.Wrong("no-source", "the rule has no source");
        at["why"].Said(rule.Why, "no-why", "the rule does not say why");
        if (rule.Allows) Allowed(scope, rule, at);
        else NotAllowed(rule, at);
        if (rule.Tested is { } tested) Tested(scope, rule, tested, at);
        if (rule.KnownBy == KnownBy.Test && rule.Tested is null) at["known-by"].Wrong("no-test", "`known-by: test` without `tested`", "say what was tested");
        if (rule.KnownBy == KnownBy.Instructions != rule.Edition is not null)
            at[rule.Edition is null ? "known-by" : "edition"].Wrong("no-edition", "`known-by: instructions` and `edition` go together");
    }

    private static void Target(Scope scope, Rule rule, Field at, bool inSite)
    {
        var target = rule.Target;
        if (target.Part is { } part) at["part"].Knows(scope.Parts, part, "part");
        if (target.Material is { } material) at["material"].Knows(scope.Materials, material, "material");
        if (target.Device is not { } id)
        {
            if (rule.Edition is not null) at["edition"].Wrong("edition-without-device", "only a rule on a device speaks for its instructions");
        }
        else if (!inSite) at["device"].Wrong("device-outside-site", "rules on a device belong in a site file");
        else if (at["device"].Knows(scope.Devices, id, "device"))
        {
            var device = scope.Devices[id];
            if (target.DevicePart is { } devicePart) at["device-part"].DevicePart(device, devicePart);
            if (rule.Edition is { } edition && device.Instructions.All(e => e.Id != edition))
                at["edition"].Wrong(
                    "unknown-edition", $"`{id}` has no edition `{edition}` of its instructions",
                    NearestNames.Help(edition.Value, device.Instructions.Select(e => e.Id.Value)));
        }
    }

    private static void Subject(Scope scope, Rule rule, Field at, bool inSite)
    {
        if (rule.Agent is null == rule.Product is null) at.Wrong("one-subject", "a rule speaks of exactly one agent or product");
        if (rule.Agent is { } agent && at["agent"].Knows(scope.Agents, agent, "agent"))
        {
            for (var i = 0; i < rule.SeenWith.Count; i++)
            {
                var seen = rule.SeenWith[i];
                if (at["seen-with"][i].Knows(scope.Agents, seen, "agent") && (seen == agent || !scope.LiesIn(seen, agent)))
                    at["seen-with"][i].Wrong("seen-outside-class", $"`{seen}` does not lie below `{agent}`");
            }
        }

        if (rule.Product is not { } id) return;
        if (!inSite) at["product"].Wrong("product-outside-site", "rules on a product belong in a site file");
        else if (at["product"].Knows(scope.Products, id, "product") && rule.SeenWith.Count > 0)
            at["seen-with"].Wrong("seen-with-product", "a rule on a product names no other agents");
    }

    private static void Allowed(Scope scope, Rule rule, Field at)
    {
        var when = rule.When;
        var hasBasis = rule.Product is null && scope.Basis(rule.Agent) is not null;
        at["when"].Named(
            "an 'allowed'", "a source",
            ("strength", hasBasis ? when.Strength.Statement : null), ("dilution", rule.Product is null ? null : when.Dilution.Statement),
            ("exposure-time", when.ExposureTime.Statement), ("temperature", when.Temperature.Statement), ("ph", when.Ph.Statement),
            ("uses", when.Uses.Statement), ("methods", when.Methods.Statement));
        if (when.Strength.Statement == AxisStatement.Unstated && hasBasis && scope.Upward(rule.Agent).All(a => a.Usual.Strength is null))
            at["when.strength"].Wrong("no-usual-strength", $"`unstated` needs a usual strength of `{rule.Agent}` on record");
        if (rule.RestsOn.Count > 0 && rule.RestsOn.All(ground => ground == ThinGround.Absence))
            at["rests-on"].Wrong(
                "rests-on-absence", "an 'allowed' rests on nothing but that no damage was reported",
                "silence is no permission: name a source that looked, or take the rule out");
        if (rule.KnownBy is null) at.Wrong("not-known-by", "an 'allowed' does not say how it is known", "add `known-by`");
        if (rule.Agent is { } agent && rule.SeenWith.Count == 0 && !rule.WholeClass && scope.Data.Agents.Any(a => a.Under == agent))
            at["agent"].Wrong("seen-with-nothing", $"an 'allowed' on the class `{agent}` does not say what it was seen with",
                "add `seen-with: [...]`, or `whole-class: true` where the source speaks of the class");
        if (rule.SeenWith.Count > 0 && rule.WholeClass) at["seen-with"].Wrong("seen-with-and-class", "`seen-with` and `whole-class` exclude each other");
        if (when.Uses.Statement == AxisStatement.Within && when.Uses.Range.Lower > 1)
            at["when.uses"].Wrong("uses-from", "the uses of an 'allowed' start at 1", "write `<= n` or `any`");
        if (when.ExposureTime is { Statement: AxisStatement.Within, Range.Lower: not null })
            at["when.exposure-time"].Wrong(
                "exposure-time-from", "the `exposure-time` of an 'allowed' has a lower end: a longer one would be allowed where a shorter one is not",
                "write it with an upper end only, `any` or `unstated`");
    }

    private static void NotAllowed(Rule rule, Field at)
    {
        at["when"].NeverUnstated(rule.When, "a 'not allowed'");
        at["when"].NeverEnds(rule.When);
        if (rule.SeenWith.Count > 0 || rule.WholeClass)
            at[rule.WholeClass ? "whole-class" : "seen-with"].Wrong("seen-with-in-prohibition", "a 'not allowed' always passes to the whole class");
        if (rule.Damage is null) at.Wrong("no-damage", "a 'not allowed' does not say which damage it prevents", "add `damage`");
    }

    private static void Tested(Scope scope, Rule rule, TestEvidence tested, Field at)
    {
        at["tested.exposure"].Box(tested.Exposure, rule.Agent, rule.Product is not null);
        if (!rule.Allows) return;
        var when = at["when"];
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var (was, box) = (tested.Exposure.On(axis), rule.When.On(axis));
            if (was.Statement != AxisStatement.Within || box.Statement is AxisStatement.NotNamed or AxisStatement.Unstated
                || !Beyond(axis, box.Range, was.Range)) continue;
            when[Words.Of(axis)].Wrong("exceeds-test", $"the box reaches beyond what was tested on {Words.Of(axis)}", $"tested: {was.Range}");
        }

        TotalTime(scope, rule, tested, when["uses"]);
        if (tested.Exposure.Methods.Statement != AxisStatement.Within || rule.When.Methods.Statement != AxisStatement.Within) return;
        var wettest = tested.Exposure.Methods.Methods.Methods.LastOrDefault();
        if (rule.When.Methods.Methods.Methods.Any(m => m > wettest || (wettest == ApplicationMethod.Chamber && m != wettest)))
            when["methods"].Wrong("exceeds-test", "a method is wetter than what was tested", $"tested: {tested.Exposure.Methods.Methods}");
    }

    /// <summary>All uses together last no longer than all that was tested; a test that names no uses was one.</summary>
    private static void TotalTime(Scope scope, Rule rule, TestEvidence tested, Field at)
    {
        if (tested.Exposure.ExposureTime is not { Statement: AxisStatement.Within, Range.Upper: { } longest } || longest == Interval.WithoutEnd
            || tested.Exposure.Uses.Statement == AxisStatement.Any) return;
        var all = longest * (tested.Exposure.Uses is { Statement: AxisStatement.Within, Range.Upper: { } times } ? times : 1m);
        if (End(Axis.ExposureTime, ConventionKey.UnstatedExposureTime) is { } each && End(Axis.Uses, ConventionKey.UnstatedUses) is { } uses
            && (uses == 0m || each <= all / uses)) return;
        at.Wrong("exceeds-test", "the uses of the box together last longer than what was tested",
            $"tested: {all} s in all; write a shorter exposure time or fewer uses");

        // The upper end of an axis, that of the convention where the rule says `unstated`; null where there is none.
        decimal? End(Axis axis, ConventionKey key) => rule.When.On(axis) switch
        {
            { Statement: AxisStatement.Unstated } => scope.Data.Conventions.FirstOrDefault(c => c.Key == key)?.Range.Upper,
            { Statement: AxisStatement.Within, Range.Upper: var end } => end,
            _ => null,
        };
    }

    /// <summary>Exposure time and uses are covered downward by a test; the other axes are not.</summary>
    private static bool Beyond(Axis axis, Interval box, Interval tested) =>
        !box.LiesIn(axis is Axis.ExposureTime or Axis.Uses ? new(null, false, tested.Upper, tested.UpperIncluded) : tested);
}
