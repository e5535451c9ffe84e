using System.Text.Json;

namespace Compat.Cli.Tests;

/// <summary>What the shipped data must say, whatever else it says: common practice of the trade, asked through the command.</summary>
public sealed class RequiredAnswers
{
    private static readonly string[] EveryAxis =
        ["--strength", "70 % v/v", "--method", "damp-wipe", "--exposure-time", "1 min", "--temperature", "22 °C", "--ph", "7", "--uses", "100"];

    [Fact]
    public void CoatedDisplay_IsopropanolDampWipe_NotAllowed_NamesRuleDamageAndSource()
    {
        string[] question = ["--part", "display-coated", "--agent", "isopropanol", "--strength", "70 % v/v", "--method", "damp-wipe"];
        var run = Ask(1, question);
        Assert.Contains("coating clouding", run.Flat, StringComparison.Ordinal);
        using var answer = Json(question);
        Assert.Equal("rule-forbids", Text(answer, "decisive", "code"));
        Assert.Contains(Text(answer, "decisive", "arguments", 0), run.Flat, StringComparison.Ordinal);
        Assert.Contains(List(answer, "damage"), damage => damage.GetProperty("mechanism").GetString() == "coating-clouding");
        Assert.Contains(List(answer, "sources"), source => source.GetProperty("kind").GetString()!.Length > 0);
    }

    [Theory]
    [InlineData("damp-wipe")]
    [InlineData("wet-wipe")]
    [InlineData("spray")]
    [InlineData("rinse")]
    [InlineData("immerse")]
    [InlineData(null)]
    public void CoatedDisplay_Ethanol_NotAllowedByAnyMethod(string? method) =>
        Ask(1, ["--part", "display-coated", "--agent", "ethanol", "--strength", "75 % v/v", .. method is null ? Array.Empty<string>() : ["--method", method]]);

    [Fact]
    public void CoatedDisplay_QuaternaryWipeWithAlcohol_NotAllowedBecauseOfItsIsopropanol() =>
        Assert.Contains("Because of its isopropanol", AskAtSite(1, "--part", "display-coated", "--product", "grey-tub-wipe", "--method", "damp-wipe").Flat,
            StringComparison.Ordinal);

