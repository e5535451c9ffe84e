namespace Compat.Validation;

/// <summary>What every record of the newer kinds must have: sources, a reason, a known agent, parts that are known.</summary>
internal static class RecordFacts
{
    public static void Sources(Scope scope, ProblemPlace place, IReadOnlyList<SourceId> sources, string what)
    {
        if (sources.Count == 0) scope.Add("no-source", place, $"{what} has no source");
        scope.CheckSources(sources, place);
    }

    public static void Text(Scope scope, ProblemPlace place, string field, string text, string what)
    {
        if (text.Trim().Length == 0) scope.Add("no-" + field, place with { Field = field }, what);
    }

    public static void Parts(Scope scope, ProblemPlace place, string field, IReadOnlyList<PartId> parts)
    {
        for (var i = 0; i < parts.Count; i++) scope.Knows(scope.Parts, parts[i], place, $"{field}.{i}", "part");
    }

    /// <summary>Checks that none of several texts is empty or stands twice.</summary>
    public static void Texts(Scope scope, ProblemPlace place, string field, IReadOnlyList<string> texts)
    {
        for (var i = 0; i < texts.Count; i++)
        {
            var here = place with { Field = $"{field}.{i}" };
            if (texts[i].Trim().Length == 0) scope.Add("empty-text", here, "the text is empty");
            else if (texts.Take(i).Contains(texts[i], StringComparer.OrdinalIgnoreCase)) scope.Add("listed-twice", here, $"`{texts[i]}` is listed twice");
        }
    }

    /// <summary>Checks parts of a device, with the nearest name offered.</summary>
    public static void DeviceParts(Scope scope, ProblemPlace place, IReadOnlyList<DevicePartId> parts, Device device, Func<int, string> field)
    {
        for (var i = 0; i < parts.Count; i++)
            if (device.Parts.All(p => p.Id != parts[i]))
                scope.Add("unknown-device-part", place with { Field = field(i) }, $"`{device.Id}` has no part `{parts[i]}`", NearestNames.Help(parts[i].Value, device.Parts.Select(p => p.Id.Value)));
    }

    /// <summary>Checks a box that prohibits or warns: an axis is left out where the source is silent, never 'unstated'.</summary>
    public static void WideBox(Scope scope, ProblemPlace place, string field, ExposureBox box, AgentId agent)
    {
        BoxValidation.Axes(scope, place, field, box, agent, ofProduct: false);
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            if (box.On(axis).Statement == AxisStatement.Unstated) Unstated(Words.Of(axis));
        if (box.Methods.Statement == AxisStatement.Unstated) Unstated("methods");

        void Unstated(string axis) =>
            scope.Add("unstated-in-prohibition", place with { Field = $"{field}.{axis}" }, "what forbids or warns cannot say `unstated`", "leave the axis out: it is unbounded");
    }

    /// <summary>Whether an agent is another or lies below it.</summary>
    public static bool LiesIn(Scope scope, AgentId agent, AgentId above) => scope.Upward(agent).Any(a => a.Id == above);
}
