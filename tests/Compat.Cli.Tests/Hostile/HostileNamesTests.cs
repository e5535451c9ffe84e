using System.Text;
using Compat.Curation.Imports;
using Compat.Validation;

namespace Compat.Cli.Tests.Hostile;

/// <summary>
/// Names, texts and file names made to forge lines, to hide, or to command the runner of a workflow: over the commands that show them, in every format.
/// </summary>
public sealed class HostileNamesTests
{
    /// <summary>File names; some are refused, and none may do harm where it is shown.</summary>
    public static TheoryData<string> FileNames =>
    [
        "x\n::set-output name=a::b,line=1.yaml", "::error::x.yaml", "\u001b[2Jx.yaml", "a\u202eb.yaml", "a\r\n::warning::b.yaml", "##[add-mask]x.yaml",
            "a\u0085::b.yaml", "a\u2028::b.yaml",
    ];

    /// <summary>Values of YAML, as they are written; those in which all is seen are taken, and may do no harm either.</summary>
    public static TheoryData<string, bool> Values => new()
    {
        { "\"blue\\n\\nALLOWED: blue on glass\\e[8m\"", true },
        { "\"blue\\r::error::x\"", true },
        { "\"blue \\u202e x\"", true },
        { "\"blue \\u200b x\"", true },
        { "\"blue\\u2028::error::x\"", true },
        { "\"::error file=a::forged\"", false },
        { "\"blue ::warning::forged ::error::forged ::set-output name=a::b ::add-mask::x ::stop-commands::y\"", false },
        { "\"##[error]forged ##vso[task.complete]\"", false },
        { "\"a name so long that it is broken here and there and everywhere over the lines ::error::forged ::error::forged ::error::forged ::error::forged\"",
            false },
    };

    [Theory]
    [MemberData(nameof(FileNames))]
    public void FileName_CommandsNothingAndHidesNothing(string name)
    {
        foreach (var folder in new[] { "rules", "" })
        {
            using var data = new Folder();
            data.Write(Path.Combine(folder, name), "- { id: a\u202e, ::error::x: [\n");
            foreach (var format in new[] { "text", "json", "sarif", "github" })
            {
                var run = Harmless(format == "github", "check", data.Root, "--format", format);
                Assert.Equal(2, run.Code);
                if (format != "text") Assert.Contains("file-name", run.Output, StringComparison.Ordinal);
            }

            foreach (var format in new[] { "text", "json", "markdown" })
                Assert.Equal(2, Harmless(false, "review", Repository.File("data"), data.Root, "--format", format).Code);
            Assert.Equal(2, Harmless(false, "ask", "--data", data.Root, "--part", "keypad-membrane", "--agent", "ethanol").Code);
            Assert.Equal(2, Harmless(false, "list", "materials", "--data", data.Root).Code);
            Assert.Equal(2, Harmless(false, "format", data.Root, "--check").Code);
        }
    }

    [Theory]
    [MemberData(nameof(Values))]
    public void Value_CommandsNothingAndHidesNothing(string value, bool isRefused)
    {
        using var data = new Folder();
        var site = data.Write("site.yaml", $$"""
            site: { id: v, name: {{value}} }
            products: [{ id: p1, name: {{value}}, note: {{value}}, composition: full, strength-of: liquid, ingredients: [{ agent: acetone, strength: "100 % w/w" }] }]
            devices: [{ id: d, name: {{value}}, parts: [{ id: screen, name: {{value}}, type: display-coated, touched-by: intact-skin }] }]
            """);
        var expected = isRefused ? 2 : -1;
        string[] at = ["--site", site];
        Code(Harmless(false, ["ask", .. at, "--part", "display-coated", "--product", "p1", "--only", "part"]));
        Code(Harmless(false, ["ask", .. at, "--device", "d", "--part", "screen", "--product", "p1", "--letter"]));
        Code(Harmless(false, ["ask", .. at, "--device", "d", "--product", "p1", "--json"]));
        foreach (var kind in new[] { "products", "devices" })
        {
            Code(Harmless(false, ["list", kind, .. at]));
            Code(HarmlessOnTerminal(["list", kind, .. at]));
        }

        Code(Harmless(false, ["find", "blue", .. at]));
        Code(Harmless(false, ["plan", .. at, "--device", "d"]));
        Code(Harmless(false, ["shelf", .. at]));

        void Code(CliRun run) => Assert.Equal(expected, isRefused ? run.Code : -1);
    }

