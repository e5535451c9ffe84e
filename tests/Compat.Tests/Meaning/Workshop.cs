using System.Globalization;
using System.Text;
using Compat.Curation;
using Compat.Curation.Diagnostics;
using Compat.Validation;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Compat.Tests.Meaning;

/// <summary>The base of an example: the workshop with the records of the example in place of those of the same id, and what they leave out filled in.</summary>
internal sealed class Workshop
{
    private static readonly Dictionary<string, string> Files = new()
    {
        ["conventions"] = "conventions.yaml",
        ["levels"] = "levels.yaml",
        ["needs"] = "needs.yaml",
        ["occasions"] = "occasions.yaml",
        ["standing"] = "standing.yaml",
        ["test-standards"] = "test-standards.yaml",
        ["instruction-words"] = "instruction-words.yaml",
    };

    private readonly SortedDictionary<string, List<YamlNode>> _data = new(StringComparer.Ordinal);
    private readonly Dictionary<string, YamlNode> _site = [];
    private readonly List<YamlMappingNode> _defaults = [];

    private Workshop(IEnumerable<Block> blocks)
    {
        foreach (var block in blocks)
        {
            if (!block.Info.StartsWith("yaml", StringComparison.Ordinal)) continue;
            var root = Parse(block);
            if (block.Info == "yaml defaults") _defaults.AddRange(((YamlSequenceNode)root).Cast<YamlMappingNode>());
            else if (block.Info == "yaml data") foreach (var (kind, records) in Entries(root)) Lay(_data, kind, records);
            else if (block.Info == "yaml site") foreach (var (key, value) in Entries(root)) LayOnSite(key, value);
            else throw new InvalidOperationException($"no block is called `{block.Info}`");
        }
    }

    public KnowledgeData Data { get; private set; } = null!;

    public IReadOnlyList<Site> Sites { get; private set; } = [];

    public KnowledgeBase? Base { get; private set; }

    /// <summary>The codes of what is wrong with the records; empty where they are a base.</summary>
    public IReadOnlyList<string> Refused { get; private set; } = [];

    public string Faults { get; private set; } = "";

    /// <summary>The workshop with the blocks of an example.</summary>
    public static Workshop With(IEnumerable<Block> example) => new Workshop(MeaningPages.Workshop.Concat(example)).Read();

    private Workshop Read()
    {
        var files = _data.ToDictionary(
            kind => Files.TryGetValue(kind.Key, out var file) ? file : $"{kind.Key}/{kind.Key}.yaml",
            kind => Encoding.UTF8.GetBytes(string.Concat(kind.Value.Select(record => "- " + Text(Filled(kind.Key, record)) + "\n"))));
        files["version.yaml"] = "version: workshop\n"u8.ToArray();
        var read = DataFolder.Read(files, "workshop");
        Data = read.Data;
        if (!Passes(read.Diagnostics, KnowledgeBase.TryBuild(read.Data, out var built))) return this;
        Base = built;
        if (_site.Count == 0) return this;
        var text = string.Concat(_site.Select(one => $"{one.Key}: {Text(FilledOnSite(one.Key, one.Value))}\n"));
        var site = SiteFile.Read(Encoding.UTF8.GetBytes("site: { id: shop, name: the shop }\n" + text), "shop.yaml", Data);
        Base = null;
        KnowledgeBase? with = null;
        if (Passes(site.Diagnostics, site.Site is null ? [] : built!.TryWith(site.Site, out with))) (Sites, Base) = ([site.Site!], with);
        return this;
    }

    private bool Passes(IReadOnlyList<Diagnostic> diagnostics, IReadOnlyList<Problem> problems)
    {
        Refused = [.. diagnostics.Select(one => one.Code), .. problems.Select(one => one.Code)];
        Faults = DiagnosticText.Render(diagnostics) + string.Join("\n", problems.Select(one => one.ToString()));
        return Refused.Count == 0;
    }

    private static YamlNode Parse(Block block)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(string.Join('\n', block.Lines)));
        return stream.Documents[0].RootNode;
    }

    private static IEnumerable<(string Key, YamlNode Value)> Entries(YamlNode root) =>
        ((YamlMappingNode)root).Children.Select(one => (((YamlScalarNode)one.Key).Value!, one.Value));

    private static void Lay(SortedDictionary<string, List<YamlNode>> on, string kind, YamlNode records)
    {
        if (!on.TryGetValue(kind, out var all)) on[kind] = all = [];
        foreach (var record in (YamlSequenceNode)records)
        {
            all.RemoveAll(other => IdOf(other) is { } id && id == IdOf(record));
            all.Add(record);
        }
    }

    private void LayOnSite(string key, YamlNode value)
    {
        if (_site.TryGetValue(key, out var before) && before is YamlSequenceNode first && value is YamlSequenceNode second)
        {
            var kept = first.Children.Where(one => second.All(other => IdOf(other) is null || IdOf(other) != IdOf(one)));
            value = new YamlSequenceNode([.. kept, .. second.Children]);
        }

        _site[key] = value;
    }

    private static string? IdOf(YamlNode record) => Value(record, "id") ?? Value(record, "code");

    private static string? Value(YamlNode record, string key) =>
        record is YamlMappingNode map && map.Children.TryGetValue(new YamlScalarNode(key), out var value) ? (value as YamlScalarNode)?.Value ?? "" : null;

    private YamlNode FilledOnSite(string key, YamlNode value) => value is YamlSequenceNode records
        ? new YamlSequenceNode(records.Children.Select(record => Filled(key is "levels" ? "decisions" : key, record)))
        : value;

    /// <summary>A record with the fields that the workshop gives to its kind, where it does not state them.</summary>
    private YamlNode Filled(string kind, YamlNode record)
    {
        if (record is not YamlMappingNode map) return record;
        foreach (var given in _defaults.Where(one => Value(one, "of") == kind && Suits(one, record)))
            map = Merge(map, (YamlMappingNode)given.Children[new YamlScalarNode("fill")]);
        return map;
    }

    private static bool Suits(YamlMappingNode given, YamlNode record) =>
        !given.Children.TryGetValue(new YamlScalarNode("where"), out var where)
        || Entries(where).All(one => (one.Value as YamlScalarNode)?.Value is var needed && (needed == "stated" ? Value(record, one.Key) is not null
            : needed == "left-out" ? Value(record, one.Key) is null : Value(record, one.Key) == needed));

    private static YamlMappingNode Merge(YamlMappingNode own, YamlMappingNode given)
    {
        var merged = new YamlMappingNode(own.Children);
        foreach (var (key, value) in given.Children)
        {
            if (!merged.Children.TryGetValue(key, out var stated)) merged.Children[key] = value;
            else if (stated is YamlMappingNode deep && value is YamlMappingNode more) merged.Children[key] = Merge(deep, more);
        }

        return merged;
    }

    private static string Text(YamlNode node) => node switch
    {
        YamlMappingNode map => "{ " + string.Join(", ", map.Children.Where(one => one.Value is not YamlScalarNode { Value: "null" })
            .Select(one => $"{Text(one.Key)}: {Text(one.Value)}")) + " }",
        YamlSequenceNode list => "[" + string.Join(", ", list.Children.Select(Text)) + "]",
        YamlScalarNode { Style: ScalarStyle.Plain } plain => plain.Value!,
        YamlScalarNode quoted => string.Create(CultureInfo.InvariantCulture, $"\"{quoted.Value}\""),
        _ => throw new InvalidOperationException(node.ToString()),
    };
}
