namespace Compat.Validation;

/// <summary>Checks one rule against the records around it.</summary>
internal static class RuleValidation
{
    public static void Check(Scope scope, Rule rule, int occurrence, bool inSite)
    {
        var place = new ProblemPlace(RecordKind.Rule, rule.Id.Value, "", occurrence);
        Target(scope, rule, place, inSite);
        Subject(scope, rule, place, inSite);
        scope.CheckSources(rule.Sources, place);
        DutyValidation.Check(scope, place, rule.Duties);
        BoxValidation.Axes(scope, place, "when", rule.When, rule.Agent, rule.Product is not null);
        if (rule.Sources.Count == 0) scope.Add("no-source", place, "the rule has no source");
        if (rule.Why.Trim().Length == 0) scope.Add("no-why", place with { Field = "why" }, "the rule does not say why");
        if (rule.Allows) Allowed(scope, rule, place);
        else NotAllowed(scope, rule, place);
        if (rule.Tested is { } tested) Tested(scope, rule, tested, place);
        if (rule.KnownBy == KnownBy.Test && rule.Tested is null) scope.Add("no-test", place with { Field = "known-by" }, "`known-by: test` without `tested`", "say what was tested");
        if (rule.KnownBy == KnownBy.Instructions != rule.Edition is not null)
            scope.Add("no-edition", place with { Field = rule.Edition is null ? "known-by" : "edition" }, "`known-by: instructions` and `edition` go together");
    }

    private static void Target(Scope scope, Rule rule, ProblemPlace place, bool inSite)
    {
        var target = rule.Target;
        if (target.Part is { } part) scope.Knows(scope.Parts, part, place, "part", "part");
        if (target.Material is { } material) scope.Knows(scope.Materials, material, place, "material", "material");
        if (target.Device is not { } id)
        {
            if (rule.Edition is not null) scope.Add("edition-without-device", place with { Field = "edition" }, "only a rule on a device speaks for its instructions");
            return;
        }

        if (!inSite)
        {
            scope.Add("device-outside-site", place with { Field = "device" }, "rules on a device belong in a site file");
            return;
        }

        if (!scope.Knows(scope.Devices, id, place, "device", "device")) return;
        var device = scope.Devices[id];
        if (target.DevicePart is { } devicePart && device.Parts.All(p => p.Id != devicePart))
            scope.Add("unknown-device-part", place with { Field = "device-part" }, $"`{id}` has no part `{devicePart}`", NearestNames.Help(devicePart.Value, device.Parts.Select(p => p.Id.Value)));
        if (rule.Edition is { } edition && device.Instructions.All(e => e.Id != edition))
            scope.Add("unknown-edition", place with { Field = "edition" }, $"`{id}` has no edition `{edition}` of its instructions", NearestNames.Help(edition.Value, device.Instructions.Select(e => e.Id.Value)));
    }

    private static void Subject(Scope scope, Rule rule, ProblemPlace place, bool inSite)
    {
        if (rule.Agent is null == rule.Product is null) scope.Add("one-subject", place, "a rule speaks of exactly one agent or product");
        if (rule.Agent is { } agent && scope.Knows(scope.Agents, agent, place, "agent", "agent"))
        {
            for (var i = 0; i < rule.SeenWith.Count; i++)
            {
                var seen = rule.SeenWith[i];
                if (scope.Knows(scope.Agents, seen, place, $"seen-with.{i}", "agent") && (seen == agent || scope.Upward(seen).All(a => a.Id != agent)))
                    scope.Add("seen-outside-class", place with { Field = $"seen-with.{i}" }, $"`{seen}` does not lie below `{agent}`");
            }
        }

        if (rule.Product is not { } id) return;
        if (!inSite) scope.Add("product-outside-site", place with { Field = "product" }, "rules on a product belong in a site file");
        else if (scope.Knows(scope.Products, id, place, "product", "product") && rule.SeenWith.Count > 0)
            scope.Add("seen-with-product", place with { Field = "seen-with" }, "a rule on a product names no other agents");
    }

    private static void Allowed(Scope scope, Rule rule, ProblemPlace place)
    {
        var hasBasis = rule.Product is null && scope.Basis(rule.Agent) is not null;
        var missing = new List<string>();
        if (hasBasis && rule.When.Strength.Statement == AxisStatement.NotNamed) missing.Add("strength");
        if (rule.Product is not null && rule.When.Dilution.Statement == AxisStatement.NotNamed) missing.Add("dilution");
        foreach (var axis in new[] { Axis.ExposureTime, Axis.Temperature, Axis.Ph, Axis.Uses })
            if (rule.When.On(axis).Statement == AxisStatement.NotNamed) missing.Add(Words.Of(axis));
        if (rule.When.Methods.Statement == AxisStatement.NotNamed) missing.Add("methods");
        if (missing.Count > 0)
            scope.Add("axis-not-named", place with { Field = "when" }, "an 'allowed' leaves " + string.Join(", ", missing) + " unnamed", "name every axis: a range, `any` where a source says so, or `unstated`");
        if (rule.When.Strength.Statement == AxisStatement.Unstated && hasBasis && scope.Upward(rule.Agent).All(a => a.Usual.Strength is null))
            scope.Add("no-usual-strength", place with { Field = "when.strength" }, $"`unstated` needs a usual strength of `{rule.Agent}` on record");
        if (rule.RestsOn.Count > 0 && rule.RestsOn.All(ground => ground == ThinGround.Absence))
            scope.Add("rests-on-absence", place with { Field = "rests-on" }, "an 'allowed' rests on nothing but that no damage was reported", "silence is no permission: name a source that looked, or take the rule out");
        if (rule.KnownBy is null) scope.Add("not-known-by", place, "an 'allowed' does not say how it is known", "add `known-by`");
        if (rule.Agent is { } agent && rule.SeenWith.Count == 0 && !rule.WholeClass && scope.Data.Agents.Any(a => a.Under == agent))
            scope.Add("seen-with-nothing", place with { Field = "agent" }, $"an 'allowed' on the class `{agent}` does not say what it was seen with", "add `seen-with: [...]`, or `whole-class: true` where the source speaks of the class");
        if (rule.SeenWith.Count > 0 && rule.WholeClass) scope.Add("seen-with-and-class", place with { Field = "seen-with" }, "`seen-with` and `whole-class` exclude each other");
        if (rule.When.Uses.Statement == AxisStatement.Within && rule.When.Uses.Range.Lower > 1)
            scope.Add("uses-from", place with { Field = "when.uses" }, "the uses of an 'allowed' start at 1", "write `<= n` or `any`");
        if (rule.When.ExposureTime is { Statement: AxisStatement.Within, Range.Lower: not null })
            scope.Add("exposure-time-from", place with { Field = "when.exposure-time" }, "the `exposure-time` of an 'allowed' has a lower end: a longer one would be allowed where a shorter one is not", "write it with an upper end only, `any` or `unstated`");
    }

