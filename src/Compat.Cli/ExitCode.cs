namespace Compat.Cli;

/// <summary>What the command returns to a script.</summary>
public static class ExitCode
{
    /// <summary>Of <c>ask</c>: allowed as asked. Elsewhere: done.</summary>
    public const int Done = 0;

    /// <summary>Of <c>ask</c>: not allowed. Elsewhere: nothing found.</summary>
    public const int NotAllowed = 1;

    /// <summary>The call or the data was wrong.</summary>
    public const int BadInput = 2;

    /// <summary>Of <c>ask</c>: allowed, but only within the limits shown.</summary>
    public const int WithinLimits = 3;

    /// <summary>Of <c>ask</c>: not established.</summary>
    public const int NotEstablished = 4;

    /// <summary>The code of one answer.</summary>
    public static int Of(Answer answer) => answer.Verdict switch
    {
        Verdict.NotAllowed => NotAllowed,
        Verdict.NotEstablished => NotEstablished,
        _ => answer.MayUse ? Done : WithinLimits,
    };

    /// <summary>The code of several answers: not allowed, else not established, else within limits, else allowed as asked. No answer at all is not established.</summary>
    public static int Of(IReadOnlyCollection<Answer> answers)
    {
        int[] worstFirst = [NotAllowed, NotEstablished, WithinLimits, Done];
        var codes = answers.Select(Of).ToHashSet();
        return codes.Count == 0 ? NotEstablished : worstFirst.First(codes.Contains);
    }
}
