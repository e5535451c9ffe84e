using System.CommandLine;
using System.Globalization;
using Compat.Curation.Text;

namespace Compat.Cli.Input;

/// <summary>Makes a question of the options of a call and notes everything that is wrong with them.</summary>
internal sealed class QuestionReader
{
    private readonly OptionReader _reader;

    private QuestionReader(OptionReader reader) => _reader = reader;

    /// <summary>Reads a question. Where an option is wrong it is noted, and the question goes on without it, so that the rest can be judged too.</summary>
    public static Question Read(QuestionOptions options, ParseResult parsed, KnowledgeBase kb, List<Problem> problems) =>
        new QuestionReader(new OptionReader(parsed, problems)).Read(options, kb);

    private Question Read(QuestionOptions options, KnowledgeBase kb)
    {
        var device = Id(options.Device, kb.Sites.SelectMany(site => site.Devices).Select(record => record.Id.Value), text =>
            new DeviceId(text), "device", null);
        var devicePart = device is null ? null : Id(options.Part, PartsOf(kb, device), text => new DevicePartId(text), "part of the device", null);
        var part = device is not null ? null : Id(options.Part, kb.Data.Parts.Select(record => record.Id.Value), text =>
            new PartId(text), "part type", PartType.Root);
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
            Product = Id(options.Product, kb.Sites.SelectMany(site => site.Products).Select(record => record.Id.Value), text =>
                new ProductId(text), "product", null),
            Serial = _reader.Serial(options.Serial),
            Strength = _reader.Strength(options.Strength) is { } strength && (agentIsKnown || agent is null) ? strength : null,
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
        Note(option!, "unknown-id", $"no {kind} is called `{text}`", NearestNames.Help(text.Trim().ToLowerInvariant().Replace(' ', '-'), known)
            ?? "ids are lower-case words joined by hyphens; `compat find` knows everyday names");
        return standIn;
    }

    private MaterialSlot[] Materials(Option<string[]>? option, KnowledgeBase kb)
    {
        var slots = new List<MaterialSlot>();
        foreach (var text in _reader.Texts(option))
        {
            var ids = text.Split('|').Select(id => id.Trim()).ToArray();
            foreach (var wrong in ids.Where(id => !Compat.Id.IsWellFormed(id)))
                Note(option!, "unknown-id", $"no material is called `{wrong}`", NearestNames.Help(
                    wrong.ToLowerInvariant().Replace(' ', '-'), kb.Data.Materials.Select(record => record.Id.Value)));
            slots.Add(new MaterialSlot(ids.Select(id => Compat.Id.IsWellFormed(id) ? new MaterialId(id) : Material.Root).ToArray()));
        }

        return slots.ToArray();
    }

    private bool? MaterialsKnown(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (text is not ("fully" or "partly")) Note(option!, "unknown-word", $"`{text}` does not say whether the materials are all",
            NearestNames.Help(text, ["fully", "partly"]) ?? "write `fully` or `partly`");
        return text == "fully";
    }

    private Interval? ExposureTime(QuestionOptions options)
    {
        var exposureTime = Text(options.ExposureTime) == "without end" ? Interval.Exactly(Interval.WithoutEnd)
            : Figure(options.ExposureTime, Axis.ExposureTime);
        if (Text(options.ContactTime) is not { } contact) return exposureTime;
        if (Text(options.ExposureTime) is not null)
            Note(options.ContactTime!, "two-exposure-times", "`--exposure-time` and `--contact-time` are both given",
                "a contact time is an exposure time that ends on time: give one of them");
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

    private bool Only(Option<string?>? option)
    {
        if (Text(option) is not { } text) return false;
        if (text != "part") Note(option!, "unknown-word", $"`{text}` cannot be asked alone", "write `--only part`");
        return text == "part";
    }

    private string? Text(Option<string?>? option) => _reader.Text(option);

    private void Note(Option option, string code, string message, string? help) => _reader.Note(option, code, message, help);
}

/// <summary>The options that make up a question; one that a command does not offer is null.</summary>
internal sealed record QuestionOptions
{
    public Option<string?>? Part { get; init; }
    public Option<string[]>? Materials { get; init; }
    public Option<string?>? MaterialsKnown { get; init; }
    public Option<string?>? Device { get; init; }
    public Option<string?>? Serial { get; init; }
    public Option<string?>? Agent { get; init; }
    public Option<string?>? Product { get; init; }
    public Option<string?>? Dilution { get; init; }
    public Option<string?>? Strength { get; init; }
    public Option<string?>? Method { get; init; }
    public Option<string?>? ExposureTime { get; init; }

