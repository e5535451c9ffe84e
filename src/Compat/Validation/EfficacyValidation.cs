namespace Compat.Validation;

/// <summary>Checks organisms, what levels include, what contacts ask and what tests show.</summary>
internal static class EfficacyValidation
{
    public static void Check(Scope scope)
    {
        var data = scope.Data;
        scope.Duplicates(data.Organisms, RecordKind.Organism, o => o.Id.Value);
        scope.Duplicates(data.Levels, RecordKind.Level, l => Words.Of(l.Level));
        scope.Duplicates(data.Needs, RecordKind.Need, n => n.Id.Value);
        scope.Duplicates(data.TestStandards, RecordKind.TestStandard, t => t.Code.Value);
        foreach (var organism in data.Organisms)
        {
            var place = new ProblemPlace(RecordKind.Organism, organism.Id.Value);
            if (Words.TryParse<OrganismGroup>(organism.Id.Value, out _))
                scope.Add("reserved-id", place with { Field = "id" }, $"`{organism.Id}` is the word of a group, not an organism", "give the organism a narrower id");
            RecordFacts.Sources(scope, place, organism.Sources, "the organism");
        }

        Levels(scope);
        Needs(scope);
        foreach (var test in data.TestStandards) Test(scope, test);
    }

    private static void Test(Scope scope, TestStandard test)
    {
        var place = new ProblemPlace(RecordKind.TestStandard, test.Code.Value);
        RecordFacts.Sources(scope, place, test.Sources, "the test");
        RecordFacts.Text(scope, place, "name", test.Name, "the test has no name");
        if (test.On.Count == 0) scope.Add("no-on", place with { Field = "on" }, "a test is made on something", $"write one of {string.Join(", ", Words.All<TestedOn>())}");
        ClaimValidation.Targets(scope, test.Shows, place, "shows");
        if (test.Wiping && test.Step != TestStep.Practical) scope.Add("wiping-in-liquid", place with { Field = "wiping" }, $"a test that wipes is `{Words.Of(TestStep.Practical)}`, not `{Words.Of(test.Step)}`");
        if (test.Step == TestStep.Basic != (test.Field == TestField.Development))
            scope.Add("basic-test-with-field", place with { Field = "step" }, $"a test is `{Words.Of(TestStep.Basic)}` where its field is `{Words.Of(TestField.Development)}`, and only there");
    }

    private static void Levels(Scope scope)
    {
        if (scope.Data.Levels.Count == 0) return;
        var below = new List<OrganismGroup>();
        foreach (var level in Enum.GetValues<Level>())
        {
            var meaning = scope.Data.Levels.FirstOrDefault(l => l.Level == level);
            var place = new ProblemPlace(RecordKind.Level, Words.Of(level));
            if (meaning is null)
            {
                if (level == Level.Cleaned) continue;
                scope.Add("no-level", place, $"what the level `{Words.Of(level)}` includes is missing");
                continue;
            }

            RecordFacts.Sources(scope, place, meaning.Sources, "the level");
            var lost = below.Except(meaning.Includes).ToArray();
            if (lost.Length > 0)
                scope.Add("level-loses-group", place with { Field = "includes" }, $"`{Words.Of(level)}` leaves out {string.Join(", ", lost.Select(g => $"`{Words.Of(g)}`"))}, which a level below includes");
            if (meaning.Includes.Contains(OrganismGroup.Prions))
                scope.Add("prions-in-level", place with { Field = "includes" }, "prions lie outside all levels");
            below.AddRange(meaning.Includes.Except(below));
        }
    }

    private static void Needs(Scope scope)
    {
        if (scope.Data.Needs.Count == 0) return;
        foreach (var need in scope.Data.Needs)
        {
            var place = new ProblemPlace(RecordKind.Need, need.Id.Value);
            RecordFacts.Sources(scope, place, need.Sources, "the need");
            if (need.TouchedBy.Count == 0) scope.Add("no-contact", place with { Field = "touched-by" }, "a need names at least one contact");
            if (need.Level is null && need.CleanFirst)
                scope.Add("dry-and-clean", place with { Field = "clean-first" }, "what is kept dry is not cleaned first");
        }

        foreach (var contact in Enum.GetValues<TouchedBy>())
        {
            var always = scope.Data.Needs.Where(n => n.Soil.Count == 0 && n.TouchedBy.Contains(contact)).ToArray();
            if (always.Length == 1) continue;
            if (always.Length == 0)
                scope.Add("contact-without-need", new ProblemPlace(RecordKind.Need, scope.Data.Needs[0].Id.Value), $"nothing says what `{Words.Of(contact)}` asks without soil", "silence is no permission: write a need for it, `dry: true` where it asks nothing");
            else
                scope.Add("two-needs", new ProblemPlace(RecordKind.Need, always[1].Id.Value, "touched-by"), $"`{always[0].Id}` and `{always[1].Id}` both say what `{Words.Of(contact)}` asks without soil");
        }
    }
}
