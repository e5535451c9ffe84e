using System.Text.Json;
using Compat.Curation.Diagnostics;
using Compat.Curation.Recorded;
using Compat.Curation.Yaml;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Compat.Curation.Tests.Recorded;

/// <summary>The JSON reader gives each value its exact place, and takes what another reader takes and nothing else.</summary>
public sealed class JsonTextTests
{
    [Fact]
    public void Values_StandWhereTheyAreWritten()
    {
        const string text = "{\n  \"ä€😀\": [\"x\\u00e9\", 1.50, true, null],\n  \"b\": {}\n}";
        var root = Assert.IsType<YamlMapping>(Read(text, out var faults));
        Assert.Empty(faults.Found);
        var list = Assert.IsType<YamlSequence>(root.Find("ä€😀")!.Value);
        Assert.Equal(["\"x\\u00e9\"", "1.50", "true", "null"], list.Items.Select(item => faults.Source.Excerpt(item.Span)));
        Assert.Equal(["xé", "1.50", "true", "null"], list.Items.Cast<YamlScalar>().Select(item => item.Text));
        Assert.Equal([false, true, true, true], list.Items.Cast<YamlScalar>().Select(item => item.IsPlain));
        Assert.Equal("[\"x\\u00e9\", 1.50, true, null]", faults.Source.Excerpt(list.Span));
        Assert.Equal("{}", faults.Source.Excerpt(root.Find("b")!.Value.Span));
        Assert.Equal("\"b\"", faults.Source.Excerpt(root.Find("b")!.Key.Span));
    }

    [Theory]
    [InlineData("", 1, 1)]
    [InlineData("{\n  \"a\": [1,", 2, 11)]
    [InlineData("{\n  \"a\": 1,\n}", 3, 1)]
    [InlineData("{ \"a\": 1 } x", 1, 12)]
    [InlineData("{ 'a': 1 }", 1, 3)]
    [InlineData("{ \"é\": 01 }", 1, 9)]
    [InlineData("[ \"\\ud800\" ]", 1, 3)]
    [InlineData("[ 1, // no\n 2 ]", 1, 6)]
    public void Faults_AreShownAtTheirPlace(string text, int line, int column)
    {
        Assert.Null(Read(text, out var faults));
        var fault = Assert.Single(faults.Found);
        Assert.Equal((line, column), (fault.Place!.Position.Line, fault.Place.Position.Column));
    }

    [Fact]
    public void KeyWrittenTwice_IsReported()
    {
        Read("{ \"a\": 1, \"\\u0061\": 2 }", out var faults);
        Assert.Equal("duplicate-key", Assert.Single(faults.Found).Code);
    }

    [Fact]
    public void NestedTooDeep_IsRefused()
    {
        Assert.Null(Read(new string('[', 100_000), out var faults));
        Assert.Single(faults.Found);
    }

    /// <summary>Any change of one character: refused where the other reader refuses, else the same values.</summary>
    [Property(MaxTest = 500)]
    public Property AnyEdit_IsReadAsAnotherReaderReadsIt() => Prop.ForAll(
        Gen.Zip(Gen.Choose(0, 200), Gen.Elements("\"{}[]:,\\ 0-.eE+tfn\u0000\né".ToCharArray())).ToArbitrary(),
        edit =>
        {
            const string whole = "{\"a\":[1,-2.5,\"x\\/\",true,false,null,{\"b\":{}}],\"c\":\"é\\u0041\"}";
            var at = edit.Item1 % whole.Length;
            var text = whole[..at] + edit.Item2 + whole[(at + 1)..];
            var root = Read(text, out var faults);
            var read = faults.Found.Count == 0 ? Written(root!) : null;
            string? expected = null;
            try
            {
                using var document = JsonDocument.Parse(text, new JsonDocumentOptions { AllowDuplicateProperties = false });
                expected = Written(document.RootElement);
            }
            catch (Exception fault) when (fault is JsonException or InvalidOperationException)
            {
                expected = null;
            }

            if (expected is not null && Compat.Validation.HiddenText.Find(expected, out _) >= 0) expected = null;
            return read == expected;
        });

    private static string Written(YamlNode node) => node switch
    {
        YamlMapping mapping => "{" + string.Join(",", mapping.Entries.Select(entry => entry.Key.Text + ":" + Written(entry.Value))) + "}",
        YamlSequence list => "[" + string.Join(",", list.Items.Select(Written)) + "]",
        _ => (((YamlScalar)node).IsPlain ? "" : "'") + ((YamlScalar)node).Text,
    };

    private static string Written(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => "{" + string.Join(",", element.EnumerateObject().Select(entry => entry.Name + ":" + Written(entry.Value))) + "}",
        JsonValueKind.Array => "[" + string.Join(",", element.EnumerateArray().Select(Written)) + "]",
        JsonValueKind.String => "'" + element.GetString(),
        _ => element.GetRawText(),
    };

    private static YamlNode? Read(string text, out DiagnosticList faults)
    {
        faults = new DiagnosticList(new SourceText("a.json", text));
        return JsonText.Read(faults);
    }
}
