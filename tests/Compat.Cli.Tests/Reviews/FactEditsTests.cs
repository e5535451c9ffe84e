namespace Compat.Cli.Tests.Reviews;

/// <summary>Edits of what stands beside the rules on parts.</summary>
public sealed class FactEditsTests
{
    public static TheoryData<string, string, string, int, string> Edits => new()
    {
        // Claims: the box wider, the level higher, less needed, a refutation gone, and the other way.
        { "efficacy/efficacy.yaml", "strength: \">= 0.1 % w/v\"", "strength: \">= 0.05 % w/v\"", 1,
            "efficacy loosened: claim `chlorine.intermediate` changed" },
        { "efficacy/efficacy.yaml", "strength: \">= 0.1 % w/v\"", "strength: \">= 0.05 % w/v\"", 1, "strength >= 0.05 % w/v and < 0.1 % w/v" },
        { "efficacy/efficacy.yaml", "strength: \">= 0.1 % w/v\"", "strength: \">= 0.2 % w/v\"", 0, "no longer reached: intermediate: by `chlorine`" },
        { "efficacy/efficacy.yaml", "reaches: intermediate", "reaches: high", 1, "reached: high, with less than before" },
        { "efficacy/efficacy.yaml", "reaches: intermediate", "reaches: low", 0, "no longer reached: intermediate" },
        { "efficacy/efficacy.yaml", "  needs: [clean-first]\n", "", 1, "reached: intermediate, with less than before" },
        { "efficacy/efficacy.yaml", "reaches: intermediate\n", "reaches: intermediate\n  refuted: It is invented.\n", 0, "no longer reached: intermediate" },
        { "efficacy/efficacy.yaml", "reaches: intermediate\n", "reaches: intermediate\n  where: machine\n", 0, "no longer reached: intermediate" },
        { "efficacy/efficacy.yaml", "reaches: intermediate\n", "reaches: intermediate\n  kills: [spores]\n", 1, "reached: `spores`, with less than before" },
        { "levels.yaml", "enveloped-viruses], sources", "enveloped-viruses, fungi], sources", 1, "low includes fungi" },

        // People: a rule narrower, a rule gone, a rule wider.
        { "persons/persons.yaml", "strength: \">= 10 % v/v\"", "strength: \">= 20 % v/v\"", 1,
            "`newborn.alcohol` forbids `alcohol` for newborn at strength >= 10 % v/v and < 20 % v/v no longer" },
        { "persons/persons.yaml", "patients: [newborn]", "patients: [eye]", 1, "for newborn at strength >= 10 % v/v no longer" },
        { "persons/persons.yaml", "strength: \">= 10 % v/v\"", "strength: \">= 5 % v/v\"", 0, "which was not said before" },

        // What stands above: an agent, a part or an act that rules of a parent no longer reach.
        { "agents/agents.yaml", "id: ethanol, name: ethanol, under: alcohol", "id: ethanol, name: ethanol, under: any-agent", 1,
            "`newborn.alcohol` forbids `alcohol` for newborn at strength >= 10 % v/v no longer: `ethanol`" },
        { "parts/parts.yaml", "name: housing, under: any-part,", "name: housing, under: any-part, never: [rub],", 0,
            "never stood now: `handle`, `housing`, `lid` with `rub`" },

        // Hazards, needs, standing rules, usual figures, conventions.
        { "mixing/mixing.yaml", "severity: never", "severity: avoid", 1, "loosened: mixing `chlorine-with-soap` changed" },
        { "mixing/mixing.yaml", "effects: [toxic-gas]", "effects: [toxic-gas, fire]", 0,
            "`chlorine-with-soap` is on record (toxic-gas, fire; never): `chlorine` with `soap`" },
        { "mixing/mixing.yaml", "agent: chlorine\n  with-agent: soap", "agent: soap\n  with-agent: chlorine", 0,
            "tightened: mixing `chlorine-with-soap` changed" },
        { "needs.yaml", "level: high", "level: intermediate", 1, "it needs intermediate, cleaned first, before high, cleaned first: `" },
        { "needs.yaml", "level: low", "level: intermediate", 0, "it needs intermediate, before low: `hand`, `intact-skin`" },
        { "standing.yaml", "> 5 % w/w", "> 8 % w/w", 1, "`no-strong-soap-on-displays` stands otherwise" },
        { "standing.yaml", "> 5 % w/w", "> 3 % w/w", 0, "`no-strong-soap-on-displays` stands for more exposures" },
        { "agents/agents.yaml", "usual: { strength: \"0.1..0.5 % w/v\"", "usual: { strength: \"0.1..0.2 % w/v\"", 1, "leaves the strength out is judged over" },
        { "agents/agents.yaml", "usual: { strength: \"0.1..0.5 % w/v\"", "usual: { strength: \"0.1..1 % w/v\"", 0, "leaves the strength out is judged over" },
        { "parts/parts.yaml", "materials: [steel], materials-known: fully, wettest: rinse, geometry: open, touched-by: hand",
            "materials: [steel], materials-known: fully, wettest: rinse, geometry: open, touched-by: mucous-membrane", 0,
            "touched by mucous-membrane, before by hand: `frame`" },
        { "conventions.yaml", "value: [looks, legibility,", "value: [legibility, looks,", 1, "the convention `damage-order` goes legibility < looks" },
        { "conventions.yaml", "value: \"= 15 s\"", "value: \"= 5 s\"", 1, "the convention `window-least`" },
        { "materials/materials.yaml", "name: plastic, under: any-material", "name: plastic, under: any-material, declared-only-suffices: true", 1,
            "what a data sheet leaves out no longer matters: `hard-plastic`, `plastic`" },
    };

