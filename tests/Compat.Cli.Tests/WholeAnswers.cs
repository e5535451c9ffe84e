using System.Text.Json;

namespace Compat.Cli.Tests;

/// <summary>What <c>ask</c> says where kill and people are judged beside the part.</summary>
public sealed class WholeAnswers
{
    [Theory]
    [InlineData("HBV", "hepatitis-b-virus")]
    [InlineData("hbv", "hepatitis-b-virus")]
    [InlineData("c. diff", "clostridioides-difficile")]
    [InlineData("Hepatitis B virus", "hepatitis-b-virus")]
    [InlineData("Non enveloped viruses", "non-enveloped-viruses")]
    [InlineData("spores", "spores")]
    public void Against_AnyNameOfIt_IsUnderstood(string name, string word)
    {
        using var answer = Json("--part", "trolley-frame", "--agent", "ethanol", "--against", name);
        Assert.Equal([word], answer.RootElement.GetProperty("need").GetProperty("against").EnumerateArray().Select(item => item.GetString()));
    }

    [Fact]
    public void Soil_None_IsNothingAndNotLeftOut()
    {
        using var answer = Json("--part", "trolley-frame", "--agent", "ethanol", "--soil", "none");
        var need = answer.RootElement.GetProperty("need");
        Assert.Equal((0, false), (need.GetProperty("soil").GetArrayLength(), need.GetProperty("soilAssumed").GetBoolean()));
    }

    [Theory]
    [InlineData("`none` and another soil are both given", "--soil", "none", "--soil", "blood")]
    [InlineData("did you mean `blood`?", "--soil", "bloud")]
    [InlineData("the words are: cleaned, low, intermediate, high, sterile", "--level", "hi")]
    [InlineData("did you mean `mucous-membrane`?", "--touched-by", "mucous-membran")]
    [InlineData("did you mean `newborn`?", "--patient", "newbrn")]
    [InlineData("did you mean `norovirus`?", "--against", "norovirs")]
    [InlineData("name an organism or one of the groups", "--against", "something else")]
    [InlineData("is no word for a cloth", "--cloth", "cotton and paper")]
    public void Option_ThatIsWrong_IsBadInput(string text, params string[] options)
    {
        var run = CliRun.Of(["ask", "--part", "trolley-frame", "--agent", "ethanol", .. options]);
        Assert.Equal((2, ""), (run.Code, run.Output));
        Assert.Contains(text, run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void OnlyPart_WithADevice_JudgesNeitherKillNorPeople()
    {
        var run = CliRun.Of("ask", "--site", Repository.Demo, "--device", "tonometer", "--agent", "ethanol", "--only", "part", "--json");
        Assert.DoesNotContain("\"need\"", run.Output, StringComparison.Ordinal);
        Assert.Contains("\"kill\": false", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Prions_TheFixedText_AndNoAgentIsOffered()
    {
        var run = CliRun.Of("ask", "--part", "trolley-frame", "--agent", "ethanol", "--against", "vCJD");
        Assert.Equal(1, run.Code);
        Assert.Contains("Kill decides: Stop, quarantine, ask infection prevention.", run.Flat, StringComparison.Ordinal);
        Assert.DoesNotContain("do it all", run.Flat, StringComparison.Ordinal);
    }

    [Fact]
    public void BloodOnADevice_PartsKeptDry_GoToTheEngineer()
    {
        string[] question = ["ask", "--site", Repository.Demo, "--device", "slit-lamp", "--product", "plain-quat-wipe"];
        Assert.Contains("Needs nothing", CliRun.Of(question).Flat, StringComparison.Ordinal);
        var run = CliRun.Of([.. question, "--soil", "blood"]);
        Assert.Equal(1, run.Code);
        Assert.DoesNotContain("Needs nothing", run.Flat, StringComparison.Ordinal);
        Assert.Contains("Kill decides (part too): Soil on a part that is kept dry: take the device out of use and call the engineer.", run.Flat,
            StringComparison.Ordinal);
    }

    [Fact]
    public void NotAllowed_EndsWithWhatServes()
    {
        using var answer = Json("--part", "trolley-frame", "--agent", "acetone", "--touched-by", "hand", "--soil", "none", "--method", "wet-wipe");
        var agents = answer.RootElement.GetProperty("alternatives").EnumerateArray().Select(item => item.GetString()!).ToArray();
        Assert.Contains("isopropanol", agents);
        Assert.DoesNotContain("acetone", agents);
        Assert.Equal(
            3, CliRun.Of("ask", "--part", "trolley-frame", "--agent", "isopropanol", "--strength", "70 % v/v", "--touched-by", "hand", "--soil", "none",
            "--method", "wet-wipe").Code);
    }

    private static JsonDocument Json(params string[] question) => JsonDocument.Parse(CliRun.Of(["ask", .. question, "--json"]).Output);
}
