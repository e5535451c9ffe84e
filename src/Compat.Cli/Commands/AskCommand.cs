using System.CommandLine;
using Compat.Cli.Input;
using Compat.Cli.Json;

namespace Compat.Cli.Commands;

/// <summary><c>compat ask</c>: may this agent or product be used on this part, how, and why.</summary>
internal sealed class AskCommand : QuestionCommand
{
    private readonly QuestionOptions _options;
    private readonly Option<string?> _letter;

    public AskCommand()
        : base(
            "ask",
            "Asks whether an agent or a product may be used on a part, how, and why. What is left out is judged at its worst, or left to you and listed. "
                + "With --device or any of the options from --touched-by to --cloth it also judges whether it kills what is needed and what it means for "
                + "people; the worst of the three is the answer.",
            new("A grip that patients hold, soiled with blood: what kills it and is stood",
                "compat ask --part handle --agent isopropanol --strength \"70 % v/v\" --touched-by intact-skin --soil blood --against HBV"),
            new("A keypad, from a script: 0 only if it may be used as asked",
                "compat ask --part keypad-membrane --agent ethanol --strength \"70 % v/v\" --method damp-wipe --exposure-time \"1 min\" --only part --json"))
    {
        _options = new QuestionOptions
        {
            Part = Part("The part type; with --device, the part of that device"),
            Materials = Materials(),
            MaterialsKnown = MaterialsKnown(),
            Device = One("--device", "ID", "A device of a site: every part of it, worst first"),
            Serial = One("--serial", "NUMBER", "The device's serial number"),
            Agent = Agent(),
            Product = One("--product", "ID", "A product of a site"),
            Dilution = One("--dilution", "SHARE", "Of a product: \"2 % v/v\", \"1 in 50\", \"1 + 49\" or undiluted"),
            Strength = One("--strength", "FIGURE", "Of an agent: \"70 % v/v\"; \"60..80 % v/v\" where it is uncertain"),
            Method = One("--method", "WORD", "damp-wipe, wet-wipe, spray, rinse, immerse or chamber"),
            ExposureTime = One("--exposure-time", "TIME", "How long it stays on: \"2 min\", \"30 s..2 min\" or \"without end\""),
            ContactTime = One("--contact-time", "TIME", "Kept wet for this time and then taken off"),
            Temperature = One("--temperature", "FIGURE", "\"22 °C\""),
            Ph = One("--ph", "FIGURE", "7.5 or 7..8"),
            Uses = One("--uses", "NUMBER", "Uses over the part's life"),
            Acts = Many("--act", "WORD", "What goes with it: brush, heat-drying, compressed-air, soft-cloth or rub"),
            Only = One("--only", "part", "Say that only the part is asked about"),
            Whole = new WholeOptions
            {
                TouchedBy = One("--touched-by", "WORD", "What touches the part: nobody, internal, floor, hand, intact-skin, broken-skin, mucous-membrane or "
                    + "sterile-tissue; left out, what is on record of it"),
                Patients = Many("--patient", "WORD", "For whom residue and vapour are judged: newborn, eye, mucous-membrane, airway, wound, bladder, gut, "
                    + "joint, skin, pregnancy, sensitised, blood or latex-allergy"),
                Occupied = Flag("--occupied", "A patient is in the device or in reach"),
                Soil = Many("--soil", "WORD", "What was on the part: dust, grease, gel, blood, mucus, urine, scale or residue; none where nothing was; left "
                    + "out, what usually is"),
                Level = One("--level", "WORD", "A level to reach at least: cleaned, low, intermediate, high or sterile; it only raises"),
                Against = Many("--against", "NAME", "What must be killed too: an organism by any of its names, or a group: vegetative-bacteria, "
                    + "tuberculosis, enveloped-viruses, non-enveloped-viruses, fungi, spores or prions"),
                Cloth = One("--cloth", "WORD", "What the cloth is made of: cotton, cellulose, polyester"),
            },
        };
        _letter = Flag("--letter", "Write the letter that asks for the statement a 'not established' lacks, without names");
    }

