namespace Compat.Benchmarks.Asking;

/// <summary>Reads all that an answer holds.</summary>
internal static class AnswerReading
{
    /// <summary>Touches every item of every list, so that none is left unread.</summary>
    public static int ReadAll(Answer answer)
    {
        var read = (int)answer.Decisive.Code + answer.BoxCount + answer.Identity.Count + (answer.WellFounded ? 1 : 0) + (answer.JudgedByPart ? 1 : 0);
        var reasons = answer.Reasons;
        for (var i = 0; i < reasons.Count; i++)
            for (var a = 0; a < reasons[i].Arguments.Count; a++) read += reasons[i].Arguments[a].Length;
        read += Rules(answer.DecidedBy) + Rules(answer.SetAside) + Duties(answer.Duties) + Boxes(answer.Boxes) + Boxes(answer.ForbiddenBoxes) + Taken(
            answer.Assumptions) + Taken(answer.WouldBeAllowed);
        for (var i = 0; i < answer.Sources.Count; i++) read += answer.Sources[i].Title.Length;
        for (var i = 0; i < answer.Limits.Count; i++) read += answer.Limits[i].Arguments.Count;
        foreach (var damage in answer.Damage) read += damage.LookFor?.Length ?? 0;
        return read;
    }

    private static int Rules(IReadOnlyList<Rule> rules)
    {
        var read = 0;
        for (var i = 0; i < rules.Count; i++) read += rules[i].Why.Length;
        return read;
    }

    private static int Duties(IReadOnlyList<Duty> duties)
    {
        var read = 0;
        for (var i = 0; i < duties.Count; i++) read += (int)duties[i].Kind + duties[i].Ways.Count;
        return read;
    }

    private static int Boxes(IReadOnlyList<AllowedBox> boxes)
    {
        var read = 0;
        for (var i = 0; i < boxes.Count; i++)
        {
            read += (int)boxes[i].Method + Duties(boxes[i].Duties);
            for (var r = 0; r < boxes[i].DecidedBy.Count; r++) read += boxes[i].DecidedBy[r].Value.Length;
        }

        return read;
    }

    private static int Taken(IReadOnlyList<Assumption> taken)
    {
        var read = 0;
        for (var i = 0; i < taken.Count; i++) read += (int)taken[i].Treatment;
        return read;
    }
}
