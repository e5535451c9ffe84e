
namespace Compat.Cli.Tests.Text;

/// <summary>The sheet of a plan for printing, and what the command returns.</summary>
public sealed class PlanSheetTests
{
    private static readonly string[] Plan = ["plan", "--site", Repository.Demo];

    [Theory]
    [InlineData("slit-lamp")]
    [InlineData("tonometer")]
    [InlineData("fundus-camera")]
    [InlineData("pachymeter")]
    [InlineData("autorefractor")]
    public void EveryPageOfTheSheetFits(string device)
    {
        var sheet = CliRun.Of([.. Plan, "--device", device, "--markdown"]).Output;
        var pages = sheet.Split("page-break-after");
        for (var i = 0; i < pages.Length; i++)
        {
            Assert.Contains($"(page {i + 1})", pages[i], StringComparison.Ordinal);
            Assert.True(pages[i].Split('\n').Sum(line => line.Length == 0 ? 0 : 1 + (line.Length / 100)) <= 62, $"page {i + 1} of {device}");
        }

        Assert.Equal(1, sheet.Split("Never mix agents.").Length - 1);
        Assert.Contains("## Data", sheet, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a|b", "a\\|b")]
    [InlineData("[x](y)", "\\[x\\](y)")]
    [InlineData("<b>", "&lt;b>")]
    [InlineData("> 5", "\\> 5")]
    [InlineData("# one", "#<!-- --> one")]
    [InlineData("a\nb", "a b")]
    public void TextOfDataIsEscaped(string text, string escaped) => Assert.Equal(escaped, Markdown.Plain(text));

    [Fact]
    public void Prions_GiveTheFixedTextAndNoStep()
    {
        var run = CliRun.Of([.. Plan, "--device", "tonometer", "--against", "prions"]);
        Assert.Equal(1, run.Code);
        Assert.Contains("Stop, quarantine, ask infection prevention.", run.Flat, StringComparison.Ordinal);
        Assert.DoesNotContain("Steps", run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void Hold_GivesNoPlan()
    {
        var run = CliRun.Of([.. Plan, "--device", "autorefractor", "--occasion", "incident-hold"]);
        Assert.Equal(1, run.Code);
        Assert.Contains("do not clean it", run.Flat, StringComparison.Ordinal);
        Assert.Contains("Who was told: ____________", run.Flat, StringComparison.Ordinal);
        Assert.DoesNotContain("Steps", run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void OutbreakNeedsAgainst_AndOnlyLooksAndWearAreAccepted()
    {
        var run = CliRun.Of([.. Plan, "--device", "slit-lamp", "--occasion", "after-outbreak", "--accept", "patient"]);
        Assert.Equal(2, run.Code);
        Assert.Contains("`after-outbreak` is planned against something that is named", run.FlatNotes, StringComparison.Ordinal);
        Assert.Contains("`patient` cannot be accepted", run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void SoilIsSaidOfTheDeviceOrOfOnePart()
    {
        var run = CliRun.Of([.. Plan, "--device", "tonometer", "--soil", "none", "--soil", "tip=blood"]);
        Assert.Contains("soil: none", run.Flat, StringComparison.Ordinal);
        Assert.Contains("soil on tip: blood", run.Flat, StringComparison.Ordinal);
        var wrong = CliRun.Of([.. Plan, "--device", "tonometer", "--soil", "tipp=blood", "--soil", "body=bloud"]);
        Assert.Equal(2, wrong.Code);
        Assert.Contains("did you mean `blood`?", wrong.FlatNotes, StringComparison.Ordinal);
        Assert.Contains("`tonometer` has no part `tipp`", CliRun.Of([.. Plan, "--device", "tonometer", "--soil", "tipp=blood"]).FlatNotes,
            StringComparison.Ordinal);
    }

    [Fact]
    public void ARecordOfAnotherDevice_OrWithAWrongKey_IsRefused()
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, "device: slit-lamp\ndate: 2026-11-25\nsteps:\n  - { step: 1, done: true, initials: mk }\n");
            Assert.Contains("the record is of `slit-lamp`", CliRun.Of([.. Plan, "--device", "tonometer", "--done", file]).FlatNotes, StringComparison.Ordinal);
            File.WriteAllText(file, "device: tonometer\ndate: 2026-11-25\nsteps:\n  - { step: 1, done: true, initals: mk }\n");
            var run = CliRun.Of([.. Plan, "--device", "tonometer", "--done", file]);
            Assert.Equal(2, run.Code);
            Assert.Contains("initials", run.FlatNotes, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
