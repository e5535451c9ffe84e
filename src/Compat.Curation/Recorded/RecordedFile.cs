using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Recorded;

/// <summary>What a recorded file is.</summary>
public enum RecordedKind
{
    /// <summary>A plan of <c>compat plan --json</c>.</summary>
    Plan,

    /// <summary>A file of <c>compat dossier</c>.</summary>
    Dossier,
}

/// <summary>A file that the command wrote earlier, with the answers in it.</summary>
public sealed record RecordedFile
{
    /// <summary>The format of a plan that is written now.</summary>
    public const string PlanFormat = "plan-2";

    /// <summary>The format of a dossier that is written now.</summary>
    public const string DossierFormat = "dossier-2";

    /// <summary>The name the file is shown by.</summary>
    public required string Path { get; init; }

    /// <summary>What it is.</summary>
    public required RecordedKind Kind { get; init; }

    /// <summary>The device it is of.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>The serial number of the device; null where none was named.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The answers, in the order of the file.</summary>
    public IReadOnlyList<RecordedAnswer> Answers { get; init; } = [];

    /// <summary>What each part needed, of a dossier.</summary>
    public IReadOnlyList<RecordedNeed> Needs { get; init; } = [];

    /// <summary>The plans in it, of a dossier; each shown by the name of its own file behind that of the dossier.</summary>
    public IReadOnlyList<RecordedFile> Plans { get; init; } = [];

    /// <summary>The states of the data it rests on.</summary>
    public IReadOnlyList<DataIdentity> Identity { get; init; } = [];

    /// <summary>Reads a plan or a dossier.</summary>
    /// <param name="path">The file; it is shown by this name.</param>
    /// <param name="faults">Takes what is wrong, with its place.</param>
    /// <returns>Null where anything is.</returns>
    public static RecordedFile? Read(string path, List<Diagnostic> faults) => Read(path, faults, out _);

    /// <summary>Reads a plan or a dossier.</summary>
    /// <param name="path">The file; it is shown by this name.</param>
    /// <param name="faults">Takes what is wrong, with its place.</param>
    /// <param name="text">Its text; empty where it could not be read.</param>
    /// <returns>Null where anything is wrong.</returns>
    public static RecordedFile? Read(string path, List<Diagnostic> faults, out string text) =>
        Read(SourceReader.ReadBytes(path, path, faults), path, faults, out text);

    /// <summary>Reads bytes already in memory.</summary>
    /// <param name="bytes">The bytes; null where they could not be read, which is reported.</param>
    /// <param name="shownAs">The name the file is shown by.</param>
    /// <param name="faults">Takes what is wrong, with its place.</param>
    /// <returns>Null where anything is.</returns>
    public static RecordedFile? Read(byte[]? bytes, string shownAs, List<Diagnostic> faults) => Read(bytes, shownAs, faults, out _);

    private static RecordedFile? Read(byte[]? bytes, string shownAs, List<Diagnostic> faults, out string text)
    {
        text = "";
        if (bytes is null || SourceReader.Decode(bytes, shownAs, faults) is not { } source) return null;
        text = source.Text;
        var list = new DiagnosticList(source);
        var file = JsonText.Read(list) is { } root ? Read(root, shownAs, list) : null;
        faults.AddRange(list.Found);
        return list.Found.Count > 0 ? null : file;
    }

    private static RecordedFile? Read(YamlNode root, string shownAs, DiagnosticList faults)
    {
        if (KindOf(root, faults) is not { } kind || root is not YamlMapping mapping) return null;
        var schema = FileSchema.OfOutput(Space.Words.Of(kind));
        var refusals = schema.Check(root, faults);
        var file = faults.Found.Count > 0 ? null : kind == RecordedKind.Plan ? Plan(new(mapping, faults), shownAs) : Dossier(new(mapping, faults), shownAs);
        FileSchema.AddRefusals(root, refusals, faults);
        return file;
    }

    private static RecordedKind? KindOf(YamlNode root, DiagnosticList faults)
    {
        const string help = $"this program reads `{PlanFormat}` and `{DossierFormat}`: write the file anew, or read it with the program that wrote it";
        var format = (root as YamlMapping)?.Find("format");
        var at = format?.Value.Span ?? new TextSpan(root.Span.Start, Math.Min(1, root.Span.Length));
        switch ((format?.Value as YamlScalar)?.Text)
        {
            case PlanFormat: return RecordedKind.Plan;
            case DossierFormat: return RecordedKind.Dossier;
            case { } other:
                faults.Add(at, "unknown-format", $"this is of format `{other}`, which is not known here", help);
                return null;
            case null:
                faults.Add(at, "unknown-format", "this is no plan and no dossier: it does not say its `format`", help);
                return null;
        }
    }

    private static RecordedFile? Plan(RecordFields fields, string shownAs)
    {
        if (fields.Id("device", text => new DeviceId(text)) is not { } device) return null;
        var answers = fields.Records("steps")
            .SelectMany(
                step => step.Records("answers").Select(answer => Answer(answer, device) is { } read ? read with { Step = step.Number("number") } : null))
                .OfType<RecordedAnswer>();
        return new()
        {
            Path = shownAs,
            Kind = RecordedKind.Plan,
            Device = device,
            Serial = RecordedQuestion.Serial(fields),
            Answers = answers.ToArray(),
            Identity = IdentityOf(fields),
        };
    }

    private static RecordedFile? Dossier(RecordFields fields, string shownAs)
    {
        if (fields.Record("device") is not { } described || described.Id("id", text => new DeviceId(text)) is not { } device) return null;
        var plans = fields.Records("plans")
            .Select(plan => plan.Node("plan") is { } node
            && Read(node, $"{shownAs}: {plan.NeededText("file")}", fields.Faults) is { Kind: RecordedKind.Plan } read ? read : null).OfType<RecordedFile>()
            .ToArray();
        foreach (var plan in plans.Where(plan => plan.Device != device))
            fields.ReportKey("plans", "other-device", $"a plan is of `{plan.Device}`, the dossier of `{device}`");
        return new()
        {
            Path = shownAs,
            Kind = RecordedKind.Dossier,
            Device = device,
            Serial = RecordedQuestion.Serial(described),
            Needs = fields.Records("parts").Select(RecordedNeed.Read).OfType<RecordedNeed>().ToArray(),
            Answers = fields.Records("answers").Select(answer => Answer(answer, device)).OfType<RecordedAnswer>().ToArray(),
            Plans = plans,
            Identity = IdentityOf(fields),
        };
    }

    /// <summary>An answer, held against what stands around it: it is of the same device and part.</summary>
    private static RecordedAnswer? Answer(RecordFields fields, DeviceId device)
    {
        if (RecordedAnswer.Read(fields) is not { } answer) return null;
        var part = fields.Text("part");
        if (answer.Question.Device != device || answer.Question.DevicePart?.Value != part)
            fields.ReportKey("question", "other-part",
                $"the question is of `{answer.Question.Device?.Value}/{answer.Question.DevicePart?.Value}`, the answer of `{device}/{part}`",
                "the file was changed after it was written: write it anew");
        return answer;
    }

    private static DataIdentity[] IdentityOf(RecordFields fields) =>
        fields.Records("identity").Select(state => new DataIdentity(state.NeededText("name"), state.NeededText("version"), state.NeededText("hash"))).ToArray();
}
