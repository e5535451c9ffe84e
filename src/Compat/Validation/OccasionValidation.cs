namespace Compat.Validation;

/// <summary>Checks occasions.</summary>
internal static class OccasionValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.Occasions, RecordKind.Occasion, o => o.Id.Value);
        foreach (var occasion in scope.Data.Occasions)
        {
            var place = new ProblemPlace(RecordKind.Occasion, occasion.Id.Value);
            RecordFacts.Sources(scope, place, occasion.Sources, "the occasion");
            RecordFacts.Text(scope, place, "name", occasion.Name, "the occasion has no name");
            for (var i = 0; i < occasion.Adds.Count; i++)
                if (occasion.Adds[i].Trim().Length == 0) scope.Add("no-adds", place with { Field = $"adds.{i}" }, "what is added is not said");
            if (occasion.Hold) Held(scope, occasion, place);
            else if (occasion.Papers.Contains(Paper.HoldLabel))
                scope.Add("label-without-hold", place with { Field = "papers" }, "`hold-label` goes with `hold` only");
        }
    }

    /// <summary>What is held is not touched, so nothing of a plan goes with it.</summary>
    private static void Held(Scope scope, Occasion occasion, ProblemPlace place)
    {
        var field = occasion.Parts.Count > 0 ? "parts" : occasion.AtLeast is not null ? "at-least" : occasion.NeedsAgainst ? "needs-against" : null;
        if (field is not null)
            scope.Add("hold-and-plan", place with { Field = field }, $"`hold` and `{field}` exclude each other: what is held is not cleaned", "write one of the two");
        foreach (var paper in occasion.Papers.Where(p => p != Paper.HoldLabel))
            scope.Add("hold-and-plan", place with { Field = "papers" }, $"`{Words.Of(paper)}` speaks of work that is not done while a device is held", "leave it out");
    }
}
