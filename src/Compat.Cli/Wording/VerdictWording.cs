using Compat.Serialization;

namespace Compat.Cli.Wording;

/// <summary>Names verdicts and says what was judged.</summary>
public static class VerdictWording
{
    /// <summary>What leads an answer.</summary>
    public static string Heading(Verdict verdict) => verdict switch
    {
        Verdict.NotAllowed => "NOT ALLOWED",
        Verdict.NotEstablished => "NOT ESTABLISHED",
        Verdict.AllowedWithinLimits => "ALLOWED WITHIN LIMITS",
        _ => "ALLOWED",
    };

    /// <summary>What was judged and what was not.</summary>
    public static string Scope(Answer answer)
    {
        if (answer.Kill is not null)
        {
            return answer.People is null
                ? "What the part stands and whether it kills were judged; what it means for people was not."
                : "What the part stands, whether it kills what is needed, and what it means for people were judged; the worst of the three is the answer.";
        }

        if (answer.Question.OnlyPart)
            return "Only the part was asked about. Whether it disinfects, and whether its residue harms, is another question.";
        return answer.Verdict is Verdict.Allowed or Verdict.AllowedWithinLimits
            ? "The part stands it. Whether it disinfects, and whether its residue harms, was not asked."
            : "Only the part was judged. Whether it disinfects, and whether its residue harms, was not asked.";
    }

    /// <summary>What was judged of a device and what was not.</summary>
    public static string ScopeOfParts(Question question) => question.JudgesKillAndPeople
        ? "Of every part that needs something: what it stands, whether what it needs is killed, and what it means for people. The worst of the three is the part's answer."
        : "Only the parts were judged. Whether it disinfects, and whether its residue harms, is another question.";

    /// <summary>A verdict within a sentence.</summary>
    public static string Plain(Verdict verdict) => Space.Words.Of(verdict).Replace('-', ' ');

    /// <summary>The sentence that follows the verdict: what decided, and why.</summary>
    public static string Decisive(Answer answer, Names names)
    {
        var part = ReasonWording.Of(answer.Decisive, answer.Question, names);
        if (answer.Kill is not { } kill) return part;
        if (answer.Verdict >= Verdict.AllowedWithinLimits)
        {
            var kills = kill.Reasons is [{ Code: Compat.Answers.KillReasonCode.NothingToKill }] ? "nothing need be killed on it" : "what is needed is killed";
            return $"The part stands it, {kills}, and no rule on people forbids it.";
        }

        var deciders = Deciders.Of(answer);
        var also = deciders.Count == 1 ? "" : $" ({string.Join(" and ", deciders.Skip(1))} too)";
        return deciders[0] switch
        {
            "part" => $"The part decides{also}: {part}",
            "kill" => $"Kill decides{also}: {KillWording.Of(kill, answer, names)}",
            _ => $"People decide: {PeopleWording.Of(answer.People!, names)}",
        };
    }

    /// <summary>By whose evidence an 'allowed' holds; null for the other verdicts.</summary>
    public static string? JudgedBy(Answer answer)
    {
        if (answer.PartVerdict < Verdict.AllowedWithinLimits) return null;
        return answer.JudgedByPart
            ? "Judged by the part."
            : "Judged by its materials: weaker than evidence on the part itself.";
    }

    /// <summary>The cautions that end every answer.</summary>
    public static IReadOnlyList<string> Cautions { get; } = Enum.GetValues<Caution>().Select(Of).ToArray();

    /// <summary>A caution.</summary>
    public static string Of(Caution caution) => caution switch
    {
        Caution.InstructionsAndLabelFirst => "The device's own instructions for use and the product's label and safety data sheet come first.",
        Caution.PolicyAndPracticeDecide => "Local infection-prevention policy and licensed practice decide.",
        Caution.SpotTestIsNoProof => "A test on an inconspicuous spot is not proof.",
        Caution.NeverMix => "Never mix agents.",
        Caution.WearProtection => "Wear the protective equipment.",
        _ => "What is 'not established' is not permission.",
    };
}
