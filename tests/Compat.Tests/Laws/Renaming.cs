using System.Globalization;
using Compat.Tests.RandomCases;

namespace Compat.Tests.Laws;

/// <summary>Gives every numbered id another text that sorts the other way round; roots and `water` keep theirs.</summary>
internal static class Renaming
{
    public static Case? Rename(Case c, Random random) => c with
    {
        Data = c.Data with
        {
            Materials = c.Data.Materials.Select(m => m with { Id = Of(m.Id), Under = m.Under is null ? null : Of(m.Under) }).ToArray(),
            Parts = c.Data.Parts.Select(
                p => p with { Id = Of(p.Id), Under = p.Under is null ? null : Of(p.Under), Materials = p.Materials is null ? null : Of(p.Materials) })
                .ToArray(),
            Agents = c.Data.Agents.Select(a => a with { Id = Of(a.Id), Under = a.Under is null ? null : Of(a.Under) }).ToArray(),
            Rules = c.Data.Rules.Select(Of).ToArray(),
        },
        Site = c.Site is not { } site ? null : site with
        {
            Products = site.Products.Select(
                p => p with { Id = Of(p.Id), Ingredients = p.Ingredients.Select(i => i with { Agent = i.Agent is null ? null : Of(i.Agent) }).ToArray() })
                .ToArray(),
            Devices = site.Devices.Select(Of).ToArray(),
            Rules = site.Rules.Select(Of).ToArray(),
        },
        Question = Of(c.Question),
    };

    private static Question Of(Question q) => q with
    {
        Part = q.Part is null ? null : Of(q.Part),
        Materials = Of(q.Materials),
        Device = q.Device is null ? null : Of(q.Device),
        DevicePart = q.DevicePart is null ? null : Of(q.DevicePart),
        Agent = q.Agent is null ? null : Of(q.Agent),
        Product = q.Product is null ? null : Of(q.Product),
    };

    private static Device Of(Device d) => d with
    {
        Id = Of(d.Id),
        Parts = d.Parts.Select(
            p => p with
            {
                Id = Of(p.Id),
                WettestFrom = p.WettestFrom is null ? null : Of(p.WettestFrom),
                OneOfTypes = p.OneOfTypes.Select(Of).ToArray(),
                Materials = p.Materials is null ? null : Of(p.Materials)
            }).ToArray(),
        Instructions = d.Instructions.Select(i => i with { Id = Of(i.Id), Replaces = i.Replaces.Select(Of).ToArray() }).ToArray(),
    };

    private static Rule Of(Rule r) => r with
    {
        Id = Of(r.Id),
        Target = r.Target.Part is { } part ? RuleTarget.On(Of(part)) : r.Target.Material is { } material ? RuleTarget.On(Of(material))
            : r.Target.DevicePart is { } devicePart ? RuleTarget.On(Of(r.Target.Device!), Of(devicePart)) : RuleTarget.On(Of(r.Target.Device!)),
        Agent = r.Agent is null ? null : Of(r.Agent),
        Product = r.Product is null ? null : Of(r.Product),
        SeenWith = r.SeenWith.Select(Of).ToArray(),
        Overrides = r.Overrides.Select(Of).ToArray(),
        Edition = r.Edition is null ? null : Of(r.Edition),
    };

    private static MaterialSlot[] Of(IReadOnlyList<MaterialSlot> slots) => slots.Select(s => new MaterialSlot(s.OneOf.Select(Of).ToArray())).ToArray();

    private static MaterialId Of(MaterialId id) => new(Text(id.Value));

    private static PartId Of(PartId id) => new(Text(id.Value));

    private static AgentId Of(AgentId id) => new(Text(id.Value));

    private static ProductId Of(ProductId id) => new(Text(id.Value));

    private static DeviceId Of(DeviceId id) => new(Text(id.Value));

    private static DevicePartId Of(DevicePartId id) => new(Text(id.Value));

    private static EditionId Of(EditionId id) => new(Text(id.Value));

    private static RuleId Of(RuleId id) => new(Text(id.Value));

    private static string Text(string id)
    {
        var cut = id.LastIndexOf('-') + 1;
        return int.TryParse(id.AsSpan(cut), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            ? string.Create(CultureInfo.InvariantCulture, $"{id[..cut]}x{99 - n}") : id;
    }
}
