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
            var at = new Field(scope, RecordKind.Organism, organism.Id.Value);
            if (Words.TryParse<OrganismGroup>(organism.Id.Value, out _))
                at["id"].Wrong("reserved-id", $"`{organism.Id}` is the word of a group, not an organism", "give the organism a narrower id");
            at.Sources(organism.Sources, "the organism");
        }

        Levels(scope);
        Needs(scope);
        foreach (var test in data.TestStandards) Test(scope, test);
    }

    private static void Test(Scope scope, TestStandard test)
    {
        var at = new Field(scope, RecordKind.TestStandard, test.Code.Value);
        at.Sources(test.Sources, "the test");
        at["name"].Said(test.Name, "no-name", "the test has no name");
        if (test.On.Count == 0) at["on"].Wrong("no-on", "a test is made on something", $"write one of {string.Join(", ", Words.All<TestedOn>())}");
        ClaimValidation.Targets(at["shows"], test.Shows);
        if (test.Wiping && test.Step != TestStep.Practical)
            at["wiping"].Wrong("wiping-in-liquid", $"a test that wipes is `{Words.Of(TestStep.Practical)}`, not `{Words.Of(test.Step)}`");
        if (test.Step == TestStep.Basic != (test.Field == TestField.Development))
            at["step"].Wrong("basic-test-with-field",
                $"a test is `{Words.Of(TestStep.Basic)}` where its field is `{Words.Of(TestField.Development)}`, and only there");
    }

    private static void Levels(Scope scope)
    {
        if (scope.Data.Levels.Count == 0) return;
        var below = new List<OrganismGroup>();
        foreach (var level in Enum.GetValues<Level>())
        {
            var meaning = scope.Data.Levels.FirstOrDefault(l => l.Level == level);
            var at = new Field(scope, RecordKind.Level, Words.Of(level));
            if (meaning is null)
            {
                if (level == Level.Cleaned) continue;
                at.Wrong("no-level", $"what the level `{Words.Of(level)}` includes is missing");
                continue;
            }

            at.Sources(meaning.Sources, "the level");
            var lost = below.Except(meaning.Includes).ToArray();
            if (lost.Length > 0)
            {
                var named = string.Join(", ", lost.Select(g => $"`{Words.Of(g)}`"));
                at["includes"].Wrong("level-loses-group", $"`{Words.Of(level)}` leaves out {named}, which a level below includes");
            }

            if (meaning.Includes.Contains(OrganismGroup.Prions))
                at["includes"].Wrong("prions-in-level", "prions lie outside all levels");
            below.AddRange(meaning.Includes.Except(below));
        }
    }

    private static void Needs(Scope scope)
    {
        if (scope.Data.Needs.Count == 0) return;
        foreach (var need in scope.Data.Needs)
        {
            var at = new Field(scope, RecordKind.Need, need.Id.Value);
            at.Sources(need.Sources, "the need");
            if (need.TouchedBy.Count == 0) at["touched-by"].Wrong("no-contact", "a need names at least one contact");
            if (need.Level is null && need.CleanFirst)
                at["clean-first"].Wrong("dry-and-clean", "what is kept dry is not cleaned first");
        }

        foreach (var contact in Enum.GetValues<TouchedBy>())
        {
            var always = scope.Data.Needs.Where(n => n.Soil.Count == 0 && n.TouchedBy.Contains(contact)).ToArray();
            if (always.Length == 1) continue;
            if (always.Length == 0)
                new Field(scope, RecordKind.Need, scope.Data.Needs[0].Id.Value).Wrong(
                    "contact-without-need", $"nothing says what `{Words.Of(contact)}` asks without soil",
                    "silence is no permission: write a need for it, `dry: true` where it asks nothing");
            else
                new Field(scope, RecordKind.Need, always[1].Id.Value)["touched-by"].Wrong(
                    "two-needs", $"`{always[0].Id}` and `{always[1].Id}` both say what `{Words.Of(contact)}` asks without soil");
        }
    }
}
