using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Notes rules that were not looked at for long, and an 'allowed' on weak evidence beside a 'not allowed' on better.</summary>
internal sealed class StaleRules(Ground ground)
{
    public IEnumerable<Finding> Find(CheckOptions options)
    {
        var oldest = Before(options.Today, options.StaleAfterMonths);
        foreach (var rule in ground.Kb.Rules.Where(one => one.Rule.Reviewed < oldest))
        {
            yield return new Finding
            {
                Kind = FindingKind.Stale,
                IsFault = false,
                Message = $"`{rule.Rule.Id}` was last looked at on {rule.Rule.Reviewed}, before {oldest}",
                Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, "reviewed"), "last looked at")],
                Help = "look at its sources again and write the day",
            };
        }

        foreach (var note in Doubtful()) yield return note;
    }

    private static CalendarDate Before(CalendarDate today, int months)
    {
        if (!DateTime.TryParse(today.ToString(), System.Globalization.CultureInfo.InvariantCulture, out var day)
            || day < DateTime.MinValue.AddMonths(months)) return default;
        var before = day.AddMonths(-months);
        return new CalendarDate(before.Year, before.Month, before.Day);
    }

    /// <summary>On one subject and for one agent, boxes that part on one axis only: what is known better speaks just beside what is merely believed.</summary>
    private IEnumerable<Finding> Doubtful()
    {
        var evidence = ground.Kb.Rules.Select(rule => Effect.Evidence(ground.Kb, rule.Rule)).ToArray();
        var reported = new HashSet<int>();
        foreach (var subject in ground.All)
        {
            var own = subject.Variant.MaterialsAlone ? ground.OfMaterial(subject.Variant.Materials[0]) : subject.Voice;
            var weak = own.Where(rule => rule.Allows && evidence[rule.Index] <= 1 && !reported.Contains(rule.Index)).ToArray();
            if (weak.Length == 0) continue;
            var better = own.Concat(subject.Variant.MaterialsAlone ? [] : subject.Variant.Materials.SelectMany(ground.OfMaterial))
                .Where(rule => !rule.Allows && evidence[rule.Index] >= 2).Distinct().ToArray();
            foreach (var rule in weak)
            {
                if (better.FirstOrDefault(other => SpeakOfOne(rule, other) && PartedOnOneAxis(rule, other)) is not { } near
                    || !reported.Add(rule.Index)) continue;
                yield return new Finding
                {
                    Kind = FindingKind.Stale,
                    IsFault = false,
                    Message = $"`{rule.Rule.Id}` rests on recall or practice alone, and `{near.Rule.Id}`, known better, forbids what lies just beside it",
                    Involved = [new(new ProblemPlace(RecordKind.Rule, rule.Rule.Id.Value, "sources"), "is believed"),
                        new(new ProblemPlace(RecordKind.Rule, near.Rule.Id.Value, "sources"), "is known better")],
                    Subject = subject.Name,
                    Help = "look for evidence as good, or leave a distance between the two",
                };
            }
        }
    }

    private bool SpeakOfOne(CompiledRule rule, CompiledRule other) => rule.Agent >= 0 && other.Agent >= 0
        && Reach.Tops(rule).Any(top => ground.Agents.IsAtOrBelow(top, other.Agent) || (rule.Agent != top && ground.Agents.IsAtOrBelow(other.Agent, top)));

    private static bool PartedOnOneAxis(CompiledRule rule, CompiledRule other)
    {
        var parted = rule.Methods.Intersect(other.Methods).IsEmpty ? 1 : 0;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
            if (!rule.Cells[axis].Meets(other.Cells[axis])) parted++;
        return parted == 1;
    }
}