    [Theory]
    [MemberData(nameof(Edits))]
    public void AnEdit_IsSaidToLoosenOrTighten(string file, string was, string now, int code, string said)
    {
        using var folder = new EditFolder();
        folder.Replace(file, was, now);
        var run = folder.Review();
        Assert.Equal("", run.Notes);
        Assert.Contains(said, run.Output, StringComparison.Ordinal);
        Assert.True(run.Code == code, run.Output);
    }

    [Fact]
    public void ASecondClaimThatCoversIt_IsNoChange()
    {
        using var folder = new EditFolder();
        var path = Path.Combine(folder.Head, "efficacy", "efficacy.yaml");
        File.AppendAllText(
            path, File.ReadAllText(path).Replace("chlorine.intermediate", "chlorine.again", StringComparison.Ordinal)
            .Replace(">= 10 min", ">= 20 min", StringComparison.Ordinal).Replace("intermediate\n", "low\n", StringComparison.Ordinal));
        var run = folder.Review();
        Assert.Equal(0, run.Code);
        Assert.EndsWith("no answer changes (1 record edited)\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ANewAgentThatGainsAPermission_IsLoosened()
    {
        using var folder = new EditFolder();
        File.AppendAllText(
            Path.Combine(folder.Head, "agents", "agents.yaml"),
            "- { id: methanol, name: methanol, under: alcohol }\n- { id: brine, name: brine, under: any-agent }\n");
        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("loosened: agent `methanol` added", run.Output, StringComparison.Ordinal);
        Assert.Contains("`housing` with `methanol`: agent not on record -> allowed", run.Output, StringComparison.Ordinal);
        Assert.Contains("new:\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("agent `brine` added", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AnActThatAPartNeverStood_IsLoosenedForAllBelowIt()
    {
        using var folder = new EditFolder();
        foreach (var side in new[] { folder.Base, folder.Head })
        {
            var path = Path.Combine(side, "parts", "parts.yaml");
            var never = side == folder.Base ? "never: [rub, brush]" : "never: [brush]";
            File.WriteAllText(
                path, File.ReadAllText(path).Replace("name: housing, under: any-part,", $"name: housing, under: any-part, {never},", StringComparison.Ordinal));
        }

        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("loosened: part `housing` changed", run.Output, StringComparison.Ordinal);
        Assert.Contains("never stood before, and no longer said so: `handle`, `housing`, `lid` with `rub`", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AnAgentThatLeavesItsClass_IsLoosenedWithAllBelowIt()
    {
        using var folder = new EditFolder();
        foreach (var side in new[] { folder.Base, folder.Head })
        {
            var under = side == folder.Base ? "chlorine" : "any-agent, basis: \"% w/v\", leaves: salts";
            var rules = Path.Combine(side, "rules", "rules.yaml");
            File.WriteAllText(rules, File.ReadAllText(rules).Replace("agent: chlorine\n", "agent: chlorine\n  whole-class: true\n", StringComparison.Ordinal));
            File.AppendAllText(
                Path.Combine(side, "agents", "agents.yaml"),
                $"- {{ id: bleach, name: bleach, under: {under} }}\n- {{ id: thick-bleach, name: thick bleach, under: bleach }}\n");
        }

        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("loosened: agent `bleach` changed", run.Output, StringComparison.Ordinal);
        Assert.Contains("`chlorine-with-soap` (toxic-gas; never) is no longer on record: `bleach` with `soap`; `soap` with `thick-bleach`", run.Output,
            StringComparison.Ordinal);
    }

    [Fact]
    public void AnInheritedUnit_IsThatOfTheClass()
    {
        using var folder = new EditFolder();
        var path = Path.Combine(folder.Head, "persons", "persons.yaml");
        foreach (var side in new[] { folder.Base, folder.Head })
            File.AppendAllText(
                Path.Combine(side, "agents", "agents.yaml"),
                "- { id: bleach, name: bleach, under: hypochlorites }\n"
                    + "- { id: hypochlorites, name: hypochlorites, under: any-agent, basis: ppm w/v available chlorine }\n");
        File.AppendAllText(
            path, File.ReadAllText(path).Replace("newborn.alcohol", "newborn.bleach", StringComparison.Ordinal)
            .Replace("agent: alcohol", "agent: bleach", StringComparison.Ordinal)
            .Replace(">= 10 % v/v", ">= 1000 ppm w/v available chlorine", StringComparison.Ordinal));
        Assert.Contains("at strength >= 1000 ppm w/v available chlorine", folder.Review().Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("- { id: tray, name: tray, under: any-part, materials: [steel], materials-known: fully, wettest: rinse, geometry: open }\n", "parts/parts.yaml",
        "loosened: part `tray` added", "`tray` with `chlorine`: part not on record -> allowed")]
    [InlineData("- { id: bracket, name: bracket, under: housing }\n", "parts/parts.yaml", "loosened: part `bracket` added",
        "`bracket` with `ethanol`: part not on record -> allowed")]
    public void ANewPartThatComesWithPermissions_IsLoosened(string record, string file, string cause, string said)
    {
        using var folder = new EditFolder();
        File.AppendAllText(Path.Combine(folder.Head, file), record);
        var run = folder.Review("--verbose");
        Assert.Equal(1, run.Code);
        Assert.Contains(cause, run.Output, StringComparison.Ordinal);
        Assert.Contains(said, run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AProhibitionThatIsGone_FailsWhereEvidenceIsRequired()
    {
        using var folder = new EditFolder();
        var path = Path.Combine(folder.Head, "rules", "rules.yaml");
        var text = File.ReadAllText(path);
        File.WriteAllText(
            path, text.Remove(
                text.IndexOf("- id: coating.any-agent", StringComparison.Ordinal),
                text.IndexOf("- id: display.soap", StringComparison.Ordinal) - text.IndexOf("- id: coating.any-agent", StringComparison.Ordinal)));
        var run = folder.Review("--require-evidence");
        Assert.Contains("not allowed -> not established", run.Output, StringComparison.Ordinal);
        Assert.Contains("prevented before: legibility", run.Output, StringComparison.Ordinal);
        Assert.Equal(1, run.Code);
    }

    [Fact]
    public void ABrokenStandingRule_StandsFirst()
    {
        using var folder = new EditFolder();
        folder.Replace("rules/rules.yaml", "when: { strength: \"<= 1 % w/w\"", "when: { strength: \"<= 9 % w/w\"");
        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("error: broken standing rule: ", run.Output.Split('\n')[0], StringComparison.Ordinal);
        Assert.StartsWith("**Answers break what must stand for ever.**", folder.Review("--format", "markdown").Output.Split("\n\n")[1],
            StringComparison.Ordinal);
    }

    [Fact]
    public void AMilderConsequence_PreventsLess()
    {
        using var folder = new EditFolder();
        folder.Replace("rules/rules.yaml", "consequence: legibility }", "consequence: looks }");
        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("prevents less: rule `coating.any-agent` changed", run.Output, StringComparison.Ordinal);
        Assert.Contains("prevents now: looks, before: legibility", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("evidence weakened", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsSetAside_IsNamedAndNeverFolded()
    {
        using var folder = new EditFolder("override-added");
        folder.Replace("rules/rules.yaml", "when: { strength: \"70..80 % v/v\"", "when: { strength: \"60..95 % v/v\"");
        var output = folder.Review().Output;
        Assert.Contains("set aside: `housing.propanol`, by `handle.propanol`", output, StringComparison.Ordinal);
        Assert.Contains("not allowed -> allowed", output, StringComparison.Ordinal);
        Assert.Contains("permitted that", output, StringComparison.Ordinal);
        Assert.True(
            output.IndexOf("`handle` with `propanol`: not allowed", StringComparison.Ordinal) < output.IndexOf("not established", StringComparison.Ordinal)
            || !output.Contains("not established", StringComparison.Ordinal), output);
    }

    [Fact]
    public void ALongFieldThatDiffersLate_IsShownWhereItDiffers()
    {
        using var folder = new EditFolder();
        var same = string.Concat(Enumerable.Repeat("the same words ", 12));
        foreach (var (side, last) in new[] { (folder.Base, "domestic"), (folder.Head, "industrial") })
        {
            var path = Path.Combine(side, "standing.yaml");
            File.WriteAllText(path, File.ReadAllText(path).Replace("It is invented.", same + last, StringComparison.Ordinal));
        }

        var output = folder.Review().Output;
        Assert.Contains("domestic", output, StringComparison.Ordinal);
        Assert.Contains("industrial", output, StringComparison.Ordinal);
        Assert.Contains($"{same}industrial", folder.Review("--format", "json").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void APatternThatLosesAPart_AndASiteThatGainsAProduct_AreLoosened()
    {
        using var folder = new EditFolder();
        foreach (var side in new[] { folder.Base, folder.Head })
        {
            Directory.CreateDirectory(Path.Combine(side, "patterns"));
            Directory.CreateDirectory(Path.Combine(side, "demo"));
            File.WriteAllText(
                Path.Combine(side, "patterns", "devices.yaml"),
                "- id: pump\n  name: pump\n  words: [pump]\n  parts:\n    - { id: lid, type: lid }\n" + (
                    side == folder.Base ? "    - { id: frame, type: frame }\n" : ""));
            var site = File.ReadAllText(PlanFolder.Site);
            File.WriteAllText(
                Path.Combine(side, "demo", "site.yaml"), side == folder.Base
                ? site[..site.IndexOf("products:", StringComparison.Ordinal)] + site[site.IndexOf("devices:", StringComparison.Ordinal)..] : site);
        }

        var run = folder.Review();
        Assert.Equal("", run.Notes);
        Assert.Equal(1, run.Code);
        Assert.Contains("loosened: pattern `pump` changed", run.Output, StringComparison.Ordinal);
        Assert.Contains("an imported device has no `frame` (`frame`) any more", run.Output, StringComparison.Ordinal);
        Assert.Contains("not on record -> allowed within limits: ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void EditsThatOnlyTogetherChangeAnAnswer_AreSaidToBeSo()
    {
        using var folder = new EditFolder();
        var path = Path.Combine(folder.Head, "rules", "rules.yaml");
        var text = File.ReadAllText(path);
        var soap = text[text.IndexOf("- id: display.soap", StringComparison.Ordinal)..text.IndexOf("- id: steel.chlorine", StringComparison.Ordinal)];
        File.AppendAllText(path, soap.Replace("id: display.soap\n  part: display", "id: steel.soap\n  material: steel", StringComparison.Ordinal));
        File.AppendAllText(
            path, soap.Replace("id: display.soap\n  part: display", "id: hard-plastic.soap\n  material: hard-plastic", StringComparison.Ordinal));
        var run = folder.Review("--verbose");
        Assert.Equal(1, run.Code);
        var groups = run.Output.Split("\n\n");
        Assert.Contains(
            groups, group => group.Contains("loosened: several edits together, none of them alone", StringComparison.Ordinal)
            && group.Contains("`joint` with `soap`", StringComparison.Ordinal));
        Assert.Contains(
            groups, group => group.Contains("loosened: rule `steel.soap` added", StringComparison.Ordinal)
            && group.Contains("`frame` with `soap`", StringComparison.Ordinal) && !group.Contains("`joint`", StringComparison.Ordinal));
    }
}
