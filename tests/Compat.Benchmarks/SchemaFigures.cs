using System.Text.Json;

namespace Compat.Benchmarks;

/// <summary>How much the schemas say more than once.</summary>
internal static class SchemaFigures
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>Prints how many definitions are repeated word for word, and the lines they take.</summary>
    public static void Print(string folder)
    {
        var definitions = new List<(string Name, string Text)>();
        foreach (var file in Directory.EnumerateFiles(folder, "*.json").Order())
        {
            using var schema = JsonDocument.Parse(File.ReadAllText(file));
            foreach (var key in new[] { "definitions", "$defs" })
            {
                if (!schema.RootElement.TryGetProperty(key, out var defined)) continue;
                definitions.AddRange(defined.EnumerateObject().Select(one => (one.Name, JsonSerializer.Serialize(one.Value, Indented))));
            }
        }

        var repeated = definitions.GroupBy(one => one.Text).Where(same => same.Count() > 1).ToArray();
        var lines = repeated.Sum(same => (same.Count() - 1) * same.Key.Split('\n').Length);
        Console.WriteLine($"{definitions.Count,8}  definitions");
        Console.WriteLine($"{repeated.Sum(same => same.Count() - 1),8}  of them repeat another word for word (aim: 0), in {lines} lines");
        foreach (var same in repeated.OrderByDescending(same => same.Count() * same.Key.Length).Take(5))
            Console.WriteLine($"            {same.First().Name} stands {same.Count()} times");
    }
}
