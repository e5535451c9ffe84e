namespace Compat.Tests.RandomCases;

public sealed class CaseTextTests
{
    [Fact]
    public void EveryCaseCanBeWritten()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var text = CaseMaker.Make(seed, Shape.Region).ToString();
            Assert.Contains("# question: ", text, StringComparison.Ordinal);
            Assert.Contains("id: any-agent", text, StringComparison.Ordinal);
        }
    }
}
