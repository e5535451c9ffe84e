using Compat.Snapshots;

namespace Compat.Validation;

/// <summary>Checks a question.</summary>
internal static class QuestionValidation
{
    public static IReadOnlyList<Problem> Check(CompiledBase kb, Question? asked)
    {
        if (SnapshotWriter.FaultsOf(asked) is { Count: > 0 } faults) return faults;
        var question = asked!;
        var scope = new Scope(kb.Records);
        var at = new Field(scope, RecordKind.Question, "");
        Subject(scope, question, at);
        What(scope, question, at);
        if (scope.Problems.Count == 0 && question is { Agent: { } agent, Strength: { } strength }) Strength(at["strength"], kb, agent, strength);
        if (question.ExposureTime is { } exposureTime && !exposureTime.Equals(Interval.Exactly(Interval.WithoutEnd)))
            at["exposure-time"].Range(exposureTime, Axis.ExposureTime);
        if (question.Temperature is { } temperature) at["temperature"].Range(temperature, Axis.Temperature);
        if (question.Ph is { } ph) at["ph"].Range(ph, Axis.Ph);
        if (question.Dilution is { } dilution) at["dilution"].Range(dilution, Axis.Dilution);
        if (question.Uses is < 1) at["uses"].Wrong("outside-axis", $"`{question.Uses}` lies outside the axis of uses", "expected a whole number from 1");
        foreach (var target in question.Against)
            if (target.Organism is { } organism && scope.Data.Organisms.All(o => o.Id != organism))
                at["against"].Wrong(
                    "unknown-organism", $"no organism is called `{organism}`",
                    NearestNames.Help(organism.Value, scope.Data.Organisms.Select(o => o.Id.Value).Concat(Words.All<OrganismGroup>())));
        if (question.Method == ApplicationMethod.DryWipe)
            at["method"].Wrong("dry-wipe", "`dry-wipe` carries no agent", "name damp-wipe, wet-wipe, spray, rinse, immerse or chamber");
        return scope.Problems;
    }

    private static void Subject(Scope scope, Question question, Field at)
    {
        if (question.Part is { } part) at["part"].Knows(scope.Parts, part, "part");
        foreach (var material in question.Materials.SelectMany(slot => slot.OneOf)) at["material"].Knows(scope.Materials, material, "material");
        if (question.Materials.Count > 0) Variants(scope, question, at["material"]);
        else if (question.MaterialsKnown is not null)
            at["materials-known"].Wrong("known-without-materials", "whether the materials are all is said, but no material is named");
        if (question.Device is { } id && at["device"].Knows(scope.Devices, id, "device"))
        {
            if (question.DevicePart is not { } devicePart) at["device"].Wrong("no-device-part", $"no part of `{id}` is named");
            else at["device-part"].DevicePart(scope.Devices[id], devicePart);
        }

        if (question.Part is not null && question.Device is not null) at["part"].Wrong("one-subject", "a part type and a device exclude each other");
        if (question.Part is null && question.Device is null && question.Materials.Count == 0)
            at["part"].Wrong("no-subject", "no part, device or material is named");
        if (question.Serial is not null && question.Device is null) at["serial"].Wrong("serial-without-device", "a serial number goes with a device");
    }

    private static void Variants(Scope scope, Question question, Field at)
    {
        var part = question.Device is { } id && scope.Devices.TryGetValue(id, out var device) ? device.Parts.FirstOrDefault(p => p.Id == question.DevicePart)
            : null;
        if (question.Materials.Any(slot => slot.OneOf.Count == 0) || MaterialList.Variants(question.Materials) > KnowledgeValidation.MostVariants)
        {
            at.Wrong("too-many-variants", $"the choices of materials are empty or make more than {KnowledgeValidation.MostVariants} variants");
            return;
        }

        var sets = part is null ? 1 : Editions.Possible(scope.Devices[question.Device!], question.Serial).Count;
        DeviceValidation.Variants(scope, part?.OneOfTypes ?? (question.Part is { } type ? [type] : []), part, question, sets, at);
    }

    private static void What(Scope scope, Question question, Field at)
    {
        if (question.Agent is null == question.Product is null)
            at["agent"].Wrong("one-agent", question.Agent is null ? "no agent or product is named" : "an agent and a product exclude each other");
        if (question.Agent is { } agent) at["agent"].Knows(scope.Agents, agent, "agent");
        if (question.Product is { } product) at["product"].Knows(scope.Products, product, "product");
        if (question.Strength is not null && question.Product is not null)
            at["strength"].Wrong("strength-of-product", "a product is asked with a dilution, not with a strength");
        if (question.Dilution is not null && question.Agent is not null)
            at["dilution"].Wrong("dilution-of-agent", "an agent is asked with a strength, not with a dilution");
    }

    /// <summary>Checks the strength of an agent that is known.</summary>
    public static void Strength(Field at, CompiledBase kb, AgentId agent, Strength strength)
    {
        var traits = kb.Agent(agent);
        if (traits.Basis is null)
        {
            at.Wrong("no-basis", $"`{agent}` has no basis for a strength", "leave the strength out, or ask a narrower agent");
            return;
        }

        at.Strength(strength.Percent, strength.Unit);
        if (!strength.Unit.Suits(traits.Agent))
            at.Wrong("no-conversion", $"`{strength.Unit}` counts oxygen from hydrogen peroxide, and `{agent}` is another agent",
                $"write the strength in `{traits.Basis}`");
        else if (StrengthConversion.OfAgentAlone(strength, traits, kb.Convention(ConventionKey.SolutionDensity).Range) is null)
            at.Wrong("no-conversion", $"`{strength.Unit}` cannot be turned into `{traits.Basis}` for `{agent}`",
                "its density or its share of available chlorine is not on record");
    }
}
