namespace Compat.Tests.RandomCases;

/// <summary>The reference evaluator is worth something only while it can be read in one sitting and shares nothing with the engine.</summary>
public sealed class ReferenceFilesTests
{
    private const int MostLines = 300, LongestLine = 150;

    private static readonly string[][] Files = Directory.EnumerateFiles(Folder(), "*.cs").Select(File.ReadAllLines).ToArray();

    [Fact]
    public void They_are_short() => Assert.InRange(Files.Sum(lines => lines.Length), 1, MostLines);

    [Fact]
    public void Their_lines_are_not_long() => Assert.DoesNotContain(Files.SelectMany(lines => lines), line => line.Length > LongestLine);

    [Fact]
    public void They_mention_nothing_of_the_engine() => Assert.DoesNotContain(Files.SelectMany(lines => lines), line => line.Contains("Evaluation", StringComparison.Ordinal));

    private static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var folder = Path.Combine(at.FullName, "tests", "Compat.Tests", "Reference");
            if (Directory.Exists(folder)) return folder;
        }

        throw new DirectoryNotFoundException($"no folder `Reference` above {AppContext.BaseDirectory}");
    }
}
