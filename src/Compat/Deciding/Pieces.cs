namespace Compat.Deciding;

/// <summary>The pieces of a question that was asked, so that what follows need not collect them anew.</summary>
/// <param name="Substance">The substance.</param>
/// <param name="Variants">The variants of the part.</param>
/// <param name="Pieces">The pieces of every method.</param>
internal sealed record AskedPieces(Substance Substance, IReadOnlyList<PartVariant> Variants, IReadOnlyList<Piece> Pieces)
{
    /// <summary>Whether a substance that is the same but for its temperature and methods has these pieces, those of other methods set apart.</summary>
    public bool Serve(Substance other) => other.Temperature.Equals(Substance.Temperature) && other.Methods.Methods.All(Substance.Methods.Contains);
}

/// <summary>Collects the pieces of a question: every component on every method, cut into leaves and laid on the question's axes.</summary>
internal sealed class Pieces(CompiledBase kb, Question question, Substance substance, IReadOnlyList<PartVariant> variants, Scene[]? scenes = null)
{
    /// <summary>Why nothing is permitted where there is no value to judge.</summary>
    public static Reason NoValue { get; } = new(ReasonCode.NoValue, []);

    private Interval ExposureTime => question.ExposureTime ?? Interval.Above(0m);

    private readonly Box<Stretch> _asked = AskedOf(question, substance);

    /// <summary>What is asked, any strength of it by any method.</summary>
    public static Box<Stretch> AskedOf(Question question, Substance substance) => Box<Stretch>.Whole with
    {
        Dilution = Stretch.Of(substance.Dilution),
        ExposureTime = Stretch.Of(question.ExposureTime ?? Interval.Above(0m)),
        Temperature = Stretch.Of(substance.Temperature),
        Ph = Stretch.Of(substance.WholePh),
        Uses = Stretch.Of(RuleCompiler.WholeNumbers(question.Uses is { } n ? Interval.Closed(1m, n) : Interval.AtLeast(1m))),
    };

    /// <remarks>Of nothing nothing follows: a component of which a method has no piece, because it has no value on some axis, is not established.</remarks>
    public IReadOnlyList<Piece> All()
    {
        if (IsNothing) return substance.Methods.Methods.Select(method => Nothing(method, substance.Components.FirstOrDefault())).ToArray();
        var pieces = new List<Piece>();
        var withoutEnd = question.ExposureTime is { } asked && asked.Equals(Interval.Exactly(Interval.WithoutEnd));
        var open = MethodSet.None;
        foreach (var method in substance.Methods.ToArray())
        {
            if (BarrierOf(method, question, variants) is { } barrier) pieces.Add(new Piece(method, Box<Stretch>.Whole, barrier, null));
            else open = open.With(method);
        }

        if (open.IsEmpty) return pieces;
        for (var c = 0; c < substance.Components.Count; c++)
        {
            var component = substance.Components[c];
            var leaves = new Leaves(scenes?[c] ?? new Scene(kb, variants, substance, component, withoutEnd));
            var domain = kb.Grid.CellsOf(_asked with { Strength = Stretch.Of(Reached(component.Strength)) });
            foreach (var method in open.ToArray())
            {
                var before = pieces.Count;
                foreach (var leaf in leaves.Of(method, domain)) Lay(pieces, component, method, leaf);
                if (pieces.Count == before) pieces.Add(Nothing(method, component));
            }
        }

        return pieces;
    }

    /// <summary>Whether some axis has no value at which what is asked could be met.</summary>
    public bool IsNothing => substance.IsNothing || ExposureTime.Intersect(Axes.RangeOf(Axis.ExposureTime)).IsEmpty || question.Uses < 1;

    private Piece Nothing(ApplicationMethod method, Component? component) =>
        new(method, Box<Stretch>.Whole, new Decision { Verdict = Verdict.NotEstablished, Variant = variants[0], Reasons = [NoValue] }, component);

    /// <summary>The decision where the part stands neither the method nor an act, whatever the agent; null where it stands both.</summary>
    internal static Decision? BarrierOf(ApplicationMethod method, Question question, IReadOnlyList<PartVariant> variants)
    {
        foreach (var variant in variants)
        {
            if (variant.MaterialsAlone) continue;
            Model.Act? act = null;
            for (var i = 0; i < question.Acts.Count && act is null; i++)
                if (variant.NeverStands(question.Acts[i])) act = question.Acts[i];
            if (act is null && variant.Stands(method)) continue;
            var reason = act is { } never
                ? new Reason(ReasonCode.NeverActs, [Words.Of(never)], null, variant.Member)
                : new Reason(ReasonCode.TooWet, [Words.Of(method), Words.Of(variant.Wettest)], null, variant.Member);
            return new Decision { Verdict = Verdict.NotAllowed, Variant = variant, Reasons = [reason] };
        }

        return null;
    }

    /// <summary>All strengths that occur over the dilutions considered.</summary>
    private Interval Reached(Interval atOne)
    {
        var dilution = substance.Dilution;
        if (dilution.Equals(Interval.Exactly(1m))) return atOne;
        return new Interval(atOne.Lower * (dilution.Lower ?? 0m), true, atOne.Upper is { } high ? high * (dilution.Upper ?? 1m) : null, true);
    }

    private void Lay(List<Piece> pieces, Component component, ApplicationMethod method, Leaf leaf)
    {
        var box = kb.Grid.ValuesOf(leaf.Cells);
        if (!box.Temperature.Meets(_asked.Temperature) || !box.ExposureTime.Meets(_asked.ExposureTime) || !box.Uses.Meets(_asked.Uses)) return;
        foreach (var here in substance.DilutionsAt(component, box.Strength, box.Ph, box.Dilution))
            pieces.Add(new Piece(method, box with { Dilution = here }, leaf.Decision, component));
    }
}
