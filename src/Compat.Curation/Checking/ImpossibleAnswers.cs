using System.Globalization;
using Compat.Curation.Writing;
using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>
/// Finds an 'allowed' of a part or device whose duties or whose exposure time a part it covers has no way to meet, duties that exclude each other,
/// and what acts in a chamber allowed by a cloth.
/// </summary>
internal sealed class ImpossibleAnswers(Ground ground)
{
    public IEnumerable<Finding> Find()
    {
        var reported = new HashSet<RuleId>();
        foreach (var subject in ground.Parts.Concat(ground.DeviceParts))
        {
            foreach (var rule in subject.Voice.Where(one => one.Allows && !reported.Contains(one.Rule.Id)))
            {
                if (rule.Methods.Intersect(subject.Stood).IsEmpty || Why(rule, subject) is not var (why, speaker)) continue;
                reported.Add(rule.Rule.Id);
                yield return Make(rule, subject, speaker, why);
            }
        }

        foreach (var rule in ground.Kb.Rules.Where(one => one.Allows && !reported.Contains(one.Rule.Id)))
        {
            if (Excluding(rule) is { } why) yield return Make(rule, null, null, why);
            else if (BroughtOn(rule) is { } how)
            {
                yield return Make(rule, null, null, how) with
                {
                    Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, "when.methods"), "cannot be done")],
                    Help = "write `methods: [chamber]`, or name the agents that a cloth carries",
                };
            }
        }
    }

    /// <summary>What acts in a chamber is brought on in no other way. A rule that names both it and others must leave it the chamber.</summary>
    private string? BroughtOn(CompiledRule rule)
    {
        var all = Reach.Tops(rule);
        var gases = Array.FindAll(all, agent => ground.Kb.Agent(agent).Chamber);
        if (gases.Length == 0) return null;
        var others = rule.Methods.Methods.Where(method => method != ApplicationMethod.Chamber).Select(Words.Of).ToArray();
        var wrong = gases.Length == all.Length ? others.Length > 0 && rule.Rule.When.Methods.Statement != AxisStatement.Any
            : !rule.Methods.Contains(ApplicationMethod.Chamber);
        return wrong ? $"allows `{ground.Kb.Data.Agents[gases[0]].Id}`, which acts in a chamber, by `{string.Join("`, `", others)}`" : null;
    }

    private (string Why, Speaker Speaker)? Why(CompiledRule rule, Subject subject)
    {
        foreach (var speaker in Speakers(rule))
        {
            var leaves = speaker.Substance.LeavesNothing;
            if (Reach.ExposureTimes(ground.Kb, rule, subject.EndsNowhere(leaves), leaves) is null)
                return ("has no way to end the exposure time it states", speaker);
            var unmet = rule.Rule.Duties.Concat(speaker.Component.Duties).Concat(subject.Variant.Duties).FirstOrDefault(duty => !subject.Variant.CanMeet(duty));
            if (unmet is not null) return ($"has no way to meet its duty `{Words.Of(unmet.Kind)}`", speaker);
            var keepOff = rule.Rule.Duties
                .FirstOrDefault(duty => duty.Kind == DutyKind.KeepOff
                && duty.Parts.Any(part => ground.Kb.Parts.IsAtOrBelow(subject.Variant.Part, ground.Kb.Parts[part.Value])));
            if (keepOff is not null) return ("is itself named by its duty `keep-off`", speaker);
        }

        return null;
    }

    /// <summary>Two duties of which one never comes due because of the other.</summary>
    private static string? Excluding(CompiledRule rule)
    {
        var discard = rule.Rule.Duties.FirstOrDefault(duty => duty.Kind == DutyKind.Discard);
        var inspect = rule.Rule.Duties.FirstOrDefault(duty => duty.Kind == DutyKind.Inspect && duty.AfterUses > discard?.AfterUses);
        return inspect is null ? null
            : string.Create(CultureInfo.InvariantCulture, $"asks to inspect after {inspect.AfterUses} uses what it has discarded after {discard!.AfterUses}");
    }

    private IEnumerable<Speaker> Speakers(CompiledRule rule)
    {
        if (rule.Agent < 0) return ground.ProductSpeakers
            .Where(one => !one.Component.OnlyForbids && Reach.Speaks(ground.Kb, rule, one.Substance.Product, one.Component));
        return ground.Reached(rule).Select(ground.SpeakerOf)
            .DistinctBy(speaker => (speaker.Substance.LeavesNothing, string.Join("; ", speaker.Component.Duties.Select(ExposureYaml.DutyText))));
    }

    private static Finding Make(CompiledRule rule, Subject? subject, Speaker? speaker, string why) => new()
    {
        Kind = FindingKind.ImpossibleAnswer,
        IsFault = true,
        Message = subject is null ? $"`{rule.Rule.Id}` {why}" : $"`{rule.Rule.Id}` covers `{subject.Name}`, which {why}",
        Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, rule.Rule.Duties.Count > 0 ? "duties" : ""), "cannot be done")],
        Subject = subject?.Name,
        Witness = subject is null || speaker is null ? null : subject.Ask with
        {
            Agent = speaker.Substance.Product is null ? rule.Rule.SeenWith.FirstOrDefault() ?? rule.Rule.Agent : null,
            Product = speaker.Substance.Product?.Id,
        },
        Help = "narrow the rule to the parts that stand it, or name a way they stand",
    };
}
