using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Compat.Curation.Diagnostics;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Newtonsoft.Json.Linq;

namespace Compat.Curation.Tests.Schemas;

/// <summary>The schema files: only keywords that are enforced, each of them biting, and the same verdicts by three validators.</summary>
public sealed class SchemaFilesTests
{
    private static readonly HashSet<string> Enforced =
    [
        "$ref", "type", "enum", "pattern", "minLength", "maxLength", "minimum", "maximum", "items", "minItems", "maxItems", "uniqueItems",
        "minProperties", "required", "properties", "additionalProperties", "allOf", "anyOf", "oneOf", "not",
    ];

    /// <summary>
    /// How many records of a list of the whole site are broken: the rules behind them differ in their duties only, which the rules' own file tries.
    /// </summary>
    private const int SiteRecords = 4;

    public static TheoryData<FileKind> Kinds => [.. Enum.GetValues<FileKind>()];

    /// <summary>Every schema file.</summary>
    public static TheoryData<string> Files => [.. Names];

    private static IEnumerable<string> Names =>
        Directory.GetFiles(Repository.PathOf("schemas")).Select(file => Path.GetFileName(file)[..^".schema.json".Length]).Order(StringComparer.Ordinal);

    [Theory]
    [MemberData(nameof(Files))]
    public void File_ItsKeywords_AreDraft7AndEnforced(string file)
    {
        Assert.True(Json.Schema.MetaSchemas.Draft7.Evaluate(SchemaPlace.Root(file).Schema).IsValid);
        using var document = JsonDocument.Parse(EnforcedSchema.Of(file));
        Assert.True(Json.Schema.MetaSchemas.Draft7.Evaluate(document.RootElement).IsValid);
        foreach (var schema in Subschemas(Root(file)))
        {
            foreach (var (key, _) in schema) Assert.True(Enforced.Contains(key) || key is "$schema" or "definitions", $"{file}: {key} at {schema.GetPath()}");
            if (schema.ContainsKey("$ref")) Assert.Single(schema);
        }
    }

