using Compat.Tests.Shipped;

namespace Compat.Tests.RandomCases;

/// <summary>Each reference (what a part stands; need, kill, people and window) is worth something only while it can be read in one sitting and shares nothing with the engine.</summary>
public sealed class ReferenceFilesTests
{
    private const int MostLines = 300, LongestLine = 150;

    private static readonly string[][] All = Files("*");

    [Theory]
    [InlineData("Reference*.cs")]
    [InlineData("Whole*.cs")]
    [InlineData("Meeting*.cs")]
    public void They_are_short(string pattern) => Assert.InRange(Files(pattern).Sum(lines => lines.Length), 1, MostLines);

    [Fact]
    public void There_are_no_others() => Assert.Equal(All.Length, Files("Reference*.cs").Length + Files("Whole*.cs").Length + Files("Meeting*.cs").Length);

    [Fact]
    public void Their_lines_are_not_long() => Assert.DoesNotContain(All.SelectMany(lines => lines), line => line.Length > LongestLine);

    [Theory]
    [InlineData("Evaluation")]
    [InlineData("Compat.Kill;")]
    [InlineData("Compat.Needs")]
    [InlineData("Compat.Windows")]
    public void They_mention_nothing_of_the_engine(string name) => Assert.DoesNotContain(All.SelectMany(lines => lines), line => line.Contains(name, StringComparison.Ordinal));

    private static string[][] Files(string pattern) =>
        Directory.EnumerateFiles(RepositoryFile.Of("tests", "Compat.Tests", "Reference"), pattern).Select(File.ReadAllLines).ToArray();
}