    public override IReadOnlyList<string> ExitCodes { get; } =
    [
        "0 allowed as asked",
        "1 not allowed",
        "3 allowed within limits",
        "4 not established",
        "Of several parts: 2, else 1, 4, 3, 0, the first that occurs among the parts that need something",
    ];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        if (IsLetter(call) && WantsJson(call)) call.Note("letter-and-json", "a letter is text, not JSON", null, "letter");
        var question = QuestionReader.Read(_options, call.Parsed, kb, call.Problems);
        return question is { Device: not null, DevicePart: null } ? AskDevice(call, kb, question) : AskOne(call, kb, question);
    }

    private int AskOne(Call call, KnowledgeBase kb, Question question)
    {
        var answer = AskOrNote(call, () => kb.Ask(question));
        if (call.Problems.Count > 0 || answer is null) return call.Report();
        if (IsLetter(call)) return Letters(call, kb, [answer], ExitCode.Of(answer));
        var names = NamesOf(kb);
        var serving = Serving.Of(kb, answer);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => AnswerJson.Write(
            json, kb, answer, serving.Agents, serving.Products, new EnglishTexts(names)));
        else new AnswerText(new Page(call.Stdout), names).Write(answer, serving);
        return ExitCode.Of(answer);
    }

    private int AskDevice(Call call, KnowledgeBase kb, Question question)
    {
        var parts = AskOrNote(call, () => kb.AskDevice(question));
        if (call.Problems.Count > 0 || parts is null) return call.Report();
        var answers = parts.Where(part => !part.NeedsNothing).Select(part => part.Answer).OfType<Answer>().ToArray();
        if (IsLetter(call)) return Letters(call, kb, answers, ExitCode.Of(answers));
        var names = NamesOf(kb);
        var serving = parts.Where(part => part.Answer is not null).ToDictionary(part => part.Part.Id, part => Serving.OfPart(kb, part.Answer!));
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => AnswerJson.WriteDevice(
            json, kb, question.Device!, parts, serving.ToDictionary(one => one.Key, one => one.Value.Products), new EnglishTexts(names)));
        else new AnswerText(new Page(call.Stdout), names).WriteDevice(question, parts, serving, kb.Identity);
        return ExitCode.Of(answers);
    }

    private bool IsLetter(Call call) => call.Has(_letter);

    /// <summary>A letter for each answer that lacks a statement.</summary>
    private static int Letters(Call call, KnowledgeBase kb, IReadOnlyList<Answer> answers, int code)
    {
        var needed = answers.Where(LetterText.IsNeeded).ToArray();
        var page = new Page(call.Stdout);
        foreach (var answer in needed)
        {
            if (!ReferenceEquals(answer, needed[0])) page.Line(new string('-', Page.Width));
            new LetterText(page, kb, NamesOf(kb)).Write(answer);
        }

        if (needed.Length == 0) new Page(call.Stderr).Line("note: no statement is missing: the answer is established", 0, 2);
        return code;
    }
}

/// <summary><c>compat map</c>: the whole decision map of a part and an agent.</summary>
internal sealed class MapCommand : QuestionCommand
{
    private readonly QuestionOptions _options;

    public MapCommand()
        : base(
            "map",
            "Prints the whole decision map of a part and an agent: boxes that do not overlap and together hold every exposure.",
            new("All that is known of ethanol on a membrane keypad", "compat map --part keypad-membrane --agent ethanol"),
            new("Hypochlorite on anodised aluminium, as JSON", "compat map --material anodised-aluminium --agent sodium-hypochlorite --json"))
    {
        _options = new QuestionOptions
        {
            Part = Part("The part type"),
            Materials = Materials(),
            MaterialsKnown = MaterialsKnown(),
            Agent = Agent(),
        };
    }

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var question = QuestionReader.Read(_options, call.Parsed, kb, call.Problems);
        var map = AskOrNote(call, () => kb.Map(question));
        if (call.Problems.Count > 0 || map is null) return call.Report();
        var names = NamesOf(kb);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new MapJson(json, names).Write(map, question));
        else new MapText(new Page(call.Stdout), names).Write(map, question);
        return ExitCode.Done;
    }
}
