using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Compat.Cli.Cards;

namespace Compat.Cli.Tests.Cards;

/// <summary>Cards as a browser prints them: one A4 page, every word on it, dark on light, large enough.</summary>
public sealed partial class CardBrowserTests
{
    /// <summary>The least contrast of text to what lies behind it: the enhanced level of the web's accessibility guidelines (WCAG 2.2, 1.4.6).</summary>
    private const double LeastContrast = 7;

    public static TheoryData<string> Devices => WardCardTests.Devices;

    [BrowserTheory]
    [MemberData(nameof(Devices))]
    public void Card_OfEveryDemoDevice_IsOnePageWithEveryWordOnIt(string device)
    {
        var html = WardCardTests.Html(device);
        var pdf = Browser.Pdf(html);
        Assert.Equal((1, "595 x 842"), (Pages(pdf), Paper(pdf)));
        var printed = Unbroken(Browser.TextOf(pdf));
        var lines = CardPage.Lines(html);
        Assert.True(lines.Length > 10);
        Assert.All(lines, line => Assert.Contains(Unbroken(line), printed, StringComparison.Ordinal));
    }

    [BrowserFact]
    public void Card_AtTheEdgeOfFitting_IsStillOnePage()
    {
        for (var seed = 0; seed < 6; seed++)
        {
            // Half of them as many lines as fit at all, half in larger type.
            var lines = seed % 2 == 0 ? 60 : 8 + (seed * 5);
            while (CardFit.Of(Filled(new Random(seed), lines)) is null) lines--;
            var card = Filled(new Random(seed), lines);
            var size = CardFit.Of(card)!.Value;
            using var output = new StringWriter();
            CardHtml.Write(output, card, size);
            Assert.True(Pages(Browser.Pdf(output.ToString())) == 1, $"seed {seed}, {lines} lines, {size} points");
        }
    }

    [BrowserFact]
    public void Card_AsShown_HasContrastAndTypeToBeRead()
    {
        // The card forbids scripts, so the measuring page is a copy without that line.
        var html = Regex.Replace(WardCardTests.Html("tonometer"), "<meta http-equiv=[^>]*>", "")
            .Replace("</body>", Measure + "</body>", StringComparison.Ordinal);
        var measured = Measured().Matches(Browser.Dom(html)).Select(match => (Contrast: Number(match, 1), Points: Number(match, 2))).ToArray();
        Assert.True(measured.Length > 20);
        Assert.All(measured, one => Assert.True(one.Contrast >= LeastContrast && one.Points >= CardFit.SmallestFoot - 0.01, one.ToString()));
    }

    [BrowserFact]
    public void Card_WithAScriptInIt_DoesNotRunIt()
    {
        var html = WardCardTests.Html("tonometer").Replace("</body>", "<script>document.title = 'ran';</script></body>", StringComparison.Ordinal);
        Assert.DoesNotContain("<title>ran</title>", Browser.Dom(html), StringComparison.Ordinal);
    }

    private const string Measure = """
        <script>
        const light = c => { const [r, g, b] = c.match(/[0-9.]+/g).slice(0, 3).map(v => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; }); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
        const behind = e => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor; if (!/, 0\)$/.test(c)) return c; } return 'rgb(255, 255, 255)'; };
        const out = [];
        const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
        for (let n; n = walk.nextNode();) {
          if (!n.textContent.trim()) continue;
          const s = getComputedStyle(n.parentElement), a = light(s.color), b = light(behind(n.parentElement));
          out.push('measured ' + ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)).toFixed(2) + ' ' + (parseFloat(s.fontSize) * 0.75).toFixed(2));
        }
        const pre = document.createElement('pre'); pre.textContent = out.join('\n'); document.body.append(pre);
        </script>
        """;

    private static WardCard Filled(Random random, int lines)
    {
        string Words(int least, int most) =>
            string.Join(' ', Enumerable.Range(0, random.Next(least, most))
                .Select(_ => string.Concat(Enumerable.Range(0, random.Next(2, 13)).Select(_ => (char)random.Next('a', 'z' + 1)))));
        CardLine Line() => new(Words(0, 5), Words(3, 25), random.Next(3) == 0);
        CardSection Section(CardPart part, int count) => new(part, Words(1, 4), [new(Words(1, 3), ""), .. Enumerable.Range(0, count).Select(_ => Line())]);
        return new(
            Words(2, 6), Words(0, 9),
            [Section(CardPart.Use, lines / 3), Section(CardPart.Never, lines / 2), Section(CardPart.NotDone, lines / 6), Section(CardPart.Foot, 2)]);
    }

    private static int Pages(byte[] pdf) => Page().Count(Encoding.Latin1.GetString(pdf));

    private static string Paper(byte[] pdf) =>
        string.Join(" x ", MediaBox().Match(Encoding.Latin1.GetString(pdf)).Groups.Values.Skip(1)
            .Select(side => Math.Round(double.Parse(side.Value, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture)));

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    /// <summary>Text without spaces and hyphens: a line may break there, and a hyphen at the end of a line is not read back.</summary>
    private static string Unbroken(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '-'));

    [GeneratedRegex("/Type\\s*/Page\\b(?!s)")]
    private static partial Regex Page();

    [GeneratedRegex("/MediaBox\\s*\\[0 0 ([0-9.]+) ([0-9.]+)\\]")]
    private static partial Regex MediaBox();

    [GeneratedRegex("measured ([0-9.]+) ([0-9.]+)")]
    private static partial Regex Measured();
}
