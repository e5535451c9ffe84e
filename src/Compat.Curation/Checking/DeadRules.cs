using System.Collections.Concurrent;
using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Finds rules that decide no question, and rules without which every answer is the same.</summary>
/// <remarks>
/// A rule decides where it is live and where the answer without it is another: verdict, voice, duties, limits or evidence. One that decides
/// nowhere is redundant where other rules say the same beside it, else dead.
/// </remarks>
internal sealed class DeadRules(Ground ground)
{
    /// <summary>What a rule does, over all subjects and speakers.</summary>
    private enum Role
    {
        NeverApplies,
        SetAside,
        Outvoted,
        Repeats,
        Decides,
    }

    /// <summary>All dead and redundant rules; not those that repeat others as a second source.</summary>
    public IEnumerable<Finding> Find()
    {
        var found = new ConcurrentBag<Finding>();
        var overrides = new OverrideFaults(ground);
        Parallel.ForEach(ground.Kb.Rules.Where(rule => !overrides.IsSuperseded(rule)), rule =>
        {
            var role = RoleOf(rule);
            if (role == Role.Decides || (role == Role.Repeats && rule.Rule.IsSecondSource)) return;
            found.Add(role == Role.Repeats ? Redundant(rule) : Dead(rule, role));
        });
        return found;
    }

    /// <summary>The subjects that hear a rule, what it is written on first.</summary>
    private IEnumerable<Subject> SubjectsOf(CompiledRule rule)
    {
        var all = ground.Hearing(rule);
        var target = rule.Rule.Target.Material?.Value ?? rule.Rule.Target.Part?.Value;
        return all.Where(subject => subject.Name == target).Concat(all.Where(subject => subject.Name != target));
    }

    private Role RoleOf(CompiledRule rule)
    {
        var best = Role.NeverApplies;
        foreach (var subject in SubjectsOf(rule))
        {
            var seen = new HashSet<string>();
            foreach (var speaker in SpeakersOf(rule))
            {
                var live = new LiveRegion(ground, subject, speaker);
                if (!seen.Add(Mark(live.Scene, speaker))) continue;
                var role = RoleIn(rule, subject, speaker, live);
                if (role > best) best = role;
                if (best == Role.Decides) return best;
            }
        }

        return best;
    }

    private IEnumerable<Speaker> SpeakersOf(CompiledRule rule) =>
        ground.Reached(rule).Select(ground.SpeakerOf)
            .Concat(ground.ProductSpeakers.Where(s => Reach.Speaks(ground.Kb, rule, s.Substance.Product, s.Component)));

    private static string Mark(Scene scene, Speaker speaker) =>
        string.Join(",", scene.Candidates.Select(c => c.Rule.Index))
        + (speaker.Substance.LeavesNothing ? "n" : "f") + speaker.Component.Duties.Count + speaker.Substance.Product?.Id;

    private Role RoleIn(CompiledRule rule, Subject subject, Speaker speaker, LiveRegion live)
    {
        var own = Enumerable.Range(0, live.Scene.Candidates.Length).Where(i => live.Scene.Candidates[i].Rule == rule).ToArray();
        if (own.Length == 0) return Role.NeverApplies;
        var effect = new Effect(ground.Kb, live.Scene);
        var best = Role.NeverApplies;
        foreach (var method in rule.Methods.Intersect(subject.Stood).Methods)
        {
            if (live.BoxOf(own[0], method) is not { IsEmpty: false } box) continue;
            CellSearch.Find(live.Scene, box, null, (applies, cells) =>
            {
                if (!ground.IsReal(speaker, cells)) return false;
                var with = effect.Of(applies);
                var without = (bool[])applies.Clone();
                foreach (var i in own) without[i] = false;
                var after = effect.Of(without);
                var role = !effect.IsLive(rule, applies) ? Role.SetAside
                    : !effect.AreSame(with, after) ? Role.Decides
                    : with.Verdict != Verdict.NotEstablished && with.Deciding.Contains(rule) ? Role.Repeats : Role.Outvoted;
                if (role > best) best = role;
                return best == Role.Decides;
            });
            if (best == Role.Decides) break;
        }

        return best;
    }

    private static Finding Dead(CompiledRule rule, Role role) => new()
    {
        Kind = FindingKind.DeadRule,
        IsFault = true,
        Message = $"`{rule.Rule.Id}` decides no question: " + role switch
        {
            Role.NeverApplies => "nothing it speaks of can be brought onto what it is written on by its methods",
            Role.SetAside => "other rules override it wherever it applies",
            _ => "wherever it applies, other rules or duties decide",
        },
        Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value), "decides nothing")],
        Help = "remove it, or correct its target, methods or box",
    };

    private static Finding Redundant(CompiledRule rule) => new()
    {
        Kind = FindingKind.RedundantRule,
        IsFault = false,
        Message = $"without `{rule.Rule.Id}` every answer is the same: other rules say as much, on sources as strong",
        Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value), "repeats what others say")],
        Help = "remove it, or write `keep: second-source` where it stands as a second source",
    };
}
