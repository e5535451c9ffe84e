namespace Compat.Validation;

/// <summary>Checks how words of instructions are read.</summary>
internal static class InstructionWordValidation
{
    public static void Check(Scope scope)
    {
        scope.Duplicates(scope.Data.InstructionWords, RecordKind.InstructionWord, w => w.Id.Value);
        var phrases = new Dictionary<string, InstructionWordId>(StringComparer.OrdinalIgnoreCase);
        foreach (var word in scope.Data.InstructionWords)
        {
            var place = new ProblemPlace(RecordKind.InstructionWord, word.Id.Value);
            scope.CheckSources(word.Sources, place);
            RecordFacts.Text(scope, place, "reason", word.Reason, "the word does not say why it is read so");
            Phrases(scope, word, phrases, place);
            if (word.Permits is { } permits) Permits(scope, permits, place);
            if (word.Forbids is { } forbids && Agents(scope, forbids, place, "forbids"))
                Forbids(scope, forbids, place);
            if (word.Act is { } act) Act(scope, act, place);
            if (word.Permits is null && word.Forbids is null && word.Act is null && !word.ListsNothing)
                scope.Add("word-without-reading", place, "the word has no reading", "write `lists-nothing: true` where that is so");
            if (word.Permits is not null && word.ListsNothing)
                scope.Add("lists-nothing-and-permits", place with { Field = "lists-nothing" }, "`lists-nothing` and `permits` exclude each other");
        }
    }

    private static void Phrases(Scope scope, InstructionWord word, Dictionary<string, InstructionWordId> phrases, ProblemPlace place)
    {
        if (word.Phrases.Count == 0) scope.Add("no-phrase", place with { Field = "phrases" }, "the word stands for no phrase");
        for (var i = 0; i < word.Phrases.Count; i++)
        {
            var here = place with { Field = $"phrases.{i}" };
            var phrase = word.Phrases[i].Trim();
            if (phrase.Length == 0) scope.Add("no-phrase", here, "the phrase is empty");
            else if (phrases.TryGetValue(phrase, out var other)) scope.Add("duplicate-phrase", here, $"`{phrase}` is read by `{other}` already", "a phrase has one reading");
            else phrases[phrase] = word.Id;
        }
    }

    private static void Permits(Scope scope, WordReading permits, ProblemPlace place)
    {
        if (!Agents(scope, permits, place, "permits")) return;
        for (var i = 0; i < permits.Agents.Count; i++)
        {
            if (permits.Agents[i] == AgentClass.Root)
                scope.Add("permits-everything", place with { Field = $"permits.agents.{i}" }, "a word never permits every agent");
            BoxValidation.Axes(scope, place, "permits.when", permits.When, permits.Agents[i], ofProduct: false);
        }

        foreach (var axis in new[] { Axis.ExposureTime, Axis.Uses })
        {
            if (permits.When.On(axis) is { Statement: AxisStatement.Within, Range.Lower: not null })
                scope.Add("permission-from", place with { Field = "permits.when." + Words.Of(axis) }, $"the `{Words.Of(axis)}` of a permission has a lower end: more would be allowed where less is not", "write it with an upper end only");
        }
    }

    private static void Forbids(Scope scope, WordReading forbids, ProblemPlace place)
    {
        foreach (var agent in forbids.Agents) RecordFacts.WideBox(scope, place, "forbids.when", forbids.When, agent);
        foreach (var axis in new[] { Axis.ExposureTime, Axis.Uses })
        {
            if (forbids.When.On(axis) is { Statement: AxisStatement.Within, Range.Upper: not null })
                scope.Add("prohibition-ends", place with { Field = "forbids.when." + Words.Of(axis) }, $"the `{Words.Of(axis)}` of a 'not allowed' has an upper end: more than that would not be forbidden", "write it with a lower end only, or leave the axis out");
        }
    }

    /// <summary>Checks the agents of a reading, and that they have one basis where it names a strength.</summary>
    private static bool Agents(Scope scope, WordReading reading, ProblemPlace place, string field)
    {
        if (reading.Agents.Count == 0) scope.Add("no-agent", place with { Field = field + ".agents" }, "the reading names no agent");
        var known = reading.Agents.Count > 0;
        for (var i = 0; i < reading.Agents.Count; i++) known &= scope.Knows(scope.Agents, reading.Agents[i], place, $"{field}.agents.{i}", "agent");
        if (!known || reading.When.Strength.Statement != AxisStatement.Within) return known;
        var bases = reading.Agents.Select(a => scope.Basis(a)?.Basis).Distinct().ToArray();
        if (bases.Length > 1)
        {
            scope.Add("mixed-basis", place with { Field = field + ".when.strength" }, "the agents of this reading are not written in one basis", "leave the strength out, or write two words");
            return false;
        }

        return true;
    }

    private static void Act(Scope scope, WordAct act, ProblemPlace place)
    {
        DutyValidation.Check(scope, place, act.Duties, "act.duties");
        if (act.ExposureTime.Statement == AxisStatement.Within)
            BoxValidation.Range(scope, place, "act.exposure-time", act.ExposureTime.Range, 0m, null, false, "exposure-time");
        if (act.ExposureTime is { Statement: AxisStatement.Within, Range.Lower: not null })
            scope.Add("permission-from", place with { Field = "act.exposure-time" }, "the `exposure-time` of a permission has a lower end: more would be allowed where less is not", "write it with an upper end only");
        if (act.Methods.IsEmpty && act.ExposureTime.Statement == AxisStatement.NotNamed && act.Duties.Count == 0)
            scope.Add("act-says-nothing", place with { Field = "act" }, "`act` says nothing of how");
    }
}
