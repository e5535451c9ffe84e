using System.Diagnostics;
using Compat.Planning;

namespace Compat.Benchmarks;

/// <summary>How long a shelf takes.</summary>
internal static class ShelfBenchmark
{
    /// <summary>Prints the time of 2,000 device parts of every type of the shipped data against 50 products of every kind.</summary>
    public static void Print()
    {
        var shipped = KnowledgeBase.Shipped;
        var kb = shipped.With(Site(shipped.Data, devices: 200, partsEach: 10, products: 50));
        var before = (Processor: Environment.CpuUsage.TotalTime, Bytes: GC.GetTotalAllocatedBytes());
        var watch = Stopwatch.StartNew();
        var shelf = Shelf.Of(kb);
        watch.Stop();
        var after = (Processor: Environment.CpuUsage.TotalTime, Bytes: GC.GetTotalAllocatedBytes());
        Console.WriteLine($"shelf of {shelf.Rows.Count} device parts x {shelf.Products.Count} products: {watch.Elapsed.TotalSeconds:0.00} s, of processor "
            + $"time {(after.Processor - before.Processor).TotalSeconds:0.00} s; {(after.Bytes - before.Bytes) / 1e9:0.0} GB allocated");
    }

    private static Site Site(KnowledgeData data, int devices, int partsEach, int products)
    {
        var types = data.Parts.Where(part => part.Under is not null).Select(part => part.Id).ToArray();
        var agents = data.Agents.Where(agent => agent.Usual.Strength is not null && agent.Basis is not null && !agent.Chamber).ToArray();
        return new()
        {
            Id = new SiteId("synthetic"),
            Name = "synthetic",
            Products = Enumerable.Range(0, products).Select(i => new Product
            {
                Id = new ProductId($"product-{i}"),
                Name = $"product {i}",
                Composition = Composition.Full,
                StrengthOf = StrengthOf.Liquid,
                Ingredients = [
                    Of(agents[i % agents.Length]), .. i % 3 == 0
                    && agents[(i + 7) % agents.Length].Id != agents[i % agents.Length].Id ? [Of(agents[(i + 7) % agents.Length])] : Array.Empty<Ingredient>()],
            }).ToArray(),
            Devices = Enumerable.Range(0, devices).Select(d => new Device
            {
                Id = new DeviceId($"device-{d}"),
                Name = $"device {d}",
                Parts = Enumerable.Range(0, partsEach)
                    .Select(p => new DevicePart { Id = new DevicePartId($"part-{p}"), OneOfTypes = [types[((d * partsEach) + p) % types.Length]] }).ToArray(),
            }).ToArray(),
        };
    }

    private static Ingredient Of(AgentClass agent) =>
        new()
        {
            Agent = agent.Id,
            Strength = new Strength(Interval.Exactly(agent.Usual.Strength!.Value.Lower ?? 0.1m).Scale(1m / agent.Basis!.PercentPerUnit), agent.Basis),
        };
}
