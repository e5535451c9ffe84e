namespace Compat.Deciding;

/// <summary>One component on one variant, as a prepared question holds it.</summary>
/// <param name="Scene">The rules that can speak of it.</param>
/// <param name="StrengthLow">The first cell of its strength.</param>
/// <param name="StrengthHigh">The last cell of its strength.</param>
/// <param name="OnlyForbids">Whether only a live 'not allowed' counts.</param>
internal readonly record struct PreparedComponent(VerdictScene Scene, int StrengthLow, int StrengthHigh, bool OnlyForbids);

/// <summary>Turns a question that passed validation into numbers.</summary>
internal static class QuestionPreparer
{
    public static PreparedQuestion Prepare(VerdictIndex index, Question question)
    {
        var kb = index.Base;
        if (question.JudgesKillAndPeople || question.Method is not { } method || question.ExposureTime is not { } exposureTime || !Stretch.Of(exposureTime).Meets(Stretch.Positive) || question.Uses is not >= 1)
            return new PreparedQuestion(question, kb);
        var substance = SubstanceResolver.Resolve(kb, question);
        if (substance.DilutionTreatment != AxisTreatment.Exactly || substance.Ph.Length != 1 || substance.IsNothing)
            return new PreparedQuestion(question, kb);

        var subject = index.SubjectOf(question);
        return new PreparedQuestion(question, kb)
        {
            Components = Components(index, subject, substance, exposureTime).ToArray(),
            Exposure = Exposure(kb, substance, exposureTime, question.Uses.Value),
            Method = method,
            LeftOut = LeftOut(question, substance),
            Barred = Pieces.BarrierOf(method, question, subject.Variants) is not null,
            WithinLimits = subject.Variants[0].MaterialsAlone || subject.Variants.Any(v => v.Device is not null && v.Editions.Count == 0),
        };
    }

    /// <summary>Every component on the first variant, with all rules that can speak of it.</summary>
    public static IEnumerable<PointComponent> PointsOf(VerdictIndex index, VerdictSubject subject, Substance substance, Interval exposureTime)
    {
        foreach (var component in substance.Components)
        {
            var (low, high) = Strengths(index, substance, component);
            yield return new PointComponent(component, Scene(index, subject, 0, substance, component, exposureTime, inFull: true), low, high);
        }
    }

    private static IEnumerable<PreparedComponent> Components(VerdictIndex index, VerdictSubject subject, Substance substance, Interval exposureTime)
    {
        foreach (var component in substance.Components)
        {
            var (low, high) = Strengths(index, substance, component);
            for (var v = 0; v < subject.Variants.Count; v++)
            {
                var scene = Scene(index, subject, v, substance, component, exposureTime, inFull: false);
                if (!component.OnlyForbids || scene.Forbidding > 0) yield return new PreparedComponent(scene, low, high, component.OnlyForbids);
            }
        }
    }

    private static (int Low, int High) Strengths(VerdictIndex index, Substance substance, Component component) =>
        index.Base.Grid[Axis.Strength].CellsOf(Stretch.Of(StrengthOf(component, substance))) is var run ? (run.Low, run.High) : default;

    private static VerdictScene Scene(VerdictIndex index, VerdictSubject subject, int variant, Substance substance, Component component, Interval exposureTime, bool inFull) =>
        index.SceneOf(subject, variant, new AskedComponent(substance.Product, component), EndingOf(subject.Variants[variant], substance, exposureTime), inFull);

    /// <summary>The strength in the finished liquid; that of a product's ingredient is never below 0.</summary>
    private static Interval StrengthOf(Component component, Substance substance)
    {
        if (substance.Product is null) return component.Strength;
        var diluted = component.Strength.Scale(substance.Dilution.Lower!.Value);
        return diluted.Lower is null ? new Interval(0m, true, diluted.Upper, diluted.UpperIncluded) : diluted;
    }

    private static ExposureTimeEnding EndingOf(PartVariant variant, Substance substance, Interval exposureTime) =>
        exposureTime.Equals(Interval.Exactly(Interval.WithoutEnd)) || variant.EndingWays(substance.LeavesNothing).Count > 0 ? ExposureTimeEnding.Ends
        : substance.LeavesNothing ? ExposureTimeEnding.DriesOnly : ExposureTimeEnding.Never;

    private static CellRange Exposure(CompiledBase kb, Substance substance, Interval exposureTime, int uses)
    {
        var box = default(CellRange);
        Set(Axis.Dilution, substance.Dilution);
        Set(Axis.ExposureTime, exposureTime);
        Set(Axis.Temperature, substance.Temperature);
        Set(Axis.Ph, substance.WholePh);
        Set(Axis.Uses, RuleCompiler.WholeNumbers(Interval.Closed(1m, uses)));
        return box;

        void Set(Axis axis, Interval interval)
        {
            var run = kb.Grid[axis].CellsOf(Stretch.Of(interval));
            box = box.With(axis, run.Low, run.High);
        }
    }

    private static byte LeftOut(Question question, Substance substance)
    {
        var bits = 0;
        if (substance.Product is null && !substance.StrengthStated) bits |= 1 << (int)Axis.Strength;
        if (question.Temperature is null) bits |= 1 << (int)Axis.Temperature;
        if (question.Ph is null) bits |= 1 << (int)Axis.Ph;
        return (byte)bits;
    }
}
