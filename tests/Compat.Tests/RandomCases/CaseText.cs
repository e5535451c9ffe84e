using System.Globalization;
using System.Text;
using Compat.Exposures;
using Compat.Knowledge;

namespace Compat.Tests.RandomCases;

/// <summary>Writes a case as YAML that can be pasted, and its question as one line.</summary>
internal static class CaseText
{
    public static string Write(Case c)
    {
        var text = new StringBuilder();
        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"# seed {c.Seed}");
        text.AppendLine("# question: " + Of(c.Question));
        Section("materials", c.Data.Materials.Select(m => Map(("id", m.Id), ("name", m.Name), ("under", m.Under), ("delicate", Word(m.Delicate)), ("declared-only-suffices", m.DeclaredOnlySuffices ? "true" : null))));
        Section("parts", c.Data.Parts.Select(p => Map(("id", p.Id), ("name", p.Name), ("under", p.Under), ("materials", p.Materials is null ? null : List(p.Materials.Select(Slot))),
            ("materials-known", Known(p.MaterialsKnown)), ("wettest", Word(p.Wettest)), ("never", p.Never is null ? null : List(p.Never.Select(Words.Of))), ("geometry", Word(p.Geometry)), ("duties", Duties(p.Duties)))));
        Section("agents", c.Data.Agents.Select(a => Map(("id", a.Id), ("name", a.Name), ("under", a.Under), ("basis", Quote(a.Basis?.Text)), ("density", a.Density is { } d ? Quote(Figure(d) + " kg/L") : null),
            ("usual", Map(("strength", Range(a.Usual.Strength, "% v/v")), ("ph", Range(a.Usual.Ph)), ("temperature", Range(a.Usual.Temperature, "°C")))), ("leaves", Word(a.Leaves)), ("chamber", a.Chamber ? "true" : null), ("duties", Duties(a.Duties)))));
        Section("conventions", c.Data.Conventions.Select(v => Map(("id", Words.Of(v.Key)), ("value", v.Methods.IsEmpty ? Range(v.Range, Unit(v.Key)) : List(v.Methods.Methods.Select(Words.Of))))));
        Section("rules", c.Data.Rules.Select(OfRule));
        if (c.Site is null) return text.ToString();
        text.AppendLine("# site");
        Section("products", c.Site.Products.Select(p => Map(("id", p.Id), ("name", p.Name), ("composition", Words.Of(p.Composition)), ("composition-dated", p.CompositionDated), ("strength-of", Words.Of(p.StrengthOf)),
            ("liquid-share", p.LiquidShare is { } s ? Quote(Figure(s * 100) + " %") : null), ("ingredients", List(p.Ingredients.Select(i => Map(("agent", i.Agent), ("unknown", i.Unknown), ("strength", Quote(i.Strength?.Range.ToString(i.Strength.Value.Unit.Text))))))),
            ("density", p.Density is { } d ? Quote(Figure(d) + " kg/L") : null), ("ph", p.Ph.Count == 0 ? null : List(p.Ph.Select(h => Map(("value", Range(h.Value)), ("of", Words.Of(h.Of)))))), ("dilution", Dilution(p.Dilution)), ("temperature", Range(p.Temperature, "°C")),
            ("needs-activation", p.NeedsActivation ? "true" : null))));
        Section("devices", c.Site.Devices.Select(d => Map(("id", d.Id), ("name", d.Name), ("parts", List(d.Parts.Select(p => Map(("id", p.Id), ("type", p.OneOfTypes.Count == 1 ? p.OneOfTypes[0] : Map(("one-of", List(p.OneOfTypes)))),
            ("materials", p.Materials is null ? null : List(p.Materials.Select(Slot))), ("materials-known", Known(p.MaterialsKnown)), ("wettest", Word(p.Wettest)), ("wettest-from", p.WettestFrom), ("geometry", Word(p.Geometry)))))),
            ("instructions", List(d.Instructions.Select(i => Map(("id", i.Id), ("dated", i.Dated), ("serials", i.Serials.Count == 0 ? null : List(i.Serials.Select(s => Quote(s.ToString())))), ("replaces", Ids(i.Replaces)), ("agents", i.OnlyListed ? "only-listed" : null))))))));
        Section("rules", c.Site.Rules.Select(OfRule));
        return text.ToString();

