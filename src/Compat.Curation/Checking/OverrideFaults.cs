using Compat.Curation.Writing;
using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Finds overrides that no use meets or that change nothing, and rules that cite instructions which no longer speak.</summary>
internal sealed class OverrideFaults(Ground ground)
{
    public IEnumerable<Finding> Find(IReadOnlyCollection<Finding> contradictory)
    {
        var byId = ground.Kb.Rules.ToDictionary(rule => rule.Rule.Id);
        var known = contradictory.Select(finding => finding.Involved[0].Place).ToHashSet();
        foreach (var rule in ground.Kb.Rules)
        {
            for (var i = 0; i < rule.Rule.Overrides.Count; i++)
            {
                var place = new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, $"overrides.{i}");
                if (known.Contains(place)) continue;
                var other = byId[rule.Rule.Overrides[i]];
                if (!Meet(rule, other))
                    yield return Fault(FindingKind.OverrideMisses, place, other,
                        $"no use meets both `{rule.Rule.Id}` and `{other.Rule.Id}`, which it overrides",
                        "remove the override, or correct what either rule speaks of");
                else if (rule.Allows == other.Allows && SameDuties(rule, other))
                    yield return Fault(FindingKind.OverrideIdle, place, other,
                        $"`{rule.Rule.Id}` overrides `{other.Rule.Id}` and says the same, with the same duties", "remove the override");
            }

            if (SupersededBy(rule) is { } newer)
            {
                yield return new Finding
                {
                    Kind = FindingKind.SupersededEdition,
                    IsFault = true,
                    Message = $"`{rule.Rule.Id}` cites edition `{rule.Rule.Edition}`, which `{newer.Id}` replaces for every serial number",
                    Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, "edition"), "no longer speaks")],
                    Help = "read the newer edition and cite it, or remove the rule",
                };
            }
        }
    }

    private static Finding Fault(FindingKind kind, ProblemPlace place, CompiledRule other, string message, string help) => new()
    {
        Kind = kind,
        IsFault = true,
        Message = message,
        Involved = [new(place, "overrides it"), new(new ProblemPlace(RecordKind.Rule, other.Rule.Id.Value), "is overridden")],
        Help = help,
    };

    private static bool SameDuties(CompiledRule one, CompiledRule other) =>
        one.Rule.Duties.Select(ExposureYaml.DutyText)
            .Order(StringComparer.Ordinal).SequenceEqual(other.Rule.Duties.Select(ExposureYaml.DutyText).Order(StringComparer.Ordinal));

    /// <summary>Whether both rules apply somewhere, in voices in which one can override the other.</summary>
    private bool Meet(CompiledRule rule, CompiledRule other)
    {
        if (!rule.Cells.Meets(other.Cells)) return false;
        foreach (var subject in ground.Hearing(other))
        {
            var voices = subject.Variant.Materials.Select(ground.OfMaterial).Prepend(subject.Voice).ToArray();
            var own = voices.Where(voice => voice.Contains(other)).ToArray();
            if (!own.Any(voice => voice.Contains(rule) || voices[0].Contains(rule))) continue;
            foreach (var speaker in ground.Reached(rule).Select(ground.SpeakerOf).Concat(ground.ProductSpeakers))
            {
                if (!Reach.Speaks(ground.Kb, rule, speaker.Substance.Product, speaker.Component)
                    || !Reach.Speaks(ground.Kb, other, speaker.Substance.Product, speaker.Component)) continue;
                if (MeetOn(rule, other, subject, speaker)) return true;
            }
        }

        return false;
    }

    private bool MeetOn(CompiledRule rule, CompiledRule other, Subject subject, Speaker speaker)
    {
        var shared = At(rule).Intersect(At(other)).Intersect(ground.DomainOf(speaker) with { Methods = subject.Stood });
        return !shared.IsEmpty && ground.IsReal(speaker, shared);

        Box<Run> At(CompiledRule one)
        {
            var leaves = speaker.Substance.LeavesNothing;
            return one.Cells with { ExposureTime = Reach.ExposureTimes(ground.Kb, one, subject.EndsNowhere(leaves), leaves) ?? default };
        }
    }

    /// <summary>Whether a rule cites an edition that speaks for no serial number any more.</summary>
    public bool IsSuperseded(CompiledRule rule) => SupersededBy(rule) is not null;

    /// <summary>The edition that replaces the one a rule cites, where that one speaks for no serial number any more.</summary>
    private InstructionsEdition? SupersededBy(CompiledRule rule)
    {
        if (rule.Rule.Edition is not { } cited || rule.Rule.Target.Device is not { } id) return null;
        var device = ground.Kb.Devices[id];
        if (Editions.Possible(device, null).Any(set => set.Any(edition => edition.Id == cited))) return null;
        return device.Instructions.FirstOrDefault(edition => edition.Replaces.Contains(cited));
    }
}
