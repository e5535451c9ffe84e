using Compat.Cli.Wording;

namespace Compat.Cli.Text;

/// <summary>Writes for people what is on record where two meet.</summary>
public sealed class MixingText(Page page, Names names)
{
    /// <summary>The answer, worst hazard first.</summary>
    public void Write(MixingAnswer answer)
    {
        var (first, other) = (names.Anything(answer.First.ToString()), names.Anything(answer.Other.ToString()));
        page.Line(answer.Outcome switch
        {
            MixingOutcome.Hazard => $"{MixingWording.Of(answer.Worst!.Value)}: {first} and {other}.",
            MixingOutcome.Harmless => $"{first} and {other}: no hazard is on record, and it is on record that nothing harmful happens. Mix nothing that no label tells you to mix.",
            _ => $"Nothing is on record of {first} and {other}{(answer.AtOtherStrengths.Count > 0 ? " at these strengths" : "")}: nobody knows. That is not 'safe': nothing is mixed that no label tells to mix.",
        });
        foreach (var found in answer.Hazards) Hazard(found);
        if (answer.AtOtherStrengths.Count > 0) page.Heading("Only at other strengths than these");
        foreach (var found in answer.AtOtherStrengths) page.Item($"{MixingWording.Strengths(found.Hazard, names)}: {found.Hazard.Why}");
        if (answer.Harmless.Count > 0) page.Heading("On record as harmless");
        foreach (var meeting in answer.Harmless) page.Item($"{names.Anything(meeting.Agent.Value)} with {names.Anything(MixingWording.Other(meeting))}: {meeting.Why}");
        foreach (var product in answer.NotFullyKnown) page.Line($"Not all that is in {names.Product(product.Value)} is on record: what is not declared may meet the other too.");
        var sources = answer.Hazards.Concat(answer.AtOtherStrengths).SelectMany(found => found.Hazard.Sources).Concat(answer.Harmless.SelectMany(meeting => meeting.Sources)).Distinct().Select(names.FindSource).Where(source => source is not null).ToArray();
        if (sources.Length > 0) page.Heading("Sources");
        foreach (var source in sources) page.Item(EvidenceWording.Of(source!));
        page.Heading("Cautions");
        foreach (var caution in VerdictWording.Cautions) page.Item(caution);
        page.Heading("Data");
        foreach (var state in answer.Identity) page.Item(EvidenceWording.Of(state));
    }

    private void Hazard(FoundHazard found)
    {
        var hazard = found.Hazard;
        page.Heading($"{names.Anything(found.First)} with {names.Anything(found.Other)}{(found.OnlySome ? ", some of its kind" : "")}: {MixingWording.Of(hazard.Severity).ToLowerInvariant()}");
        page.Line(hazard.Why, 2);
        if (found.OnlySome) page.Line($"On record for: {names.Anything(hazard.Agent.Value)} and {names.Anything(MixingWording.Other(hazard))}.", 2, 4);
        if (MixingWording.Strengths(hazard, names) is { Length: > 0 } strengths) page.Line($"Only at: {strengths}.", 2, 4);
        if (hazard.OnlyWhere is { } condition) page.Line($"Only where: {condition}.", 2, 4);
        page.Line($"What happens: {string.Join(", ", hazard.Effects.Select(MixingWording.Of))}.", 2, 4);
        if (hazard.Forms.Count > 0) page.Line($"What forms: {string.Join(", ", hazard.Forms)}.", 2, 4);
        page.Line($"What separates them: {(hazard.SeparatedBy.Count == 0 ? "nothing is on record" : string.Join(", ", hazard.SeparatedBy.Select(MixingWording.Of)))}.{(hazard.How is { } how ? " " + how : "")}", 2, 4);
    }
}
