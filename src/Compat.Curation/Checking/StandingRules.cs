using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>
/// Finds the answers that break a standing rule: every part type, material and device part it holds for, with each set of editions that may speak for the
/// device; every agent below, and every product of the sites with such an ingredient; every exposure.
/// </summary>
internal sealed class StandingRules(Ground ground)
{
    private readonly Permissions _permissions = new(ground);

    public IEnumerable<Finding> Find()
    {
        var ofDevices = ground.Kb.Devices.Values.OrderBy(device => device.Id)
            .SelectMany(device => Editions.OneOfEach(device).SelectMany(serial => Subject.DeviceParts(ground.Kb, device, serial)));
        var groups = ground.Materials.Concat(ground.Parts).Concat(ofDevices)
            .GroupBy(subject => (subject.Name, subject.Variant.MaterialsAlone, subject.Ask.Serial)).Select(group => group.ToArray()).ToArray();
        var may = new bool[groups.Length][];
        foreach (var standing in ground.Kb.Data.StandingRules.Where(one => one.SpeaksOfRules).OrderBy(one => one.Id))
        {
            var reported = new HashSet<(RuleId, FindingKind)>();
            for (var i = 0; i < groups.Length; i++)
            {
                if (!groups[i].Any(subject => HoldsFor(standing, subject))) continue;
                foreach (var finding in Broken(standing, groups[i], may[i] ??= _permissions.Of(groups[i]), reported)) yield return finding;
            }
        }
    }

    private bool HoldsFor(StandingRule standing, Subject subject)
    {
        if (standing.Material is { } material)
            return subject.Variant.Materials.Any(m => ground.Kb.Materials.IsAtOrBelow(m, ground.Kb.Materials[material.Value]));
        return !subject.Variant.MaterialsAlone && ground.Kb.Parts.IsAtOrBelow(subject.Variant.Part, ground.Kb.Parts[standing.Part!.Value]);
    }

    private IEnumerable<Finding> Broken(StandingRule standing, Subject[] subjects, bool[] mayAllow, HashSet<(RuleId, FindingKind)> reported)
    {
        var seen = new HashSet<string>();
        var variants = subjects.Select(subject => subject.Variant).ToArray();
        foreach (var speaker in Speakers(ground.Kb.Agents[standing.Agent.Value], mayAllow))
        {
            var scene = new Scene(ground.Kb, variants, speaker.Substance, speaker.Component, exposureTimeWithoutEnd: false);
            var mark = string.Join(",", scene.Candidates.Select(one => one.Rule.Index)) + speaker.Substance.LeavesNothing + speaker.Component.Duties.Count;
            if (speaker.Agent >= 0 && !seen.Add(mark)) continue;
            foreach (var ofInstructions in scene.Candidates.Any(one => one.Rule.OfInstructions) ? [false, true] : new[] { false })
            {
                if (Break(standing, subjects, scene, speaker, ofInstructions) is not var (place, decision)) continue;
                var finding = Make(standing, subjects, place, decision);
                if (decision.Deciding.Any(rule => reported.Add((rule.Rule.Id, finding.Kind)))) yield return finding;
            }
        }
    }

    /// <summary>The agents at and below one that may be allowed, and the products of the sites that hold one of these.</summary>
    private IEnumerable<Speaker> Speakers(int agent, bool[] mayAllow) => ground.Agents.Downward(agent).ToArray().Where(one => mayAllow[one])
        .OrderBy(one => ground.Kb.Data.Agents[one].Id).Select(ground.SpeakerOf)
        .Concat(ground.ProductSpeakers
            .Where(speaker => !speaker.Component.OnlyForbids && !speaker.Component.Unknown && ground.Kb.Agents.IsAtOrBelow(speaker.Component.Agent, agent)));

