using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Notes an 'allowed' that rests on less than it says, and agents without usual figures that rules depend on.</summary>
internal sealed class ThinEvidence(Ground ground)
{
    private static readonly Dictionary<ThinGround, string> Reasons = new()
    {
        [ThinGround.Absence] = "rests on the absence of reported damage",
        [ThinGround.OtherAgent] = "rests on what was seen of another agent class",
        [ThinGround.FormulatedProduct] = "rests on a formulated product for its bare ingredient",
    };

    public IEnumerable<Finding> Find()
    {
        foreach (var rule in ground.Kb.Rules.Where(one => one.Allows))
        {
            foreach (var axis in BeyondTest(rule))
                yield return Note(rule, "tested",
                    $"`{rule.Rule.Id}` reaches beyond what was tested on {Words.Of(axis)}: a convention fills in {rule.Box[axis]}",
                    "state the figure that was tested");
            if (rule.Rule.Tested is { On: TestPiece.Coupon, Strained: false } && StrainedMaterial(rule.Rule.Target) is { } strained)
                yield return Note(rule, "tested.on", $"`{rule.Rule.Id}` rests on an unstrained coupon, and `{strained}` is under strain",
                    "look for a test of the part, or of a strained coupon");
            if (rule.Rule.Product is null && rule.Rule.Sources.Count > 0 && rule.Rule.Sources.All(id => ground.Kb.SourcesById[id].Kind == SourceKind.Label))
                yield return Note(rule, "sources", $"`{rule.Rule.Id}` {Reasons[ThinGround.FormulatedProduct]}: its sources are labels of products",
                    "look for evidence on the ingredient itself");
            foreach (var reason in rule.Rule.RestsOn)
                yield return Note(rule, "rests-on", $"`{rule.Rule.Id}` {Reasons[reason]}", "look for evidence on what it says");
        }

        foreach (var note in WithoutUsual(Axis.Ph, traits => traits.Ph is null, "ph")
            .Concat(WithoutUsual(Axis.Strength, traits => traits.Basis is not null && traits.Strength is null, "strength"))) yield return note;
    }

    private static Finding Note(CompiledRule rule, string field, string message, string help) => new()
    {
        Kind = FindingKind.ThinEvidence,
        IsFault = false,
        Message = message,
        Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, field), "rests on it")],
        Help = help,
    };

    /// <summary>Axes that a convention fills in beyond the test; what a rule states beyond it is refused at load.</summary>
    private static IEnumerable<Axis> BeyondTest(CompiledRule rule)
    {
        if (rule.Rule.Tested is not { } tested) yield break;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            if (rule.Rule.When.On(axis).Statement != AxisStatement.Unstated
                || tested.Exposure.On(axis) is not { Statement: AxisStatement.Within } was) continue;
            var range = axis == Axis.Uses ? RuleCompiler.WholeNumbers(was.Range) : was.Range;
            if (axis is Axis.ExposureTime or Axis.Uses) range = new Interval(null, false, range.Upper, range.UpperIncluded);
            if (!rule.Box[axis].LiesIn(Stretch.Of(range))) yield return axis;
        }
    }

    private MaterialId? StrainedMaterial(RuleTarget target)
    {
        var slots = target.Material is { } material ? [new MaterialSlot(material)]
            : target.Part is { } part ? ground.Kb.Part(ground.Kb.Parts[part.Value]).Materials
            : ground.DeviceParts.Where(s => s.Ask.Device == target.Device && (target.DevicePart is null || s.Ask.DevicePart == target.DevicePart))
                .SelectMany(s => s.Variant.Materials).Select(m => new MaterialSlot(ground.Kb.Data.Materials[m].Id)).ToArray();
        return slots.SelectMany(slot => slot.OneOf).FirstOrDefault(m =>
            ground.Kb.Materials.Upward(ground.Kb.Materials[m.Value]).Select(node => ground.Kb.Data.Materials[node].Delicate)
                .FirstOrDefault(why => why is not null) == Delicacy.Strain);
    }

    /// <summary>Agents that rules tell apart on an axis, with no usual figure of it on record.</summary>
    private IEnumerable<Finding> WithoutUsual(Axis axis, Func<AgentTraits, bool> isMissing, string field) =>
        ground.Kb.Rules.Where(rule => rule.Agent >= 0 && rule.Rule.When.On(axis).Statement == AxisStatement.Within)
            .SelectMany(rule => Reach.Tops(rule).Select(agent => (Agent: agent, Rule: rule)))
            .Where(one => isMissing(ground.Kb.Agent(one.Agent)))
            .GroupBy(one => one.Agent)
            .Select(group => new Finding
            {
                Kind = FindingKind.ThinEvidence,
                IsFault = false,
                Message = $"`{ground.Kb.Data.Agents[group.Key].Id}` has no usual {field} on record, which "
                    + $"{(group.Count() == 1 ? "a rule tells" : $"{group.Count()} rules tell")} apart",
                Involved =
                [
                    new(new ProblemPlace(RecordKind.Agent, ground.Kb.Data.Agents[group.Key].Id.Value), "has none"),
                    new(new ProblemPlace(RecordKind.Rule, group.First().Rule.Rule.Id.Value, "when." + field), "depends on it"),
                ],
                Help = $"a question that leaves the {field} out is judged over the whole axis",
            });
}
