namespace Compat.Answers;

/// <summary>What an answer holds beside its verdicts: <see cref="Answer"/> says of each what it is.</summary>
internal sealed record AnswerDetail
{
    public static AnswerDetail Empty { get; } = new();

    public Reason? Decisive { get; init; }

    public IReadOnlyList<Reason> Reasons { get; init; } = [];

    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    public IReadOnlyList<AllowedBox> Boxes { get; init; } = [];

    public int BoxCount { get; init; }

    public IReadOnlyList<AllowedBox> ForbiddenBoxes { get; init; } = [];

    public IReadOnlyList<Limit> Limits { get; init; } = [];

    public IReadOnlyList<Duty> Duties { get; init; } = [];

    public IReadOnlyList<Rule> DecidedBy { get; init; } = [];

    public IReadOnlyList<Rule> SetAside { get; init; } = [];

    public IReadOnlyList<Source> Sources { get; init; } = [];

    public IReadOnlyList<Assumption> WouldBeAllowed { get; init; } = [];

    public bool JudgedByPart { get; init; }

    public bool WellFounded { get; init; }
}

/// <summary>A detail that is made when it is first read. Copies of an answer share it, so that all of them read the same.</summary>
internal sealed class LazyDetail(PreparedQuestion question)
{
    private AnswerDetail? _made;

    /// <remarks>Two threads may both make it; the first to finish is kept.</remarks>
    public AnswerDetail Value => Volatile.Read(ref _made) ?? Keep(new RegionAnswer(question.Base, question.Question, [], question.Asked!).Make().Detail);

    private AnswerDetail Keep(AnswerDetail made) => Interlocked.CompareExchange(ref _made, made, null) ?? made;
}
