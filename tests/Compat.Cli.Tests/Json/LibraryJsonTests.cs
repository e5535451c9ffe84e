using System.Text.Json.Nodes;
using Compat.Serialization;

namespace Compat.Cli.Tests.Json;

/// <summary>A program that embeds the library writes the JSON of the command: the same but for what is worded for people.</summary>
public sealed class LibraryJsonTests
{
    public static TheoryData<string, Question> Questions => new()
    {
        { "--part display-coated --agent isopropanol --method damp-wipe --strength",
            new() { Part = new("display-coated"), Agent = new("isopropanol"), Method = ApplicationMethod.DampWipe, Strength = Percent(70) } },
        { "--part trolley-frame --agent benzalkonium-chloride --touched-by mucous-membrane --patient airway --cloth cotton",
            new() { Part = new("trolley-frame"), Agent = new("benzalkonium-chloride"), TouchedBy = TouchedBy.MucousMembrane, Patients = [PatientGroup.Airway],
            Cloth = "cotton" } },
        { "--part trolley-frame --agent isopropanol --soil none --strength",
            new() { Part = new("trolley-frame"), Agent = new("isopropanol"), Soil = [], Strength = Percent(70) } },
        { "--part handle --agent isopropanol --against prions",
            new() { Part = new("handle"), Agent = new("isopropanol"), Against = [OrganismTarget.Of(OrganismGroup.Prions)] } },
        { "--material anodised-aluminium --agent sodium-hypochlorite",
            new() { Materials = [new MaterialSlot(new MaterialId("anodised-aluminium"))], Agent = new("sodium-hypochlorite") } },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public void Codes_AreThoseOfTheCommand_WithoutTexts(string line, Question question)
    {
        var kb = KnowledgeBase.Shipped;
        var written = AnswerJson.Of(kb, kb.Ask(question));
        var schema = SchemaFiles.ForEditors("answer");
        using var document = System.Text.Json.JsonDocument.Parse(written);
        Assert.True(schema.Evaluate(document.RootElement).IsValid);
        string[] args = ["ask", .. line.Split(' '), .. line.EndsWith("--strength", StringComparison.Ordinal) ? ["70 % v/v"] : Array.Empty<string>(), "--json"];
        var ofCommand = JsonNode.Parse(CliRun.Of(args).Output)!;
        Assert.Equal(Bare(ofCommand).ToJsonString(), Bare(JsonNode.Parse(written)!).ToJsonString());
        Assert.DoesNotContain("\"text\"", written, StringComparison.Ordinal);
        Assert.Contains("\"cautions\":[\"instructions-and-label-first\",", written, StringComparison.Ordinal);
    }

    [Fact]
    public void Texts_AreTheCallers()
    {
        var kb = KnowledgeBase.Shipped;
        var answer = kb.Ask(new Question { Part = new("handle"), Agent = new("isopropanol"), TouchedBy = TouchedBy.Hand });
        var written = JsonNode.Parse(AnswerJson.Of(kb, answer, new Coded()))!;
        Assert.Equal("reason " + answer.Decisive.Code, (string?)written["decisive"]!["text"]);
        Assert.Equal("caution NeverMix", (string?)written["cautions"]![(int)Caution.NeverMix]);
        Assert.Equal("find out", (string?)written["wouldEstablish"]![0]);
        Assert.All(written["limits"]!.AsArray(), limit => Assert.StartsWith("limit ", (string?)limit!["text"], StringComparison.Ordinal));
        Assert.StartsWith("people ", (string?)written["people"]!["text"], StringComparison.Ordinal);
    }

    private static Strength Percent(decimal figure) => new(Interval.Exactly(figure), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume));

    /// <summary>Without what the command words for people, and without what it looks for besides.</summary>
    private static JsonNode Bare(JsonNode node)
    {
        switch (node)
        {
            case JsonObject record:
                foreach (var key in new[] { "text", "wouldEstablish", "cautions", "alternatives", "servingProducts" }) record.Remove(key);
                foreach (var (_, value) in record) if (value is not null) Bare(value);
                break;
            case JsonArray list:
                foreach (var item in list) if (item is not null) Bare(item);
                break;
        }

        return node;
    }

    private sealed class Coded : AnswerTexts
    {
        public override string Of(Reason reason, Question question) => "reason " + reason.Code;

        public override string Of(Limit limit, Answer answer) => "limit " + limit.Code;

        public override string Of(Duty duty) => "duty " + duty.Kind;

        public override string Of(KillReason reason, Answer answer) => "kill " + reason.Code;

        public override string Of(PeopleJudgement people) => "people " + people.Verdict;

        public override string Of(WindowClosure closure, Answer answer) => "window " + closure.Code;

        public override string Of(Caution caution) => "caution " + caution;

        public override IReadOnlyList<string> WouldEstablish(Answer answer) => ["find out"];
    }
}
