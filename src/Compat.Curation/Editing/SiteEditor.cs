using System.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Formatting;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Writing;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Editing;

/// <summary>A site file that is added to: what is written there stays as it is, comments too. What would not pass is never saved.</summary>
public sealed class SiteEditor
{
    private readonly KnowledgeBase _base;
    private readonly string _path;
    private readonly byte[] _read;
    private readonly AgentBases _bases = new();
    private readonly bool _isCanonical;

    private SiteEditor(KnowledgeBase kb, string path, byte[] read, string text, Site site, KnowledgeBase laid)
    {
        _base = kb;
        _path = path;
        _read = read;
        Text = text;
        Site = site;
        KnowledgeBase = laid;
        foreach (var agent in kb.Data.Agents) _bases.Add(agent);
        _isCanonical = Canonical(text) == text;
    }

    /// <summary>The text as it stands now.</summary>
    public string Text { get; private set; }

    /// <summary>The site as it stands now.</summary>
    public Site Site { get; private set; }

    /// <summary>The knowledge base with the site as it stands now.</summary>
    public KnowledgeBase KnowledgeBase { get; private set; }

    /// <summary>Opens a site file; null where it does not pass, with the reasons.</summary>
    /// <param name="kb">What it is laid over.</param>
    /// <param name="path">The file.</param>
    /// <param name="faults">Where the reasons go.</param>
    public static SiteEditor? Open(KnowledgeBase kb, string path, List<Diagnostic> faults)
    {
        var file = GivenFile.Read(path);
        var read = SiteFile.LayOver(kb, [file]);
        faults.AddRange(read.Diagnostics);
        if (read.KnowledgeBase is not { } laid || SourceReader.Decode(file.Bytes!, path, faults) is not { } source) return null;
        return new SiteEditor(kb, path, file.Bytes!, source.Text, read.Sites[^1], laid);
    }

    /// <summary>Adds products behind those that are there.</summary>
    /// <param name="products">The products.</param>
    /// <param name="faults">What would not pass; nothing is added then.</param>
    /// <returns>Whether they were added.</returns>
    public bool Add(IReadOnlyList<Product> products, List<Diagnostic> faults) =>
        products.Count == 0 || Insert("products", products.Select(one => RecordText.Item(0, to => new RecordWriter(_bases).WriteProduct(to, one))), faults);

    /// <summary>Adds devices behind those that are there.</summary>
    /// <param name="devices">The devices.</param>
    /// <param name="faults">What would not pass; nothing is added then.</param>
    /// <returns>Whether they were added.</returns>
    public bool Add(IReadOnlyList<Device> devices, List<Diagnostic> faults) =>
        devices.Count == 0 || Insert("devices", devices.Select(one => RecordText.Item(0, to => new RecordWriter(_bases).WriteDevice(to, one))), faults);

    /// <summary>The columns of the site's asset list, as the file keeps them; null where it keeps none.</summary>
    public ImportColumns? Columns =>
        Root().Find("import")?.Value is YamlMapping import && import.Find("columns")?.Value is YamlMapping columns
            && columns.Find("device")?.Value is YamlScalar device
            ? new(device.Text, (columns.Find("model")?.Value as YamlScalar)?.Text)
            : null;

    /// <summary>Keeps the columns of the site's asset list in the file.</summary>
    /// <param name="columns">The columns.</param>
    /// <param name="faults">What would not pass; nothing is kept then.</param>
    /// <returns>Whether they are kept.</returns>
    public bool Keep(ImportColumns columns, List<Diagnostic> faults)
    {
        if (Columns == columns) return true;
        var value = "{ columns: " + RecordText.Inline(
            [("device", RecordText.Quoted(columns.Device)), ("model", columns.Model is { } model ? RecordText.Quoted(model) : null)]) + " }";
        return Root().Find("import") is { } entry
            ? Take(Text[..entry.Value.Span.Start] + value + Text[entry.Value.Span.End..], faults)
            : Take(Ended(Text) + "\nimport: " + value + "\n", faults);
    }

    /// <summary>Writes the file, whole or not at all.</summary>
    /// <exception cref="IOException">It cannot be written, or was changed since it was opened.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public void Save() => WholeFile.Replace(_path, Text, _read);

    private YamlMapping Root() => (YamlMapping)YamlReader.Read(new DiagnosticList(new SourceText(_path, Text)))!;

    private bool Insert(string key, IEnumerable<string> items, List<Diagnostic> faults)
    {
        if (Root().Find(key) is not { } entry)
            return Take(Ended(Text) + $"\n{key}:\n" + string.Concat(items.Select(item => Indented(item, "  "))), faults);
        var list = (YamlSequence)entry.Value;
        var lines = new LineIndex(Text);
        var first = lines.LineSpan(lines.At(list.Items[0].Span.Start).Line);
        var head = Text.Substring(first.Start, first.Length);
        var indent = head[..^head.TrimStart(' ').Length];
        if (!head[indent.Length..].StartsWith("- ", StringComparison.Ordinal))
        {
            faults.Add(
                Diagnostic.At(
                    new(new SourceText(_path, Text), list.Span), "list-in-brackets", $"`{key}` is not written as a list of lines",
                    "run `compat format` and put each record on lines of its own"));
            return false;
        }

        var last = lines.LineSpan(lines.At(Math.Max(list.Items[^1].Span.End - 1, 0)).Line).End;
        return Take(
            Text[..last] + "\n" + string.Concat(items.Select(item => Indented(item, indent)))
            .TrimEnd('\n') + (last < Text.Length ? Text[last..] : "\n"), faults);
    }

    /// <summary>Takes a new text where it passes as a whole.</summary>
    private bool Take(string text, List<Diagnostic> faults)
    {
        var read = SiteFile.Read(Encoding.UTF8.GetBytes(text), _path, _base.Data);
        var before = faults.Count;
        faults.AddRange(read.Diagnostics);
        if (read.Site is not { } site || !read.IsClean) return false;
        var problems = _base.TryWith(site, out var laid);
        faults.AddRange(problems.Select(problem => Of(problem, read.Places)));
        if (laid is null || faults.Count > before) return false;
        (Text, Site, KnowledgeBase) = (_isCanonical ? Canonical(text) ?? text : text, site, laid);
        return true;
    }

    /// <summary>A text in the canonical format: a file that is in it stays in it.</summary>
    private string? Canonical(string text) => TextFormatter.Run(FileKind.Site, new SourceText(_path, text), null, []);

    private Diagnostic Of(Problem problem, SourceMap places) =>
        places.Find(problem.Place) is { } place ? Diagnostic.At(place, problem.Code, problem.Message, problem.Help)
            : new(problem.Code, problem.Message, problem.Help, _path, null);

    private static string Ended(string text) => text.Length == 0 || text.EndsWith('\n') ? text : text + "\n";

    private static string Indented(string item, string indent) =>
        string.Concat(item.TrimEnd('\n').Split('\n').Select(line => (line.Length == 0 ? "" : indent + line) + "\n"));
}
