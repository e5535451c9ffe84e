namespace Compat.Validation;

/// <summary>Checks person rules and protection.</summary>
internal static class PeopleValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.PersonRules, RecordKind.PersonRule, r => r.Id.Value);
        scope.Duplicates(scope.Data.Protections, RecordKind.Protection, p => p.Id.Value);
        foreach (var rule in scope.Data.PersonRules) Rule(scope, rule);
        foreach (var protection in scope.Data.Protections) Protection(scope, protection);
    }

    private static void Rule(Scope scope, PersonRule rule)
    {
        var place = new ProblemPlace(RecordKind.PersonRule, rule.Id.Value);
        RecordFacts.Sources(scope, place, rule.Sources, "the rule");
        RecordFacts.Text(scope, place, "why", rule.Why, "the rule does not say why");
        RecordFacts.Text(scope, place, "harm", rule.Harm, "the rule does not say which harm it prevents");
        RecordFacts.Parts(scope, place, "for", rule.For);
        DutyValidation.Check(scope, place, rule.Duties);
        if (scope.Knows(scope.Agents, rule.Agent, place, "agent", "agent")) RecordFacts.WideBox(scope, place, "when", rule.When, rule.Agent);
        if (rule.Patients.Count == 0 && !rule.Occupied)
            scope.Add("no-patient", place with { Field = "patients" }, "a person rule names at least one kind of patient", "leave them out only where `occupied` is said: then it holds for all");
        if (rule.Verdict == PersonVerdict.WithDuties && rule.Duties.Count == 0)
            scope.Add("no-duty", place with { Field = "verdict" }, "`with-duties` without a duty", "add `duties`");
        if (rule.Verdict == PersonVerdict.NotAllowed) BoxValidation.NoEndOfProhibition(scope, place, rule.When);
        if (rule.Verdict == PersonVerdict.NotAllowed && rule.Duties.Count > 0)
            scope.Add("duty-of-prohibition", place with { Field = "duties" }, "what is not allowed has no duties", "write `with-duties` where they make it safe");
    }

    private static void Protection(Scope scope, Protection protection)
    {
        var place = new ProblemPlace(RecordKind.Protection, protection.Id.Value);
        RecordFacts.Sources(scope, place, protection.Sources, "the protection");
        if (scope.Knows(scope.Agents, protection.Agent, place, "agent", "agent")) RecordFacts.WideBox(scope, place, "when", protection.When, protection.Agent);
        for (var i = 0; i < protection.Gloves.Count; i++)
        {
            var glove = protection.Gloves[i];
            RecordFacts.Text(scope, place, $"gloves.{i}", glove.Material, "the glove has no material");
            if (glove.Holds is <= 0m) scope.Add("outside-axis", place with { Field = $"gloves.{i}.holds" }, "a time is above 0");
            if (protection.GlovesFail.Contains(glove.Material))
                scope.Add("glove-holds-and-fails", place with { Field = $"gloves.{i}.material" }, $"`{glove.Material}` holds and does not hold by one record");
        }

        for (var i = 0; i < protection.Limits.Count; i++)
        {
            var limit = protection.Limits[i];
            scope.Knows(scope.Sources, limit.Source, place, $"limits.{i}.source", "source");
            if (limit.Value.Value <= 0m || !AirConcentration.Units.Contains(limit.Value.Unit))
                scope.Add("no-concentration", place with { Field = $"limits.{i}.value" }, $"`{limit.Value}` is no concentration in air", "write a figure above 0 and `ppm`, `ppb` or `mg/m³`");
        }

        if (SaysNothing(protection)) scope.Add("protects-from-nothing", place, "the record says nothing of how staff are protected");
    }

    private static bool SaysNothing(Protection x) =>
        x.Gloves.Count == 0 && x.GlovesFail.Count == 0 && x.Limits.Count == 0 && x.FlashPoint is null
        && new[] { x.Eyes, x.Breathing, x.Ventilation, x.Fire, x.Oxygen, x.Energised, x.Disposal, x.FirstAid, x.NotFor }.All(string.IsNullOrWhiteSpace);
}
