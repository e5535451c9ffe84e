namespace Compat.Deciding;

/// <summary>What is decided of a component by one method in a box, laid on the axes of the question: each extent is the values at which it can be met.</summary>
internal sealed class Piece(ApplicationMethod method, Box<Stretch> box, Decision decision, Component? component)
{
    public ApplicationMethod Method { get; } = method;

    /// <summary>The exposures, by the one method.</summary>
    public Box<Stretch> Box { get; } = box with { Methods = MethodSet.Of(method) };

    public Decision Decision { get; } = decision;

    /// <summary>The component; null of a barrier.</summary>
    public Component? Component { get; } = component;

    public bool OnlyForbids => Component is { OnlyForbids: true };

    public Verdict Verdict => Decision.Verdict;
}
