namespace Compat.Validation;

/// <summary>Checks occasions.</summary>
internal static class OccasionValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.Occasions, RecordKind.Occasion, o => o.Id.Value);
        foreach (var occasion in scope.Data.Occasions)
        {
            var at = new Field(scope, RecordKind.Occasion, occasion.Id.Value);
            at.Sources(occasion.Sources, "the occasion");
            at["name"].Said(occasion.Name, "no-name", "the occasion has no name");
            for (var i = 0; i < occasion.Adds.Count; i++)
                if (occasion.Adds[i].Trim().Length == 0) at[$"adds.{i}"].Wrong("no-adds", "what is added is not said");
            if (occasion.Hold) Held(occasion, at);
            else if (occasion.Papers.Contains(Paper.HoldLabel))
                at["papers"].Wrong("label-without-hold", "`hold-label` goes with `hold` only");
        }
    }

    /// <summary>What is held is not touched, so nothing of a plan goes with it.</summary>
    private static void Held(Occasion occasion, Field at)
    {
        var field = occasion.Parts.Count > 0 ? "parts" : occasion.AtLeast is not null ? "at-least" : occasion.NeedsAgainst ? "needs-against" : null;
        if (field is not null)
            at[field].Wrong("hold-and-plan", $"`hold` and `{field}` exclude each other: what is held is not cleaned", "write one of the two");
        foreach (var paper in occasion.Papers.Where(p => p != Paper.HoldLabel))
            at["papers"].Wrong("hold-and-plan", $"`{Words.Of(paper)}` speaks of work that is not done while a device is held", "leave it out");
    }
}
