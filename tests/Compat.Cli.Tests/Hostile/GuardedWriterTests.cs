using System.Text.Json;
using Compat.Cli.Json;

namespace Compat.Cli.Tests.Hostile;

/// <summary>The last door: whatever is written, no hidden character and no command to the runner of a workflow comes out.</summary>
public sealed class GuardedWriterTests
{
    [Theory]
    [InlineData("::error::x\n", ": :error::x\n")]
    [InlineData("a\n  \t::set-output name=a::b\n", "a\n  \t: :set-output name=a::b\n")]
    [InlineData("a ::b\n", "a ::b\n")]
    [InlineData("a::b", "a::b")]
    [InlineData("\u00a0::b", " : :b")]
    [InlineData("see ##[add-mask]x and ##vso[task.x]\n", "see ## [add-mask]x and ##vso [task.x]\n")]
    [InlineData("\u001b[2J\rx\u202e\u2028::y\U000e0041", "\uFFFD[2J\uFFFDx\uFFFD\uFFFD::y\uFFFD")]
    [InlineData("70\u00a0% °C 漢 \U0001F600\n", "70 % °C 漢 \U0001F600\n")]
    public void Text_ComesOutHarmless_HoweverItIsWritten(string text, string harmless)
    {
        Assert.Equal(harmless, Written(writer => writer.Write(text)));
        Assert.Equal(harmless, Written(writer => text.ToList().ForEach(writer.Write)));
        Assert.Equal(harmless, Written(writer => writer.Write(text.ToCharArray())));
        Assert.Equal(harmless, Written(writer => writer.Write(text.AsSpan())));
        Assert.Equal(harmless, Written(writer => writer.Write("{0}", text)));
    }

    [Fact]
    public void PartOfALine_IsShownWhenItIsFlushed_AndTheRestIsNoNewLine() => Assert.Equal("which? ::a\n: :b\n", Written(writer =>
    {
        writer.Write("which? ");
        writer.Flush();
        writer.Write("::a\n::b\n");
    }));

    [Fact]
    public void Json_KeepsItsValuesAndHidesNothing()
    {
        const string value = "##[a] ##vso[b] \u202e\U000e0041\u00a0::c";
        using var output = new StringWriter();
        JsonDocuments.Write(output, json =>
        {
            json.WriteStartObject();
            json.WriteString("a", value);
            json.WriteEndObject();
        });
        var text = output.ToString();
        Assert.Equal(text, Written(writer => writer.Write(text)));
        Assert.DoesNotContain("##[", text, StringComparison.Ordinal);
        using var document = JsonDocument.Parse(text);
        Assert.Equal(value, document.RootElement.GetProperty("a").GetString());
    }

    private static string Written(Action<TextWriter> write)
    {
        using var output = new StringWriter();
        using (var guarded = new GuardedWriter(output))
        {
            write(guarded);
            guarded.Flush();
        }

        return output.ToString();
    }
}
