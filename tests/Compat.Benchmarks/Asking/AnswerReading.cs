namespace Compat.Benchmarks.Asking;

/// <summary>Reads all that an answer holds.</summary>
internal static class AnswerReading
{
    /// <summary>How many items its lists hold together, so that none is left unread.</summary>
    public static int ReadAll(Answer answer) =>
        answer.Reasons.Sum(reason => 1 + reason.Arguments.Count) + answer.Assumptions.Count + answer.Boxes.Sum(box => 1 + box.Duties.Count + box.DecidedBy.Count) + answer.ForbiddenBoxes.Count
        + answer.Limits.Count + answer.Duties.Count + answer.DecidedBy.Count + answer.SetAside.Count + answer.Sources.Count + answer.WouldBeAllowed.Count + answer.Damage.Count() + answer.Identity.Count + (int)answer.Decisive.Code;
}