    [Fact]
    public void Files_TheirDefinitions_AreNotRepeated()
    {
        var seen = new Dictionary<string, string>();
        var repeated = new List<string>();
        foreach (var file in Names)
        {
            foreach (var schema in Subschemas(JsonNode.Parse(SchemaPlace.Root(file).Schema.GetRawText())))
            {
                var bare = schema.DeepClone().AsObject();
                bare.Remove("description");
                var (text, place) = (bare.ToJsonString(), $"{file}: {schema.GetPath()}");
                if ((bare.ContainsKey("enum") || bare["properties"]?.AsObject().Count > 1) && bare.ContainsKey("type") && !seen.TryAdd(text, place))
                    repeated.Add($"{place} repeats {seen[text]}");
            }
        }

        Assert.True(repeated.Count == 0, string.Join('\n', repeated));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void File_ItsPropertiesAndWords_SayWhatTheyMean(string file)
    {
        var root = JsonNode.Parse(SchemaPlace.Root(file).Schema.GetRawText())!.AsObject();
        Assert.NotNull(root["title"]);
        var silent = new List<string>();
        foreach (var schema in Subschemas(root).Where(schema => schema["type"] is not null))
        {
            foreach (var (name, property) in schema["properties"]?.AsObject() ?? [])
            {
                // A property that is one of another record says there what it means.
                if (property!["$ref"]?.GetValue<string>().Contains("/properties/", StringComparison.Ordinal) == true) continue;
                if (!SaysMore(name, property["description"]?.GetValue<string>())) silent.Add($"{property.GetPath()}: {property["description"]}");
            }

            if (schema["type"]!.GetValue<string>() != "string" || schema["enum"] is not JsonArray words) continue;
            var meanings = schema["enumDescriptions"]?.AsArray() ?? [];
            Assert.True(words.Count == meanings.Count, $"{schema.GetPath()}: {words.Count} words, {meanings.Count} meanings");
            silent.AddRange(words.Zip(meanings, (word, meaning) => (Word: word!.GetValue<string>(), Meaning: meaning!.GetValue<string>()))
                .Where(one => !SaysMore(one.Word, one.Meaning)).Select(one => $"{schema.GetPath()}: {one.Word}: {one.Meaning}"));
        }

        Assert.True(silent.Count == 0, string.Join('\n', silent));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Every_keyword_bites(FileKind kind)
    {
        var whole = Documents(kind);
        var schema = await SchemaFiles.Enforced(Words.Of(kind));
        foreach (var document in whole) Assert.Empty(schema.Validate(document));
        var refused = whole.SelectMany(DocumentBreaker.Break).Where(broken => schema.Validate(broken).Count > 0).ToList();
        var root = Root(Words.Of(kind));
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
    public async Task Mutant_ThreeValidators_GiveOneVerdict(FileKind kind)
    {
        var enforced = await SchemaFiles.Enforced(Words.Of(kind));
        var full = SchemaFiles.ForEditors(Words.Of(kind));
        var (passed, refused) = (0, 0);
        var differing = new List<string>();
        foreach (var document in Documents(kind).Concat(Documents(kind).SelectMany(DocumentBreaker.Break)))
        {
            var faults = new DiagnosticList(new SourceText("broken", document.ToString(Newtonsoft.Json.Formatting.None)));
            var root = YamlReader.Read(faults)!;
            var ours = FileSchema.Of(kind).Passes(root, faults);
            // The walk takes a number without quotes for text where the schema expects text: what it passes is held against the others as it is read.
            var taken = ours ? SchemaJson.Of(root, FileSchema.Of(kind).Shape) : document;
            var (first, second) = (enforced.Validate(taken).Count == 0, Full(taken));
            if (first != second || first != ours)
                differing.Add($"enforced {first}, full {second}, walk {ours}: {taken.ToString(Newtonsoft.Json.Formatting.None)}");
            if ((enforced.Validate(document).Count == 0) != Full(document)) differing.Add(document.ToString(Newtonsoft.Json.Formatting.None));
            if (ours) passed++;
            else refused++;
        }

        Assert.True(differing.Count == 0, string.Join('\n', differing.Take(20)));
        Assert.True(passed > 0 && refused > passed / 10, $"{passed} passed, {refused} refused");

        bool Full(JToken document)
        {
            using var json = JsonDocument.Parse(Newtonsoft.Json.JsonConvert.SerializeObject(document));
            return full.Evaluate(json.RootElement).IsValid;
        }
    }

    [Theory]
    [InlineData("""{ "a": 1, "if": { "required": ["b"] }, "then": { "required": ["c", "d"] } }""", "")]
    [InlineData(
        """{ "if": { "required": ["b"] }, "then": { "required": ["c", "d"] } }""",
        """{"anyOf":[{"not":{"required":["b"]}},{"required":["c","d"]}]}""")]
    [InlineData(
        """{ "if": { "required": ["b"], "properties": { "b": { "enum": ["x"] } } }, "then": { "properties": { "c": false, "d": false } } }""",
        """{"anyOf":[{"not":{"required":["b"],"properties":{"b":{"enum":["x"]}}}},{"allOf":[{"not":{"required":["c"]}},{"not":{"required":["d"]}}]}]}""")]
    public void Condition_IfThen_IsEnforcedWithoutThem(string written, string enforced)
    {
        using var document = JsonDocument.Parse(written);
        if (enforced.Length == 0) Assert.Throws<NotSupportedException>(() => EnforcedSchema.Of(new SchemaPlace("rules", document.RootElement)));
        else Assert.Equal(enforced, EnforcedSchema.Of(new SchemaPlace("rules", document.RootElement)));
    }

    [Theory]
    [InlineData("[{ \"id\": \"a\", \"part\": \"b\", \"agent\": \"c\", \"verdict\": \"not-allowed\", \"why\": \"w\", \"sources\": [\"s\"], \"reviewed\": "
        + "\"2026-01-01\" }]", "damage")]
    public void Condition_MissingKey_IsNamedToEditors(string written, string key)
    {
        using var document = JsonDocument.Parse(written);
        var result = SchemaFiles.ForEditors("rules").Evaluate(document.RootElement, new() { OutputFormat = Json.Schema.OutputFormat.List });
        var errors = result.Details!.Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => error.Value)).ToArray();
        Assert.False(result.IsValid);
        Assert.Contains(errors, error => error.Contains($"\"{key}\"", StringComparison.Ordinal));
    }

    [Fact]
    public void The_words_of_the_schemas_are_the_words_of_the_model()
    {
        var lists = Enum.GetValues<FileKind>().SelectMany(kind => Subschemas(Root(Words.Of(kind))))
            .Where(schema => schema["type"]?.GetValue<string>() == "string" && schema["enum"] is not null)
            .Select(schema => string.Join(' ', schema["enum"]!.AsArray().Select(word => word!.GetValue<string>())))
            .ToHashSet();
        string[] methods = [.. Words.All<ApplicationMethod>()];
        string[] known =
        [
            Joined<SourceKind>(), Joined<Trust>(), Joined<Delicacy>(), Joined<Geometry>(), Joined<TouchedBy>(), Joined<Act>(), Joined<Nature>(),
                Joined<Hazard>(),
            Joined<Residue>(), Joined<Mechanism>(), Joined<Onset>(), Joined<Consequence>(), Joined<TestPiece>(), Joined<KnownBy>(), Joined<ConventionKey>(),
            Joined<Level>(), string.Join(' ', Words.All<Level>().Skip(1)), Joined<OrganismGroup>(), Joined<ClaimKind>(), Joined<ClaimNeed>(),
                Joined<ClaimWhere>(),
            Joined<TestField>(), Joined<TestStep>(), Joined<TestedOn>(), Joined<SoilKind>(),
            Joined<PatientGroup>(), Joined<PersonVerdict>(), Joined<LimitKind>(), Joined<WayOut>(), Joined<MixingEffect>(), Joined<MixingSeverity>(),
                Joined<MemberGround>(), Joined<Separation>(),
            Joined<Paper>(), Joined<DutyKind>(), Joined<WaterGrade>(), Joined<Composition>(), Joined<StrengthOf>(), Joined<PhState>(),
            string.Join(' ', StrengthUnit.Texts.Where(unit => unit != StrengthUnit.VolumesOfOxygen.Text)), string.Join(' ', methods[1..]),
                string.Join(' ', methods[..^1]), string.Join(' ', methods[1..^1]),
            string.Join(' ', [.. methods[1..], .. Words.All<Consequence>(), .. Words.All<Hazard>()]),
            string.Join(' ', ["air", .. Words.All<Act>(), .. methods[1..^1]]),
            "second-source", Joined<ThinGround>(), "read recalled", "fully partly", "any unstated", "allowed not-allowed", "only-listed",
        ];
        Assert.Equal(known.Order(), lists.Order());
    }

    /// <summary>Keywords that another one stands behind: without them the same documents are still refused.</summary>
    private static bool IsDoubled(string place) =>
        place.EndsWith(".type", StringComparison.Ordinal) || place.EndsWith(".maxLength", StringComparison.Ordinal)
        || (place.Contains(".allOf", StringComparison.Ordinal) && !place.EndsWith("].anyOf", StringComparison.Ordinal)
            && !place.EndsWith("].oneOf", StringComparison.Ordinal));

    /// <summary>Definitions that stand word for word in the schema of a kind before, where they are tried.</summary>
    private static List<string> Shared(FileKind kind, JsonObject root)
    {
        var before = Enum.GetValues<FileKind>().Where(other => other < kind).Select(other => Root(Words.Of(other))).ToList();
        return (root["definitions"]?.AsObject() ?? [])
            .Where(pair => before.Any(other => JsonNode.DeepEquals(other["definitions"]?[pair.Key], pair.Value)))
            .Select(pair => pair.Value!.GetPath())
            .ToList();
    }

    private static bool LiesIn(string place, string definition) =>
        place.StartsWith(definition, StringComparison.Ordinal) && (place.Length == definition.Length || place[definition.Length] is ('.' or '['));

    /// <summary>Whether a description has a word that its name does not have, articles and the like aside.</summary>
    private static bool SaysMore(string name, string? description)
    {
        return description is not null && WordsOf(description).Except(WordsOf(name)).Any();

        static IEnumerable<string> WordsOf(string text) =>
            Regex.Matches(Regex.Replace(text, "([a-z])([A-Z])", "$1 $2"), "[A-Za-z]+").Select(match => match.Value.ToLowerInvariant().TrimEnd('s'))
                .Except(["a", "an", "the", "of", "it", "i", "or", "and", "by", "in", "on", "to"]);
    }

    private static string Joined<TWord>() where TWord : struct, Enum => string.Join(' ', Words.All<TWord>());

    /// <summary>The schema as it is enforced.</summary>
    private static JsonObject Root(string file) => JsonNode.Parse(EnforcedSchema.Of(file))!.AsObject();

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
