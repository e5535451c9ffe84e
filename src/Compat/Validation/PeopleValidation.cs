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
        var at = new Field(scope, RecordKind.PersonRule, rule.Id.Value);
        at.Sources(rule.Sources, "the rule");
        at["why"].Said(rule.Why, "no-why", "the rule does not say why");
        at["harm"].Said(rule.Harm, "no-harm", "the rule does not say which harm it prevents");
        at["for"].KnowsAll(scope.Parts, rule.For, "part");
        at["duties"].Duties(rule.Duties);
        if (at["agent"].Knows(scope.Agents, rule.Agent, "agent")) at["when"].WideBox(rule.When, rule.Agent);
        if (rule.Patients.Count == 0 && !rule.Occupied)
            at["patients"].Wrong(
                "no-patient", "a person rule names at least one kind of patient", "leave them out only where `occupied` is said: then it holds for all");
        if (rule.Verdict == PersonVerdict.WithDuties && rule.Duties.Count == 0)
            at["verdict"].Wrong("no-duty", "`with-duties` without a duty", "add `duties`");
        if (rule.Verdict == PersonVerdict.NotAllowed) at["when"].NeverEnds(rule.When);
        if (rule.Verdict == PersonVerdict.NotAllowed && rule.Duties.Count > 0)
            at["duties"].Wrong("duty-of-prohibition", "what is not allowed has no duties", "write `with-duties` where they make it safe");
    }

    private static void Protection(Scope scope, Protection protection)
    {
        var at = new Field(scope, RecordKind.Protection, protection.Id.Value);
        at.Sources(protection.Sources, "the protection");
        if (at["agent"].Knows(scope.Agents, protection.Agent, "agent")) at["when"].WideBox(protection.When, protection.Agent);
        for (var i = 0; i < protection.Gloves.Count; i++)
        {
            var glove = protection.Gloves[i];
            at["gloves"][i].Said(glove.Material, $"no-gloves.{i}", "the glove has no material");
            if (glove.Holds is <= 0m) at[$"gloves.{i}.holds"].Wrong("outside-axis", "a time is above 0");
            if (protection.GlovesFail.Contains(glove.Material))
                at[$"gloves.{i}.material"].Wrong("glove-holds-and-fails", $"`{glove.Material}` holds and does not hold by one record");
        }

        for (var i = 0; i < protection.Limits.Count; i++)
        {
            var limit = protection.Limits[i];
            at["limits"][i]["source"].Knows(scope.Sources, limit.Source, "source");
            if (limit.Value.Value <= 0m || !AirConcentration.Units.Contains(limit.Value.Unit))
                at[$"limits.{i}.value"].Wrong(
                    "no-concentration", $"`{limit.Value}` is no concentration in air", "write a figure above 0 and `ppm`, `ppb` or `mg/m³`");
        }

        if (SaysNothing(protection)) at.Wrong("protects-from-nothing", "the record says nothing of how staff are protected");
    }

    private static bool SaysNothing(Protection x) =>
        x.Gloves.Count == 0 && x.GlovesFail.Count == 0 && x.Limits.Count == 0 && x.FlashPoint is null
        && new[] { x.Eyes, x.Breathing, x.Ventilation, x.Fire, x.Oxygen, x.Energised, x.Disposal, x.FirstAid, x.NotFor }.All(string.IsNullOrWhiteSpace);
}
