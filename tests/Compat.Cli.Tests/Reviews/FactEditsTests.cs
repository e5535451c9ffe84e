namespace Compat.Cli.Tests.Reviews;

/// <summary>Edits of what stands beside the rules on parts.</summary>
public sealed class FactEditsTests
{
    public static TheoryData<string, string, string, int, string> Edits => new()
    {
        // Claims: the box wider, the level higher, less needed, a refutation gone, and the other way.
        { "efficacy/efficacy.yaml", "strength: \">= 0.1 % w/v\"", "strength: \">= 0.05 % w/v\"", 1, "efficacy loosened: claim `chlorine.intermediate` changed" },
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
        { "persons/persons.yaml", "strength: \">= 10 % v/v\"", "strength: \">= 20 % v/v\"", 1, "`newborn.alcohol` forbids `alcohol` for newborn at strength >= 10 % v/v and < 20 % v/v no longer" },
        { "persons/persons.yaml", "patients: [newborn]", "patients: [eye]", 1, "for newborn at strength >= 10 % v/v no longer" },
        { "persons/persons.yaml", "strength: \">= 10 % v/v\"", "strength: \">= 5 % v/v\"", 0, "which was not said before" },

        // Hazards, needs, standing rules, usual figures, conventions.
        { "mixing/mixing.yaml", "severity: never", "severity: avoid", 1, "loosened: mixing `chlorine-with-soap` changed" },
        { "mixing/mixing.yaml", "effects: [toxic-gas]", "effects: [toxic-gas, fire]", 0, "a hazard of `chlorine` with `soap` is on record" },
        { "mixing/mixing.yaml", "agent: chlorine\n  with-agent: soap", "agent: soap\n  with-agent: chlorine", 0, "tightened: mixing `chlorine-with-soap` changed" },
        { "needs.yaml", "level: high", "level: intermediate", 1, "what is touched by mucous-membrane, broken-skin needs less than high" },
        { "needs.yaml", "level: low", "level: intermediate", 0, "`hand`: intermediate for what is touched by hand, intact-skin" },
        { "standing.yaml", "> 5 % w/w", "> 8 % w/w", 1, "`no-strong-soap-on-displays` stands otherwise" },
        { "standing.yaml", "> 5 % w/w", "> 3 % w/w", 0, "`no-strong-soap-on-displays` stands for more exposures" },
        { "agents/agents.yaml", "usual: { strength: \"0.1..0.5 % w/v\"", "usual: { strength: \"0.1..0.2 % w/v\"", 1, "leaves the strength out is judged over" },
        { "agents/agents.yaml", "usual: { strength: \"0.1..0.5 % w/v\"", "usual: { strength: \"0.1..1 % w/v\"", 0, "leaves the strength out is judged over" },
        { "parts/parts.yaml", "materials: [steel], materials-known: fully, wettest: rinse, geometry: open, touched-by: hand", "materials: [steel], materials-known: fully, wettest: rinse, geometry: open, touched-by: mucous-membrane", 0, "`frame` is touched by mucous-membrane, before by hand" },
        { "conventions.yaml", "value: [looks, legibility,", "value: [legibility, looks,", 1, "the convention `damage-order` goes legibility < looks" },
        { "conventions.yaml", "value: \"= 15 s\"", "value: \"= 5 s\"", 1, "the convention `window-least`" },
        { "materials/materials.yaml", "name: plastic, under: any-material", "name: plastic, under: any-material, declared-only-suffices: true", 1, "what a data sheet leaves out no longer matters on `plastic`" },
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
        File.AppendAllText(path, File.ReadAllText(path).Replace("chlorine.intermediate", "chlorine.again", StringComparison.Ordinal).Replace(">= 10 min", ">= 20 min", StringComparison.Ordinal).Replace("intermediate\n", "low\n", StringComparison.Ordinal));
        var run = folder.Review();
        Assert.Equal(0, run.Code);
        Assert.EndsWith("no answer changes (1 record edited)\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ANewAgentThatGainsAPermission_IsLoosened()
    {
        using var folder = new EditFolder();
        File.AppendAllText(Path.Combine(folder.Head, "agents", "agents.yaml"), "- { id: methanol, name: methanol, under: alcohol }\n- { id: brine, name: brine, under: any-agent }\n");
        var run = folder.Review();
        Assert.Equal(1, run.Code);
        Assert.Contains("loosened: agent `methanol` added", run.Output, StringComparison.Ordinal);
        Assert.Contains("`housing` with `methanol`: agent not on record -> allowed", run.Output, StringComparison.Ordinal);
        Assert.Contains("new:\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("agent `brine` added", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void EditsThatOnlyTogetherChangeAnAnswer_AreSaidToBeSo()
    {
        using var folder = new EditFolder();
        var path = Path.Combine(folder.Head, "rules", "rules.yaml");
        var text = File.ReadAllText(path);
        var soap = text[text.IndexOf("- id: display.soap", StringComparison.Ordinal)..text.IndexOf("- id: steel.chlorine", StringComparison.Ordinal)];
        File.AppendAllText(path, soap.Replace("id: display.soap\n  part: display", "id: steel.soap\n  material: steel", StringComparison.Ordinal));
        File.AppendAllText(path, soap.Replace("id: display.soap\n  part: display", "id: hard-plastic.soap\n  material: hard-plastic", StringComparison.Ordinal));
        var run = folder.Review("--verbose");
        Assert.Equal(1, run.Code);
        var groups = run.Output.Split("\n\n");
        Assert.Contains(groups, group => group.Contains("loosened: several edits together, none of them alone", StringComparison.Ordinal) && group.Contains("`joint` with `soap`", StringComparison.Ordinal));
        Assert.Contains(groups, group => group.Contains("loosened: rule `steel.soap` added", StringComparison.Ordinal) && group.Contains("`frame` with `soap`", StringComparison.Ordinal) && !group.Contains("`joint`", StringComparison.Ordinal));
    }
}
