using System.Diagnostics;
using System.Text;
using Compat.Curation.Diagnostics;

namespace Compat.Curation.Tests.Yaml;

/// <summary>Files made to mislead or to exhaust a reader: refused in bounded time, with one exact message.</summary>
public sealed class HostileFileTests
{
    private static readonly TimeSpan Bound = TimeSpan.FromSeconds(30);

    public static TheoryData<string, string, string> Texts => new()
    {
        { "tab in the indentation", "- id: a\n\tname: b\n",
            "d/materials/x.yaml:2:1: error: a tab in the indentation\n  2 |  name: b\n    | ^\n  help: use spaces\n" },
        { "second document", "[]\n---\n[]\n",
            "d/materials/x.yaml:2:1: error: a second document begins here\n  2 | ---\n    | ^^^\n  help: keep one document in a file\n" },
        { "anchor", "- &x { id: a, name: b }\n",
            "d/materials/x.yaml:1:3: error: the anchor `&x` is refused\n  1 | - &x { id: a, name: b }\n    |   ^^\n"
                + "  help: write the value out where it is used\n" },
        { "alias", "- { id: a, name: *x }\n",
            "d/materials/x.yaml:1:18: error: the alias `*x` is refused\n  1 | - { id: a, name: *x }\n    |                  ^^\n"
                + "  help: write the value out where it is used\n" },
        { "tag", "- { id: !!str a, name: b }\n",
            "d/materials/x.yaml:1:9: error: the tag `!!str` is refused\n  1 | - { id: !!str a, name: b }\n    |         ^^^^^\n"
                + "  help: leave it out: the schema says what a value is\n" },
        { "merge key", "- { id: a, name: b, <<: c }\n",
            "d/materials/x.yaml:1:21: error: the merge key `<<` is refused\n  1 | - { id: a, name: b, <<: c }\n    |                     ^^\n"
                + "  help: write the keys out where they are used\n" },
        { "key that is a list", "- { id: a, name: b, [c]: d }\n",
            "d/materials/x.yaml:1:21: error: a key is a single word, read a list\n  1 | - { id: a, name: b, [c]: d }\n    |                     ^^^\n" },
        { "duplicate key", "- id: a\n  name: b\n  id: c\n",
            "d/materials/x.yaml:3:3: error: the key `id` is written twice\n  3 |   id: c\n    |   ^^\n  first written here: d/materials/x.yaml:1:3\n"
                + "  1 | - id: a\n    |   ^^\n  help: keep one of the two\n" },
        { "NUL", "- id: a\n  name: b\0c\n",
            "d/materials/x.yaml:2:10: error: the character U+0000 cannot be seen\n  2 |   name: b\uFFFDc\n    |          ^\n  help: leave it out\n" },
        { "U+0085", "- id: a\u0085  name: b\n",
            "d/materials/x.yaml:1:8: error: the character U+0085 cannot be seen\n  1 | - id: a\uFFFD  name: b\n    |        ^\n  help: leave it out\n" },
        { "right-to-left override", "- id: a\n  name: \u202Eb\n",
            "d/materials/x.yaml:2:9: error: the character U+202E cannot be seen\n  2 |   name: \uFFFDb\n    |         ^\n  help: leave it out\n" },
        { "unclosed list", "- id: a\n  name: [b\n",
            "d/materials/x.yaml:3:1: error: a list in brackets is not closed\n  3 |\n    | ^\n  opened here: d/materials/x.yaml:2:9\n  2 |   name: [b\n"
                + "    |         ^\n  help: write `,` between items and `]` behind the last\n" },
        { "bad escape", "- id: a\n  name: \"\\Uzzzzzzzz\"\n", "" },
        { "empty tag", "- id: a\n  name: !<> b\n", "" },
        { "empty file", "", "d/materials/x.yaml:1:1: error: the file holds nothing\n  1 |\n    | ^\n  help: write `[]` for an empty list\n" },
        { "only a comment", "# nothing\n",
            "d/materials/x.yaml:1:1: error: the file holds nothing\n  1 | # nothing\n    | ^\n  help: write `[]` for an empty list\n" },
        { "astral characters before the fault", "- { id: a, name: 😀, nmae: b }\n",
            "d/materials/x.yaml:1:22: error: the key `nmae` is not known here\n  1 | - { id: a, name: 😀, nmae: b }\n    |                     ^^^^\n"
                + "  help: known here: `id`, `name`, `under`, `delicate`, `declared-only-suffices`, `also-called`, `sources`, `note`\n" },
        { "lone CR", "- id: a\r  name: b\r  nmae: c\r",
            "d/materials/x.yaml:3:3: error: the key `nmae` is not known here\n  3 |   nmae: c\n    |   ^^^^\n"
                + "  help: known here: `id`, `name`, `under`, `delicate`, `declared-only-suffices`, `also-called`, `sources`, `note`\n" },
        { "long line", "- { id: a, name: " + new string('b', 300) + ", nmae: c, note: " + new string('d', 300) + " }\n",
            "d/materials/x.yaml:1:320: error: the key `nmae` is not known here\n"
                + "  1 | …bbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbbb, nmae: c, note: " + new string('d', 45) + "…\n    |                                         "
                + " ^^^^\n  help: known here: `id`, `name`, `under`, `delicate`, `declared-only-suffices`, `also-called`, `sources`, `note`\n" },
        { "10,000 deep by brackets", new string('[', 10_000),
            "d/materials/x.yaml:1:65: error: nested more than 64 deep\n  1 | …" + new string('[', 100) + "…\n    |  " + new string(' ', 40) + "^\n" },
        { "100,000 brackets", new string('[', 100_000),
            "d/materials/x.yaml:1:65: error: nested more than 64 deep\n  1 | …" + new string('[', 100) + "…\n    |  " + new string(' ', 40) + "^\n" },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void It_is_refused_with_one_exact_message(string what, string text, string expected)
    {
        var clock = Stopwatch.StartNew();
        var shown = Show(Encoding.UTF8.GetBytes(text));
        Assert.True(clock.Elapsed < Bound, what);
        if (expected.Length > 0) Assert.Equal(expected + "\n", shown);
        else Assert.Single(shown.Split('\n'), line => line.Contains(": error: ", StringComparison.Ordinal));
    }

    [Fact]
    public void Ten_thousand_indented_levels_are_refused()
    {
        var text = new StringBuilder();
        for (var i = 0; i < 10_000; i++) text.Append('-').Append(' ');
        Assert.Contains("nested more than 64 deep", Show(Encoding.UTF8.GetBytes(text.Append('x').ToString())), StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_utf8_are_shown_where_they_stand()
    {
        var bytes = "- id: a\n  name: b"u8.ToArray().Concat(new byte[] { 0xC3, 0x28 }).ToArray();
        Assert.Equal("d/materials/x.yaml:2:10: error: byte 17 of the file (0xC3) is no UTF-8\n  2 |   name: b\uFFFD(\n    |          ^\n"
            + "  help: save the file as UTF-8\n\n", Show(bytes));
        Assert.Contains("byte 3 of the file (0xFF)", Show([0xEF, 0xBB, 0xBF, 0xFF]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_byte_order_mark_is_taken() =>
        Assert.Equal("", Show([0xEF, 0xBB, 0xBF, .. "- { id: any-material, name: any }"u8]));

    [Fact]
    public void A_file_of_200_MB_is_refused_without_reading_it()
    {
        var folder = Directory.CreateTempSubdirectory("compat-test-");
        try
        {
            var path = Path.Combine(folder.CreateSubdirectory("materials").FullName, "x.yaml");
            using (var file = new FileStream(path, FileMode.CreateNew)) file.SetLength(200L * 1024 * 1024);
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var clock = Stopwatch.StartNew();
            var read = DataFolder.Read(folder.FullName);
            Assert.True(clock.Elapsed < Bound);
            Assert.True(GC.GetTotalAllocatedBytes(precise: true) - before < 32 * 1024 * 1024);
            Assert.Equal("the file has more than 16 MB", Assert.Single(read.Diagnostics).Message);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void A_value_of_nearly_16_MB_is_refused_in_bounded_time()
    {
        var clock = Stopwatch.StartNew();
        var shown = Show(Encoding.UTF8.GetBytes("- id: a\n  name: " + new string('b', (16 * 1024 * 1024) - 100)));
        Assert.True(clock.Elapsed < Bound);
        Assert.Contains("characters: at most 4000", shown, StringComparison.Ordinal);
        Assert.True(shown.Length < 1000);
    }

    [Theory]
    [InlineData("- a\n", 900_000)]
    [InlineData("a, ", 5_000_000)]
    [InlineData("- { a: b }\n", 300_000)]
    [InlineData("- [", 1_000_000)]
    [InlineData("&a ", 1_000_000)]
    [InlineData("? ", 1_000_000)]
    [InlineData("- !", 1_000_000)]
    [InlineData("\"", 1_000_001)]
    [InlineData("\t", 4_000_000)]
    [InlineData("-\n", 900_000)]
    public void Much_of_the_same_is_refused_in_bounded_time(string piece, int times)
    {
        var text = string.Concat(Enumerable.Repeat(piece, times));
        if (piece == "a, ") text = "[" + text + "]";
        var clock = Stopwatch.StartNew();
        var read = Read(Encoding.UTF8.GetBytes(text));
        Assert.True(clock.Elapsed < Bound, clock.Elapsed.ToString());
        Assert.InRange(read.Diagnostics.Count, 1, 101);
        Assert.True(DiagnosticText.Render(read.Diagnostics).Length < 100_000);
    }

    [Fact]
    public void A_file_full_of_faults_is_cut_off()
    {
        var text = string.Concat(Enumerable.Range(0, 5000).Select(i => $"- {{ id: a{i}, name: b, key{i}: c }}\n"));
        var read = Read(Encoding.UTF8.GetBytes(text));
        Assert.Equal(101, read.Diagnostics.Count);
        Assert.Equal("more than 100 errors in this file; the rest is not shown", read.Diagnostics[^1].Message);
    }

    [Fact]
    public void Random_text_never_ends_in_an_exception()
    {
        const string Letters = "ab:- []{}#&*!|>'\"%@`,?\n\r\\U\u0085~<";
        var random = new Random(20261125);
        for (var round = 0; round < 4000; round++)
        {
            var text = string.Concat(Enumerable.Range(0, random.Next(1, 40)).Select(_ => Letters[random.Next(Letters.Length)]));
            Assert.True(Show(Encoding.UTF8.GetBytes(text)) is not null, text);
        }
    }

    private static ReadResult Read(byte[] bytes) => DataFolder.Read(new Dictionary<string, byte[]> { ["materials/x.yaml"] = bytes }, "d");

    private static string Show(byte[] bytes) => DiagnosticText.Render(Read(bytes).Diagnostics);
}
