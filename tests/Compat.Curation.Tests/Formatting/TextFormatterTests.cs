using Compat.Curation.Diagnostics;
using Compat.Curation.Formatting;
using Compat.Curation.Schemas;

namespace Compat.Curation.Tests.Formatting;

public sealed class TextFormatterTests
{
    [Theory]
    [InlineData("- {id: a,name: b}", "- { id: a, name: b }\n")]
    [InlineData("---\n- id: a\r\n  name: b\r...\n", "- id: a\n  name: b\n")]
    [InlineData("%YAML 1.2\n--- # c\n-   name: b\n    id: a", "# c\n- id: a\n  name: b\n")]
    [InlineData("\n\n- id: a\n\n\n  name: b\n\n\n", "- id: a\n\n  name: b\n")]
    [InlineData("- name: b # of b\n  # on top of a\n  id: a # of a\n", "- # on top of a\n  id: a # of a\n  name: \"b\" # of b\n")]
    [InlineData("- id: a\n  note: c\n  name: b\n  # last\n# next\n- id: b\n  name: b\n",
        "- id: a\n  name: b\n  note: c\n  # last\n# next\n- id: b\n  name: b\n")]
    [InlineData("- id: a\n  note: c\n\n  under: b\n  name: b\n", "- id: a\n  note: c\n\n  name: b\n  under: b\n")]
    [InlineData("- id: a\n  name: b\n  zzz: 1\n", null)]
    [InlineData("[]", "[]\n")]
    [InlineData("# only\n[ ]  # c", "# only\n[] # c\n")]
    public void Materials_are_laid_out_so(string text, string? expected)
    {
        var faults = new List<Diagnostic>();
        Assert.Equal(expected, TextFormatter.Run(FileKind.Materials, new("f", text), null, faults));
        Assert.Equal(expected is null ? 1 : 0, faults.Count);
    }

    [Theory]
    [InlineData("[ a,b ,]", "[a, b]")]
    [InlineData("[a,\n    b]", "[a, b]")]
    [InlineData("[\n    a, b]", "[\n      a,\n      b\n    ]")]
    [InlineData("[a # one\n    ,b]", "[\n      a, # one\n      b\n    ]")]
    [InlineData("[a, # one\n    # two\n    ]", "[\n      \"a\" # one\n      # two\n    ]")]
    [InlineData("\n  - a\n  -   b", "\n    - a\n    - b")]
    [InlineData("\n   - a\n\n   # b\n   - b", "\n    - a\n\n    # b\n    - b")]
    [InlineData("# why\n   [a]", "# why\n    [a]")]
    [InlineData("[\"a, b\", 'c', \"it's\", 'x: y', \"12-3-4\", '7', \"1 in 50\", \"5min\"]",
        "[\"a, b\", c, it's, \"x: y\", \"12-3-4\", \"7\", \"1 in 50\", \"5min\"]")]
    public void Lists_are_laid_out_so(string text, string expected) =>
        Assert.Equal("- id: a\n  name: b\n  also-called:" + (expected[0] == '\n' ? "" : " ") + expected + "\n",
            Formatted(FileKind.Materials, $"- id: a\n  name: b\n  also-called: {text}\n"));

    [Theory]
    [InlineData(">- # c\n    one\n    two\n", "\"one two\" # c")]
    [InlineData("\"one\" # c", "\"one\" # c")]
    [InlineData("one\n    two", "one two")]
    [InlineData("'it''s \"so\"'", "it's \"so\"")]
    [InlineData("'\"so\" \\: it is'", "\"\\\"so\\\" \\\\: it is\"")]
    [InlineData("2017", "\"2017\"")]
    [InlineData("\"no\"", "\"no\"")]
    [InlineData("<= 5", "\"<= 5\"")]
    [InlineData("'2026-11-25'", "2026-11-25")]
    [InlineData("\"http://a.org/b#c\"", "http://a.org/b#c")]
    [InlineData("'a #b'", "\"a #b\"")]
    [InlineData("\"a:\"", "\"a:\"")]
    public void Texts_stand_on_one_line_and_in_quotes_only_where_they_must(string text, string expected) =>
        Assert.Equal($"- id: a\n  name: b\n  note: {expected}\n", Formatted(FileKind.Materials, $"- id: a\n  name: b\n  note: {text}"));

    [Theory]
    [InlineData("<=70 % v/v", "<= 70 % v/v")]
    [InlineData("<  8.50", "< 8.50")]
    [InlineData("60 % v/v .. 80 % v/v", "60..80 % v/v")]
    [InlineData("30 s..2min", "30 s..2 min")]
    [InlineData(">5 and <10", "> 5 and < 10")]
    [InlineData(">= 5 °C and <= 10 °C", "5..10 °C")]
    [InlineData("> 5 % v/v and <= 10 % v/v", "> 5 and <= 10 % v/v")]
    [InlineData("=37 °C", "= 37 °C")]
    [InlineData("=  1000", "= 1000")]
    [InlineData("1in 50", "1 in 50")]
    [InlineData("1+49", "1 + 49")]
    public void Measured_texts_are_spelt_so(string text, string expected)
    {
        Assert.Equal(expected, MeasuredText.Spell(text));
        Assert.True(MeasuredText.AreSame(text, expected));
        Assert.Equal(expected, MeasuredText.Spell(expected));
    }

    [Theory]
    [InlineData("any")]
    [InlineData("5 apples")]
    [InlineData("2026-11-25")]
    [InlineData("1:50")]
    public void What_is_not_measured_is_not_spelt_anew(string text) => Assert.Null(MeasuredText.Spell(text));

    [Fact]
    public void A_title_that_looks_measured_is_left_as_it_is() =>
        Assert.Equal("- id: a\n  name: \"<=5\"\n", Formatted(FileKind.Materials, "- id: a\n  name: '<=5'\n"));

    [Fact]
    public void The_line_that_names_the_schema_comes_first_and_is_put_in_where_it_is_missing()
    {
        const string Line = "# yaml-language-server: $schema=../schemas/version.schema.json";
        Assert.Equal($"{Line}\n# c\nversion: a\n", Formatted(FileKind.Version, $"# c\n{Line}\nversion: a\n"));
        Assert.Equal($"{Line}\n# c\nversion: a\n", TextFormatter.Run(FileKind.Version, new("f", "# c\nversion: a\n"), Line, []));
        Assert.Equal("version", HeadPass.SchemaOf(Line));
        Assert.Null(HeadPass.SchemaOf("# yaml-language-server: none\n"));
    }

    [Theory]
    [InlineData("- ? id\n  : a\n  name: b\n")]
    [InlineData("- id: a\n  name: b\n  note:\n")]
    public void What_is_not_laid_out_is_said_at_its_place(string text)
    {
        var faults = new List<Diagnostic>();
        Assert.Null(TextFormatter.Run(FileKind.Materials, new("f", text), null, faults));
        Assert.Equal("not-formatted", Assert.Single(faults).Code);
        Assert.NotNull(faults[0].Place);
    }

    private static string Formatted(FileKind kind, string text)
    {
        var faults = new List<Diagnostic>();
        var formatted = TextFormatter.Run(kind, new("f", text), null, faults);
        Assert.Equal("", DiagnosticText.Render(faults));
        return formatted!;
    }
}
