using System.Text.Json;
using System.Text.Json.Nodes;
using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Newtonsoft.Json.Linq;

namespace Compat.Curation.Tests.Schemas;

/// <summary>The schema files: only keywords the validator enforces, each of them biting, and the same verdicts by a second validator.</summary>
public sealed class SchemaFilesTests
{
    private static readonly HashSet<string> Enforced =
    [
        "$ref", "type", "enum", "pattern", "minLength", "maxLength", "minimum", "maximum", "items", "minItems", "uniqueItems",
        "minProperties", "required", "properties", "additionalProperties", "allOf", "anyOf", "oneOf", "not",
    ];

    /// <summary>How many records of a list of the whole site are broken: the rules behind them differ in their duties only, which the rules' own file tries.</summary>
    private const int SiteRecords = 4;

    private static readonly HashSet<string> Annotations = ["$schema", "title", "description", "definitions"];

    public static TheoryData<FileKind> Kinds => [.. Enum.GetValues<FileKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Only_enforced_keywords_are_used_and_none_stands_beside_a_reference(FileKind kind)
    {
        foreach (var schema in Subschemas(Root(kind)))
        {
            foreach (var (key, _) in schema) Assert.True(Enforced.Contains(key) || Annotations.Contains(key), $"{kind}: {key} at {schema.GetPath()}");
            if (schema.ContainsKey("$ref")) Assert.Single(schema);
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void It_fits_the_metaschema(FileKind kind)
    {
        using var document = JsonDocument.Parse(FileSchema.TextOf(kind));
        Assert.True(Json.Schema.MetaSchemas.Draft7.Evaluate(document.RootElement).IsValid);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_place_is_described(FileKind kind)
    {
        var root = Root(kind);
        Assert.NotNull(root["title"]);
        foreach (var schema in Subschemas(root).Where(schema => schema["properties"] is not null && schema["additionalProperties"] is not null))
        {
            foreach (var (name, property) in schema["properties"]!.AsObject())
                Assert.True(property!["description"] is not null || property["$ref"] is not null || property["anyOf"] is not null || property["properties"] is not null, $"{kind}: {name}");
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Every_keyword_bites(FileKind kind)
    {
        var whole = Documents(kind);
        var schema = await NJsonSchema.JsonSchema.FromJsonAsync(FileSchema.TextOf(kind));
        foreach (var document in whole) Assert.Empty(schema.Validate(document));
        var refused = whole.SelectMany(DocumentBreaker.Break).Where(broken => schema.Validate(broken).Count > 0).ToList();
        var root = Root(kind);
        var idle = new List<string>();
        var shared = Shared(kind, root);
        foreach (var place in Subschemas(root).ToList())
        {
            if (shared.Exists(definition => LiesIn(place.GetPath(), definition))) continue;
            foreach (var keyword in place.Select(pair => pair.Key).Where(Enforced.Contains).ToList())
            {
                if (keyword is "properties" or "$ref") continue;
                var value = place[keyword]!;
                place.Remove(keyword);
                var without = await NJsonSchema.JsonSchema.FromJsonAsync(root.ToJsonString());
                if (!refused.Any(broken => without.Validate(broken).Count == 0)) idle.Add($"{place.GetPath()}.{keyword}");
                place[keyword] = value;
            }
        }

        var known = idle.Where(one => !IsDoubled(one)).ToList();
        Assert.True(known.Count == 0, string.Join("\n", known));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task A_second_validator_gives_the_same_verdicts(FileKind kind)
    {
        var first = await NJsonSchema.JsonSchema.FromJsonAsync(FileSchema.TextOf(kind));
        var second = Json.Schema.JsonSchema.FromText(FileSchema.TextOf(kind), new Json.Schema.BuildOptions { SchemaRegistry = new() });
        foreach (var document in Documents(kind).Concat(Documents(kind).SelectMany(DocumentBreaker.Break)))
        {
            using var json = JsonDocument.Parse(Newtonsoft.Json.JsonConvert.SerializeObject(document));
            Assert.True((first.Validate(document).Count == 0) == second.Evaluate(json.RootElement).IsValid, document.ToString());
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task What_is_passed_without_the_validator_it_would_pass(FileKind kind)
    {
        var validator = await NJsonSchema.JsonSchema.FromJsonAsync(FileSchema.TextOf(kind));
        var (passed, refused) = (0, 0);
        foreach (var document in Documents(kind).Concat(Documents(kind).SelectMany(DocumentBreaker.Break)))
        {
            var faults = new DiagnosticList(new SourceText("broken", document.ToString(Newtonsoft.Json.Formatting.None)));
            if (YamlReader.Read(faults) is not { } root || !FileSchema.Of(kind).Passes(root, faults))
            {
                refused++;
                continue;
            }

            passed++;
            Assert.True(validator.Validate(SchemaJson.Of(root, FileSchema.Of(kind).Shape)).Count == 0, document.ToString());
        }

        Assert.True(passed > 0 && refused > passed / 10, $"{passed} passed, {refused} refused");
    }

    [Fact]
    public void The_words_of_the_schemas_are_the_words_of_the_model()
    {
        var lists = Enum.GetValues<FileKind>().SelectMany(kind => Subschemas(Root(kind)))
            .Where(schema => schema["type"]?.GetValue<string>() == "string" && schema["enum"] is not null)
            .Select(schema => string.Join(' ', schema["enum"]!.AsArray().Select(word => word!.GetValue<string>())))
            .ToHashSet();
        string[] methods = [.. Words.All<ApplicationMethod>()];
        string[] known =
        [
            Joined<SourceKind>(), Joined<Trust>(), Joined<Delicacy>(), Joined<Geometry>(), Joined<TouchedBy>(), Joined<Act>(), Joined<Nature>(), Joined<Hazard>(),
            Joined<Residue>(), Joined<Mechanism>(), Joined<Onset>(), Joined<Consequence>(), Joined<TestPiece>(), Joined<KnownBy>(), Joined<ConventionKey>(),
            Joined<Level>(), string.Join(' ', Words.All<Level>().Skip(1)), Joined<OrganismGroup>(), Joined<ClaimKind>(), Joined<ClaimNeed>(), Joined<ClaimWhere>(),
            Joined<TestField>(), Joined<TestStep>(), Joined<TestedOn>(), Joined<SoilKind>(),
            Joined<PatientGroup>(), Joined<PersonVerdict>(), Joined<LimitKind>(), Joined<WayOut>(), Joined<MixingEffect>(), Joined<MixingSeverity>(), Joined<MemberGround>(), Joined<Separation>(),
            Joined<Paper>(), Joined<DutyKind>(), Joined<WaterGrade>(), Joined<Composition>(), Joined<StrengthOf>(), Joined<PhState>(),
            string.Join(' ', StrengthUnit.Texts.Where(unit => unit != StrengthUnit.VolumesOfOxygen.Text)), string.Join(' ', methods[1..]), string.Join(' ', methods[..^1]), string.Join(' ', methods[1..^1]),
            string.Join(' ', [.. methods[1..], .. Words.All<Consequence>(), .. Words.All<Hazard>()]),
            string.Join(' ', ["air", .. Words.All<Act>(), .. methods[1..^1]]),
            "second-source", Joined<ThinGround>(), "read recalled", "fully partly", "any unstated", "allowed not-allowed", "only-listed",
        ];
        Assert.Equal(known.Order(), lists.Order());
    }

    /// <summary>Keywords that another one stands behind: without them the same documents are still refused.</summary>
    private static bool IsDoubled(string place) =>
        place.EndsWith(".type", StringComparison.Ordinal) || place.EndsWith(".maxLength", StringComparison.Ordinal)
        || (place.Contains(".allOf", StringComparison.Ordinal) && !place.EndsWith("].anyOf", StringComparison.Ordinal) && !place.EndsWith("].oneOf", StringComparison.Ordinal));

    /// <summary>Definitions that stand word for word in the schema of a kind before, where they are tried.</summary>
    private static List<string> Shared(FileKind kind, JsonObject root)
    {
        var before = Enum.GetValues<FileKind>().Where(other => other < kind).Select(Root).ToList();
        return (root["definitions"]?.AsObject() ?? [])
            .Where(pair => before.Any(other => JsonNode.DeepEquals(other["definitions"]?[pair.Key], pair.Value)))
            .Select(pair => pair.Value!.GetPath())
            .ToList();
    }

    private static bool LiesIn(string place, string definition) =>
        place.StartsWith(definition, StringComparison.Ordinal) && (place.Length == definition.Length || place[definition.Length] is ('.' or '['));

    private static string Joined<TWord>() where TWord : struct, Enum => string.Join(' ', Words.All<TWord>());

    private static JsonObject Root(FileKind kind) => JsonNode.Parse(FileSchema.TextOf(kind))!.AsObject();

    private static List<JToken> Documents(FileKind kind)
    {
        var path = Repository.PathOf($"tests/Compat.Curation.Tests/Schemas/Whole/{Words.Of(kind)}.yaml");
        var faults = new DiagnosticList(new SourceText(path, File.ReadAllText(path)));
        var root = YamlReader.Read(faults)!;
        Assert.True(FileSchema.Of(kind).Passes(root, faults), DiagnosticText.Render(faults.Found));
        var json = SchemaJson.Of(root, FileSchema.Of(kind).Shape);
        return json switch
        {
            JArray list => list.Select(item => (JToken)new JArray(item)).ToList(),
            JObject site when kind == FileKind.Site => Parts(site).ToList(),
            _ => [json],
        };
    }

    /// <summary>A site is broken in pieces: each of its records alone.</summary>
    private static IEnumerable<JToken> Parts(JObject site)
    {
        yield return new JObject { ["site"] = site["site"]!.DeepClone(), ["here"] = site["here"]!.DeepClone(), ["import"] = site["import"]!.DeepClone() };
        foreach (var list in site.Properties().Where(property => property.Value is JArray))
        {
            foreach (var record in list.Value.Take(SiteRecords))
                yield return new JObject { ["site"] = site["site"]!.DeepClone(), [list.Name] = new JArray(record.DeepClone()) };
        }
    }

    private static IEnumerable<JsonObject> Subschemas(JsonNode? node)
    {
        if (node is not JsonObject schema) yield break;
        yield return schema;
        foreach (var (key, value) in schema)
        {
            var below = (key, value) switch
            {
                ("properties" or "definitions", JsonObject named) => named.Select(pair => pair.Value),
                ("allOf" or "anyOf" or "oneOf", JsonArray list) => list,
                ("items" or "not", _) => [value],
                _ => [],
            };
            foreach (var child in below.SelectMany(Subschemas)) yield return child;
        }
    }
}
