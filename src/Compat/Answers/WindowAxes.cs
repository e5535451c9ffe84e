namespace Compat.Answers;

/// <summary>The axes of a window: those of an exposure and the contact time. What is free is chosen or measured; elsewhere the worst counts.</summary>
internal sealed class WindowAxes(Question question, Substance substance, bool measured, bool freeStrength)
{
    public const int ExposureTime = Piece.ExposureTime;
    public const int Dilution = Piece.Dilution;
    public const int Uses = Piece.Uses;
    public const int Strength = Piece.Strength;
    public const int Temperature = Piece.Temperature;
    public const int Ph = Piece.Ph;
    public const int ContactTime = Piece.Count;
    public const int Count = Piece.Count + 1;

    public bool ExposureTimeFree => question.ExposureTime is null;

    public bool DilutionFree => substance.DilutionTreatment == Answers.AxisTreatment.Free;

    public bool UsesFree => question.Uses is null;

    public bool StrengthFree => freeStrength && substance.Product is null;

    public bool TemperatureFree => measured && question.Temperature is null;

    /// <summary>The pH of a product is that of its record; of an agent it is measured.</summary>
    public bool PhFree => measured && question.Ph is null && substance.Product is null;

    /// <summary>What can be chosen, or measured and kept to.</summary>
    public Span[] Domain() =>
    [
        ExposureTimeFree ? Pieces.Positive : Span.Whole,
        DilutionFree ? Span.Of(substance.Dilution) : Span.Whole,
        UsesFree ? Pieces.Positive : Span.Whole,
        StrengthFree ? Span.Of(substance.Components[0].Strength) : Span.Whole,
        TemperatureFree ? Span.Of(substance.Temperature) : Span.Whole,
        PhFree ? Span.Of(substance.WholePh) : Span.Whole,
        Pieces.Positive,
    ];

    /// <summary>A hole on the free axes: what nobody controls counts wherever it is met.</summary>
    public Span[] Freed(Span[] hole)
    {
        var freed = new Span[Count];
        if (ExposureTimeFree) freed[ExposureTime] = hole[ExposureTime];
        if (DilutionFree) freed[Dilution] = hole[Dilution];
        if (UsesFree) freed[Uses] = hole[Uses];
        if (StrengthFree) freed[Strength] = hole[Strength];
        if (TemperatureFree) freed[Temperature] = hole[Temperature];
        if (PhFree) freed[Ph] = hole[Ph];
        if (hole.Length > ContactTime) freed[ContactTime] = hole[ContactTime];
        return freed;
    }
}
