using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Cards;

/// <summary>Says what is never done, lines of one meaning folded into one: every product and part of the list stands in some line, with the worst that then happens.</summary>
/// <param name="words">Names of parts and products.</param>
internal sealed class NeverLines(CardNames words)
{
    /// <summary>The lines: what harms people at once, then what holds for every product, then what each product harms.</summary>
    /// <param name="never">The list.</param>
    /// <param name="byPart">Whether the products stand under the parts they harm; else the parts stand behind the products.</param>
    public IEnumerable<CardLine> Of(NeverList never, bool byPart)
    {
        foreach (var line in Together(never.NeverTogether)) yield return line;
        if (never.KeepDry.Count > 0) yield return new("Anything wet", $"on {words.Parts(never.KeepDry)}: keep dry; liquid gets in and it fails");
        foreach (var wet in never.NeverWetter) yield return new(Wetter(wet.Wettest), $"on {words.Parts(wet.Parts)}: liquid gets in or under it");
        foreach (var acts in never.NeverActs.GroupBy(act => words.Parts(act.Parts))) yield return new(Upper(string.Join(", ", acts.Select(act => Act(act.Act)))), $"on {acts.Key}: it is damaged");
        foreach (var line in byPart ? Parts(never.Uses) : Products(never.Uses)) yield return line;
    }

    /// <summary>Pairs, with the worst of what happens.</summary>
    private IEnumerable<CardLine> Together(IReadOnlyList<NeverTogether> pairs) =>
        pairs.GroupBy(pair => (pair.One, Then: MixingWording.Worst(pair.Hazards.SelectMany(hazard => hazard.Effects))))
            .Select(group => new CardLine($"{Upper(words.Product(group.Key.One))} with, or on top of,", $"{Joined(group.Select(pair => words.Product(pair.Other)))}: {group.Key.Then}"));

    private IEnumerable<CardLine> Products(IReadOnlyList<NeverUse> uses)
    {
        var said = uses.GroupBy(use => use.Product).Select(group => (Product: group.Key, Text: Text([.. group])));
        return said.GroupBy(one => one.Text, one => one.Product).Select(group => new CardLine(Upper(Joined(group.Select(words.Product))), group.Key));
    }

    /// <summary>Parts that the same happens to by the same product, then what happens, then the products.</summary>
    private IEnumerable<CardLine> Parts(IReadOnlyList<NeverUse> uses)
    {
        var harms = uses.SelectMany(use => Thens(use).Select(then => (use.Product, Then: then, use.Part))).GroupBy(harm => (harm.Product, harm.Then), harm => harm.Part)
            .Select(group => (group.Key.Product, group.Key.Then, Parts: words.Parts(group.Distinct())));
        return harms.GroupBy(harm => harm.Parts).Select(group => new CardLine(
            $"On {group.Key}:",
            string.Join("; ", group.GroupBy(harm => harm.Then, harm => harm.Product).Select(same => $"{Joined(same.Select(words.Product))}: {same.Key}"))));
    }

    /// <summary>Of one product: what happens, and on which parts; one that happens on most parts first.</summary>
    private string Text(NeverUse[] uses)
    {
        var harms = uses.SelectMany(use => Thens(use).Select(then => (then, use.Part))).GroupBy(pair => pair.then, pair => pair.Part)
            .Select(group => (Then: group.Key, Parts: words.Parts(group.Distinct()), Count: group.Distinct().Count()));
        return string.Join("; ", harms.GroupBy(harm => harm.Parts).OrderByDescending(group => group.First().Count).ThenBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => $"on {group.Key}: {Joined(group.Select(harm => harm.Then))}"));
    }

    /// <summary>What then happens: the instructions and people where they speak, and the worst that happens to the part.</summary>
    private static IEnumerable<string> Thens(NeverUse use)
    {
        if (use.Reason == NeverReason.Instructions) yield return "the device's instructions rule it out";
        if (use.Harm.Count > 0) yield return "people are harmed: " + Joined(use.Harm);
        if (use.Damage.Count > 0) yield return DamageWording.Of(use.Damage[0]);
        else if (use.Harm.Count == 0 && use.Reason != NeverReason.Instructions) yield return use.Reason switch
        {
            NeverReason.ResidueStays => "what it leaves cannot be taken off",
            NeverReason.TooWet => "it is too wet: liquid gets in or under it",
            NeverReason.HarmsPeople => "people are harmed",
            _ => "it is damaged",
        };
    }

    private static string Wetter(ApplicationMethod wettest) => wettest switch
    {
        ApplicationMethod.DryWipe => "Anything wet",
        ApplicationMethod.DampWipe => "Anything wetter than a well wrung cloth",
        ApplicationMethod.WetWipe => "Spraying, rinsing, soaking",
        ApplicationMethod.Spray => "Rinsing, soaking",
        _ => "Soaking",
    };

    private static string Act(Act act) => act switch
    {
        Model.Act.Brush => "a brush",
        Model.Act.HeatDrying => "warm air or heat",
        Model.Act.CompressedAir => "compressed air",
        Model.Act.SoftCloth => "a cloth to dry it",
        _ => "rubbing or scrubbing",
    };

    private static string Joined(IEnumerable<string> texts) => string.Join(", ", texts);

    private static string Upper(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
