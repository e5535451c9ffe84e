namespace Compat.Serialization;

/// <summary>Which of part, kill and people decide a whole answer.</summary>
internal static class Deciders
{
    /// <summary>Their words, the first the one to be said first.</summary>
    public static IReadOnlyList<string> Of(Answer answer)
    {
        var list = new List<string>();
        if (IsOutside(answer)) list.Add("kill");
        if (answer.PartVerdict == answer.Verdict) list.Add("part");
        if (answer.Kill?.Verdict == answer.Verdict && list is not ["kill", ..]) list.Add("kill");
        if (answer.People?.Verdict == answer.Verdict) list.Add("people");
        return list;
    }

    /// <summary>Whether no agent at all is the answer: prions, soil where it must be dry.</summary>
    public static bool IsOutside(Answer answer) =>
        answer.Kill is { Reasons: [{ Code: KillReasonCode.Prions or KillReasonCode.SoiledWhereDry }, ..] };
}
