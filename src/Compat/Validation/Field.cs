using System.Globalization;

namespace Compat.Validation;

/// <summary>
/// A field of a record that is checked, or the whole record: the statements that are made of many fields, and where what is wrong is reported.
/// </summary>
internal readonly struct Field(Scope scope, RecordKind kind, string id, string path = "")
{
    /// <summary>Problems that are given near names: of a file in which more is wrong, the search would take long and nobody reads it.</summary>
    private const int MostHelped = 100;

    public Scope Scope => scope;

    /// <summary>A field of this one.</summary>
    public Field this[string name] => new(scope, kind, id, path.Length == 0 ? name : path + "." + name);

    /// <summary>An item of this list.</summary>
    public Field this[int index] => this[index.ToString(CultureInfo.InvariantCulture)];

    public void Wrong(string code, string message, string? help = null) => scope.Add(code, new ProblemPlace(kind, id, path), message, help);

    /// <summary>Whether a record has the id that stands here; if none has, the nearest that one has are offered.</summary>
    public bool Knows<TId, T>(RecordsById<TId, T> records, TId named, string what) where TId : class where T : class
    {
        if (records.ContainsKey(named)) return true;
        var near = scope.Problems.Count < MostHelped ? NearestNames.Help(named.ToString()!, records.Names) : null;
        Wrong("unknown-" + what.Replace(' ', '-'), $"unknown {what} `{named}`", near);
        return false;
    }

    public void KnowsAll<TId, T>(RecordsById<TId, T> records, IReadOnlyList<TId> ids, string what) where TId : class where T : class
    {
        for (var i = 0; i < ids.Count; i++) this[i].Knows(records, ids[i], what);
    }

    public void Said(string text, string code, string message, string? help = null)
    {
        if (text.Trim().Length == 0) Wrong(code, message, help);
    }

    /// <summary>No text of this list is empty or stands twice.</summary>
    public void Texts(IReadOnlyList<string> texts)
    {
        for (var i = 0; i < texts.Count; i++)
        {
            if (texts[i].Trim().Length == 0) this[i].Wrong("empty-text", "the text is empty");
            else if (texts.Take(i).Contains(texts[i], StringComparer.OrdinalIgnoreCase)) this[i].Wrong("listed-twice", $"`{texts[i]}` is listed twice");
        }
    }

    /// <summary>What a record names as sources: at least one, each of them known.</summary>
    public void Sources(IReadOnlyList<SourceId> sources, string what)
    {
        if (sources.Count == 0) Wrong("no-source", $"{what} has no source");
        this["sources"].KnowsAll(scope.Sources, sources, "source");
    }

    public void Time(decimal? seconds)
    {
        if (seconds is <= 0m) Wrong("outside-axis", "a time is above 0");
    }

    public void Range(Interval range, Axis axis, string? called = null) => Range(range, Axes.RangeOf(axis), called ?? Words.Of(axis));

    public void Range(AxisLimit limit, Axis axis, string? called = null)
    {
        if (limit.Statement == AxisStatement.Within) Range(limit.Range, axis, called);
    }

    public void Range(Interval range, Interval whole, string called)
    {
        // A range that only touches the end of the axis from outside holds no value of it: its ends alone do not show that.
        var tooLow = range.Lower is { } low && (low < whole.Lower || (low == whole.Lower && range.LowerIncluded && !whole.LowerIncluded));
        if (range.IsEmpty) Wrong("empty-interval", $"`{range}` holds no value");
        else if (range.Intersect(whole).IsEmpty) Wrong("outside-axis", $"`{range}` holds no value of the axis of {called}", "expected " + whole);
        else if (tooLow || range.Upper > whole.Upper) Wrong("outside-axis", $"`{range}` lies outside the axis of {called}", "expected " + whole);
    }

    public void Strength(Interval range, StrengthUnit unit)
    {
        var isOpen = unit.Basis is StrengthBasis.MassPerVolume or StrengthBasis.AvailableChlorineMassPerVolume;
        Range(range, isOpen ? Interval.AtLeast(0m) : Interval.Closed(0m, 100m), "strength (%)");
    }

    /// <summary>The box of what speaks of an agent or a product: each axis that is bounded is bounded by values it has.</summary>
    public void Box(ExposureBox box, AgentId? agent, bool ofProduct = false)
    {
        var (basis, strength) = (scope.Basis(agent), this["strength"]);
        if (box.Strength.Statement != AxisStatement.NotNamed)
        {
            if (ofProduct) strength.Wrong("strength-of-product", "a rule on a product names `dilution`, not `strength`");
            else if (basis is null && agent is not null && scope.Agents.ContainsKey(agent))
                strength.Wrong("no-basis", $"`{agent}` has no basis for a strength", "name the agent's `basis`, or write the rule on an agent that has one");
            else if (basis is not null && box.Strength.Statement == AxisStatement.Within) strength.Strength(box.Strength.Range, basis);
        }

        if (box.Dilution.Statement != AxisStatement.NotNamed && !ofProduct)
            this["dilution"].Wrong("dilution-of-agent", "a rule on an agent names `strength`, not `dilution`");
        for (var axis = Axis.Dilution; axis <= Axis.Uses; axis++) this[Words.Of(axis)].Range(box.On(axis), axis);
        if (box.Uses.Statement == AxisStatement.Within && !box.Uses.Range.IsEmpty && RuleCompiler.WholeNumbers(box.Uses.Range).IsEmpty)
            this["uses"].Wrong("empty-interval", $"`{box.Uses.Range}` holds no whole number");
        this["methods"].SomeMethod(box.Methods);
    }

    public void SomeMethod(MethodLimit methods)
    {
        if (methods.Statement == AxisStatement.Within && methods.Methods.IsEmpty)
            Wrong("no-methods", "no method is named", "name at least one that carries an agent");
    }

    /// <summary>The box of what permits or claims: every axis is named, for what is left out nobody meant.</summary>
    /// <param name="what">What leaves an axis unnamed.</param>
    /// <param name="where">Who could say `any`.</param>
    /// <param name="axes">What is said on each axis; null where it need not be named.</param>
    public void Named(string what, string where, params (string Axis, AxisStatement? Statement)[] axes)
    {
        var missing = axes.Where(one => one.Statement == AxisStatement.NotNamed).Select(one => one.Axis).ToArray();
        if (missing.Length == 0) return;
        Wrong("axis-not-named", $"{what} leaves {string.Join(", ", missing)} unnamed", $"name every axis: a range, `any` where {where} says so, or `unstated`");
    }

    /// <summary>The box of what forbids or warns.</summary>
    public void WideBox(ExposureBox box, AgentId agent)
    {
        Box(box, agent);
        NeverUnstated(box, "what forbids or warns");
    }

    /// <summary>The box of what forbids or warns: an axis is left out where the source is silent, never 'unstated'.</summary>
    public void NeverUnstated(ExposureBox box, string what)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++) this[Words.Of(axis)].NeverUnstated(box.On(axis).Statement, what);
        this["methods"].NeverUnstated(box.Methods.Statement, what);
    }

    /// <summary>The box of a prohibition: more of what harms harms as well, so exposure time and uses have no upper end.</summary>
    public void NeverEnds(ExposureBox box)
    {
        foreach (var axis in new[] { Axis.ExposureTime, Axis.Uses })
        {
            if (box.On(axis) is not { Statement: AxisStatement.Within, Range.Upper: not null }) continue;
            this[Words.Of(axis)].Wrong(
                "prohibition-ends", $"the `{Words.Of(axis)}` of a 'not allowed' has an upper end: more than that would not be forbidden",
                "write it with a lower end only, or leave the axis out");
        }
    }

    /// <summary>An axis of a permission by words: less of what is allowed is allowed as well.</summary>
    public void NeverBegins(AxisLimit limit, Axis axis)
    {
        if (limit is not { Statement: AxisStatement.Within, Range.Lower: not null }) return;
        Wrong(
            "permission-from", $"the `{Words.Of(axis)}` of a permission has a lower end: more would be allowed where less is not",
                "write it with an upper end only");
    }

    public void Duties(IReadOnlyList<Duty> duties)
    {
        for (var i = 0; i < duties.Count; i++)
        {
            var (duty, at, kind) = (duties[i], this[i], Words.Of(duties[i].Kind));
            at["keep-off"].KnowsAll(scope.Parts, duty.Parts, "part");
            if (duty.Kind is DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry && duty.Ways.Count == 0)
                at.Wrong("duty-without-way", $"the duty `{kind}` names no way to meet it");
            if (duty.Kind == DutyKind.KeepOff && duty.Parts.Count == 0) at.Wrong("duty-without-part", "the duty `keep-off` names no part");
            if (duty.Kind is DutyKind.Inspect or DutyKind.Discard && duty.AfterUses is not > 0)
                at.Wrong("duty-without-uses", $"the duty `{kind}` does not say after how many uses");
            at.Time(duty.Within);
            if (duty.Kind == DutyKind.TakeOff && duty.Ways.Any(way => way.Method is null))
                at.Wrong("no-way-off", "a residue is taken off by a method with water", "name damp-wipe, wet-wipe, spray, rinse or immerse");
        }
    }

    public void DevicePart(Device device, DevicePartId part)
    {
        if (device.Parts.All(p => p.Id != part))
            Wrong("unknown-device-part", $"`{device.Id}` has no part `{part}`", NearestNames.Help(part.Value, device.Parts.Select(p => p.Id.Value)));
    }

    public void DeviceParts(Device device, IReadOnlyList<DevicePartId> parts)
    {
        for (var i = 0; i < parts.Count; i++) this[i].DevicePart(device, parts[i]);
    }

    public void Edition(Device device, EditionId edition)
    {
        if (device.Instructions.All(e => e.Id != edition))
            Wrong("unknown-edition", $"unknown edition `{edition}`", NearestNames.Help(edition.Value, device.Instructions.Select(e => e.Id.Value)));
    }

    private void NeverUnstated(AxisStatement statement, string what)
    {
        if (statement == AxisStatement.Unstated) Wrong("unstated-in-prohibition", what + " cannot say `unstated`", "leave the axis out: it is unbounded");
    }
}