    /// <summary>The exposure time of what is kept wet for a time and then taken off.</summary>
    public Option<string?>? ContactTime { get; init; }
    public Option<string?>? Temperature { get; init; }
    public Option<string?>? Ph { get; init; }
    public Option<string?>? Uses { get; init; }
    public Option<string[]>? Acts { get; init; }

    /// <summary>What alone is to be judged.</summary>
    public Option<string?>? Only { get; init; }

    /// <summary>What kill and people are judged by; null where the command does not offer it.</summary>
    public WholeOptions? Whole { get; init; }
}

/// <summary>The options by which kill and people are judged beside the part.</summary>
internal sealed record WholeOptions
{
    public Option<string?>? TouchedBy { get; init; }
    public Option<string[]>? Patients { get; init; }

    /// <summary>Whether a patient is in the device or in reach.</summary>
    public Option<string?>? Occupied { get; init; }
    public Option<string[]>? Soil { get; init; }

    /// <summary>Whether soil may be said of single parts too: <c>PART=SOIL</c>.</summary>
    public bool SoilOnParts { get; init; }

    /// <summary>A level to reach at least.</summary>
    public Option<string?>? Level { get; init; }
    public Option<string[]>? Against { get; init; }
    public Option<string?>? Cloth { get; init; }
}

/// <summary>Adds to a question what kill and people are judged by.</summary>
internal sealed class WholeReader(OptionReader reader, WholeOptions options)
{
    public const string NoSoil = "none";

    public Question AddTo(Question question, KnowledgeBase kb) => question with
    {
        TouchedBy = reader.Word<TouchedBy>(options.TouchedBy),
        Patients = reader.WordsOf<PatientGroup>(options.Patients).Distinct().ToArray(),
        Occupied = reader.Given(options.Occupied),
        Soil = Soil([.. reader.Texts(options.Soil).Where(text => !IsOfAPart(text))]),
        Level = reader.Word<Level>(options.Level),
        Against = Against(kb),
        Cloth = Cloth(),
    };

    /// <summary>What is on single parts of a device, written <c>PART=SOIL</c>; what the command does not take is read as no soil at all.</summary>
    public IReadOnlyDictionary<DevicePartId, IReadOnlyList<SoilKind>> SoilOn()
    {
        var found = new Dictionary<DevicePartId, IReadOnlyList<SoilKind>>();
        foreach (var part in reader.Texts(options.Soil).Where(IsOfAPart).Select(text => text.Split('=', 2))
            .GroupBy(pair => pair[0].Trim(), pair => pair[1].Trim()))
        {
            if (Compat.Id.IsWellFormed(part.Key)) found[new DevicePartId(part.Key)] = Soil([.. part]) ?? [];
            else reader.Note(options.Soil!, "unknown-id", $"no part is called `{part.Key}`", "write `PART=SOIL`, the part by its id");
        }

        return found;
    }

    private bool IsOfAPart(string text) => options.SoilOnParts && text.Contains('=', StringComparison.Ordinal);

    /// <summary>The soils; none at all where the word for nothing is given, null where nothing is.</summary>
    private SoilKind[]? Soil(IReadOnlyList<string> texts)
    {
        if (texts.Count == 0) return null;
        var soils = new List<SoilKind>();
        foreach (var text in texts.Where(text => text != NoSoil))
        {
            if (Words.TryParse<SoilKind>(text, out var soil)) soils.Add(soil);
            else reader.NoteWord<SoilKind>(options.Soil!, text, NoSoil);
        }

        if (texts.Contains(NoSoil) && texts.Any(text => text != NoSoil))
            reader.Note(options.Soil!, "two-soils", $"`{NoSoil}` and another soil are both given", $"`{NoSoil}` says that nothing was on the part");
        return soils.Distinct().ToArray();
    }

    private OrganismTarget[] Against(KnowledgeBase kb)
    {
        var targets = new List<OrganismTarget>();
        foreach (var text in reader.Texts(options.Against))
        {
            var word = text.Trim();
            if (Words.TryParse<OrganismGroup>(word.ToLowerInvariant().Replace(' ', '-'), out var group))
            {
                targets.Add(OrganismTarget.Of(group));
                continue;
            }

            var called = kb.Data.Organisms.Where(organism => NamesOf(organism).Contains(word, StringComparer.OrdinalIgnoreCase)).ToArray();
            if (called.Length == 1) targets.Add(OrganismTarget.Of(called[0].Id));
            else NoteOrganism(kb, word, called);
        }

        return targets.Distinct().ToArray();
    }

