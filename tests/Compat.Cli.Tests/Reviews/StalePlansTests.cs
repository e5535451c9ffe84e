using System.Text.Json;

namespace Compat.Cli.Tests.Reviews;

/// <summary>Edits that make a plan stale, and edits that do not.</summary>
public sealed class StalePlansTests
{
    private const string NewRule = """
        - id: lid.ethanol
          part: lid
          agent: ethanol
          when: { uses: ">= 1" }
          verdict: not-allowed
          damage: { mechanism: crazing, onset: first-use, lasting: true, consequence: looks }
          why: It is invented.
          sources: [a-paper]
          reviewed: 2026-11-25
        - id: housing.alcohol
        """;

    public static TheoryData<string, string, string, string[]> Stale => new()
    {
        { "rules/rules.yaml", "strength: \"<= 80 % v/v\"", "strength: \"<= 60 % v/v\"",
            ["tightened: step", "`shell` with `spirit-cloth`: allowed within limits -> not established",
            "rule `housing.alcohol` decided then, not now: `head/rules/rules.yaml:1:7`", "by the edit of rule `housing.alcohol` changed"] },
        { "rules/rules.yaml", "- id: housing.alcohol", NewRule,
            ["tightened: step", "`cover` with `spirit-cloth`: allowed within limits -> not allowed",
            "rule `lid.ethanol` decides now: `head/rules/rules.yaml:1:7`", "by the edit of rule `lid.ethanol` added: `head/rules/rules.yaml:1:7`"] },
        { "rules/rules.yaml", "inspect: after 100 uses", "inspect: after 50 uses",
            ["tightened: step", "now also: ", "by the edit of rule `housing.alcohol` changed"] },
        { "rules/rules.yaml", "exposure-time: \"<= 2 min\", temperature: \"10..30 °C\", ph: \"6..8\", uses: any",
            "exposure-time: \"<= 2 min\", temperature: \"10..30 °C\", ph: \"6..8\", uses: \"<= 1000\"",
            ["tightened: step", "not allowed as a whole any more: "] },
        { "rules/rules.yaml", "  duties: [{ inspect: after 100 uses, look-for: fine cracks }]\n", "",
            ["loosened: step", "no longer: ", "by the edit of rule `housing.alcohol` changed"] },
        { "parts/parts.yaml", "wettest: wet-wipe, geometry: open, touched-by: hand }\n- { id: lid",
            "wettest: dry-wipe, geometry: open, touched-by: hand }\n- { id: lid",
            ["tightened: step", "allowed within limits -> not allowed", "by the edit of part `housing` changed"] },
    };

    public static TheoryData<string, string, string> Holding => new()
    {
        { "rules/rules.yaml", "when: { strength: \">= 70 % v/v\" }", "when: { strength: \">= 75 % v/v\" }" },
        { "rules/rules.yaml", "why: It is invented.\n  sources: [a-handbook]\n  reviewed: 2026-11-25\n- id: housing.propanol",
            "why: It is said otherwise.\n  sources: [a-handbook]\n  reviewed: 2026-11-26\n- id: housing.propanol" },
        { "efficacy/efficacy.yaml", "contact-time: \">= 10 min\"", "contact-time: \">= 5 min\"" },
        { "agents/agents.yaml", "name: ethanol", "name: spirit of wine" },
        { "rules/rules.yaml", "- id: housing.alcohol", "- id: housing.spirits" },
    };

