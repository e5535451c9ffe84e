namespace Compat.Evaluation;

/// <summary>A leaf as it lies on the axes of the question: each span is the values at which the leaf can be met.</summary>
internal sealed record Piece(ApplicationMethod Method, Span[] Spans, Decision Decision, bool OnlyForbids, Component? Component)
{
    public const int Residence = 0;
    public const int Dilution = 1;
    public const int Uses = 2;
    public const int Strength = 3;
    public const int Temperature = 4;
    public const int Ph = 5;
    public const int Count = 6;

    public Verdict Verdict => Decision.Verdict;
}
