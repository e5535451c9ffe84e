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
        if (answer.Question.OnlyPart)
            return "Only the part was asked about. Whether it disinfects, and whether its residue harms, is another question.";
        return answer.Verdict is Verdict.Allowed or Verdict.AllowedWithinLimits
            ? "The part stands it. Whether it disinfects, and whether its residue harms, was not asked."
            : "Only the part was judged. Whether it disinfects, and whether its residue harms, was not asked.";
    }

    /// <summary>What was judged of a device and what was not.</summary>
    public const string ScopeOfParts = "Only the parts were judged. Whether it disinfects, and whether its residue harms, is another question.";

    /// <summary>By whose evidence an 'allowed' holds; null for the other verdicts.</summary>
    public static string? JudgedBy(Answer answer)
    {
        if (answer.Verdict < Verdict.AllowedWithinLimits) return null;
        return answer.JudgedByPart
            ? "Judged by the part."
            : "Judged by its materials: weaker than evidence on the part itself.";
    }

    /// <summary>The cautions that end every answer.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "The device's own instructions for use and the product's label and safety data sheet come first.",
        "Local infection-prevention policy and licensed practice decide.",
        "A test on an inconspicuous spot is not proof.",
        "Never mix agents.",
        "Wear the protective equipment.",
        "What is 'not established' is not permission.",
    ];
}
