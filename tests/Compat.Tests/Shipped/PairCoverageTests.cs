namespace Compat.Tests.Shipped;

/// <summary>data/README.md says how much of the commonest pairs is known, and lists the rest.</summary>
public class PairCoverageTests
{
    private const string Start = "<!-- coverage: written by the tests -->\n";
    private const string End = "<!-- end of coverage -->\n";
    private static readonly PairCoverage Coverage = new();

    [Fact]
    public void The_lists_are_of_the_size_they_claim() => Assert.Equal(30 * 25, Coverage.Pairs);

    [Fact]
    public void The_guide_of_the_data_says_what_is_known_and_lists_what_is_not()
    {
        var path = RepositoryFile.Of("data", "README.md");
        var text = File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
        var (from, to) = (text.IndexOf(Start, StringComparison.Ordinal) + Start.Length, text.IndexOf(End, StringComparison.Ordinal));
        var current = text[..from] + Coverage.Text() + text[to..];
        if (Environment.GetEnvironmentVariable("COMPAT_ACCEPT") == "1") File.WriteAllText(path, current);
        else Assert.Equal(current, text);
    }
}
