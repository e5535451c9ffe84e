using Compat.Tests.Shipped;

namespace Compat.Tests.RandomCases;

/// <summary>The reference evaluator is worth something only while it can be read in one sitting and shares nothing with the engine.</summary>
public sealed class ReferenceFilesTests
{
    private const int MostLines = 300, LongestLine = 150;

    private static readonly string[][] Files = Directory.EnumerateFiles(RepositoryFile.Of("tests", "Compat.Tests", "Reference"), "*.cs").Select(File.ReadAllLines).ToArray();

    [Fact]
    public void They_are_short() => Assert.InRange(Files.Sum(lines => lines.Length), 1, MostLines);

    [Fact]
    public void Their_lines_are_not_long() => Assert.DoesNotContain(Files.SelectMany(lines => lines), line => line.Length > LongestLine);

    [Fact]
    public void They_mention_nothing_of_the_engine() => Assert.DoesNotContain(Files.SelectMany(lines => lines), line => line.Contains("Evaluation", StringComparison.Ordinal));
}
