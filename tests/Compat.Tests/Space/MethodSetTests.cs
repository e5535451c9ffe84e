namespace Compat.Tests.Space;

public sealed class MethodSetTests
{
    [Fact]
    public void Number_ThatIsNoMethod_IsNoMemberOfAnySet()
    {
        for (var number = -70; number <= 70; number++)
        {
            if (number is >= (int)ApplicationMethod.DampWipe and <= (int)ApplicationMethod.Chamber) continue;
            Assert.True(MethodSet.Of((ApplicationMethod)number).IsEmpty);
            Assert.False(MethodSet.All.Contains((ApplicationMethod)number));
        }
    }

    [Fact]
    public void EveryMethod_IsAMemberOfTheSetOfIt()
    {
        for (var method = ApplicationMethod.DampWipe; method <= ApplicationMethod.Chamber; method++)
        {
            Assert.Equal([method], MethodSet.Of(method).Methods);
            Assert.True(MethodSet.All.Contains(method));
        }
    }
}