    private static void NotAllowed(Scope scope, Rule rule, ProblemPlace place)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            if (rule.When.On(axis).Statement == AxisStatement.Unstated) scope.Add("unstated-in-prohibition", place with { Field = "when." + Words.Of(axis) }, "a 'not allowed' cannot say `unstated`", "leave the axis out: it is unbounded");
        if (rule.When.Methods.Statement == AxisStatement.Unstated) scope.Add("unstated-in-prohibition", place with { Field = "when.methods" }, "a 'not allowed' cannot say `unstated`", "leave the axis out: it is unbounded");
        BoxValidation.NoEndOfProhibition(scope, place, rule.When);
        if (rule.SeenWith.Count > 0 || rule.WholeClass) scope.Add("seen-with-in-prohibition", place with { Field = rule.WholeClass ? "whole-class" : "seen-with" }, "a 'not allowed' always passes to the whole class");
        if (rule.Damage is null) scope.Add("no-damage", place, "a 'not allowed' does not say which damage it prevents", "add `damage`");
    }

    private static void Tested(Scope scope, Rule rule, TestEvidence tested, ProblemPlace place)
    {
        BoxValidation.Axes(scope, place, "tested.exposure", tested.Exposure, rule.Agent, rule.Product is not null);
        if (!rule.Allows) return;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            var was = tested.Exposure.On(axis);
            var box = rule.When.On(axis);
            if (was.Statement != AxisStatement.Within || box.Statement is AxisStatement.NotNamed or AxisStatement.Unstated) continue;
            if (!Beyond(axis, box.Range, was.Range)) continue;
            scope.Add("exceeds-test", place with { Field = "when." + Words.Of(axis) }, $"the box reaches beyond what was tested on {Words.Of(axis)}", $"tested: {was.Range}");
        }

        TotalTime(scope, rule, tested, place);
        if (tested.Exposure.Methods.Statement == AxisStatement.Within && rule.When.Methods.Statement == AxisStatement.Within)
        {
            var wettest = tested.Exposure.Methods.Methods.Methods.LastOrDefault();
            if (rule.When.Methods.Methods.Methods.Any(m => m > wettest || (wettest == ApplicationMethod.Chamber && m != wettest)))
                scope.Add("exceeds-test", place with { Field = "when.methods" }, "a method is wetter than what was tested", $"tested: {tested.Exposure.Methods.Methods}");
        }
    }

    /// <summary>All uses together last no longer than all that was tested; a test that names no uses was one.</summary>
    private static void TotalTime(Scope scope, Rule rule, TestEvidence tested, ProblemPlace place)
    {
        if (tested.Exposure.ExposureTime is not { Statement: AxisStatement.Within, Range.Upper: { } longest } || longest == Interval.WithoutEnd || tested.Exposure.Uses.Statement == AxisStatement.Any) return;
        var all = longest * (tested.Exposure.Uses is { Statement: AxisStatement.Within, Range.Upper: { } times } ? times : 1m);
        if (End(scope, rule, Axis.ExposureTime) is { } each && End(scope, rule, Axis.Uses) is { } uses && (uses == 0m || each <= all / uses)) return;
        scope.Add("exceeds-test", place with { Field = "when.uses" }, "the uses of the box together last longer than what was tested", $"tested: {all} s in all; write a shorter exposure time or fewer uses");
    }

    /// <summary>The upper end of an axis, that of the convention where the rule says `unstated`; null where there is none.</summary>
    private static decimal? End(Scope scope, Rule rule, Axis axis)
    {
        var key = axis == Axis.Uses ? ConventionKey.UnstatedUses : ConventionKey.UnstatedExposureTime;
        var said = rule.When.On(axis);
        return said.Statement == AxisStatement.Unstated ? scope.Data.Conventions.FirstOrDefault(c => c.Key == key)?.Range.Upper : said.Statement == AxisStatement.Within ? said.Range.Upper : null;
    }

    /// <summary>Exposure time and uses are covered downward by a test; the other axes are not.</summary>
    private static bool Beyond(Axis axis, Interval box, Interval tested) =>
        axis is Axis.ExposureTime or Axis.Uses
            ? !box.LiesIn(new Interval(null, false, tested.Upper, tested.UpperIncluded))
            : !box.LiesIn(tested);
}
