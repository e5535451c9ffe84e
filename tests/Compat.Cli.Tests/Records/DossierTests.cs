using System.Text.Json;

namespace Compat.Cli.Tests.Records;

/// <summary>The auditor's file: made, held against its schema, asked again.</summary>
public sealed class DossierTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("compat-dossier-").FullName;

    private string Plan => Path.Combine(_folder, "plan.json");

    private string Done => Path.Combine(_folder, "done.yaml");

    private string File1 => Path.Combine(_folder, "dossier.json");

    private string[] Call => ["dossier", "--site", Repository.Demo, "--device", "tonometer", "--serial", "AB12", "--plan", Plan, "--done", Done];

    public DossierTests()
    {
        var plan = CliRun.Of("plan", "--site", Repository.Demo, "--device", "tonometer", "--serial", "AB12", "--json");
        File.WriteAllText(Plan, plan.Output);
        File.WriteAllText(Done, "device: tonometer\nserial: AB12\ndate: 2026-11-24\nsteps:\n  - { step: 1, done: true, initials: \"N.N. | <b>\" }\n");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Output_FitsTheSchemaAndIsTheSameTwice()
    {
        var run = CliRun.Of(Call);
        Assert.Equal((0, ""), (run.Code, run.Notes));
        Assert.Equal(run.Output, CliRun.Of(Call).Output);
        Assert.Equal("", await SchemaFiles.Refusals("dossier", run.Output));
        using var document = JsonDocument.Parse(run.Output);
        Assert.False(document.RootElement.TryGetProperty("today", out _));
        Assert.Contains("\"today\": \"2026-11-25\"", CliRun.Of([.. Call, "--today", "2026-11-25"]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Output_HoldsEveryPartWithEveryProductAndAllTheyRestOn()
    {
        using var document = JsonDocument.Parse(CliRun.Of(Call).Output);
        var root = document.RootElement;
        using var shelf = JsonDocument.Parse(CliRun.Of("shelf", "--site", Repository.Demo, "--json").Output);
        var products = shelf.RootElement.GetProperty("products").GetArrayLength();
        var asked = root.GetProperty("parts").EnumerateArray().Count(part => !part.GetProperty("needsNothing").GetBoolean());
        Assert.Equal(asked * products, root.GetProperty("answers").GetArrayLength());
        string[] Ids(string list) => root.GetProperty(list).EnumerateArray().Select(one => one.GetProperty("id").GetString()!).ToArray();
        string[] Cited(string list) => root.GetProperty("answers").EnumerateArray().SelectMany(answer => answer.GetProperty(list).EnumerateArray())
            .Select(id => id.GetString()!).Distinct().Order(StringComparer.Ordinal).ToArray();
        Assert.Equal(Cited("rules"), Ids("rules"));
        Assert.Equal(Cited("claims"), Ids("claims").Distinct());
        Assert.All(
            root.GetProperty("rules").EnumerateArray()
            .SelectMany(rule => rule.GetProperty("sources").EnumerateArray()), source => Assert.Contains(source.GetString(), Ids("sources")));
        Assert.Equal(["shipped", "eye-screening-clinic"], root.GetProperty("identity").EnumerateArray().Select(state => state.GetProperty("name").GetString()));
        Assert.Equal("plan-2", root.GetProperty("plans")[0].GetProperty("plan").GetProperty("format").GetString());
        Assert.Equal("AB12", root.GetProperty("records")[0].GetProperty("serial").GetString());
    }

    [Fact]
    public void Verify_UnchangedData_AllOfItHoldsOnTheSameGrounds()
    {
        Made();
        var run = CliRun.Of("dossier", "--site", Repository.Demo, "--verify", File1);
        Assert.Equal((0, ""), (run.Code, run.Notes));
        Assert.Matches(@"^all of it holds: holds: \d+ answers\n$", run.Output);
    }

    [Fact]
    public void Verify_OtherSite_ListsWhatNoLongerHolds()
    {
        Made();
        var site = Path.Combine(_folder, "site.yaml");
        var text = File.ReadAllText(Repository.Demo);
        const string part = "{ id: tip, type: tonometer-tip }";
        Assert.Contains(part, text, StringComparison.Ordinal);
        File.WriteAllText(
            site, text.Replace(part, "{ id: tip, type: tonometer-tip, materials: [paper-and-cellulose], materials-known: fully }", StringComparison.Ordinal)
            .Replace("      - { id: scale, type: label-legend }\n", "", StringComparison.Ordinal));
        var run = CliRun.Of("dossier", "--site", site, "--verify", File1);
        Assert.Equal(1, run.Code);
        Assert.Contains("other data: eye-screening-clinic", run.Output, StringComparison.Ordinal);
        Assert.Contains("another need: `scale`: ", run.Output, StringComparison.Ordinal);
        Assert.Contains("`tip` with `", run.Output, StringComparison.Ordinal);
        Assert.Contains("tightened: ", run.Output, StringComparison.Ordinal);
        Assert.Contains("not all of it holds: ", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Verify_NewProductOnTheShelf_IsNewSinceAndTheRestHolds()
    {
        var site = Path.Combine(_folder, "site.yaml");
        File.Copy(PathOfPlans, site);
        Assert.Equal(0, CliRun.Of("dossier", "--data", PathOfData, "--site", site, "--device", "desk-unit", "--out", File1).Code);
        var text = File.ReadAllText(site);
        File.WriteAllText(
            site, text.Replace("\ndevices:",
            "  - { id: soap-cloth, name: an invented soap cloth, composition: full, strength-of: liquid, ingredients: [{ agent: soap, strength: \"0.5 % "
                + "w/w\" }] }\n\ndevices:", StringComparison.Ordinal));
        var run = CliRun.Of("dossier", "--data", PathOfData, "--site", site, "--verify", File1);
        Assert.Equal((0, ""), (run.Code, run.Notes));
        Assert.Contains("new since: `shell` with `soap-cloth`\n", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"\nall of it holds: .*new since: \d+ answers\n$", run.Output);
    }

    [Fact]
    public void Verify_CutAnywhere_IsRefusedWithItsPlace()
    {
        Made();
        var bytes = File.ReadAllBytes(File1);
        var cut = Path.Combine(_folder, "cut.json");
        var step = Math.Max(1, bytes.Length / 40);
        for (var length = 1; length < bytes.Length - 2; length += step)
        {
            File.WriteAllBytes(cut, bytes[..length]);
            var run = CliRun.Of("dossier", "--site", Repository.Demo, "--verify", cut);
            Assert.Equal((2, ""), (run.Code, run.Output));
            Assert.Matches(@"cut\.json:\d+:\d+: error: ", run.Notes);
        }
    }

    [Fact]
    public void Out_IsWrittenWholeOrNotAtAll()
    {
        File.WriteAllText(File1, "as before");
        var bad = CliRun.Of([.. Call, "--plan", Path.Combine(_folder, "none.json"), "--out", File1]);
        Assert.Equal(2, bad.Code);
        Assert.Equal("as before", File.ReadAllText(File1));
        Made();
        Assert.Equal(CliRun.Of(Call).Output, File.ReadAllText(File1));
        Assert.Equal(["done.yaml", "dossier.json", "plan.json"], Directory.GetFiles(_folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Markdown_EscapesWhatComesFromFiles()
    {
        var run = CliRun.Of([.. Call, "--markdown", "--today", "2026-11-25"]);
        Assert.Equal(0, run.Code);
        Assert.StartsWith("# Dossier of applanation tonometer (invented) (`tonometer`, serial number AB12)\n\n- as of 2026-11-25\n", run.Output,
            StringComparison.Ordinal);
        Assert.Contains("| 1 | yes |  | N.N. \\| &lt;b> |", run.Output, StringComparison.Ordinal);
        Assert.Contains("## Cautions", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void BadCalls_AreAllReported()
    {
        var run = CliRun.Of("dossier", "--site", Repository.Demo, "--device", "tonometr", "--serial", "?", "--today", "soon");
        Assert.Equal(2, run.Code);
        Assert.Contains("there is no device `tonometr`", run.FlatNotes, StringComparison.Ordinal);
        Assert.Contains("is no serial number", run.FlatNotes, StringComparison.Ordinal);
        Assert.Contains("`soon` is no date", run.FlatNotes, StringComparison.Ordinal);
        Assert.Contains("is of `tonometer`, not of `slit-lamp`",
            CliRun.Of("dossier", "--site", Repository.Demo, "--device", "slit-lamp", "--plan", Plan).FlatNotes, StringComparison.Ordinal);
        Assert.Contains("is of serial number `AB12`, not of `AB13`",
            CliRun.Of("dossier", "--site", Repository.Demo, "--device", "tonometer", "--serial", "AB13", "--plan", Plan).FlatNotes, StringComparison.Ordinal);
        Assert.Contains("this is a plan, no dossier", CliRun.Of("dossier", "--site", Repository.Demo, "--verify", Plan).FlatNotes, StringComparison.Ordinal);
        Assert.Contains("`--device` does not go with `--verify`",
            CliRun.Of("dossier", "--site", Repository.Demo, "--verify", Plan, "--device", "tonometer").FlatNotes, StringComparison.Ordinal);
    }

    private static string PathOfData => Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Edits", "base");

    private static string PathOfPlans => Repository.File("tests", "Compat.Cli.Tests", "Reviews", "Plans", "site.yaml");

    private void Made() => Assert.Equal($"{File1}: written", CliRun.Of([.. Call, "--out", File1]).Flat);
}
