namespace Compat.Answers;

/// <summary>Whether what is needed is killed.</summary>
public sealed record KillJudgement
{
    /// <summary>The verdict.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The need it was held against.</summary>
    public required Need Need { get; init; }

    /// <summary>Why; the first decides.</summary>
    public IReadOnlyList<KillReason> Reasons { get; init; } = [];

    /// <summary>The claims that meet the need.</summary>
    public IReadOnlyList<KillClaim> Claims { get; init; } = [];

    /// <summary>Whether it rests on a label, instructions or a publication that was read.</summary>
    public bool WellFounded { get; init; }
}
