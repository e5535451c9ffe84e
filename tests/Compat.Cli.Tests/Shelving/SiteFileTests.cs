using System.Text;
using Compat.Curation.Imports;

namespace Compat.Cli.Tests.Shelving;

/// <summary>A site file started, filled with products and devices; what is wrong says where, and leaves the file as it was.</summary>
public sealed class SiteFileTests : IDisposable
{
    private const string Answers = """
        section-1: { id: spirit-wipe, name: spirit wipe }
        section-3:
          composition: declared-hazardous-only
          ingredients:
            - { cas: "67-63-0", strength: "30..60 % v/v" }
            - { cas: "7173-51-5", strength: "0.1..0.3 % w/w" }
        section-9:
          strength-of: liquid
          density: "0.93 kg/L"
          ph: [{ value: "6..8", of: in-use }]
        label:
          methods: [damp-wipe, wet-wipe]
          label-claims:
            - id: low
              when: { contact-time: ">= 1 min", temperature: "15..30 °C", methods: [damp-wipe, wet-wipe] }
              reaches: low
              shown-by: [EN 13727, EN 14476, EN 16615]
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("compat-site").FullName;

    private string Site => Path.Combine(_folder, "site.yaml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void New_File_PassesAsItStandsAndIsNeverWrittenOver()
    {
        Assert.Equal(0, CliRun.Of("site", "new", "--out", Site, "--name", "ward three").Code);
        Assert.Equal(0, CliRun.Of("list", "products", "--site", Site).Code);
        Assert.Equal(0, CliRun.Of("format", Site, "--check").Code);
        var again = CliRun.Of("site", "new", "--out", Site);
        Assert.Equal(2, again.Code);
        Assert.Contains("is there already", again.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void New_CommentedRecords_PassOnceTheSignsAreTakenAway()
    {
        New();
        var lines = File.ReadAllLines(Site);
        var first = Array.FindIndex(lines, line => line == "# here:");
        File.WriteAllLines(
            Site, lines.Select((line, i) => i < first || !line.StartsWith("# ", StringComparison.Ordinal) || char.IsUpper(line[2]) ? line : line[2..]));
        var run = CliRun.Of("list", "devices", "--site", Site);
        Assert.True(run.Code == 0, run.Notes);
        Assert.Contains("infusion-pump", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AddProduct_FromAnswers_SaysWhatEachFactChanges()
    {
        New();
        Import("Description\nslit lamp\ninfusion pump\n");
        var run = Add(Answers);
        Assert.True(run.Code == 0, run.Notes);
        Assert.Matches("isopropanol 30\\.\\.60 % v/v: .*closed: ", run.Flat);
        Assert.Contains("label claim low:", run.Flat, StringComparison.Ordinal);
        Assert.Contains("spirit-wipe", CliRun.Of("list", "products", "--site", Site).Output, StringComparison.Ordinal);
        Assert.StartsWith("# The file of one site", File.ReadAllText(Site), StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("format", Site, "--check").Code);
        Assert.Empty(Directory.GetFiles(_folder, "*.new"));
    }

    [Theory]
    [InlineData("67-63-0", "67-63-1", "its check digit does not hold", ":5:")]
    [InlineData("30..60 % v/v", "30..60 %", "", ":5:")]
    [InlineData("cas: \"7173-51-5\", strength: \"0.1..0.3 % w/w\"", "agent: ethanol, strength: \"80..90 % v/v\"", "add up to 110 %, over 100 %", ":4:")]
    [InlineData("section-9", "section-8", "there is no section `section-8`", ":7:")]
    [InlineData("density", "densty", "densty", ":9:")]
    [InlineData("reaches: low", "reaches: lowest", "lowest", ":16:")]
    [InlineData("composition: declared-hazardous-only", "", "`composition` is missing", "")]
    public void AddProduct_WrongAnswers_SaysWhereAndLeavesTheFile(string right, string wrong, string message, string place)
    {
        New();
        var before = File.ReadAllText(Site);
        var run = Add(Answers.Replace(right, wrong, StringComparison.Ordinal));
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.FlatNotes, StringComparison.Ordinal);
        Assert.Contains(place, run.Notes, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Site));
    }

    [Fact]
    public void AddProduct_AlreadyThere_IsRefused()
    {
        New();
        Assert.Equal(0, Add(Answers).Code);
        var run = Add(Answers);
        Assert.Equal(2, run.Code);
        Assert.Contains("there is a product `spirit-wipe` already", run.FlatNotes, StringComparison.Ordinal);
    }

    [Fact]
    public void AddProduct_AskedLineByLine_AsksAgainWhatIsWrong()
    {
        New();
        string[] answers =
        [
            "Blue Wipe", "blue-wipe", "blue wipe", "full", "", "67-63-1 70 % v/v", "67-63-0 70 % v/v", "", "liquid", "6..8", "0.88", "0.88 kg/L",
            "damp-wipe", "low", "1 min", "damp-wipe", "15..30 °C", "EN 16615 (invented)", "",
        ];
        using var stdin = new StringReader(string.Join('\n', answers));
        using var stdout = new StringWriter();
        using var stderr = new StringWriter();
        var code = CommandLine.Run(["site", "add-product", Site], stdout, stderr, isTerminal: false, stdin);
        Assert.True(code == 0, stderr.ToString());
        Assert.Contains("its check digit does not hold", stderr.ToString(), StringComparison.Ordinal);
        Assert.Contains("blue-wipe", CliRun.Of("list", "products", "--site", Site).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AddProduct_AskedLineByLine_SaysBehindEachLineWhatItChanged()
    {
        New();
        Import("Description\nslit lamp\ninfusion pump\n");
        string[] answers =
        [
            "blue-wipe", "blue wipe", "full", "", "isoprop 30..60 % v/v", "1", "lustre 1 % w/w", "", "liquid", "6..8", "0.93 kg/L",
            "damp-wipe", "low", "1 min", "damp-wipe", "15..30 °C", "EN 16615 (invented)", "",
        ];
        using var stdin = new StringReader(string.Join('\n', answers));
        using var stdout = new StringWriter();
        using var stderr = new StringWriter();
        Assert.Equal(0, CommandLine.Run(["site", "add-product", Site], stdout, stderr, isTerminal: false, stdin));
        var notes = new CliRun(0, "", stderr.ToString()).FlatNotes;
        Assert.Matches("1 isopropanol: also called `isoprop[a-z ]*`.* which of these by its number; .*noted: isopropanol 30\\.\\.60 % v/v: closed: [a-z]",
            notes);
        Assert.Matches("noted: lustre 1 % w/w: ", notes);
        Assert.Matches("noted: ph 6\\.\\.8: .* noted: density 0.93 kg/L: changes nothing", notes);
        Assert.Matches("noted: label claim low: ", notes);
        Assert.Contains("no class covers `lustre`", new CliRun(0, stdout.ToString(), "").Flat, StringComparison.Ordinal);
        Assert.Contains("agent: isopropanol", File.ReadAllText(Site), StringComparison.Ordinal);
    }

    [Fact]
    public void AddProduct_AnswersThatEnd_WritesNothing()
    {
        New();
        var before = File.ReadAllText(Site);
        using var stdin = new StringReader("blue-wipe\nblue wipe\n");
        using var stderr = new StringWriter();
        Assert.Equal(2, CommandLine.Run(["site", "add-product", Site], TextWriter.Null, stderr, isTerminal: false, stdin));
        Assert.Equal(before, File.ReadAllText(Site));
    }

    [Fact]
    public void Import_PlacesRowsKeepsTheColumnAndChangesNothingAgain()
    {
        New();
        var run = Import("No;Description;Type\n1;\"Infusion pump; large\";=cmd|x\n2;INFUSION PUMPS;A 1\n3;kettle;\n4;Slit-lamp;\n", "device=Description",
            "model=Type");
        Assert.Equal(1, run.Code);
        Assert.Contains("row 4 not placed: no pattern has its words: 3 | kettle", run.Flat, StringComparison.Ordinal);
        Assert.Contains("4 rows: 3 placed on 3 devices, 1 not placed", run.Flat, StringComparison.Ordinal);
        var after = File.ReadAllText(Site);
        Assert.Contains("infusion pump =cmd|x", after, StringComparison.Ordinal);
        Assert.Equal(1, CliRun.Of("site", "import", Site, Path.Combine(_folder, "list.csv")).Code);
        Assert.Equal(after, File.ReadAllText(Site));
    }

    [Fact]
    public void Import_ColumnNotNamed_IsAskedOnce()
    {
        New();
        File.WriteAllText(Path.Combine(_folder, "list.csv"), "What\nwheelchair\n");
        using var stdin = new StringReader("what\n");
        Assert.Equal(
            0, CommandLine.Run(["site", "import", Site, Path.Combine(_folder, "list.csv")], TextWriter.Null, TextWriter.Null, isTerminal: false, stdin));
        Assert.Contains("import: { columns: { device: what } }", File.ReadAllText(Site), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Description\n\"slit lamp\n", "row 2, column 1 (`Description`): a quote is opened and never closed")]
    [InlineData("A,Description\n1,\"slit\" lamp\n", "row 2, column 2 (`Description`): there is text behind the closing quote")]
    [InlineData("A,B\n1,2\n", "there is no column `Description`")]
    [InlineData("", "has no rows")]
    public void Import_WrongList_SaysRowAndColumnAndLeavesTheFile(string list, string message)
    {
        New();
        var before = File.ReadAllText(Site);
        var run = Import(list);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.FlatNotes, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Site));
    }

    [Fact]
    public void Csv_OfWindows1252AndUtf8_AreReadAlike()
    {
        var text = "Gerät,Größe\r\n“a”,€\r\n";
        var latin = text.Select(c => c switch { '“' => (byte)0x93, '”' => (byte)0x94, '€' => (byte)0x80, _ => (byte)c }).ToArray();
        var first = CsvTable.Read(latin, out _);
        var second = CsvTable.Read(Encoding.UTF8.GetBytes("\uFEFF" + text), out _);
        Assert.Equal(second.SelectMany(row => row.Cells), first.SelectMany(row => row.Cells));
        Assert.Equal(["“a”", "€"], first[1].Cells);
    }

    [Fact]
    public void Import_TwoHundredThousandRows_ArePlacedEachOnce()
    {
        var list = new StringBuilder("Description,Room\n");
        for (var i = 0; i < 200_000; i++) list.Append(i % 10 == 0 ? "kettle" : "infusion pump").Append(",r").Append(i).Append('\n');
        var rows = CsvTable.Read(Encoding.UTF8.GetBytes(list.ToString()), out var fault);
        Assert.Null(fault);
        var import = DeviceImport.Of(rows.Skip(1), 0, null, DevicePattern.Shipped, []);
        Assert.Equal(180_000, import.Placed.Single().Rows);
        Assert.Equal(20_000, import.Unplaced.Count);
        Assert.Equal(2, import.Unplaced[0].Row.Number);
    }

    [Fact]
    public void Patterns_NamePartsThereAre()
    {
        var parts = KnowledgeBase.Shipped.Data.Parts.Select(part => part.Id).ToHashSet();
        Assert.All(DevicePattern.Shipped.SelectMany(pattern => pattern.Parts).SelectMany(part => part.OneOfTypes), type => Assert.Contains(type, parts));
        foreach (
            var words in new[] { "infusion pump", "slit lamp", "couch", "wheelchair", "thermometer", "pulse oximeter", "ECG", "laryngoscope", "incubator",
            "bed" })
            Assert.Contains(DevicePattern.Shipped, pattern => pattern.Words.Contains(words, StringComparer.OrdinalIgnoreCase));
    }

    private void New() => Assert.Equal(0, CliRun.Of("site", "new", "--out", Site).Code);

    private CliRun Add(string answers)
    {
        var file = Path.Combine(_folder, "answers.yaml");
        File.WriteAllText(file, answers);
        return CliRun.Of("site", "add-product", Site, "--from", file);
    }

    private CliRun Import(string list, params string[] columns)
    {
        var file = Path.Combine(_folder, "list.csv");
        File.WriteAllText(file, list);
        var named = columns.Length == 0 ? ["device=Description"] : columns;
        return CliRun.Of(["site", "import", Site, file, .. named.SelectMany(column => new[] { "--columns", column })]);
    }
}