    /// <summary>The first place at which an answer breaks a standing rule, either by the device's own instructions alone or by any other rule.</summary>
    private (Place Place, Decision Decision)? Break(StandingRule standing, Subject[] subjects, Scene scene, Speaker speaker, bool ofInstructions)
    {
        var stands = BoxValues.Of(standing.When);
        var box = ground.Kb.Grid.CellsOf(stands with { Uses = Stretch.Of(RuleCompiler.WholeNumbers(stands.Uses.ToInterval())) })
            .Intersect(ground.DomainOf(speaker));
        if (box.IsEmpty) return null;
        var decider = new Decider(scene);
        foreach (var method in box.Methods.Methods.Where(method => subjects.All(subject => subject.Stood.Contains(method))))
        {
            Decision? broken = null;
            var cells = CellSearch.Find(scene, box with { Methods = MethodSet.Of(method) }, (_, some) => CanAllow(scene, some), (applies, cell) =>
            {
                var decision = decider.Worst(applies);
                if (decision.Verdict != Verdict.Allowed || IsOfInstructions(decision) != ofInstructions
                    || (standing.AlwaysWith is { } kind && Carries(decision, speaker, kind))) return false;
                if (!IsAllowedWhole(PlaceOf(cell))) return false;
                broken = decision;
                return true;
            });
            if (cells is { } found) return (PlaceOf(found), broken!);
        }

        return null;

        Place PlaceOf(Box<Run> cells) => new(subjects[0], speaker, ground.Kb.Grid.ValuesOf(cells).Intersect(stands));
    }

    /// <summary>Whether an answer allows it: every use up to that one, and of a product, which can have the strength there, every ingredient.</summary>
    private bool IsAllowedWhole(Place place) => (place.Speaker.Substance.Product is null || !place.Speaker.RealDilutions(place.Box).IsEmpty)
        && new RegionAnswer(ground.Kb, place.Witness(ground) with { OnlyPart = true }, []).Make().Verdict >= Verdict.AllowedWithinLimits;

    /// <summary>Whether the device's own instructions alone allow it.</summary>
    private static bool IsOfInstructions(Decision decision) =>
        decision.ByPart && decision.Deciding.Count > 0 && decision.Deciding.All(rule => rule.OfInstructions);

    /// <summary>Whether every variant can have an 'allowed' of its part, or of each of its materials.</summary>
    private static bool CanAllow(Scene scene, bool[] some)
    {
        return scene.Variants.All(variant => Has(variant.Voices[0]) || (variant.Voices.Length > 1 && variant.Voices.Skip(1).All(Has)));
        bool Has(int[] voice) => voice.Any(i => some[i] && scene.Candidates[i].Rule.Allows);
    }

    private static bool Carries(Decision decision, Speaker speaker, DutyKind kind) =>
        decision.Deciding.Concat(decision.Accompanying).SelectMany(rule => rule.Rule.Duties).Concat(speaker.Component.Duties)
            .Concat(decision.Variants.SelectMany(v => v.Duties)).Any(duty => duty.Kind == kind);

    private Finding Make(StandingRule standing, Subject[] subjects, Place place, Decision decision)
    {
        var instructions = IsOfInstructions(decision);
        var edition = instructions ? decision.Deciding[0] : null;
        var variant = subjects[0].Variant;
        var dated = instructions ? variant.Device!.Instructions.First(one => one.Id == edition!.Rule.Edition).Dated : null;
        var witness = place.Witness(ground) with { Materials = variant.MaterialsAlone ? subjects[0].Ask.Materials : [] };
        var without = standing.AlwaysWith is { } kind ? $" without `{Words.Of(kind)}`" : "";
        return new Finding
        {
            Kind = instructions ? FindingKind.InstructionsDepart : FindingKind.BrokenStandingRule,
            IsFault = !instructions,
            Message = instructions
                ? $"edition `{edition!.Rule.Edition}` of the instructions of `{variant.Device!.Id}`{(dated is null ? "" : $", dated {dated},")} allows "
                    + $"`{place.Speaker.Name(ground.Kb)}`{without}, against the standing rule `{standing.Id}`"
                : $"`{place.Speaker.Name(ground.Kb)}` is allowed on `{place.Subject.Name}`{without}, against the standing rule `{standing.Id}`",
            Involved = [.. decision.Deciding
                .Select(rule => new Involved(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value), "allows it")),
                new(new ProblemPlace(RecordKind.StandingRule, standing.Id.Value), "the standing rule")],
            Subject = place.Subject.Name,
            Agent = place.Speaker.Name(ground.Kb),
            Box = place.ToBox(ground),
            Witness = witness,
            Help = standing.Reason,
        };
    }
}
