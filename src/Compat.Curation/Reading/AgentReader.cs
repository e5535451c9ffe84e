using Compat.Curation.Text;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Reading;

/// <summary>Reads agent classes.</summary>
internal sealed class AgentReader(BoxReader boxes)
{
    /// <summary>Reads an agent class; null where its id cannot be read.</summary>
    public AgentClass? Read(RecordFields fields)
    {
        foreach (var cas in fields.Items("cas")) CheckCas(fields, cas);
        foreach (var ec in fields.Items("ec").Where(ec => EcNumber.HasShape(ec.Text) && !EcNumber.IsValid(ec.Text)))
            fields.Report(ec, "ec", $"`{ec.Text}` is no EC number: its check digit does not hold", "compare it with the source");
        if (fields.Id("id", text => new AgentId(text)) is not { } id) return null;
        return new()
        {
            Id = id,
            Name = fields.NeededText("name"),
            Under = fields.Id("under", text => new AgentId(text)),
            AlsoCalled = fields.Texts("also-called"),
            Cas = fields.Texts("cas"),
            Ec = fields.Texts("ec"),
            Basis = StrengthUnit.TryParse(fields.Text("basis"), out var basis) ? basis : null,
            Density = fields.MeasuredFigure("density", Measure.Density),
            AvailableChlorine = fields.PlainNumber("available-chlorine"),
            Nature = fields.WordList<Nature>("nature") ?? [],
            Usual = Usual(fields, id.Value),
            Leaves = fields.Word<Residue>("leaves"),
            Chamber = fields.Yes("chamber"),
            InactivatedBy = fields.Ids("inactivated-by", text => new AgentId(text)),
            BoundBy = fields.Texts("bound-by"),
            Hazards = fields.WordList<Hazard>("hazards") ?? [],
            Duties = DutyReader.Read(fields),
            Sources = fields.Sources(),
            Note = fields.Text("note"),
        };
    }

    private UsualRange Usual(RecordFields record, string agent) => record.Record("usual") is not { } fields ? new() : new()
    {
        Strength = boxes.StrengthOf(fields, agent, takesBare: true),
        Ph = fields.Range("ph", Measure.Ph),
        Temperature = fields.Range("temperature", Measure.Temperature),
        Sources = fields.Sources(),
    };

    /// <summary>The last digit of a CAS number is the sum of the others, each times its place from the right, modulo 10.</summary>
    private static void CheckCas(RecordFields fields, YamlScalar cas)
    {
        var digits = cas.Text.Where(char.IsAsciiDigit).Select(digit => digit - '0').Reverse().ToArray();
        if (digits.Length < 5) return;
        var expected = digits.Skip(1).Select((digit, place) => digit * (place + 1)).Sum() % 10;
        if (expected != digits[0])
            fields.Report(cas, "cas", $"`{cas.Text}` is no CAS number: its check digit would be {expected}", "compare it with the source");
    }
}