        void Section(string name, IEnumerable<string> records)
        {
            var lines = records.ToArray();
            if (lines.Length == 0) return;
            text.AppendLine(name + ":");
            foreach (var line in lines) text.AppendLine("- " + line);
        }
    }

    public static string Of(Question q) => Map(("part", q.Part), ("materials", q.Materials.Count == 0 ? null : List(q.Materials.Select(Slot))), ("device", q.Device), ("device-part", q.DevicePart), ("serial", q.Serial), ("agent", q.Agent), ("product", q.Product),
        ("strength", q.Strength), ("dilution", Dilution(q.Dilution)), ("method", Word(q.Method)), ("residence", q.Residence is { IsPoint: true, Lower: Interval.WithoutEnd } ? "without end" : Range(q.Residence, "s")),
        ("temperature", Range(q.Temperature, "°C")), ("ph", Range(q.Ph)), ("uses", q.Uses), ("acts", q.Acts.Count == 0 ? null : List(q.Acts.Select(Words.Of))));

    private static string OfRule(Rule r) => Map(("id", r.Id), ("part", r.Target.Part), ("material", r.Target.Material), ("device", r.Target.Device), ("device-part", r.Target.DevicePart), ("agent", r.Agent), ("product", r.Product), ("composition-dated", r.CompositionDated),
        ("when", OfBox(r.When)), ("verdict", r.Allows ? "allowed" : "not-allowed"), ("seen-with", Ids(r.SeenWith)), ("whole-class", r.WholeClass ? "true" : null), ("overrides", r.Overrides.Count == 0 ? null : List(r.Overrides)),
        ("damage", r.Damage is null ? null : "{ mechanism: swelling, onset: first-use, lasting: true, consequence: looks }"), ("counts-towards", Word(r.CountsTowards)), ("duties", Duties(r.Duties)), ("known-by", Word(r.KnownBy)), ("edition", r.Edition), ("why", "made at random"),
        ("sources", Ids(r.Sources)), ("reviewed", r.Reviewed));

    private static string OfBox(ExposureBox b) => Map(("strength", Limit(b.Strength, "% v/v")), ("dilution", Limit(b.Dilution with { Range = b.Dilution.Range.Scale(100) }, "% v/v")), ("residence", Limit(b.Residence, "s")), ("temperature", Limit(b.Temperature, "°C")),
        ("ph", Limit(b.Ph, "")), ("uses", Limit(b.Uses, "")), ("methods", b.Methods.Statement switch { AxisStatement.NotNamed => null, AxisStatement.Within => List(b.Methods.Methods.Methods.Select(Words.Of)), var s => Words.Of(s) }));

    private static string? Limit(AxisLimit limit, string unit) => limit.Statement switch { AxisStatement.NotNamed => null, AxisStatement.Within => Quote(limit.Range.ToString(unit)), var s => Words.Of(s) };

    private static string? Duties(IReadOnlyList<Duty> duties) => duties.Count == 0 ? null
        : List(duties.Select(d => Map((Words.Of(d.Kind), d.Ways.Count == 0 ? "true" : List(d.Ways.Select(w => w.Method is { } m ? Words.Of(m) : w.Act is { } a ? Words.Of(a) : "air"))))));

    private static string Unit(ConventionKey key) => key switch
    {
        ConventionKey.UnstatedResidence or ConventionKey.DryingTime => "s",
        ConventionKey.UnstatedTemperature or ConventionKey.AssumedTemperature => "°C",
        ConventionKey.SolutionDensity => "kg/L",
        _ => "",
    };

    private static string Slot(MaterialSlot slot) => slot.OneOf.Count == 1 ? slot.OneOf[0].Value : Map(("one-of", List(slot.OneOf)));

    private static string? Known(bool? known) => known is { } k ? k ? "fully" : "partly" : null;

    private static string? Ids(IReadOnlyList<object> ids) => ids.Count == 0 ? null : List(ids);

    private static string? Range(Interval? range, string unit = "") => Quote(range?.ToString(unit));

    private static string? Dilution(Interval? share) => Quote(share?.Scale(100).ToString("% v/v"));

    private static string? Word<TEnum>(TEnum? member) where TEnum : struct, Enum => member is { } m ? Words.Of(m) : null;

    private static string Figure(decimal value) => value.ToString("0.############################", CultureInfo.InvariantCulture);

    private static string? Quote(string? text) => text is null ? null : "\"" + text + "\"";

    private static string List(IEnumerable<object?> items) => "[" + string.Join(", ", items) + "]";

    private static string Map(params (string Key, object? Value)[] fields) => "{ " + string.Join(", ", fields.Where(f => f.Value is not null and not "{  }").Select(f => f.Key + ": " + f.Value)) + " }";
}
