namespace Compat.Tests.Space;

public sealed class WordsTests
{
    [Fact]
    public void AMemberIsWrittenInKebabCase()
    {
        Assert.Equal("damp-wipe", Words.Of(ApplicationMethod.DampWipe));
        Assert.Equal("ph", Words.Of(Axis.Ph));
        Assert.Equal("heat-drying", Words.Of(Act.HeatDrying));
    }

    [Fact]
    public void EveryWordLeadsBackToItsMember() => Assert.All(Enum.GetValues<Mechanism>(), member =>
    {
        Assert.True(Words.TryParse<Mechanism>(Words.Of(member), out var back));
        Assert.Equal(member, back);
    });

    [Theory]
    [InlineData("DampWipe")]
    [InlineData("damp wipe")]
    [InlineData("1")]
    [InlineData("")]
    [InlineData(null)]
    public void NothingElseIsTaken(string? text) => Assert.False(Words.TryParse<ApplicationMethod>(text, out _));

    [Fact]
    public void MethodSetsListTheirMembersDriestFirstAndNeverTheDryWipe()
    {
        var set = MethodSet.Of(ApplicationMethod.Rinse, ApplicationMethod.DryWipe, ApplicationMethod.DampWipe);
        Assert.Equal([ApplicationMethod.DampWipe, ApplicationMethod.Rinse], set.Methods);
        Assert.Equal("damp-wipe, rinse", set.ToString());
        Assert.Equal(MethodSet.Ladder, MethodSet.All.Intersect(MethodSet.Ladder));
        Assert.False(MethodSet.Ladder.Contains(ApplicationMethod.Chamber));
        Assert.True(MethodSet.Of(ApplicationMethod.DryWipe).IsEmpty);
    }
}
