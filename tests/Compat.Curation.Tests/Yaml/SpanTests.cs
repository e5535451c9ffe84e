using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;
using FsCheck.Xunit;

namespace Compat.Curation.Tests.Yaml;

public sealed class SpanTests
{
    private static readonly string[] Words = ["a", "wort", "x😀y", "é-1", "70 % v", "no", "1e3", "\u00B5m"];

    [Property(MaxTest = 200)]
    public bool The_excerpt_of_every_value_is_what_stands_in_the_file(int[] picks, bool crlf, bool flow)
    {
        var end = crlf ? "\r\n" : "\n";
        var text = "";
        foreach (var (pick, i) in (picks ?? []).Take(40).Select((pick, i) => ((uint)pick, i)))
        {
            var word = Words[pick % Words.Length];
            var written = (pick / 8 % 3) switch { 0 => word, 1 => $"'{word}'", _ => $"\"{word}\"" };
            text += flow ? $"- {{ k{i}: {written},  l: [ {written} ] }} # c{end}" : $"-   k{i}:  {written}   # c{end}    l:{end}    - {written}{end}";
        }

        if (text.Length == 0) return true;
        var source = new SourceText("f", text);
        var faults = new DiagnosticList(source);
        var root = YamlReader.Read(faults);
        return faults.Found.Count == 0 && Scalars(root!).All(scalar =>
            source.Excerpt(scalar.Span).Trim('\'', '"') == scalar.Text && source.Excerpt(scalar.Span).Length - scalar.Text.Length == (scalar.IsPlain ? 0 : 2));
    }

    [Fact]
    public void The_span_of_a_collection_ends_with_its_last_value()
    {
        const string Text = "a:\n  - x: 1\n    y: [p, q]   # c\n\nb: z\n";
        var source = new SourceText("f", Text);
        var root = (YamlMapping)YamlReader.Read(new DiagnosticList(source))!;
        Assert.Equal("- x: 1\n    y: [p, q]", source.Excerpt(root.Find("a")!.Value.Span));
        Assert.Equal("x: 1\n    y: [p, q]", source.Excerpt(((YamlSequence)root.Find("a")!.Value).Items[0].Span));
    }

    [Fact]
    public void The_span_of_a_single_key_in_a_list_in_brackets_is_that_of_key_and_value()
    {
        var source = new SourceText("f", "{a: [{ x: 1 }, y: z , { p: q }]}\n");
        var root = (YamlMapping)YamlReader.Read(new DiagnosticList(source))!;
        var list = (YamlSequence)root.Find("a")!.Value;
        Assert.Equal(["{ x: 1 }", "y: z", "{ p: q }"], list.Items.Select(item => source.Excerpt(item.Span)));
    }

    private static IEnumerable<YamlScalar> Scalars(YamlNode node) => node switch
    {
        YamlScalar scalar => [scalar],
        YamlSequence list => list.Items.SelectMany(Scalars),
        YamlMapping mapping => mapping.Entries.SelectMany(entry => Scalars(entry.Value).Prepend(entry.Key)),
        _ => [],
    };
}
