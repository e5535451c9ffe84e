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
            var at = new Field(scope, RecordKind.InstructionWord, word.Id.Value);
            at["sources"].KnowsAll(scope.Sources, word.Sources, "source");
            at["reason"].Said(word.Reason, "no-reason", "the word does not say why it is read so");
            Phrases(word, phrases, at["phrases"]);
            if (word.Permits is { } permits && Agents(permits, at["permits"])) Permits(permits, at["permits"]);
            if (word.Forbids is { } forbids && Agents(forbids, at["forbids"]))
            {
                foreach (var agent in forbids.Agents) at["forbids.when"].WideBox(forbids.When, agent);
                at["forbids.when"].NeverEnds(forbids.When);
            }

            if (word.Act is { } act) Act(act, at["act"]);
            if (word.Permits is null && word.Forbids is null && word.Act is null && !word.ListsNothing)
                at.Wrong("word-without-reading", "the word has no reading", "write `lists-nothing: true` where that is so");
            if (word.Permits is not null && word.ListsNothing)
                at["lists-nothing"].Wrong("lists-nothing-and-permits", "`lists-nothing` and `permits` exclude each other");
        }
    }

    private static void Phrases(InstructionWord word, Dictionary<string, InstructionWordId> phrases, Field at)
    {
        if (word.Phrases.Count == 0) at.Wrong("no-phrase", "the word stands for no phrase");
        for (var i = 0; i < word.Phrases.Count; i++)
        {
            var phrase = word.Phrases[i].Trim();
            if (phrase.Length == 0) at[i].Wrong("no-phrase", "the phrase is empty");
            else if (phrases.TryGetValue(phrase, out var other))
                at[i].Wrong("duplicate-phrase", $"`{phrase}` is read by `{other}` already", "a phrase has one reading");
            else phrases[phrase] = word.Id;
        }
    }

    private static void Permits(WordReading permits, Field at)
    {
        for (var i = 0; i < permits.Agents.Count; i++)
        {
            if (permits.Agents[i] == AgentClass.Root) at["agents"][i].Wrong("permits-everything", "a word never permits every agent");
            at["when"].Box(permits.When, permits.Agents[i]);
        }

        foreach (var axis in new[] { Axis.ExposureTime, Axis.Uses }) at["when"][Words.Of(axis)].NeverBegins(permits.When.On(axis), axis);
    }

    /// <summary>Checks the agents of a reading, and that they have one basis where it names a strength.</summary>
    private static bool Agents(WordReading reading, Field at)
    {
        if (reading.Agents.Count == 0) at["agents"].Wrong("no-agent", "the reading names no agent");
        var known = reading.Agents.Count > 0;
        for (var i = 0; i < reading.Agents.Count; i++) known &= at["agents"][i].Knows(at.Scope.Agents, reading.Agents[i], "agent");
        if (!known || reading.When.Strength.Statement != AxisStatement.Within || reading.Agents.Select(a => at.Scope.Basis(a)?.Basis).Distinct().Count() == 1)
            return known;
        at["when.strength"].Wrong("mixed-basis", "the agents of this reading are not written in one basis", "leave the strength out, or write two words");
        return false;
    }

    private static void Act(WordAct act, Field at)
    {
        at["duties"].Duties(act.Duties);
        at["exposure-time"].Range(act.ExposureTime, Axis.ExposureTime);
        at["exposure-time"].NeverBegins(act.ExposureTime, Axis.ExposureTime);
        if (act.Methods.IsEmpty && act.ExposureTime.Statement == AxisStatement.NotNamed && act.Duties.Count == 0)
            at.Wrong("act-says-nothing", "`act` says nothing of how");
    }
}
