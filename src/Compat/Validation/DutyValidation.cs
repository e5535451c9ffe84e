namespace Compat.Validation;

/// <summary>Checks duties.</summary>
internal static class DutyValidation
{
    public static void Check(Scope scope, ProblemPlace place, IReadOnlyList<Duty> duties) => Check(scope, place, duties, "duties");

    public static void Check(Scope scope, ProblemPlace place, IReadOnlyList<Duty> duties, string list)
    {
        for (var i = 0; i < duties.Count; i++)
        {
            var duty = duties[i];
            var field = $"{list}.{i}";
            var kind = Words.Of(duty.Kind);
            for (var p = 0; p < duty.Parts.Count; p++) scope.Knows(scope.Parts, duty.Parts[p], place, $"{field}.keep-off.{p}", "part");
            if (duty.Kind is DutyKind.TakeOff or DutyKind.WipeDry or DutyKind.Dry && duty.Ways.Count == 0)
                scope.Add("duty-without-way", place with { Field = field }, $"the duty `{kind}` names no way to meet it");
            if (duty.Kind == DutyKind.KeepOff && duty.Parts.Count == 0) scope.Add("duty-without-part", place with { Field = field }, "the duty `keep-off` names no part");
            if (duty.Kind is DutyKind.Inspect or DutyKind.Discard && duty.AfterUses is not > 0)
                scope.Add("duty-without-uses", place with { Field = field }, $"the duty `{kind}` does not say after how many uses");
            if (duty.Within is <= 0) scope.Add("outside-axis", place with { Field = field }, "a time is above 0");
            if (duty.Kind == DutyKind.TakeOff && duty.Ways.Any(way => way.Method is null))
                scope.Add("no-way-off", place with { Field = field }, "a residue is taken off by a method with water", "name damp-wipe, wet-wipe, spray, rinse or immerse");
        }
    }
}
