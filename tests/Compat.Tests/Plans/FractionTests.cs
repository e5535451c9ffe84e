using Compat.Planning;

namespace Compat.Tests.Plans;

public sealed class FractionTests
{
    [Fact]
    public void FractionsAreInLowestTerms()
    {
        Assert.Equal(new Fraction(1, 2), new Fraction(50, 100));
        Assert.Equal(default, new Fraction(0, 7));
        Assert.Equal("5/6", (new Fraction(1, 2) + new Fraction(1, 3)).ToString());
        Assert.Equal("-1/6", (new Fraction(1, 3) - new Fraction(1, 2)).ToString());
        Assert.Equal("1", (new Fraction(2, 3) + new Fraction(1, 3)).ToString());
    }

    [Fact]
    public void FractionsAreComparedExactly()
    {
        Assert.True(new Fraction(1, 3) > new Fraction(333333333333333333, 1000000000000000000));
        Assert.True(new Fraction(2, 6) <= new Fraction(1, 3));
        Assert.True(new Fraction(-1, 3) < default(Fraction));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Fraction(1, 0));
    }
}
