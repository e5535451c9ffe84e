using Compat.Tests.Shipped;

namespace Compat.Tests.RandomCases;

/// <summary>
/// Each reference (what a part is made of; what it stands; what a label is worth; need, kill, people and window; what meets) is worth something only while it
/// can be read in one sitting and shares nothing with the engine.
/// </summary>
public sealed class ReferenceFilesTests
{
    private const int MostLines = 300, LongestLine = 150;

    private static readonly string[][] All = Files("*");

    private static readonly string[] Names = ["Materials*.cs", "Reference*.cs", "Label*.cs", "Whole*.cs", "Meeting*.cs"];

    public static TheoryData<string> Patterns => [.. Names];

    [Theory]
    [MemberData(nameof(Patterns))]
    public void They_are_short(string pattern) => Assert.InRange(Files(pattern).Sum(lines => lines.Length), 1, MostLines);

    [Fact]
    public void There_are_no_others() => Assert.Equal(All.Length, Names.Sum(pattern => Files(pattern).Length));

    [Fact]
    public void Their_lines_are_not_long() => Assert.DoesNotContain(All.SelectMany(lines => lines), line => line.Length > LongestLine);

    [Theory]
    [InlineData("Compat.Deciding")]
    [InlineData("Compat.Answers")]
    [InlineData("Compat.Planning")]
    [InlineData("Compat.Reach")]
    public void They_mention_nothing_of_the_engine(string name) =>
        Assert.DoesNotContain(All.SelectMany(lines => lines), line => line.Contains(name, StringComparison.Ordinal));

    private static string[][] Files(string pattern) =>
        Directory.EnumerateFiles(RepositoryFile.Of("tests", "Compat.Tests", "Reference"), pattern).Select(File.ReadAllLines).ToArray();
}
