namespace Compat.Space;

/// <summary>What a box is on one axis: a connected set of values (<see cref="Stretch"/>) or of cells (<see cref="Run"/>). Its default value is empty.</summary>
internal interface IExtent<T> : IComparable<T> where T : struct
{
    /// <summary>The whole axis.</summary>
    T Whole { get; }

    bool IsEmpty { get; }

    bool Meets(T other);

    /// <summary>Whether all of it lies in the other; what is empty lies in any.</summary>
    bool LiesIn(T other);

    T Intersect(T other);

    /// <summary>What of it lies before the other begins.</summary>
    T Before(T other);

    /// <summary>What of it lies after the other ends.</summary>
    T After(T other);

    /// <summary>Whether it ends where the other begins.</summary>
    bool EndsAt(T next);

    /// <summary>From where it begins to where the other ends.</summary>
    T Through(T next);
}

/// <summary>A box of exposures: methods, and one extent on every other axis. The default value is empty; start from <see cref="Whole"/> to bound some axes
/// only.</summary>
internal readonly record struct Box<T> where T : struct, IExtent<T>
{
    public MethodSet Methods { get; init; }

    public T Strength { get; init; }

    public T Dilution { get; init; }

    public T ExposureTime { get; init; }

    public T Temperature { get; init; }

    public T Ph { get; init; }

    public T Uses { get; init; }

    /// <summary>Whole in all but claims and windows.</summary>
    public T ContactTime { get; init; }

    /// <summary>Every exposure.</summary>
    public static Box<T> Whole { get; } = Of(default(T).Whole);

    public bool IsEmpty => Methods.IsEmpty || Strength.IsEmpty || Dilution.IsEmpty || ExposureTime.IsEmpty || Temperature.IsEmpty || Ph.IsEmpty
        || Uses.IsEmpty || ContactTime.IsEmpty;

    public T this[Axis axis] => axis switch
    {
        Axis.Strength => Strength,
        Axis.Dilution => Dilution,
        Axis.ExposureTime => ExposureTime,
        Axis.Temperature => Temperature,
        Axis.Ph => Ph,
        Axis.Uses => Uses,
        Axes.ContactTime => ContactTime,
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };

    /// <summary>The box with what lies on each axis, <see cref="Axes.ContactTime"/> aside, by a function of the axis.</summary>
    public static Box<T> Of(MethodSet methods, Func<Axis, T> on) => new()
    {
        Methods = methods,
        Strength = on(Axis.Strength),
        Dilution = on(Axis.Dilution),
        ExposureTime = on(Axis.ExposureTime),
        Temperature = on(Axis.Temperature),
        Ph = on(Axis.Ph),
        Uses = on(Axis.Uses),
        ContactTime = default(T).Whole,
    };

    /// <summary>This box with another extent on one axis.</summary>
    public Box<T> With(Axis axis, T extent) => axis switch
    {
        Axis.Strength => this with { Strength = extent },
        Axis.Dilution => this with { Dilution = extent },
        Axis.ExposureTime => this with { ExposureTime = extent },
        Axis.Temperature => this with { Temperature = extent },
        Axis.Ph => this with { Ph = extent },
        Axis.Uses => this with { Uses = extent },
        Axes.ContactTime => this with { ContactTime = extent },
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };

    public bool Meets(in Box<T> other) =>
        !Methods.Intersect(other.Methods).IsEmpty && Strength.Meets(other.Strength) && Dilution.Meets(other.Dilution) && ExposureTime.Meets(other.ExposureTime)
        && Temperature.Meets(other.Temperature) && Ph.Meets(other.Ph) && Uses.Meets(other.Uses) && ContactTime.Meets(other.ContactTime);

    /// <summary>Whether all of it lies in the other, neither being empty.</summary>
    public bool LiesIn(in Box<T> other) =>
        Methods.LiesIn(other.Methods) && Strength.LiesIn(other.Strength) && Dilution.LiesIn(other.Dilution) && ExposureTime.LiesIn(other.ExposureTime)
        && Temperature.LiesIn(other.Temperature) && Ph.LiesIn(other.Ph) && Uses.LiesIn(other.Uses) && ContactTime.LiesIn(other.ContactTime);

    public Box<T> Intersect(in Box<T> other) => new()
    {
        Methods = Methods.Intersect(other.Methods),
        Strength = Strength.Intersect(other.Strength),
        Dilution = Dilution.Intersect(other.Dilution),
        ExposureTime = ExposureTime.Intersect(other.ExposureTime),
        Temperature = Temperature.Intersect(other.Temperature),
        Ph = Ph.Intersect(other.Ph),
        Uses = Uses.Intersect(other.Uses),
        ContactTime = ContactTime.Intersect(other.ContactTime),
    };

    private static Box<T> Of(T all) => new()
    {
        Methods = MethodSet.All,
        Strength = all,
        Dilution = all,
        ExposureTime = all,
        Temperature = all,
        Ph = all,
        Uses = all,
        ContactTime = all,
    };
}
