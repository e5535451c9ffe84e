namespace Compat.Published.Tests;

/// <summary>
/// What published guidance says of killing and of patients, asked with what touches the part, who is in it, what is on it and what must be killed.
/// </summary>
/// <remarks>
/// Cells: part and its type | agent and strength | exposure | what is asked of it | expected | what the source says | source. Asked of it: `touched-by`,
/// `patient`, `soil`, `level`, `against` and a word, or `occupied`. Expected: of what (`kill`, `people`, `whole`) and `forbidden`, `never allowed`,
/// `not forbidden` or `permitted`, as in the tables on the part alone.
/// </remarks>
public sealed class NeedQuestionTests
{
    public static TheoryData<string> Questions => RowTable.Lines("need-questions");

    [Theory]
    [MemberData(nameof(Questions))]
    public void The_answer_keeps_to_what_is_needed(string row)
    {
        var cells = RowTable.Cells(row);
        Assert.Equal(7, cells.Length);
        var question = cells[3].Split(", ").Aggregate(PublishedRow.QuestionOf(cells), Asked);
        var answer = KnowledgeBase.Shipped.Ask(question);
        var expected = cells[4].Split(' ', 2);
        var verdict = expected[0] switch
        {
            "kill" => answer.Kill!.Verdict,
            "people" => answer.People!.Verdict,
            "whole" => answer.Verdict,
            _ => throw new FormatException(cells[4]),
        };
        var holds = expected[1] switch
        {
            "forbidden" => verdict == Verdict.NotAllowed,
            "never allowed" => verdict <= Verdict.NotEstablished,
            "not forbidden" => verdict != Verdict.NotAllowed,
            "permitted" => verdict >= Verdict.AllowedWithinLimits,
            _ => throw new FormatException(cells[4]),
        };
        Assert.True(
            holds, $"expected {cells[4]}, is {verdict}; part {answer.PartVerdict}, kill {answer.Kill!.Verdict} "
                + $"({string.Join(", ", answer.Kill.Reasons.Select(reason => reason.Code))}), people {answer.People!.Verdict}: {row}");
    }

    /// <summary>Prions are outside of all computation: any agent, any part (guideline of 2008, Creutzfeldt-Jakob disease; tonometers).</summary>
    [Theory]
    [InlineData("tonometer-tip", "sodium-hypochlorite")]
    [InlineData("tonometer-tip", "ethanol")]
    [InlineData("hinged-instrument", "moist-heat")]
    [InlineData("hinged-instrument", "glutaraldehyde")]
    public void Against_prions_nothing_is_computed(string part, string agent)
    {
        var answer = KnowledgeBase.Shipped.Ask(new Question { Part = new(part), Agent = new(agent), Against = [OrganismTarget.Of(OrganismGroup.Prions)] });
        Assert.True(answer.Kill!.Verdict <= Verdict.NotEstablished);
        Assert.Empty(answer.Kill.Claims);
    }

    private static Question Asked(Question question, string token)
    {
        var words = token.Split(' ', 2);
        return words[0] switch
        {
            "touched-by" => question with { TouchedBy = Word<TouchedBy>(words[1]) },
            "patient" => question with { Patients = [.. question.Patients, Word<PatientGroup>(words[1])] },
            "soil" => question with { Soil = [.. question.Soil ?? [], Word<SoilKind>(words[1])] },
            "level" => question with { Level = Word<Level>(words[1]) },
            "against" => question with { Against = [.. question.Against, Target(words[1])] },
            "occupied" => question with { Occupied = true },
            _ => throw new FormatException(token),
        };
    }

    private static OrganismTarget Target(string name) => Words.TryParse<OrganismGroup>(name, out var group) ? OrganismTarget.Of(group)
        : OrganismTarget.Of(KnowledgeBase.Shipped.Data.Organisms.Single(organism => organism.Name == name || organism.AlsoCalled.Contains(name)).Id);

    private static T Word<T>(string word) where T : struct, Enum => Words.TryParse<T>(word, out var value) ? value : throw new FormatException(word);
}
