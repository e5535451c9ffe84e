using System.Collections.Concurrent;
using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>
/// Notes an agent that is allowed on a part and kills what the part usually needs, but not both at once: the pair of rules and claims that closes the window.
/// </summary>
internal sealed class ClosedWindows(Ground ground)
{
    private readonly CompiledBase _kb = ground.Kb;

    public IEnumerable<Finding> Find()
    {
        var parents = Enumerable.Range(0, _kb.Agents.Count).Select(_kb.Agents.Parent).ToHashSet();
        var narrowest = Enumerable.Range(0, _kb.Agents.Count).Where(agent => !parents.Contains(agent)).ToArray();
        var permissions = new Permissions(ground);
        var found = new ConcurrentBag<Finding>();
        var groups = ground.Parts.GroupBy(subject => subject.Name).Select(group => group.ToArray()).ToArray();
        Parallel.ForEach(groups, group =>
        {
            var question = new Question { Part = new PartId(group[0].Name) };
            var need = NeedMaker.Of(_kb, question);
            if (need.NothingToKill || need.KeptDry || need.Level is null) return;
            var mayAllow = permissions.Of(group);
            foreach (var agent in narrowest)
                if (mayAllow[agent] && Claimed(agent, need.Level.Value)
                    && Note(question with { Agent = _kb.Data.Agents[agent].Id }, need) is { } note) found.Add(note);
        });
        return found;
    }

    /// <summary>Whether some claim of the agent reaches the level at all.</summary>
    private bool Claimed(int agent, Level level) => Reach.Claims(_kb, agent).Any(claim => claim.Reaches >= level);

    private Finding? Note(Question question, Need need)
    {
        var windows = new WindowGround(_kb, question, need, measured: true, freeStrength: true);
        var window = new WindowMaker(_kb, question, windows).Make([]);
        if (window.Closure is not { Code: not (ClosureCode.DoesNotKill or ClosureCode.PartDoesNotStandIt) } closure) return null;
        var part = question.Part!.Value;
        var agent = question.Agent!.Value;
        var level = $"`{Words.Of(need.Level!.Value)}`";
        var message = closure.Code switch
        {
            ClosureCode.KillsTooSlowly or ClosureCode.TooNarrow =>
                $"`{agent}` reaches {level} after {Interval.Duration(closure.ContactTime!.Value)}, and `{part}` "
                + $"stands {Interval.Duration(closure.ExposureTime!.Value)}{(closure.Code == ClosureCode.TooNarrow ? ": too narrow to hit" : "")}",
            ClosureCode.OtherMethods => $"`{agent}` reaches {level} by {closure.Arguments[0]}, and `{part}` stands {closure.Arguments[1]}",
            ClosureCode.OtherStrength => $"`{agent}` reaches {level} at strengths at which it is not allowed on `{part}`",
            ClosureCode.OtherConditions => $"`{agent}` reaches {level} at a temperature or pH at which it is not allowed on `{part}`",
            ClosureCode.SparedByMaterialsOnly => $"`{agent}` would reach {level} on `{part}`, which only its materials are known to stand",
            _ => $"`{agent}` would reach {level} on `{part}`, where a person rule forbids it",
        };
        return new Finding
        {
            Kind = FindingKind.ClosedWindow,
            IsFault = false,
            Message = message,
            Subject = part,
            Agent = agent,
            Involved =
            [
                .. closure.Rules.Take(3).Select(rule => new Involved(new ProblemPlace(RecordKind.Rule, rule.Value), "the part's side")),
                .. closure.Claims.Take(3).Select(claim => new Involved(new ProblemPlace(RecordKind.Claim, claim.Id), "kills")),
                .. closure.Rules.Count + closure.Claims.Count == 0 ? new[] { new Involved(new ProblemPlace(RecordKind.Part, part), "its window is closed") }
                    : [],
            ],
            Witness = question,
            Help = "look for evidence of a longer exposure time on the part, or for a claim of a shorter contact time",
        };
    }
}
