using System.Reflection;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;

namespace Compat.Curation.Imports;

/// <summary>A kind of device as asset lists name it, and the parts it usually has.</summary>
public sealed record DevicePattern
{
    /// <summary>Its id.</summary>
    public required DeviceId Id { get; init; }

    /// <summary>What it is called.</summary>
    public required string Name { get; init; }

    /// <summary>The words an asset list has for it: each is looked for as whole words.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>Its parts.</summary>
    public IReadOnlyList<DevicePart> Parts { get; init; } = [];

    /// <summary>The patterns shipped with this library.</summary>
    public static IReadOnlyList<DevicePattern> Shipped { get; } = ReadShipped();

    /// <summary>Reads a file of patterns.</summary>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="shownAs">The name it is shown by.</param>
    /// <param name="faults">What is wrong.</param>
    public static IReadOnlyList<DevicePattern> Read(byte[] bytes, string shownAs, List<Diagnostic> faults)
    {
        if (DataFile.Read(FileKind.Patterns, bytes, shownAs, faults) is not { } file) return [];
        var patterns = file.Records.Select(Read).OfType<DevicePattern>().ToArray();
        file.Finish(faults);
        return patterns;
    }

    private static DevicePattern? Read(RecordFields fields) => fields.Id("id", text => new DeviceId(text)) is not { } id ? null : new()
    {
        Id = id,
        Name = fields.NeededText("name"),
        Words = fields.Texts("words"),
        Parts = fields.Records("parts").Select(ReadPart).OfType<DevicePart>().ToArray(),
    };

    private static DevicePart? ReadPart(RecordFields fields)
    {
        var types = fields.Record("type") is { } oneOf ? oneOf.Ids("one-of", text => new PartId(text)) : fields.Id("type", text => new PartId(text)) is { } one
            ? [one] : [];
        return fields.Id("id", text => new DevicePartId(text)) is not { } id || types.Count == 0 ? null
            : new() { Id = id, OneOfTypes = types, TouchedBy = fields.Word<TouchedBy>("touched-by") };
    }

    private static List<DevicePattern> ReadShipped()
    {
        var assembly = Assembly.GetExecutingAssembly();
        var list = new List<DevicePattern>();
        var faults = new List<Diagnostic>();
        foreach (
            var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith("patterns/", StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var copy = new MemoryStream();
            stream.CopyTo(copy);
            list.AddRange(Read(copy.ToArray(), name, faults));
        }

        return faults.Count == 0 ? list : throw new InvalidOperationException(DiagnosticText.Render(faults));
    }
}
