namespace Compat.Cli.Wording;

/// <summary>Says what a substance means for people.</summary>
public static class PeopleWording
{
    /// <summary>The judgement as one text: what forbids first, else what is asked, then what nobody wrote.</summary>
    public static string Of(PeopleJudgement people, Names names)
    {
        var forbidding = people.Rules.Where(rule => people.Forbidding.Contains(rule.Id)).ToArray();
        var texts = forbidding.Select(rule => Forbids(rule, people)).ToList();
        if (forbidding.Length > 0 && people.Verdict >= Verdict.AllowedWithinLimits) texts.Add("Other exposures are left.");
        var asking = people.Rules.Count - forbidding.Length;
        if (people.Verdict >= Verdict.AllowedWithinLimits && asking > 0)
            texts.Add((asking == 1 ? "One rule on people asks duties" : $"{asking} rules on people ask duties") + ": they are among what must go with it.");
        if (people.Verdict >= Verdict.AllowedWithinLimits) texts.AddRange(Silent(people.Silent, names));
        if (texts.Count == 0) texts.Add(people.Verdict == Verdict.Allowed ? "No rule on people speaks against it." : "Not all that is in it is known, so what it means for people is not either.");
        return string.Join(" ", texts);
    }

    /// <summary>A person rule: what it says, the harm, why.</summary>
    public static string Of(PersonRule rule, Names names)
    {
        var says = rule.Verdict == PersonVerdict.NotAllowed ? "not allowed" : "only with: " + string.Join("; ", rule.Duties.Select(duty => DutyWording.Of(duty, names)));
        return $"`{rule.Id}` ({Whom(rule)}): {says}. Harm: {rule.Harm}. {rule.Why}";
    }

    private static string Forbids(PersonRule rule, PeopleJudgement people)
    {
        var meant = rule.Patients.Where(people.Patients.Contains).ToArray();
        var whom = meant.Length == 0 ? "with a patient in reach" : "patients: " + NeedWording.Patients(meant);
        var cannot = rule.Verdict == PersonVerdict.NotAllowed ? "" : " What it asks cannot be met on this part.";
        return $"The rule `{rule.Id}` forbids it ({whom}). Harm: {rule.Harm}. {rule.Why}{cannot}";
    }

    private static string Whom(PersonRule rule)
    {
        var patients = NeedWording.Patients(rule.Patients);
        return rule.Occupied ? (patients.Length == 0 ? "" : patients + ", ") + "a patient in the device or in reach" : patients;
    }

    private static IEnumerable<string> Silent(IReadOnlyList<Answers.SilentPatient> silent, Names names)
    {
        if (silent.Count == 0) yield break;
        var each = silent.GroupBy(pair => pair.Ingredient).Select(group => (Ingredient: names.Anything(group.Key), Patients: NeedWording.Patients(group.Select(pair => pair.Patient))));
        var alike = each.GroupBy(pair => pair.Patients).Select(group => $"{string.Join(", ", group.Select(pair => pair.Ingredient))} for {group.Key}");
        yield return $"No rule on people is on record, which is no permission, of: {string.Join("; ", alike)}.";
    }
}
