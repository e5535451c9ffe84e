namespace Compat.Cli.Tests.Documents;

/// <summary>The first day in the readme, run line by line in an empty folder.</summary>
public sealed class FirstDayTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("compat-first-day").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void EveryLine_OfTheReadme_DoesWhatItSays()
    {
        File.WriteAllText(Path.Combine(_folder, "devices.csv"), "No,Description\n1,Infusion pump\n2,Slit lamp\n3,Bed\n");
        File.WriteAllText(Path.Combine(_folder, "spirit-wipe.yaml"), """
            section-1: { id: spirit-wipe, name: spirit wipe (invented) }
            section-3:
              composition: full
              ingredients: [{ cas: "67-63-0", strength: "70 % v/v" }]
            section-9: { strength-of: liquid, ph: [{ value: "6..8", of: in-use }] }
            label: { methods: [damp-wipe] }
            """);
        var readme = Repository.Read("README.md");
        var block = readme[readme.IndexOf("### The first day\n", StringComparison.Ordinal)..];
        block = block[(block.IndexOf("```sh\n", StringComparison.Ordinal) + 6)..];
        var lines = block[..block.IndexOf("```", StringComparison.Ordinal)].Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.True(lines.Length >= 5);
        foreach (var line in lines)
        {
            Assert.StartsWith("compat ", line, StringComparison.Ordinal);
            var run = CliRun.Of(line.Split('#', '>')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(InFolder).ToArray());
            Assert.True(run.Code != 2, line + "\n" + run.Notes);
            Assert.NotEqual("", run.Output);
        }
    }

    private string InFolder(string word) => word.EndsWith(".yaml", StringComparison.Ordinal)
        || word.EndsWith(".csv", StringComparison.Ordinal) ? Path.Combine(_folder, word) : word;
}