    [Theory]
    [MemberData(nameof(Stale))]
    public void Edit_MakesThePlanStale(string file, string was, string now, string[] said)
    {
        using var folder = new PlanFolder().With(file, was, now);
        var run = folder.Review();
        Assert.Equal((1, ""), (run.Code, run.Notes));
        Assert.StartsWith("plans/desk-unit.json: this plan of `desk-unit` no longer holds\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("plans: 1 of 1 no longer hold; ", run.Output, StringComparison.Ordinal);
        Assert.All(said, one => Assert.Contains(one, run.Output, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Holding))]
    public void Edit_LeavesThePlan(string file, string was, string now)
    {
        using var folder = new PlanFolder().With(file, was, now);
        var run = folder.Review();
        Assert.EndsWith("plans: 1 plan asked again, all hold\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("desk-unit.json", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void StaleInBase_IsListedApartAndIsNoReasonToFail()
    {
        using var folder = StaleAlready();
        var run = folder.Review();
        Assert.Equal((0, ""), (run.Code, run.Notes));
        Assert.StartsWith("plans/desk-unit.json: this plan of `desk-unit` did not hold before either\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("not established (so in BASE already)", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("by the edit of", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("plans: 1 plan asked again, none goes stale; 1 did not hold before either\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("### Plans that did not hold before either\n", folder.Review("--format", "markdown").Output, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(folder.Review("--format", "json").Output);
        Assert.False(Assert.Single(json.RootElement.GetProperty("stalePlans").EnumerateArray()).GetProperty("goesStale").GetBoolean());
    }

    [Fact]
    public void StaleInBase_AndPermittedLessStill_GoesStale()
    {
        using var folder = StaleAlready().With("rules/rules.yaml", "- id: housing.alcohol", NewRule.Replace("lid", "housing", StringComparison.Ordinal));
        var run = folder.Review();
        Assert.Equal((1, ""), (run.Code, run.Notes));
        Assert.StartsWith("plans/desk-unit.json: this plan of `desk-unit` no longer holds\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("rule `housing.ethanol` decides now", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("so in BASE already", run.Output, StringComparison.Ordinal);
    }

    /// <summary>BASE and HEAD alike no longer allow what the plan was written on.</summary>
    private static PlanFolder StaleAlready()
    {
        var folder = new PlanFolder().With("rules/rules.yaml", "strength: \"<= 80 % v/v\"", "strength: \"<= 60 % v/v\"");
        File.Copy(Path.Combine(folder.Data.Head, "rules", "rules.yaml"), Path.Combine(folder.Data.Base, "rules", "rules.yaml"), overwrite: true);
        return folder;
    }

    [Fact]
    public async Task Json_NamesFileStepAndRule()
    {
        using var folder = new PlanFolder().With("rules/rules.yaml", "- id: housing.alcohol", NewRule);
        var run = folder.Review("--format", "json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("", await SchemaFiles.Refusals("review", run.Output));
        var plan = Assert.Single(json.RootElement.GetProperty("stalePlans").EnumerateArray());
        var answer = plan.GetProperty("answers").EnumerateArray().First();
        Assert.Equal(
            ("plans/desk-unit.json", "cover", "not-allowed"),
            (plan.GetProperty("file").GetString(), answer.GetProperty("part").GetString(), answer.GetProperty("to").GetString()));
        Assert.Contains(
            answer.GetProperty("rules").EnumerateArray(), rule => rule.GetProperty("id").GetString() == "lid.ethanol"
            && rule.GetProperty("where").GetString() == "head/rules/rules.yaml:1:7");
    }

    [Fact]
    public void Markdown_PutsPlansFirstAndFitsWhateverTheirNumber()
    {
        using var folder = new PlanFolder().With("rules/rules.yaml", "strength: \"<= 80 % v/v\"", "strength: \"<= 60 % v/v\"");
        for (var i = 0; i < 600; i++) File.Copy(folder.PlanFile, Path.Combine(folder.Plans, $"a|b_<{i}>@everyone.json"));
        var run = folder.Review("--format", "markdown");
        Assert.InRange(run.Output.Length, 1_000, 65_536);
        Assert.Contains("### Plans that no longer hold\n\nPlans: 601 of 601 no longer hold;", run.Output, StringComparison.Ordinal);
        Assert.Contains(" plans more, not shown here\n", run.Output, StringComparison.Ordinal);
        Assert.True(run.Output.IndexOf("### Plans", StringComparison.Ordinal) < run.Output.IndexOf("### Tightened", StringComparison.Ordinal));
        Assert.Contains("`plans/a\\|b_<0>@everyone.json`", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownFormat_IsRefusedByName()
    {
        using var folder = new PlanFolder();
        var text = File.ReadAllText(folder.PlanFile);
        File.WriteAllText(folder.PlanFile, text.Replace("\"plan-2\"", "\"plan-7\"", StringComparison.Ordinal));
        var run = folder.Review();
        Assert.Equal((2, ""), (run.Code, run.Output));
        Assert.Contains("plans/desk-unit.json:2:13: error: this is of format `plan-7`, which is not known here", run.Notes, StringComparison.Ordinal);
        File.WriteAllText(folder.PlanFile, "{ \"device\": \"desk-unit\" }");
        Assert.Contains("it does not say its `format`", folder.Review().Notes, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"damp-wipe\"", "\"damp-wiep\"")]
    [InlineData("\"devicePart\": \"shell\"", "\"devicePart\": \"cover\"")]
    [InlineData("\"from\": 1,", "\"from\": \"1\",")]
    [InlineData("\"onlyPart\":", "\"onlyPrt\":")]
    [InlineData("\"unit\": \"s\"", "\"unit\": \"min\"")]
    [InlineData("\"steps\": [", "\"steps\": [ ,")]
    [InlineData("\"boxCount\":", "\"boxCount\": 1, \"boxCount\":")]
    [InlineData("\"whole\":", "// no comment\n  \"whole\":")]
    public void EditedPlan_IsRefusedWithItsPlace(string was, string now)
    {
        using var folder = new PlanFolder();
        var text = File.ReadAllText(folder.PlanFile);
        var at = text.LastIndexOf(was, StringComparison.Ordinal);
        Assert.True(at > 0, was);
        File.WriteAllText(folder.PlanFile, text[..at] + now + text[(at + was.Length)..]);
        var run = folder.Review();
        Assert.Equal((2, ""), (run.Code, run.Output));
        Assert.Matches(@"^plans/desk-unit\.json:\d+:\d+: error: ", run.Notes);
    }

    [Fact]
    public void PlansWithoutASiteOrAFolder_AreBadInput()
    {
        using var folder = new PlanFolder();
        Assert.Contains("name its file: `--site FILE`", folder.Data.Review("--plans", folder.Plans).Notes, StringComparison.Ordinal);
        Assert.Contains("there is no such folder", folder.Data.Review("--site", PlanFolder.Site, "--plans", folder.Plans + "-none").Notes,
            StringComparison.Ordinal);
    }
}
