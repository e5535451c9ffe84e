using Compat.Evaluation;
using Compat.Exposures;
using Compat.Knowledge;
using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Finds the answers that break a standing rule: every part type, material and device part it holds for, every agent below, every exposure.</summary>
internal sealed class StandingRules(Ground ground)
{
    private readonly Permissions _permissions = new(ground);

    public IEnumerable<Finding> Find()
    {
        var groups = ground.All.GroupBy(subject => subject.Name + (subject.Variant.MaterialsAlone ? " alone" : "")).Select(group => group.ToArray()).ToArray();
        var may = new bool[groups.Length][];
        foreach (var standing in ground.Kb.Data.StandingRules.Where(one => one.SpeaksOfRules).OrderBy(one => one.Id))
        {
            var reported = new HashSet<RuleId>();
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

    private IEnumerable<Finding> Broken(StandingRule standing, Subject[] subjects, bool[] mayAllow, HashSet<RuleId> reported)
    {
        var seen = new HashSet<string>();
        var variants = subjects.Select(subject => subject.Variant).ToArray();
        foreach (var agent in ground.Agents.Downward(ground.Kb.Agents[standing.Agent.Value]).ToArray().OrderBy(agent => ground.Kb.Data.Agents[agent].Id))
        {
            if (!mayAllow[agent]) continue;
            var speaker = ground.SpeakerOf(agent);
            var scene = new Scene(ground.Kb, variants, speaker.Substance, speaker.Component, residenceWithoutEnd: false);
            if (!seen.Add(string.Join(",", scene.Candidates.Select(one => one.Rule.Index)) + speaker.Substance.LeavesNothing + speaker.Component.Duties.Count)) continue;
            if (Break(standing, subjects, scene, speaker) is not var (place, decision)) continue;
            if (!decision.Deciding.Any(rule => reported.Add(rule.Rule.Id))) continue;
            yield return Make(standing, subjects, place, decision);
        }
    }

    private (Place Place, Decision Decision)? Break(StandingRule standing, Subject[] subjects, Scene scene, Speaker speaker)
    {
        if (Cells(standing, ground.DomainOf(speaker)) is not { } box) return null;
        var decider = new Decider(ground.Kb, scene);
        var methods = standing.When.Methods.Statement == AxisStatement.Within ? standing.When.Methods.Methods : MethodSet.All;
        foreach (var method in methods.Methods.Where(method => subjects.All(subject => subject.Stood.Contains(method))))
        {
            Decision? broken = null;
            var cells = new CellSearch(ground, scene, method).Find(box, (_, some) => CanAllow(scene, some), (applies, _) =>
            {
                var decision = decider.Worst(applies);
                if (decision.Verdict != Verdict.Allowed || (standing.AlwaysWith is { } kind && Carries(decision, speaker, kind))) return false;
                broken = decision;
                return true;
            });
            if (cells is not null) return (new Place(subjects[0], speaker, MethodSet.Of(method), cells) { Within = standing.When }, broken!);
        }

        return null;
    }

    /// <summary>Whether every variant can have an 'allowed' of its part, or of each of its materials.</summary>
    private static bool CanAllow(Scene scene, bool[] some)
    {
        return scene.Variants.All(variant => Has(variant.Voices[0]) || (variant.Voices.Length > 1 && variant.Voices.Skip(1).All(Has)));
        bool Has(int[] voice) => voice.Any(i => some[i] && scene.Candidates[i].Rule.Allows);
    }

    private static bool Carries(Decision decision, Speaker speaker, DutyKind kind) =>
        decision.Deciding.Concat(decision.Accompanying).SelectMany(rule => rule.Rule.Duties).Concat(speaker.Component.Duties).Concat(decision.Variants.SelectMany(v => v.Duties)).Any(duty => duty.Kind == kind);

    private CellBox? Cells(StandingRule standing, CellBox domain)
    {
        var box = domain;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            if (standing.When.On(axis) is not { Statement: AxisStatement.Within } limit) continue;
            var range = axis == Axis.Uses ? RuleCompiler.WholeNumbers(limit.Range) : limit.Range;
            var (low, high) = ground.Kb.Tables[(int)axis].Cells(range);
            low = Math.Max(low, box.Low[(int)axis]);
            high = Math.Min(high, box.High[(int)axis]);
            if (low > high) return null;
            box = box.With((int)axis, low, high);
        }

        return box;
    }

    private Finding Make(StandingRule standing, Subject[] subjects, Place place, Decision decision)
    {
        var edition = decision.Deciding.FirstOrDefault(rule => rule.OfInstructions);
        var instructions = decision.ByPart && edition is not null && decision.Deciding.All(rule => rule.OfInstructions);
        var variant = subjects[0].Variant;
        var dated = instructions ? variant.Device!.Instructions.First(one => one.Id == edition!.Rule.Edition).Dated : null;
        var witness = place.Witness(ground) with { Materials = variant.MaterialsAlone ? subjects[0].Ask.Materials : [] };
        var without = standing.AlwaysWith is { } kind ? $" without `{Words.Of(kind)}`" : "";
        return new Finding
        {
            Kind = instructions ? FindingKind.InstructionsDepart : FindingKind.BrokenStandingRule,
            IsFault = !instructions,
            Message = instructions
                ? $"edition `{edition!.Rule.Edition}` of the instructions of `{variant.Device!.Id}`{(dated is null ? "" : $", dated {dated},")} allows `{place.Speaker.Name(ground.Kb)}`{without}, against the standing rule `{standing.Id}`"
                : $"`{place.Speaker.Name(ground.Kb)}` is allowed on `{place.Subject.Name}`{without}, against the standing rule `{standing.Id}`",
            Involved = [.. decision.Deciding.Select(rule => new Involved(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value), "allows it")), new(new ProblemPlace(RecordKind.StandingRule, standing.Id.Value), "the standing rule")],
            Subject = place.Subject.Name,
            Agent = place.Speaker.Name(ground.Kb),
            Box = place.ToBox(ground),
            Witness = witness,
            Help = standing.Reason,
        };
    }
}
