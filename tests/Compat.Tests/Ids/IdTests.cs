namespace Compat.Tests.Ids;

public sealed class IdTests
{
    [Theory]
    [InlineData("keypad-membrane", true)]
    [InlineData("a", true)]
    [InlineData("316l", true)]
    [InlineData("", false)]
    [InlineData(null, false)]
    [InlineData("-a", false)]
    [InlineData("a-", false)]
    [InlineData("a--b", false)]
    [InlineData("Keypad", false)]
    [InlineData("key pad", false)]
    [InlineData("key.pad", false)]
    [InlineData("käse", false)]
    [InlineData("keypad\n", false)]
    public void AnIdIsLowerCaseWordsJoinedByHyphens(string? text, bool wellFormed) => Assert.Equal(wellFormed, Id.IsWellFormed(text));

    [Fact]
    public void AnIdIsAtMostAHundredCharactersLong()
    {
        Assert.True(Id.IsWellFormed(new string('a', 100)));
        Assert.False(Id.IsWellFormed(new string('a', 101)));
    }

    [Fact]
    public void AnIllFormedIdCannotBeMade() => Assert.Throws<ArgumentException>(() => new PartId("Key pad"));

    [Fact]
    public void IdsOfTwoKindsAreNeverEqual() => Assert.False(new PartId("water").Equals((object)new AgentId("water")));

    [Theory]
    [InlineData("display-coated.alcohol", true)]
    [InlineData("display", true)]
    [InlineData("a.b.c", true)]
    [InlineData("a..b", false)]
    [InlineData(".a", false)]
    [InlineData("a.", false)]
    [InlineData("a.B", false)]
    [InlineData("", false)]
    public void ARuleIdIsIdsJoinedByDots(string text, bool wellFormed)
    {
        Assert.Equal(wellFormed, RuleId.IsWellFormed(text));
        if (!wellFormed) Assert.Throws<ArgumentException>(() => new RuleId(text));
    }

    [Fact]
    public void IdsAreOrderedByTheirCharacters() =>
        Assert.Equal(["a-1", "a-10", "a-2"], new[] { new AgentId("a-2"), new AgentId("a-10"), new AgentId("a-1") }.Order().Select(id => id.Value));
}
