using System.Globalization;
using Compat.Curation.Text;

namespace Compat.Tests.Meaning;

/// <summary>The options of one line of an example: a question as the command takes it, without its quotes and its help.</summary>
internal sealed class Options
{
    private static readonly Dictionary<string, string> Short = MeaningPages.Workshop.Where(block => block.Info == "short").SelectMany(block => block.Lines)
        .Select(line => line.Split(" = ", 2)).ToDictionary(pair => pair[0], pair => pair[1]);

    private readonly Dictionary<string, List<string>> _given = [];

    public Options(string line)
    {
        var words = Split(string.Join(' ', line.Split(' ').Select(word => Short.GetValueOrDefault(word, word))));
        for (var at = 0; at < words.Count; at++)
        {
            var option = words[at];
            if (!IsOption(option)) Words.Add(option);
            else Add(option[2..], at + 1 < words.Count && !IsOption(words[at + 1]) && option != "--occupied" ? words[++at] : "");
        }
    }

    /// <summary>What is no option, in order.</summary>
    public List<string> Words { get; } = [];

    public string? Last(string option) => _given.TryGetValue(option, out var values) ? values[^1] : null;

    public IReadOnlyList<string> All(string option) => _given.GetValueOrDefault(option) ?? [];

    /// <summary>Makes the question; fails where a figure is none, as the command does.</summary>
    public bool TryQuestion(out Question question)
    {
        try
        {
            question = Question();
            return true;
        }
        catch (FormatException)
        {
            question = new();
            return false;
        }
    }

    public Question Question() => new()
    {
        Part = Last("device") is null ? Id(Last("part"), text => new PartId(text)) : null,
        Device = Id(Last("device"), text => new DeviceId(text)),
        DevicePart = Last("device") is null ? null : Id(Last("part"), text => new DevicePartId(text)),
        Materials = [.. All("material").Select(text => new MaterialSlot([.. text.Split('|').Select(id => new MaterialId(id))]))],
        MaterialsKnown = Last("materials-known") is { } known ? known == "fully" : null,
        Serial = Last("serial") is { } serial && SerialNumber.TryParse(serial, out var number) ? number : null,
        Agent = Id(Last("agent"), text => new AgentId(text)),
        Product = Id(Last("product"), text => new ProductId(text)),
        Strength = Strength(Last("strength")),
        Dilution = Range("dilution", Axis.Dilution),
        Method = Word<ApplicationMethod>("method"),
        ExposureTime = Last("exposure-time") == "without end" ? Interval.Exactly(Interval.WithoutEnd) : Range("exposure-time", Axis.ExposureTime),
        Temperature = Range("temperature", Axis.Temperature),
        Ph = Range("ph", Axis.Ph),
        Uses = Last("uses") is { } uses ? int.Parse(uses, CultureInfo.InvariantCulture) : null,
        Acts = WordsOf<Act>("act"),
        OnlyPart = Last("only") == "part",
        TouchedBy = Word<TouchedBy>("touched-by"),
        Patients = WordsOf<PatientGroup>("patient"),
        Occupied = Last("occupied") is not null,
        Soil = All("soil").Count == 0 ? null : [.. All("soil").Where(text => text != "none").Select(text => Of<SoilKind>(text))],
        Level = Word<Level>("level"),
        Against = [.. All("against").Select(text => global::Compat.Space.Words.TryParse<OrganismGroup>(text, out var group)
            ? OrganismTarget.Of(group) : OrganismTarget.Of(new OrganismId(text)))],
        Cloth = Last("cloth"),
    };

    public static Strength? Strength(string? text) => text is null ? null
        : ExposureText.TryParseStrength(text, out var strength, out var problem) ? strength : throw new FormatException(problem);

    public static TId? Id<TId>(string? text, Func<string, TId> make) where TId : Id => text is null ? null : make(text);

    public TEnum? Word<TEnum>(string option) where TEnum : struct, Enum => Last(option) is { } text ? Of<TEnum>(text) : null;

    private TEnum[] WordsOf<TEnum>(string option) where TEnum : struct, Enum => [.. All(option).Select(Of<TEnum>)];

    private static TEnum Of<TEnum>(string text) where TEnum : struct, Enum =>
        global::Compat.Space.Words.TryParse<TEnum>(text, out var member) ? member : throw new FormatException($"`{text}` is no word of {typeof(TEnum).Name}");

    private Interval? Range(string option, Axis axis) => Last(option) is not { } text ? null
        : ExposureText.TryParseInterval(text, axis, out var range, out var problem) ? range : throw new FormatException(problem);

    private static bool IsOption(string word) => word.StartsWith("--", StringComparison.Ordinal);

    /// <summary>A list that the command takes several times is given again; any other option is replaced by the later one.</summary>
    private void Add(string option, string value)
    {
        if (!_given.TryGetValue(option, out var values)) _given[option] = values = [];
        values.Add(value);
    }

    /// <summary>Words at spaces; what stands in quotes is one word.</summary>
    private static List<string> Split(string line)
    {
        var words = new List<string>();
        for (var at = 0; at < line.Length;)
        {
            if (line[at] == ' ') { at++; continue; }
            var quoted = line[at] == '"';
            var end = line.IndexOf(quoted ? '"' : ' ', at + 1);
            if (end < 0) end = line.Length;
            words.Add(line[(quoted ? at + 1 : at)..end]);
            at = end + 1;
        }

        return words;
    }
}
