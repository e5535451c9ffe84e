using System.Numerics;

namespace Compat.Planning;

/// <summary>An exact fraction in lowest terms; its default is nought.</summary>
internal readonly record struct Fraction : IComparable<Fraction>
{
    private readonly BigInteger _denominatorLessOne;

    /// <summary>Makes a fraction; <see cref="ArgumentOutOfRangeException"/> where the denominator is not above nought.</summary>
    public Fraction(BigInteger numerator, BigInteger denominator)
    {
        if (denominator.Sign <= 0) throw new ArgumentOutOfRangeException(nameof(denominator), "a denominator is above nought");
        var divisor = BigInteger.GreatestCommonDivisor(numerator, denominator);
        Numerator = numerator / divisor;
        _denominatorLessOne = (denominator / divisor) - 1;
    }

    public static Fraction One => new(1, 1);

    public BigInteger Numerator { get; }

    /// <summary>Above nought.</summary>
    public BigInteger Denominator => _denominatorLessOne + 1;

    public static Fraction operator +(Fraction one, Fraction other) =>
        new((one.Numerator * other.Denominator) + (other.Numerator * one.Denominator), one.Denominator * other.Denominator);

    public static Fraction operator -(Fraction one, Fraction other) =>
        new((one.Numerator * other.Denominator) - (other.Numerator * one.Denominator), one.Denominator * other.Denominator);

    public static bool operator <(Fraction one, Fraction other) => one.CompareTo(other) < 0;

    public static bool operator >(Fraction one, Fraction other) => one.CompareTo(other) > 0;

    public static bool operator <=(Fraction one, Fraction other) => one.CompareTo(other) <= 0;

    public static bool operator >=(Fraction one, Fraction other) => one.CompareTo(other) >= 0;

    public int CompareTo(Fraction other) => (Numerator * other.Denominator).CompareTo(other.Numerator * Denominator);

    public override string ToString() => Denominator.IsOne ? Numerator.ToString() : Numerator + "/" + Denominator;
}
