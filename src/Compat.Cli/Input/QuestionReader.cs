using System.CommandLine;
using System.Globalization;
using Compat.Curation.Text;
using Compat.Validation;

namespace Compat.Cli.Input;

/// <summary>Makes a question of the options of a call and notes everything that is wrong with them.</summary>
public sealed class QuestionReader
{
    private readonly OptionReader _reader;

    private QuestionReader(OptionReader reader) => _reader = reader;

    /// <summary>Reads a question. Where an option is wrong it is noted, and the question goes on without it, so that the rest can be judged too.</summary>
    public static Question Read(QuestionOptions options, ParseResult parsed, KnowledgeBase kb, List<Problem> problems) =>
        new QuestionReader(new OptionReader(parsed, problems)).Read(options, kb);

    private Question Read(QuestionOptions options, KnowledgeBase kb)
    {
        var device = Id(options.Device, kb.Sites.SelectMany(site => site.Devices).Select(record => record.Id.Value), text => new DeviceId(text), "device", null);
        var devicePart = device is null ? null : Id(options.Part, PartsOf(kb, device), text => new DevicePartId(text), "part of the device", null);
        var part = device is not null ? null : Id(options.Part, kb.Data.Parts.Select(record => record.Id.Value), text => new PartId(text), "part type", PartType.Root);
        var agent = Id(options.Agent, kb.Data.Agents.Select(record => record.Id.Value), text => new AgentId(text), "agent class", AgentClass.Root);
        var agentIsKnown = agent is not null && kb.Data.Agents.Any(record => record.Id == agent) && agent.Value == Text(options.Agent);
        var question = new Question
        {
            Device = device,
            DevicePart = devicePart,
            Part = part,
            Materials = Materials(options.Materials, kb),
            MaterialsKnown = MaterialsKnown(options.MaterialsKnown),
            Agent = agent,
            Product = Id(options.Product, kb.Sites.SelectMany(site => site.Products).Select(record => record.Id.Value), text => new ProductId(text), "product", null),
            Serial = Serial(options.Serial),
            Strength = Strength(options.Strength) is { } strength && (agentIsKnown || agent is null) ? strength : null,
            Dilution = Figure(options.Dilution, Axis.Dilution),
            Method = _reader.Word<ApplicationMethod>(options.Method),
            ExposureTime = ExposureTime(options),
            Temperature = Figure(options.Temperature, Axis.Temperature),
            Ph = Figure(options.Ph, Axis.Ph),
            Uses = Uses(options.Uses),
            Acts = _reader.WordsOf<Act>(options.Acts),
            OnlyPart = Only(options.Only),
        };
        return options.Whole is { } whole ? new WholeReader(_reader, whole).AddTo(question, kb) : question;
    }

    private static IEnumerable<string> PartsOf(KnowledgeBase kb, DeviceId device) =>
        kb.Sites.SelectMany(site => site.Devices).Where(record => record.Id == device).SelectMany(record => record.Parts).Select(part => part.Id.Value);

    /// <summary>An id. A text that is no id at all is noted here, a well-formed one that nothing bears is left to the knowledge base.</summary>
    private TId? Id<TId>(Option<string?>? option, IEnumerable<string> known, Func<string, TId> make, string kind, TId? standIn) where TId : Id
    {
        if (Text(option) is not { } text) return null;
        if (Compat.Id.IsWellFormed(text)) return make(text);
        Note(option!, "unknown-id", $"no {kind} is called `{text}`", NearestNames.Help(text.Trim().ToLowerInvariant().Replace(' ', '-'), known) ?? "ids are lower-case words joined by hyphens; `compat find` knows everyday names");
        return standIn;
    }

    private MaterialSlot[] Materials(Option<string[]>? option, KnowledgeBase kb)
    {
        var slots = new List<MaterialSlot>();
        foreach (var text in _reader.Texts(option))
        {
            var ids = text.Split('|').Select(id => id.Trim()).ToArray();
            foreach (var wrong in ids.Where(id => !Compat.Id.IsWellFormed(id)))
                Note(option!, "unknown-id", $"no material is called `{wrong}`", NearestNames.Help(wrong.ToLowerInvariant().Replace(' ', '-'), kb.Data.Materials.Select(record => record.Id.Value)));
            slots.Add(new MaterialSlot(ids.Select(id => Compat.Id.IsWellFormed(id) ? new MaterialId(id) : Material.Root).ToArray()));
        }

        return slots.ToArray();
    }

    private bool? MaterialsKnown(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (text is not ("fully" or "partly")) Note(option!, "unknown-word", $"`{text}` does not say whether the materials are all", NearestNames.Help(text, ["fully", "partly"]) ?? "write `fully` or `partly`");
        return text == "fully";
    }

    private Strength? Strength(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (ExposureText.TryParseStrength(text, out var strength, out var problem)) return strength;
        Note(option!, "bad-figure", problem!, null);
        return null;
    }

    private Interval? ExposureTime(QuestionOptions options)
    {
        var exposureTime = Text(options.ExposureTime) == "without end" ? Interval.Exactly(Interval.WithoutEnd) : Figure(options.ExposureTime, Axis.ExposureTime);
        if (Text(options.ContactTime) is not { } contact) return exposureTime;
        if (Text(options.ExposureTime) is not null)
            Note(options.ContactTime!, "two-exposure-times", "`--exposure-time` and `--contact-time` are both given", "a contact time is an exposure time that ends on time: give one of them");
        if (ExposureText.TryParseDuration(contact, out var seconds, out var problem)) return Interval.Exactly(seconds);
        Note(options.ContactTime!, "bad-figure", problem!, null);
        return exposureTime;
    }

    private Interval? Figure(Option<string?>? option, Axis axis)
    {
        if (Text(option) is not { } text) return null;
        if (ExposureText.TryParseInterval(text, axis, out var range, out var problem)) return range;
        Note(option!, "bad-figure", problem!, null);
        return null;
    }

    private int? Uses(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var uses) && uses >= 1) return uses;
        Note(option!, "bad-figure", $"`{text}` is no number of uses", "write a whole number from 1");
        return null;
    }

    private SerialNumber? Serial(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (SerialNumber.TryParse(text, out var serial)) return serial;
        Note(option!, "bad-serial", $"`{text}` is no serial number", "letters, then a whole number: `AB1200`");
        return null;
    }

    private bool Only(Option<string?>? option)
    {
        if (Text(option) is not { } text) return false;
        if (text != "part") Note(option!, "unknown-word", $"`{text}` cannot be asked alone", "write `--only part`");
        return text == "part";
    }

    private string? Text(Option<string?>? option) => _reader.Text(option);

    private void Note(Option option, string code, string message, string? help) => _reader.Note(option, code, message, help);
}
