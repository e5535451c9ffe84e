using Compat.Snapshots;

namespace Compat.Validation;

/// <summary>Checks a question.</summary>
internal static class QuestionValidation
{
    private static readonly ProblemPlace Place = new(RecordKind.Question, "");

    public static IReadOnlyList<Problem> Check(CompiledBase kb, Question? asked)
    {
        if (SnapshotWriter.FaultsOf(asked) is { Count: > 0 } faults) return faults;
        var question = asked!;
        var scope = new Scope(kb.Records);
        Subject(scope, question);
        What(scope, question);
        if (scope.Problems.Count == 0 && question is { Agent: { } agent, Strength: { } strength }) Strength(scope, kb, agent, strength, Place with { Field = "strength" });
        if (question.ExposureTime is { } exposureTime && !exposureTime.Equals(Interval.Exactly(Interval.WithoutEnd))) Range("exposure-time", exposureTime, 0m, null, false);
        if (question.Temperature is { } temperature) Range("temperature", temperature, -40m, 200m, true);
        if (question.Ph is { } ph) Range("ph", ph, -1m, 15m, true);
        if (question.Dilution is { } dilution) Range("dilution", dilution, 0m, 1m, false);
        if (question.Uses is < 1) scope.Add("outside-axis", Place with { Field = "uses" }, $"`{question.Uses}` lies outside the axis of uses", "expected a whole number from 1");
        foreach (var target in question.Against)
            if (target.Organism is { } organism && scope.Data.Organisms.All(o => o.Id != organism))
                scope.Add("unknown-organism", Place with { Field = "against" }, $"no organism is called `{organism}`", NearestNames.Help(organism.Value, scope.Data.Organisms.Select(o => o.Id.Value).Concat(Words.All<Model.OrganismGroup>())));
        if (question.Method == ApplicationMethod.DryWipe)
            scope.Add("dry-wipe", Place with { Field = "method" }, "`dry-wipe` carries no agent", "name damp-wipe, wet-wipe, spray, rinse, immerse or chamber");
        return scope.Problems;

        void Range(string field, Interval range, decimal? least, decimal? most, bool leastItself)
        {
            BoxValidation.Range(scope, Place, field, range, least, most, leastItself, field);
        }
    }

    private static void Subject(Scope scope, Question question)
    {
        if (question.Part is { } part) scope.Knows(scope.Parts, part, Place, "part", "part");
        for (var i = 0; i < question.Materials.Count; i++)
            foreach (var material in question.Materials[i].OneOf) scope.Knows(scope.Materials, material, Place, "material", "material");
        if (question.Materials.Count > 0) KnowledgeVariants(scope, question);
        else if (question.MaterialsKnown is not null) scope.Add("known-without-materials", Place with { Field = "materials-known" }, "whether the materials are all is said, but no material is named");
        if (question.Device is { } id && scope.Knows(scope.Devices, id, Place, "device", "device"))
        {
            var device = scope.Devices[id];
            if (question.DevicePart is null) scope.Add("no-device-part", Place with { Field = "device" }, $"no part of `{id}` is named");
            else if (device.Parts.All(p => p.Id != question.DevicePart))
                scope.Add("unknown-device-part", Place with { Field = "device-part" }, $"`{id}` has no part `{question.DevicePart}`", NearestNames.Help(question.DevicePart.Value, device.Parts.Select(p => p.Id.Value)));
        }

        if (question.Part is not null && question.Device is not null) scope.Add("one-subject", Place with { Field = "part" }, "a part type and a device exclude each other");
        if (question.Part is null && question.Device is null && question.Materials.Count == 0)
            scope.Add("no-subject", Place with { Field = "part" }, "no part, device or material is named");
        if (question.Serial is not null && question.Device is null) scope.Add("serial-without-device", Place with { Field = "serial" }, "a serial number goes with a device");
    }

    private static void KnowledgeVariants(Scope scope, Question question)
    {
        var place = Place with { Field = "material" };
        var part = question.Device is { } id && scope.Devices.TryGetValue(id, out var device) ? device.Parts.FirstOrDefault(p => p.Id == question.DevicePart) : null;
        if (question.Materials.Any(slot => slot.OneOf.Count == 0) || MaterialList.Variants(question.Materials) > KnowledgeValidation.MostVariants)
            scope.Add("too-many-variants", place, $"the choices of materials are empty or make more than {KnowledgeValidation.MostVariants} variants");
        else DevicePartValidation.Variants(scope, part?.OneOfTypes ?? (question.Part is { } type ? [type] : []), part, question, part is null ? 1 : Editions.Possible(scope.Devices[question.Device!], question.Serial).Count, place);
    }

    private static void What(Scope scope, Question question)
    {
        if (question.Agent is null == question.Product is null)
            scope.Add("one-agent", Place with { Field = "agent" }, question.Agent is null ? "no agent or product is named" : "an agent and a product exclude each other");
        if (question.Agent is { } agent) scope.Knows(scope.Agents, agent, Place, "agent", "agent");
        if (question.Product is { } product) scope.Knows(scope.Products, product, Place, "product", "product");
        if (question.Strength is not null && question.Product is not null) scope.Add("strength-of-product", Place with { Field = "strength" }, "a product is asked with a dilution, not with a strength");
        if (question.Dilution is not null && question.Agent is not null) scope.Add("dilution-of-agent", Place with { Field = "dilution" }, "an agent is asked with a strength, not with a dilution");
    }

    /// <summary>Checks the strength of an agent that is known.</summary>
    public static void Strength(Scope scope, CompiledBase kb, AgentId agent, Strength strength, ProblemPlace place)
    {
        var traits = kb.Agent(agent);
        if (traits.Basis is null)
        {
            scope.Add("no-basis", place, $"`{agent}` has no basis for a strength", "leave the strength out, or ask a narrower agent");
            return;
        }

        BoxValidation.Strength(scope, place, place.Field!, strength.Percent, strength.Unit);
        if (!strength.Unit.Suits(traits.Agent))
            scope.Add("no-conversion", place, $"`{strength.Unit}` counts oxygen from hydrogen peroxide, and `{agent}` is another agent", $"write the strength in `{traits.Basis}`");
        else if (StrengthConversion.OfAgentAlone(strength, traits, kb.Convention(Model.ConventionKey.SolutionDensity).Range) is null)
            scope.Add("no-conversion", place, $"`{strength.Unit}` cannot be turned into `{traits.Basis}` for `{agent}`", "its density or its share of available chlorine is not on record");
    }
}