    [Fact]
    public void CoatedDisplay_TwoWeakAlcohols_NotAllowedTogether()
    {
        var run = AskAtSite(1, "--part", "display-coated", "--product", "two-spirit-wipe", "--method", "damp-wipe");
        Assert.Contains("its ethanol and isopropanol are together", run.Flat, StringComparison.Ordinal);
        Assert.Contains("alcohol", run.Flat, StringComparison.Ordinal);
        Assert.Contains("up to 6 % v/v", run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void CoatedDisplay_PlainQuaternaryWipe_IsNotRefused() =>
        Assert.Contains(AskAtSite(null, "--part", "display-coated", "--product", "plain-quat-wipe", "--method", "damp-wipe").Code, new[] { 3, 4 });

    [Theory]
    [InlineData("keypad-membrane", "ethanol", "75 % v/v")]
    [InlineData("keypad-membrane", "isopropanol", "70 % v/v")]
    [InlineData("trolley-frame", "ethanol", "75 % v/v")]
    [InlineData("trolley-frame", "isopropanol", "70 % v/v")]
    public void KeypadAndFrame_AlcoholDampWipe_WithinLimitsWithDuties(string part, string agent, string strength)
    {
        string[] question = ["--part", part, "--agent", agent, "--strength", strength, "--method", "damp-wipe"];
        Ask(3, question);
        using var answer = Json(question);
        var duties = List(answer, "duties");
        Assert.Contains(duties, duty => duty.GetProperty("kind").GetString() == "no-pooling");
        Assert.Contains(duties, duty => duty.GetProperty("kind").GetString() == "wipe-dry" && Strings(duty, "ways", "by").Contains("air"));
        Assert.Contains(
            duties, duty => duty.GetProperty("kind").GetString() == "keep-off"
            && duty.GetProperty("parts").EnumerateArray().Any(id => id.GetString() == "socket"));
        Assert.Contains(List(answer, "damage"), damage => damage.GetProperty("onset").GetString() == "cumulative");
    }

    [Theory]
    [InlineData("ethanol", "75 % v/v")]
    [InlineData("isopropanol", "70 % v/v")]
    public void PlasticHousing_AlcoholDampWipe_NotEstablishedAndNamesTheMember(string agent, string strength)
    {
        string[] question = ["--part", "housing-plastic", "--agent", agent, "--strength", strength, "--method", "damp-wipe"];
        var run = Ask(4, question);
        using var answer = Json(question);
        var member = Text(answer, "decisive", "member");
        Assert.EndsWith("-under-strain", member, StringComparison.Ordinal);
        Assert.Contains(member, run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void DemoHousing_ItsInstructionsAllowIt_WetterThanADampClothThePartDoesNotStandIt()
    {
        string[] question = ["--device", "fundus-camera", "--part", "housing", "--agent", "isopropanol", "--strength", "70 % v/v", "--only", "part"];
        AskAtSite(3, question);
        AskAtSite(0, [.. question, "--method", "damp-wipe"]);
    }

    [Fact]
    public void DemoHousing_EveryAxisStatedAndOnlyThePart_MayBeUsed() =>
        AskAtSite(0, ["--device", "fundus-camera", "--part", "housing", "--agent", "isopropanol", .. EveryAxis, "--only", "part"]);

    [Fact]
    public void DemoHousing_EveryAxisStatedAndAllJudged_WithinLimitsForPeople()
    {
        var run = AskAtSite(3, ["--device", "fundus-camera", "--part", "housing", "--agent", "isopropanol", .. EveryAxis]);
        Assert.Contains("people: allowed within limits. One rule on people asks duties", run.Flat, StringComparison.Ordinal);
        Assert.Contains("part: allowed. ", run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void DemoDevice_OnlyListed_AnotherAgentNotAllowed() =>
        Assert.Contains("do not list", AskAtSite(1, "--device", "fundus-camera", "--part", "housing", "--agent", "chlorhexidine", "--method", "damp-wipe").Flat,
            StringComparison.Ordinal);

    [Fact]
    public void Keypad_Spray_NotAllowed() =>
        Assert.Contains("wetter than the part stands",
            Ask(1, "--part", "keypad-membrane", "--agent", "ethanol", "--strength", "70 % v/v", "--method", "spray").Flat, StringComparison.Ordinal);

    [Theory]
    [InlineData("water")]
    [InlineData("ethanol")]
    [InlineData("neutral-detergent")]
    [InlineData("sodium-hypochlorite")]
    public void Socket_AnyAgent_NotAllowed(string agent) => Ask(1, "--part", "socket", "--agent", agent);

    [Fact]
    public void ProbeLens_Brush_Never() =>
        Assert.Contains("never stands brush", Ask(1, "--part", "probe-lens", "--agent", "neutral-detergent", "--method", "damp-wipe", "--act", "brush").Flat,
            StringComparison.Ordinal);

    [Fact]
    public void EveryPart_HeatDrying_Never() =>
        Assert.All(
            KnowledgeBase.Shipped.Data.Parts.Where(part => part.Under is not null),
            part => Assert.Equal(1, Run("--part", part.Id.Value, "--agent", "water", "--act", "heat-drying").Code));

    [Fact]
    public void ProbeLens_GlutaraldehydeBath_WithinLimitsWithARinse()
    {
        string[] question = ["--part", "probe-lens", "--agent", "glutaraldehyde", "--strength", "2.4 % w/v", "--method", "immerse", "--exposure-time", "20 min",
            "--temperature", "22 °C"];
        Ask(3, question);
        using var answer = Json(question);
        Assert.Contains(List(answer, "duties"), duty => duty.GetProperty("kind").GetString() == "take-off" && Strings(duty, "ways", "by").Contains("rinse"));
    }

    [Fact]
    public void ProbeHandle_GlutaraldehydeBath_NotAllowed() =>
        Ask(1, "--part", "probe-handle", "--agent", "glutaraldehyde", "--strength", "2.4 % w/v", "--method", "immerse", "--exposure-time", "20 min",
            "--temperature", "22 °C");

    [Fact]
    public void PlasticHousing_Acetone_NotAllowed() => Ask(1, "--part", "housing-plastic", "--agent", "acetone", "--method", "damp-wipe");

    [Fact]
    public void AnodisedAluminium_HypochloritePhLeftOut_NotAllowed() =>
        Ask(1, "--material", "anodised-aluminium", "--agent", "sodium-hypochlorite", "--strength", "1000 ppm w/v available chlorine");

    [Fact]
    public void StrainedPolycarbonate_WhereOnlyPlainPolycarbonateIsAllowed_NotEstablished()
    {
        string[] rest = ["--agent", "hydrogen-peroxide", "--strength", "1 % w/w", "--method", "damp-wipe"];
        Ask(3, ["--material", "polycarbonate", .. rest]);
        Ask(4, ["--material", "polycarbonate-under-strain", .. rest]);
    }

    [Fact]
    public void FilterCover_QuaternaryAmmonium_FilmStays_NotEstablished() =>
        Assert.Contains("the film stays",
            Ask(4, "--part", "filter-cover", "--agent", "quaternary-ammonium", "--strength", "0.25 % w/w", "--exposure-time", "2 min", "--method",
            "damp-wipe").Flat, StringComparison.Ordinal);

    [Fact]
    public void PairNobodySpeaksOf_NotEstablished_SaysWhatWouldEstablishIt() =>
        Assert.Contains("What would establish it - evidence on", Ask(4, "--material", "polyphenylsulfone", "--agent", "povidone-iodine").Flat,
            StringComparison.Ordinal);

    private static CliRun Run(params string[] question) => CliRun.Of(["ask", .. question]);

    private static CliRun Ask(int? code, params string[] question)
    {
        var run = Run(question);
        if (code is { } expected) Assert.True(expected == run.Code, $"expected {expected}, got {run.Code}\n{run.Output}{run.Notes}");
        return run;
    }

    private static CliRun AskAtSite(int? code, params string[] question) => Ask(code, [.. question, "--site", Repository.Demo]);

    private static JsonDocument Json(params string[] question) => JsonDocument.Parse(Run([.. question, "--json"]).Output);

    private static JsonElement[] List(JsonDocument answer, string name) => answer.RootElement.GetProperty(name).EnumerateArray().ToArray();

    private static string[] Strings(JsonElement record, string list, string field) =>
        record.GetProperty(list).EnumerateArray().Select(item => item.GetProperty(field).GetString()!).ToArray();

    private static string Text(JsonDocument answer, string record, string field) => answer.RootElement.GetProperty(record).GetProperty(field).GetString()!;

    private static string Text(JsonDocument answer, string record, string list, int index) => answer.RootElement.GetProperty(record).GetProperty(list)[index]
        .GetString()!;
}
