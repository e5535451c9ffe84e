using Compat.Cli.Cards;
using Compat.Curation;
using Compat.Planning;

namespace Compat.Cli.Tests.Cards;

/// <summary>The card for the ward: it stands alone, loses nothing of what is never done, and is refused where it would not be read.</summary>
public sealed class WardCardTests
{
    private static readonly KnowledgeBase Kb = SiteFile.LayOver(KnowledgeBase.Shipped, Repository.Demo).KnowledgeBase!;

    public static TheoryData<string> Devices => new(Kb.Sites[0].Devices.Select(device => device.Id.Value));

    internal static string Html(string device, params string[] more)
    {
        var run = CliRun.Of(["plan", "--site", Repository.Demo, "--device", device, "--card", .. more]);
        Assert.True(run.Code != 2, run.Notes);
        return run.Output;
    }

    [Theory]
    [MemberData(nameof(Devices))]
    public void Card_OfEveryDemoDevice_StandsAlone(string device)
    {
        var html = Html(device);
        Assert.StartsWith("<!DOCTYPE html>\n<html lang=\"en\">\n", html, StringComparison.Ordinal);
        Assert.Contains("@page { size: A4 portrait;", html, StringComparison.Ordinal);
        foreach (var reached in new[] { "<script", "<img", "<link", "http:", "https:", "src=", "href=", "url(", "@import", "on" + "click", "\u001B" })
            Assert.DoesNotContain(reached, html, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(
            ["#000", "#fff", "#000"],
            System.Text.RegularExpressions.Regex.Matches(html[..html.IndexOf("</style>", StringComparison.Ordinal)], "#[0-9a-fA-F]{3,8}\\b")
            .Select(match => match.Value));
        foreach (var identity in Kb.Identity) Assert.Contains(identity.Hash[..16], html, StringComparison.Ordinal);
        foreach (var caution in VerdictWording.Cautions.Skip(1)) Assert.Contains(System.Net.WebUtility.HtmlEncode(caution), html, StringComparison.Ordinal);
        Assert.Equal(html, Html(device));
    }

    [Theory]
    [MemberData(nameof(Devices))]
    public void Card_OfEveryDemoDevice_LosesNothingThatIsNeverDone(string device)
    {
        var sheet = Kb.PlanOf(new PlanQuestion { Device = new DeviceId(device) });
        var never = NeverList.Of(Kb, sheet);
        Assert.NotEmpty(never.Uses);
        var lines = CardPage.Lines(Html(device), "never");
        var of = Kb.Sites[0].Devices.First(one => one.Id.Value == device);
        foreach (var use in never.Uses)
            Assert.Contains(lines, line => Names(line, Product(use.Product)) && OnPart(line, of, use.Part) && Harms(use).All(line.Contains));
        foreach (var pair in never.NeverTogether)
            Assert.Contains(
                lines, line => Names(line, Product(pair.One)) && Names(line, Product(pair.Other)) && line.Contains("or on top of", StringComparison.Ordinal));
        foreach (var part in never.KeepDry)
            Assert.Contains(lines, line => line.StartsWith("Anything wet on ", StringComparison.Ordinal) && OnPart(line, of, part));
        foreach (var (wet, part) in never.NeverWetter.SelectMany(wet => wet.Parts.Select(part => (wet, part))))
            Assert.Contains(lines, line => line.Contains("liquid gets in or under it", StringComparison.Ordinal) && OnPart(line, of, part));
        foreach (var (act, part) in never.NeverActs.SelectMany(act => act.Parts.Select(part => (act, part))))
            Assert.Contains(lines, line => line.EndsWith("it is damaged", StringComparison.Ordinal) && OnPart(line, of, part));
    }

    /// <summary>
    /// A hazard of strong peroxide stands on the cards of a shelf with strong peroxide beside alcohol, and on none of one with a weak peroxide wipe.
    /// </summary>
    [Theory]
    [InlineData("0.5", false)]
    [InlineData("10", true)]
    public void Cards_OfPeroxideBesideAlcohol_TellOfExplosionWhereStrong(string percent, bool isTold)
    {
        Assert.True(StrengthUnit.TryParse("% w/w", out var unit));
        var peroxide = new Product
        {
            Id = new("peroxide-liquid"),
            Name = "peroxide liquid",
            Composition = Composition.Full,
            StrengthOf = StrengthOf.Liquid,
            Ingredients = [new()
            {
                Agent = new AgentId("hydrogen-peroxide"),
                Strength = new Strength(Interval.Exactly(decimal.Parse(percent, System.Globalization.CultureInfo.InvariantCulture)), unit!),
            }],
        };
        var kb = Kb.With(new Site { Id = new("one-more"), Name = "one more", Products = [peroxide] });
        var sheets = kb.Sites[0].Devices.Take(6).Select(device => kb.PlanOf(new PlanQuestion { Device = device.Id })).ToArray();
        Assert.Contains(sheets, sheet => sheet.Products.Any(id => id.Value.Contains("spirit", StringComparison.Ordinal)));
        var told = sheets.SelectMany(sheet => NeverList.Of(kb, sheet).NeverTogether).Where(pair => pair.One == peroxide.Id || pair.Other == peroxide.Id)
            .SelectMany(pair => pair.Hazards);
        Assert.Equal(isTold, told.Any(hazard => hazard.Effects.Contains(Compat.Model.MixingEffect.Explosion)));
    }

    [Theory]
    [MemberData(nameof(Devices))]
    public void NeverList_IsWhatTheQuestionsAnswer(string device)
    {
        var sheet = Kb.PlanOf(new PlanQuestion { Device = new DeviceId(device) });
        var listed = NeverList.Of(Kb, sheet).Uses.Select(use => (use.Product, use.Part)).ToHashSet();
        var used = sheet.Steps.Where(step => step.Product is not null).SelectMany(step => step.Answers.Select(answer => (step.Product!, answer.Part)))
            .ToHashSet();
        foreach (var part in sheet.Parts.Where(part => !part.Need.KeptDry))
        {
            foreach (var product in Kb.Sites[0].Products.Select(one => one.Id).Where(id => !used.Contains((id, part.Part.Id))))
            {
                var answer = Kb.Ask(new Question { Device = sheet.Question.Device, DevicePart = part.Part.Id, Product = product });
                var forbidden = answer.PartVerdict == Verdict.NotAllowed || answer.People!.Verdict == Verdict.NotAllowed;
                Assert.True(forbidden == listed.Contains((product, part.Part.Id)), $"{product} on {part.Part.Id}");
            }
        }

        Assert.Empty(listed.Intersect(used));
    }

    [Fact]
    public void Card_OfAPlan_NamesEveryProductStepWithItsPartsAndContactTime()
    {
        var sheet = Kb.PlanOf(new PlanQuestion { Device = new DeviceId("tonometer") });
        var use = CardPage.Lines(Html("tonometer"), "use");
        foreach (var step in sheet.Steps.Where(step => step.Setting is not null))
        {
            var at = Array.FindIndex(use, line => line.Contains($"with {Product(step.Product!)}: ", StringComparison.Ordinal));
            Assert.True(at > 0, step.Product!.Value);
            Assert.All(step.Parts, part => Assert.Contains(part.Value.Replace('-', ' '), use[at], StringComparison.Ordinal));
            if (step.Setting!.ContactTime > 0m)
                Assert.Contains(FigureWording.Duration(step.Setting.ContactTime).Replace('\u00a0', ' '), use[at + 1], StringComparison.Ordinal);
        }

        Assert.Contains("measuring drum cannot be done", string.Join('\n', CardPage.Lines(Html("tonometer"), "not-done")), StringComparison.Ordinal);
    }

    [Fact]
    public void Card_OfAHeldDeviceAndOfPrions_SaysOnlyThat()
    {
        Assert.Empty(CardPage.Lines(Html("autorefractor", "--occasion", "incident-hold"), "never"));
        Assert.Contains(
            CardPage.Lines(Html("autorefractor", "--occasion", "incident-hold")), line => line.StartsWith("Do not clean it", StringComparison.Ordinal));
        Assert.Contains(
            CardPage.Lines(Html("tonometer", "--against", "prions"), "use"), line =>
                line.Contains("ask infection prevention", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Card_OfAnotherFormatToo_IsRefused() =>
        Assert.Contains("only one of", CliRun.Of("plan", "--site", Repository.Demo, "--device", "tonometer", "--card", "--json").FlatNotes,
            StringComparison.Ordinal);

    [Fact]
    public void Card_OfHostileNames_IsTextOnly()
    {
        var site = Kb.Sites[0];
        var hostile = site with
        {
            Devices = [site.Devices[1] with
            {
                Name = "</title><script>alert(1)</script>",
                Parts = [.. site.Devices[1].Parts.Select(part => part with { Name = "\"><img src=x onerror=alert(1)>" + part.Id })],
            }],
            Products = [.. site.Products.Select(product => product with { Name = "<b>" + product.Id + "</b>&amp;" })],
            Rules = [],
            Levels = [],
        };
        var kb = KnowledgeBase.Shipped.With(hostile);
        var sheet = kb.PlanOf(new PlanQuestion { Device = hostile.Devices[0].Id });
        using var output = new StringWriter();
        CardHtml.Write(output, new CardMaker(sheet, NeverList.Of(kb, sheet), new Names(kb)).Make(), CardFit.Smallest);
        var html = output.ToString();
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.Contains("</title><script>alert(1)</script>", CardPage.Lines(html)[0], StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Card_TooLongForOnePage_IsAnErrorAndWritesNothing()
    {
        var text = File.ReadAllText(Repository.Demo);
        var file = Path.Combine(Path.GetTempPath(), $"compat-card-{Environment.ProcessId}.yaml");
        var more = string.Concat(
            Enumerable.Range(1, 40).Select(i => $"      - {{ id: keypad-{i}, name: keypad of the bedside unit number {i}, type: keypad-membrane }}\n"));
        File.WriteAllText(
            file, text.Replace("      - { id: keypad, type: keypad-membrane }\n", "      - { id: keypad, type: keypad-membrane }\n" + more,
            StringComparison.Ordinal));
        try
        {
            var run = CliRun.Of("plan", "--site", file, "--device", "autorefractor", "--card");
            Assert.Equal((2, ""), (run.Code, run.Output));
            Assert.Matches("the card is [0-9]+ % too long for one page", run.FlatNotes);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Product(ProductId id) => Kb.Sites[0].Products.First(product => product.Id == id).Name;

    private static bool Names(string line, string name) => line.Contains(name, StringComparison.OrdinalIgnoreCase);

    private static bool OnPart(string line, Model.Device device, DevicePartId id) =>
        Names(line, device.Parts.First(part => part.Id == id).Name ?? id.Value.Replace('-', ' ')) || Names(line, CardNames.EveryPart);

    /// <summary>What must stand with a use: the worst that happens to the part, or what harms people, or the instructions.</summary>
    private static string[] Harms(NeverUse use) =>
        use.Damage.Count > 0 ? [DamageWording.Of(use.Damage.MaxBy(damage => damage.Consequence)!)]
        : use.Harm.Count > 0 ? [.. use.Harm]
        : use.Reason == NeverReason.Instructions ? ["the device's instructions rule it out"] : [];
}
