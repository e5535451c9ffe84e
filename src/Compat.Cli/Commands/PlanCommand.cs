using System.CommandLine;
using System.Globalization;
using Compat.Cli.Cards;
using Compat.Cli.Input;
using Compat.Cli.Json;

namespace Compat.Cli.Commands;

/// <summary><c>compat plan</c>: how a device is made safe with what is on the shelf.</summary>
internal sealed class PlanCommand : DataCommand
{
    private readonly Option<string?> _device;
    private readonly Option<string?> _serial;
    private readonly Option<string?> _occasion;
    private readonly Option<string?> _max;
    private readonly Option<string[]> _accept;
    private readonly Option<string?> _daily;
    private readonly Option<string?> _done;
    private readonly Option<string?> _markdown;
    private readonly Option<string?> _card;
    private readonly WholeOptions _whole;

    public PlanCommand()
        : base(
            "plan",
            "Plans how a device is made safe with what is on the shelf of a site: the steps in working order, what cannot be done and why, and every way out.",
            new("A slit lamp between two patients", "compat plan --site data/demo/eye-screening-clinic.yaml --device slit-lamp --occasion between-patients"),
            new("The sheet for the ward, after an outbreak",
                "compat plan --site data/demo/eye-screening-clinic.yaml --device vision-monitor --occasion after-outbreak --against non-enveloped-viruses "
                + "--accept looks --markdown"))
    {
        _device = One("--device", "ID", "The device");
        _serial = One("--serial", "NUMBER", "Its serial number");
        _occasion = One(
            "--occasion", "ID",
            "Why it is done now: between-patients, end-of-day, before-repair, after-outbreak …; left out, every part that needs something");
        _whole = new WholeOptions
        {
            Level = One("--level", "WORD", "A level that every part which needs something reaches at least: cleaned, low, intermediate, high or sterile"),
            Against = Many("--against", "NAME", "What must be killed too: an organism by any of its names, or a group"),
            Soil = Many("--soil", "[PART=]WORD", "What is on the device, or on one part of it: dust, grease, gel, blood, mucus, urine, scale or residue; "
                + "none where nothing is; left out, what is usual on each part. The parts that are kept dry count too"),
            SoilOnParts = true,
            Occupied = Flag("--occupied", "A patient is in the device or in reach"),
            Cloth = One("--cloth", "WORD", "What the cloth is made of; left out, one of those at hand that bind nothing"),
        };
        _max = One("--max-products", "NUMBER", "How many products at most, cleaners included");
        _accept = Many("--accept", "WORD", "Accept harm to looks or wear, by name and date, where nothing else serves");
        _daily = One("--uses-per-day", "NUMBER", "How often it is done on a day: then the sheet says how many days a part lasts");
        _done = One("--done", "FILE", "A record of what was done: fills the declaration of the decontamination status");
        _markdown = Flag("--markdown", "Write the sheet for printing");
        _card = Flag("--card", "Write one page for the ward as HTML: what to use, what never to use and what then happens; print it from a browser");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 every part is done", "1 something cannot be done, or only in part"];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var question = Question(call, kb);
        if (new[] { _markdown, _card }.Count(option => call.Has(option)) + (WantsJson(call) ? 1 : 0) > 1)
            call.Note("two-formats", "only one of `--json`, `--markdown` and `--card` can be written", null, "card");
        if (call.Problems.Count > 0 || question is null) return call.Report();
        if (!kb.TryPlan(question, out var sheet, out var problems)) return call.Refuse(problems);
        if (call.Has(_card)) return WriteCard(call, kb, sheet!);
        DoneRecord? record = null;
        if (call.Parsed.GetValue(_done) is { } file && (record = Curation.DoneFile.Read(file, call.Stderr)) is null) return ExitCode.BadInput;
        StatusDeclaration? declaration = null;
        if ((record is not null || sheet!.Papers.Contains(Paper.DecontaminationStatus))
            && !StatusDeclaration.TryMake(sheet!, record, out declaration, out var wrong)) return call.Refuse(wrong);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new PlanJson(json, NamesOf(kb), kb).Write(sheet!, declaration));
        else if (call.Has(_markdown)) new PlanMarkdown(call.Stdout, NamesOf(kb)).Write(sheet!, declaration);
        else new PlanText(new Page(call.Stdout), NamesOf(kb)).Write(sheet!, declaration);
        return sheet!.IsWhole ? ExitCode.Done : ExitCode.NotAllowed;
    }

    private static int WriteCard(Call call, KnowledgeBase kb, PlanSheet sheet)
    {
        var card = new CardMaker(sheet, NeverList.Of(kb, sheet), NamesOf(kb)).Make();
        if (CardFit.Of(card) is not { } size)
            return call.Refuse("card-too-long", string.Create(CultureInfo.InvariantCulture,
                $"the card is {CardFit.Over(card) * 100:0} % too long for one page in type of {CardFit.Smallest} points"),
                "name an occasion, take products nobody needs off the shelf, or print the sheet (`--markdown`)", "card");
        CardHtml.Write(call.Stdout, card, size);
        return sheet.IsWhole ? ExitCode.Done : ExitCode.NotAllowed;
    }

    private PlanQuestion? Question(Call call, KnowledgeBase kb)
    {
        var reader = call.Options;
        var judged = new WholeReader(reader, _whole);
        var whole = judged.AddTo(new Question(), kb);
        var soilOn = judged.SoilOn();
        var device = Id(reader, _device, kb.Sites.SelectMany(site => site.Devices).Select(one => one.Id.Value), text => new DeviceId(text), "device");
        if (reader.Text(_device) is null) reader.Note(_device, "no-device", "no device is named", "name one of a site: `--device ID`");
        var question = device is null ? null : new PlanQuestion
        {
            Device = device,
            Serial = reader.Serial(_serial),
            Occasion = Id(reader, _occasion, kb.Data.Occasions.Select(one => one.Id.Value), text => new OccasionId(text), "occasion"),
            Level = whole.Level,
            Against = whole.Against,
            Soil = whole.Soil,
            SoilOn = soilOn,
            Occupied = whole.Occupied,
            Cloth = whole.Cloth,
            MaxProducts = Number(reader, _max),
            Accept = reader.WordsOf<Consequence>(_accept),
            UsesPerDay = Number(reader, _daily),
        };
        return question;
    }

    private static TId? Id<TId>(OptionReader reader, Option<string?> option, IEnumerable<string> known, Func<string, TId> make, string kind) where TId : Id
    {
        if (reader.Text(option) is not { } text) return null;
        if (Compat.Id.IsWellFormed(text)) return make(text);
        reader.Note(option, "unknown-id", $"no {kind} is called `{text}`", Validation.NearestNames.Help(text, known));
        return null;
    }

    private static int? Number(OptionReader reader, Option<string?> option)
    {
        if (reader.Text(option) is not { } text) return null;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1) return number;
        reader.Note(option, "bad-figure", $"`{text}` is no number from 1", "write a whole number");
        return null;
    }
}
