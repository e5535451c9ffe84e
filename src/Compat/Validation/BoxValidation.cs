namespace Compat.Validation;

/// <summary>Checks the values of intervals and boxes against their axes.</summary>
internal static class BoxValidation
{
    public static void Range(Scope scope, ProblemPlace place, string field, Interval range, decimal? least, decimal? most, bool leastItself, string axis)
    {
        var here = place with { Field = field };
        if (range.IsEmpty)
        {
            scope.Add("empty-interval", here, $"`{range}` holds no value");
            return;
        }

        // A range that only touches the end of the axis from outside holds no value of it: its ends alone do not show that.
        var whole = new Interval(least, leastItself, most, true);
        var tooLow = range.Lower is { } low && (low < least || (low == least && range.LowerIncluded && !leastItself));
        if (range.Intersect(whole).IsEmpty)
            scope.Add("outside-axis", here, $"`{range}` holds no value of the axis of {axis}", "expected " + whole);
        else if (tooLow || range.Upper > most)
            scope.Add("outside-axis", here, $"`{range}` lies outside the axis of {axis}", "expected " + whole);
    }

    public static void Strength(Scope scope, ProblemPlace place, string field, Interval range, StrengthUnit unit) =>
        Range(scope, place, field, range, 0m, unit.Basis is StrengthBasis.MassPerVolume or StrengthBasis.AvailableChlorineMassPerVolume ? null : 100m, true, "strength (%)");

    /// <summary>More of what harms harms as well: a prohibition has no upper end of exposure time or uses.</summary>
    public static void NoEndOfProhibition(Scope scope, ProblemPlace place, ExposureBox box)
    {
        foreach (var axis in new[] { Axis.ExposureTime, Axis.Uses })
        {
            if (box.On(axis) is { Statement: AxisStatement.Within, Range.Upper: not null })
                scope.Add("prohibition-ends", place with { Field = "when." + Words.Of(axis) }, $"the `{Words.Of(axis)}` of a 'not allowed' has an upper end: more than that would not be forbidden", "write it with a lower end only, or leave the axis out");
        }
    }

    public static void Axes(Scope scope, ProblemPlace place, string field, ExposureBox box, AgentId? agent, bool ofProduct)
    {
        var basis = scope.Basis(agent);
        if (box.Strength.Statement != AxisStatement.NotNamed)
        {
            if (ofProduct) scope.Add("strength-of-product", place with { Field = field + ".strength" }, "a rule on a product names `dilution`, not `strength`");
            else if (basis is null && agent is not null && scope.Agents.ContainsKey(agent))
                scope.Add("no-basis", place with { Field = field + ".strength" }, $"`{agent}` has no basis for a strength", "name the agent's `basis`, or write the rule on an agent that has one");
            else if (basis is not null && box.Strength.Statement == AxisStatement.Within) Strength(scope, place, field + ".strength", box.Strength.Range, basis);
        }

        if (box.Dilution.Statement != AxisStatement.NotNamed && !ofProduct)
            scope.Add("dilution-of-agent", place with { Field = field + ".dilution" }, "a rule on an agent names `strength`, not `dilution`");
        Limit(box.Dilution, "dilution", 0m, 1m, false);
        Limit(box.ExposureTime, "exposure-time", 0m, null, false);
        Limit(box.Temperature, "temperature", -40m, 200m, true);
        Limit(box.Ph, "ph", -1m, 15m, true);
        Limit(box.Uses, "uses", 1m, null, true);
        if (box.Uses.Statement == AxisStatement.Within && !box.Uses.Range.IsEmpty && Deciding.RuleCompiler.WholeNumbers(box.Uses.Range).IsEmpty)
            scope.Add("empty-interval", place with { Field = field + ".uses" }, $"`{box.Uses.Range}` holds no whole number");
        if (box.Methods.Statement == AxisStatement.Within && box.Methods.Methods.IsEmpty)
            scope.Add("no-methods", place with { Field = field + ".methods" }, "no method is named", "name at least one that carries an agent");

        void Limit(AxisLimit limit, string name, decimal least, decimal? most, bool leastItself)
        {
            if (limit.Statement == AxisStatement.Within) Range(scope, place, field + "." + name, limit.Range, least, most, leastItself, name);
        }
    }
}