    [Theory]
    [MemberData(nameof(Values))]
    public void ValueOfTheData_CommandsNothingAndHidesNothing(string value, bool isRefused)
    {
        using var data = new Folder();
        var rules = Path.Combine(data.Root, "rules", "materials", "zinc.yaml");
        File.WriteAllText(
            rules, System.Text.RegularExpressions.Regex.Replace(
                File.ReadAllText(rules), "(?m)^  why: .*$", "  why: " + value.Replace("$", "$$", StringComparison.Ordinal)));
        var list = Path.Combine(data.Root, "materials", "metals.yaml");
        File.WriteAllText(list, File.ReadAllText(list) + $"- {{ id: hostile-metal, name: {value}, under: any-material }}\n");
        foreach (var format in new[] { "text", "markdown", "json" })
        {
            var run = Harmless(false, "review", Repository.File("data"), data.Root, "--format", format);
            Assert.Equal(isRefused ? 2 : run.Code, run.Code);
        }

        var listed = Harmless(false, "list", "materials", "--data", data.Root);
        Assert.Equal(isRefused ? 2 : 0, listed.Code);
    }

    [Fact]
    public void Argument_WithAHiddenCharacter_IsRefused()
    {
        foreach (var hidden in new[] { "\n", "\u001b[2J", "\u202e", "\u00a0", "\u200b", "\u0085" })
        {
            var run = Harmless(false, "ask", "--part", "keypad" + hidden, "--agent", "ethanol");
            Assert.Equal(2, run.Code);
            Assert.Contains("argument 3 holds " + HiddenText.NameAt(hidden, 0), run.FlatNotes, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("U+00A0", "Infusion\u00a0pump", "A1")]
    [InlineData("U+000A", "Infusion pump", "A1\n::error::x")]
    [InlineData("U+202E", "Infusion pump", "A1\u202e")]
    public void RowOfAnAssetList_WithAHiddenCharacter_IsNotPlaced(string name, string device, string model)
    {
        CsvRow[] rows = [new(2, [device, model]), new(3, ["Infusion pump", "A1"])];
        var import = DeviceImport.Of(rows, 0, 1, DevicePattern.Shipped, []);
        Assert.Equal(1, Assert.Single(import.Placed).Rows);
        Assert.Contains(name, Assert.Single(import.Unplaced).Why, StringComparison.Ordinal);
    }

    private static CliRun Harmless(bool github, params string[] args) => Checked(CliRun.Of(args), github);

    private static CliRun HarmlessOnTerminal(params string[] args) => Checked(CliRun.OnTerminal(args), github: false);

    /// <summary>A line that begins with two colons is an annotation that the command itself made, whole, and only on stdout.</summary>
    private static CliRun Checked(CliRun run, bool github)
    {
        foreach (var text in new[] { run.Output, run.Notes })
        {
            Assert.Equal(-1, HiddenText.Find(text.Replace("\n", "", StringComparison.Ordinal), out _));
            foreach (var line in text.Split('\n'))
            {
                if (!line.TrimStart().StartsWith("::", StringComparison.Ordinal)) continue;
                Assert.True(github && ReferenceEquals(text, run.Output), line);
                Assert.Matches("^::(error|notice) file=[^:,]+,(line=[0-9]+,endLine=[0-9]+,)?(col=[0-9]+,endColumn=[0-9]+,)?title=[^:,]+::.", line);
            }

            if (!github) Assert.DoesNotMatch(@"##(vso)?\[", text);
        }

        return run;
    }

    /// <summary>A copy of the shipped data.</summary>
    private sealed class Folder : IDisposable
    {
        public Folder()
        {
            var data = Repository.File("data");
            foreach (var file in Directory.EnumerateFiles(data, "*.yaml", SearchOption.AllDirectories))
                Write(Path.GetRelativePath(data, file), File.ReadAllText(file));
        }

        public string Root { get; } = Directory.CreateTempSubdirectory("compat-hostile-").FullName;

        public string Write(string path, string text)
        {
            var full = path == "site.yaml" ? Root + "-site.yaml" : Path.Combine(Root, path);
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.WriteAllText(full, text, new UTF8Encoding(false));
            return full;
        }

        public void Dispose()
        {
            Directory.Delete(Root, recursive: true);
            File.Delete(Root + "-site.yaml");
        }
    }
}
