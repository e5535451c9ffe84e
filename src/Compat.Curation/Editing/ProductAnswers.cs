using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Editing;

/// <summary>Reads the answers that describe a product, in the sections of a safety data sheet, as a product of a site.</summary>
/// <remarks>
/// The sections are <c>section-1</c> (id, name), <c>section-3</c> (composition, ingredients), <c>section-9</c> (density, pH, what the strengths are of) and
/// <c>label</c> (claims, methods, contact times, dilution). Their keys are those of a product in a site file; an ingredient may be given by <c>cas</c>.
/// </remarks>
public sealed record ProductAnswers
{
    internal static readonly string[] Sections = ["section-1", "section-3", "section-9", "label"];

    /// <summary>The product; null where it could not be read.</summary>
    public Product? Product { get; private init; }

    /// <summary>All that is wrong, by line and column.</summary>
    public required IReadOnlyList<Diagnostic> Diagnostics { get; init; }

    /// <summary>Where the product's fields stand.</summary>
    public required SourceMap Places { get; init; }

    /// <summary>Reads a file of answers.</summary>
    /// <param name="path">The file.</param>
    /// <param name="data">The data: agents are found in it by id and CAS number.</param>
    public static ProductAnswers ReadFile(string path, KnowledgeData data)
    {
        var faults = new List<Diagnostic>();
        var bytes = SourceReader.ReadBytes(path, path, faults);
        var source = bytes is null ? null : SourceReader.Decode(bytes, path, faults);
        return source is null ? new() { Diagnostics = faults, Places = new PlaceBuilder().Build() } : Read(source.Text, path, data);
    }

    /// <summary>Reads answers already in memory.</summary>
    /// <param name="text">The answers.</param>
    /// <param name="shownAs">The name they are shown by.</param>
    /// <param name="data">The data.</param>
    public static ProductAnswers Read(string text, string shownAs, KnowledgeData data)
    {
        var faults = new DiagnosticList(new SourceText(shownAs, text));
        var places = new PlaceBuilder();
        Product? product = null;
        if (YamlReader.Read(faults) is YamlMapping root)
        {
            var record = Flat(root, data, faults);
            var site = Wrapped(record);
            var refusals = FileSchema.Of(FileKind.Site).Check(site, faults);
            var bases = new AgentBases();
            foreach (var agent in data.Agents) bases.Add(agent);
            var reader = new RecordReader(new BoxReader(bases), ofSite: true);
            product = places.Read(RecordKind.Product, [new RecordFields(record, faults)], one => reader.ReadProduct(one), one => one.Id.Value).FirstOrDefault();
            FileSchema.AddRefusals(site, refusals, faults);
        }
        else if (faults.Found.Count == 0)
        {
            faults.Add(new TextSpan(0, 0), "no-answers", "there are no answers", "write `section-1:`, `section-3:`, `section-9:` and `label:`");
        }

        return new() { Product = product, Diagnostics = faults.Found, Places = places.Build() };
    }

    /// <summary>The keys of all sections in one record, each still at its place in the file.</summary>
    private static YamlMapping Flat(YamlMapping root, KnowledgeData data, DiagnosticList faults)
    {
        var entries = new List<YamlEntry>();
        foreach (var section in root.Entries)
        {
            if (!Sections.Contains(section.Key.Text))
                faults.Add(
                    section.Key.Span, "unknown-section", $"there is no section `{section.Key.Text}`", NearestNames.Help(section.Key.Text, Sections)
                    ?? "known are " + string.Join(", ", Sections));
            else if (section.Value is YamlMapping fields)
                entries.AddRange(fields.Entries.Select(entry => entry.Key.Text == "ingredients" ? Resolved(entry, data, faults) : entry));
            else if (section.Value is not YamlScalar { IsNothing: true }) faults.Add(section.Value.Span, "section", "a section holds keys with values");
        }

        foreach (var twice in entries.GroupBy(entry => entry.Key.Text).Where(group => group.Count() > 1))
            faults.Add(twice.Last().Key.Span, "duplicate-key", $"`{twice.Key}` is written in two sections");
        return new(entries.DistinctBy(entry => entry.Key.Text).ToArray(), root.Span);
    }

    private static YamlMapping Wrapped(YamlMapping record)
    {
        YamlScalar Text(string text) => new(text, false, record.Span);
        var head = new YamlMapping([new(Text("id"), Text("site")), new(Text("name"), Text("site"))], record.Span);
        return new([new(Text("site"), head), new(Text("products"), new YamlSequence([record], record.Span))], record.Span);
    }

    private static YamlEntry Resolved(YamlEntry entry, KnowledgeData data, DiagnosticList faults) => entry.Value is not YamlSequence list ? entry
        : entry with { Value = new YamlSequence(list.Items.Select(item => item is YamlMapping one ? Resolved(one, data, faults) : item).ToArray(), list.Span) };

    /// <summary>An ingredient whose CAS number is replaced by the agent class that has it, or by a name that no class covers.</summary>
    private static YamlMapping Resolved(YamlMapping ingredient, KnowledgeData data, DiagnosticList faults)
    {
        if (ingredient.Find("cas") is not { Value: YamlScalar cas } entry) return ingredient;
        var rest = ingredient.Entries.Where(one => one.Key.Text != "cas");
        if (!CasNumber.IsValid(cas.Text))
        {
            faults.Add(cas.Span, "bad-cas", $"`{cas.Text}` is no CAS number: its check digit does not hold", "look for a slip in its digits");
            return new([.. rest, Named("unknown", cas.Text)], ingredient.Span);
        }

        if (ingredient.Find("agent") is not null || ingredient.Find("unknown") is not null) return new([.. rest], ingredient.Span);
        var having = data.Agents.Where(agent => agent.Cas.Contains(cas.Text)).ToArray();
        var highest = having.Where(agent => !having.Any(other => other.Id == agent.Under)).ToArray();
        if (highest.Length > 1)
        {
            faults.Add(
                cas.Span, "cas-of-several", $"CAS number {cas.Text} stands at several agent classes",
                "write one of them: " + string.Join(", ", highest.Select(agent => $"`agent: {agent.Id}`")));
        }

        return new([highest.Length > 0 ? Named("agent", highest[0].Id.Value) : Named("unknown", "CAS " + cas.Text), .. rest], ingredient.Span);

        YamlEntry Named(string key, string text) => new(new(key, true, entry.Key.Span), new YamlScalar(text, false, cas.Span));
    }
}
