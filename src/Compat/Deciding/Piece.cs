namespace Compat.Deciding;

/// <summary>A leaf as it lies on the axes of the question: each span is the values at which the leaf can be met.</summary>
internal sealed class Piece(ApplicationMethod method, Span[] spans, Decision decision, bool onlyForbids, Component? component)
{
    public const int ExposureTime = 0;
    public const int Dilution = 1;
    public const int Uses = 2;
    public const int Strength = 3;
    public const int Temperature = 4;
    public const int Ph = 5;
    public const int Count = 6;

    public ApplicationMethod Method { get; } = method;

    public Span[] Spans { get; } = spans;

    public Decision Decision { get; } = decision;

    public bool OnlyForbids { get; } = onlyForbids;

    public Component? Component { get; } = component;

    public Verdict Verdict => Decision.Verdict;
}
