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
internal sealed class Pieces(CompiledBase kb, Question question, Substance substance, IReadOnlyList<PartVariant> variants)
{
    /// <summary>Why nothing is permitted where there is no value to judge.</summary>
    public static Reason NoValue { get; } = new(ReasonCode.NoValue, []);

    public static Span Positive { get; } = Span.Of(Interval.Above(0m));

    private Interval ExposureTime => question.ExposureTime ?? Interval.Above(0m);

    private Interval UsesAsked => RuleCompiler.WholeNumbers(question.Uses is { } n ? Interval.Closed(1m, n) : Interval.AtLeast(1m));

    /// <remarks>Of nothing nothing follows: a component of which a method has no piece, because it has no value on some axis, is not established.</remarks>
    public IReadOnlyList<Piece> All()
    {
        if (IsNothing) return substance.Methods.Methods.Select(method => Nothing(method, substance.Components.FirstOrDefault())).ToArray();
        var pieces = new List<Piece>();
        var withoutEnd = question.ExposureTime is { } asked && asked.Equals(Interval.Exactly(Interval.WithoutEnd));
        var open = MethodSet.None;
        foreach (var method in substance.Methods.ToArray())
        {
            if (BarrierOf(method, question, variants) is { } barrier) pieces.Add(new Piece(method, new Span[Piece.Count], barrier, false, null));
            else open = open.With(method);
        }

        if (open.IsEmpty) return pieces;
        foreach (var component in substance.Components)
        {
            var scene = new Scene(kb, variants, substance, component, withoutEnd);
            var leaves = new Leaves(kb, scene);
            var (low, high) = Domain(component);
            foreach (var method in open.ToArray())
            {
                var before = pieces.Count;
                foreach (var leaf in leaves.Of(method, low, high)) Lay(pieces, component, method, leaf);
                if (pieces.Count == before) pieces.Add(Nothing(method, component));
            }
        }

        return pieces;
    }

    /// <summary>Whether some axis has no value at which what is asked could be met.</summary>
    public bool IsNothing => substance.IsNothing || ExposureTime.Intersect(AxisRange.Of(Axis.ExposureTime)).IsEmpty || question.Uses < 1;

    private Piece Nothing(ApplicationMethod method, Component? component) =>
        new(method, new Span[Piece.Count], new Decision { Verdict = Verdict.NotEstablished, Variant = variants[0], Reasons = [NoValue] }, false, component);

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

    private (int[] Low, int[] High) Domain(Component component)
    {
        var low = new int[CompiledRule.AxisCount];
        var high = new int[CompiledRule.AxisCount];
        Set(Axis.Strength, Reached(component.Strength));
        Set(Axis.Dilution, substance.Dilution);
        Set(Axis.ExposureTime, ExposureTime);
        Set(Axis.Temperature, substance.Temperature);
        Set(Axis.Ph, substance.WholePh);
        Set(Axis.Uses, UsesAsked);
        return (low, high);

        void Set(Axis axis, Interval interval) => (low[(int)axis], high[(int)axis]) = kb.Tables[(int)axis].Cells(interval);
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
        var strength = SpanOf(leaf, Axis.Strength);
        var ph = SpanOf(leaf, Axis.Ph);
        foreach (var here in substance.DilutionsAt(component, strength, ph, SpanOf(leaf, Axis.Dilution)))
        {
            var spans = new Span[Piece.Count];
            spans[Piece.ExposureTime] = SpanOf(leaf, Axis.ExposureTime);
            spans[Piece.Dilution] = here;
            spans[Piece.Uses] = SpanOf(leaf, Axis.Uses);
            spans[Piece.Strength] = strength;
            spans[Piece.Temperature] = SpanOf(leaf, Axis.Temperature);
            spans[Piece.Ph] = ph;
            if (spans[Piece.Temperature].Meets(Span.Of(substance.Temperature)) && spans[Piece.ExposureTime].Meets(Span.Of(ExposureTime)) && spans[Piece.Uses].Meets(Span.Of(UsesAsked)))
                pieces.Add(new Piece(method, spans, leaf.Decision, component.OnlyForbids, component));
        }
    }

    private Span SpanOf(Leaf leaf, Axis axis) => kb.Tables[(int)axis].SpanOf(leaf.Low[(int)axis], leaf.High[(int)axis]);

    /// <summary>The dilutions d at which some strength of d times the range lies in a span: limits are exact quotients.</summary>
    internal static Span DilutionsThatReach(Interval atOne, Span strength)
    {
        Cut? from = null, to = null;
        if (strength.From is { } least && atOne.Upper is { } high)
        {
            var touches = !least.After && atOne.UpperIncluded;
            if (high > 0m) from = new Cut(least.Numerator, high, !touches);
            else if (least.Numerator > 0m || (least.Numerator == 0m && !touches)) return Span.Nothing;
        }

        if (strength.To is { } most)
        {
            var low = atOne.Lower ?? 0m;
            var touches = most.After && (atOne.Lower is null || atOne.LowerIncluded);
            if (low > 0m) to = new Cut(most.Numerator, low, touches);
            else if (most.Numerator < 0m || (most.Numerator == 0m && !touches)) return Span.Nothing;
        }

        return new Span(from, to);
    }
}