    private void NoteOrganism(KnowledgeBase kb, string word, Organism[] called)
    {
        if (called.Length > 1)
        {
            reader.Note(options.Against!, "several-organisms", $"`{word}` is the name of several organisms",
                "name one of them: " + string.Join(", ", called.Select(organism => $"`{organism.Id}`")));
            return;
        }

        var known = kb.Data.Organisms.SelectMany(NamesOf).Concat(Words.All<OrganismGroup>()).DistinctBy(name => name.ToLowerInvariant())
            .ToDictionary(name => name.ToLowerInvariant());
        var near = NearestNames.Of(word.ToLowerInvariant(), known.Keys).Select(name => $"`{known[name]}`").ToArray();
        var help = near.Length > 0 ? "did you mean " + string.Join(" or ", near) + "?"
            : $"name an organism or one of the groups: {string.Join(", ", Words.All<OrganismGroup>())}";
        reader.Note(options.Against!, "unknown-organism", $"no organism is called `{word}`", help);
    }

    private string? Cloth()
    {
        if (reader.Text(options.Cloth) is not { } text) return null;
        var word = text.Trim();
        if (word.Length > 0 && !word.Contains(' ')) return word.ToLowerInvariant();
        reader.Note(options.Cloth!, "bad-cloth", $"`{text}` is no word for a cloth", "name what it is made of in one word: `cotton`, `cellulose`, `polyester`");
        return null;
    }

    private static IEnumerable<string> NamesOf(Organism organism) => organism.AlsoCalled.Append(organism.Name).Append(organism.Id.Value)
        .Distinct(StringComparer.OrdinalIgnoreCase);
}

/// <summary>Reads options of a call and notes everything that is wrong with them.</summary>
internal sealed class OptionReader(ParseResult parsed, List<Problem> problems)
{
    private const int MostDays = 36_500;

    /// <summary>The text of an option; null where it was not given once.</summary>
    public string? Text(Option<string?>? option) => option is null || parsed.GetResult(option) is not { Tokens.Count: 1 } ? null : parsed.GetValue(option);

    /// <summary>The texts of an option that may be repeated; empty where it was not given.</summary>
    public IReadOnlyList<string> Texts(Option<string[]>? option) => option is null ? [] : parsed.GetValue(option) ?? [];

    public bool Given(Option<string?>? option) => option is not null && parsed.GetResult(option) is not null;

    /// <summary>The member a word names; null where none was given, or where it is wrong, which is noted, as below.</summary>
    public TEnum? Word<TEnum>(Option<string?>? option) where TEnum : struct, Enum
    {
        if (Text(option) is not { } text) return null;
        if (Words.TryParse<TEnum>(text, out var member)) return member;
        NoteWord<TEnum>(option!, text);
        return null;
    }

    public TEnum[] WordsOf<TEnum>(Option<string[]>? option) where TEnum : struct, Enum
    {
        var members = new List<TEnum>();
        foreach (var text in Texts(option))
        {
            if (Words.TryParse<TEnum>(text, out var member)) members.Add(member);
            else NoteWord<TEnum>(option!, text);
        }

        return members.ToArray();
    }

    public Strength? Strength(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (ExposureText.TryParseStrength(text, out var strength, out var problem)) return strength;
        Note(option!, "bad-figure", problem!, null);
        return null;
    }

    public SerialNumber? Serial(Option<string?>? option)
    {
        if (Text(option) is not { } text) return null;
        if (SerialNumber.TryParse(text, out var serial)) return serial;
        Note(option!, "bad-serial", $"`{text}` is no serial number", "letters, then a whole number: `AB1200`");
        return null;
    }

    /// <summary>The day that counts as today: that of an option, else the clock's.</summary>
    public CalendarDate Today(Option<string?> option) => Day(option) ?? Clock();

    /// <summary>A day as it is typed: a date, <c>today</c>, or so many days ago.</summary>
    /// <param name="today">From when days are counted; the clock's day where left out.</param>
    public CalendarDate? Day(Option<string?> option, CalendarDate? today = null)
    {
        if (Text(option) is not { } text) return null;
        if (CalendarDate.TryParse(text, out var date)) return date;
        if (text == "today") return today ?? Clock();
        if (text.Split(' ') is [var number, "day" or "days", "ago"]
            && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var days) && days <= MostDays) return (today ?? Clock())
                .AddDays(-days);
        Note(option, "bad-date", $"`{text}` is no date", "write `2026-11-10`, `today` or `10 days ago`");
        return null;
    }

    public void NoteWord<TEnum>(Option option, string text, params string[] further) where TEnum : struct, Enum
    {
        var known = Words.All<TEnum>().Concat(further).ToArray();
        Note(option, "unknown-word", $"`{text}` is not known here", NearestNames.Help(text, known) ?? $"the words are: {string.Join(", ", known)}");
    }

    public void Note(Option option, string code, string message, string? help) =>
        problems.Add(BadInput.Of(code, message, help, option.Name.TrimStart('-')));

    private static CalendarDate Clock()
    {
        var clock = DateTime.Today;
        return new CalendarDate(clock.Year, clock.Month, clock.Day);
    }
}
