using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Compat.Planning;

namespace Compat.Curation;

/// <summary>Reads a record of what was done on a device.</summary>
public static class DoneFile
{
    /// <summary>Reads the file and writes what is wrong with it; whether it goes with a plan, the plan says.</summary>
    /// <param name="path">The file; it is shown by this name.</param>
    /// <param name="notes">Takes what is wrong.</param>
    /// <returns>Null where something is.</returns>
    public static DoneRecord? Read(string path, TextWriter notes)
    {
        var faults = new List<Diagnostic>();
        var record = Read(SourceReader.ReadBytes(path, path, faults), path, faults);
        faults.Sort();
        notes.Write(DiagnosticText.Render(faults));
        return record;
    }

    /// <summary>Reads bytes already in memory.</summary>
    /// <param name="bytes">The bytes of the file; null where they could not be read, which is reported.</param>
    /// <param name="shownAs">The name it is shown by.</param>
    /// <param name="faults">Takes what is wrong.</param>
    internal static DoneRecord? Read(byte[]? bytes, string shownAs, List<Diagnostic> faults)
    {
        if (DataFile.Read(FileKind.Done, bytes, shownAs, faults) is not { } file) return null;
        var record = file.Root is YamlMapping root ? Read(new RecordFields(root, file.Faults)) : null;
        file.Finish(faults);
        return faults.Count == 0 ? record : null;
    }

    private static DoneRecord? Read(RecordFields fields)
    {
        var device = fields.Id("device", text => new DeviceId(text));
        var date = fields.Date("date");
        SerialNumber? serial = SerialNumber.TryParse(fields.Text("serial"), out var number) ? number : null;
        var steps = fields.Records("steps")
            .Select(step =>
                new DoneStep(step.Number("step") ?? 0, step.Yes("done"), step.Text("initials") ?? "", step.Id("product", text => new ProductId(text))))
                    .ToArray();
        return device is null || date is null ? null : new DoneRecord { Device = device, Serial = serial, Date = date.Value, Steps = steps };
    }
}
