namespace Compat.Cli.Tests.Documents;

public sealed class ReadmeTests
{
    [Fact]
    public void Sample_InReadme_IsTheOneThatIsCompiledAndRuns()
    {
        var source = Repository.Read("tests", "Compat.Cli.Tests", "Documents", "EmbeddingSample.cs");
        var start = source.IndexOf("// begin\n", StringComparison.Ordinal) + "// begin\n".Length;
        var compiled = source[start..source.IndexOf("        // end\n", StringComparison.Ordinal)].Split('\n').Select(line => line.Length > 8 ? line[8..] : "");
        var readme = Repository.Read("README.md");
        var block = readme[(readme.IndexOf("```csharp\n", StringComparison.Ordinal) + "```csharp\n".Length)..];
        block = block[..block.IndexOf("```", StringComparison.Ordinal)];
        var code = block.Split('\n').Where(line => !line.StartsWith("using ", StringComparison.Ordinal));
        Assert.Equal(string.Join('\n', compiled).Trim(), string.Join('\n', code).Trim());
        Assert.StartsWith("NotAllowed: RuleForbids ", EmbeddingSample.Ask(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    public void Files_NamedInTheDocument_AreThere(string document)
    {
        var names = System.Text.RegularExpressions.Regex.Matches(Repository.Read(document), "`((?:src|tests|data|schemas|\\.ci)/[^` *<>]*)`")
            .Select(match => match.Groups[1].Value);
        Assert.All(names, name => Assert.True(File.Exists(Repository.File(name)) || Directory.Exists(Repository.File(name)), name));
    }

    [Fact]
    public void Cautions_OfTheCommand_StandInTheReadme()
    {
        var readme = string.Join(' ', Repository.Read("README.md").Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
        Assert.All(Cli.Say.VerdictWording.Cautions, caution => Assert.Contains(caution, readme, StringComparison.Ordinal));
    }
}
