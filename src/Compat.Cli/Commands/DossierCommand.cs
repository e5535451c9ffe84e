using System.CommandLine;
using Compat.Cli.Json;
using Compat.Curation;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;
using Compat.Curation.Recorded;

namespace Compat.Cli.Commands;

/// <summary><c>compat dossier</c>: all that is on record of one device in one file, and whether such a file still holds.</summary>
internal sealed class DossierCommand : DataCommand
{
    private readonly Option<string?> _device;
    private readonly Option<string?> _serial;
    private readonly Option<string[]> _done;
    private readonly Option<string[]> _plans;
    private readonly Option<string?> _out;
    private readonly Option<string?> _markdown;
    private readonly Option<string?> _today;
    private readonly Option<string?> _verify;

    public DossierCommand()
        : base(
            json: false,
            "dossier",
            "Writes the auditor's file of one device: every part with every product of the shelf, the rules, sources and editions behind the answers, plans, "
                + "what was done, and the exact state of the data. With --verify it asks all of it again.",
            new("A tonometer with its plan and what was done",
                "compat dossier --site data/demo/eye-screening-clinic.yaml --device tonometer --plan plan.json --done done.yaml --out tonometer.json"),
            new("Whether it still holds", "compat dossier --site data/demo/eye-screening-clinic.yaml --verify tonometer.json"))
    {
        _device = One("--device", "ID", "The device");
        _serial = One("--serial", "NUMBER", "Its serial number");
        _plans = Many("--plan", "FILE", "A plan of the device, written by `compat plan --json`");
        _done = Many("--done", "FILE", "A record of what was done on the device");
        _out = One("--out", "FILE", "Where to write it, whole or not at all; to stdout where left out");
        _markdown = Flag("--markdown", "Write it for reading and printing, in place of JSON");
        _today = One("--today", "DAY", "The day to write on it; none where left out, so that the same data give the same file");
        _verify = One("--verify", "FILE", "Ask a dossier again and list what no longer holds");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 written; with --verify: all of it holds", "1 with --verify: something does not hold"];

    protected override int Execute(Call call, KnowledgeBase kb) => call.Parsed.GetValue(_verify) is { } file ? Verify(call, kb, file) : Make(call, kb);

    private int Make(Call call, KnowledgeBase kb)
    {
        var device = Known(call, _device, kb.Sites.SelectMany(site => site.Devices).Select(one => one.Id), "device");
        if (call.Parsed.GetValue(_device) is null) call.Note("no-device", "no device is named", "name one of a site: `--device ID`", "device");
        var serial = call.Options.Serial(_serial);
        var today = call.Options.Day(_today);
        if (call.Problems.Count == 0 && !kb.Sites.Any(site => site.Products.Count > 0)) call.Note(
            "empty-shelf", "there are no products", "they are in a site's own file, `--site FILE`");
        if (call.Problems.Count > 0) return call.Report();
        var (plans, done) = (Plans(call, device!, serial), Done(call, device!, serial));
        if (plans is null || done is null) return ExitCode.BadInput;
        if (call.Problems.Count > 0 || AskOrNote(call, () => Dossier.Of(kb, device!, serial) with
        {
            Plans = plans,
            Done = done
        }) is not { } dossier) return call.Report();

        var text = Text(dossier, today, call.Has(_markdown));
        if (call.Parsed.GetValue(_out) is { } path) return call.Save(path, () => WholeFile.Replace(path, text), $"{path}: written");
        call.Stdout.Write(text);
        return ExitCode.Done;
    }

    private static string Text(Dossier dossier, CalendarDate? today, bool markdown)
    {
        using var text = new StringWriter();
        var tool = typeof(CommandLine).Assembly.GetName().Version!.ToString(3);
        if (markdown) new DossierMarkdown(text).Write(dossier, tool, today);
        else JsonDocuments.Write(text, json => new DossierJson(json, NamesOf(dossier.KnowledgeBase)).Write(dossier, tool, today));
        return text.ToString();
    }

    /// <summary>The plans; null where one cannot be read, which has been written then.</summary>
    private DossierPlan[]? Plans(Call call, DeviceId device, SerialNumber? serial)
    {
        var plans = new List<DossierPlan>();
        var faults = new List<Diagnostic>();
        foreach (var path in call.Parsed.GetValue(_plans) ?? [])
        {
            if (RecordedFile.Read(path, faults, out var text) is not { } plan) continue;
            if (plan.Kind != RecordedKind.Plan) Wrong(call, "no-plan", $"`{path}` is a dossier, no plan", "plan");
            else if (plan.Device != device) Wrong(call, "other-device", $"`{path}` is of `{plan.Device}`, not of `{device}`", "plan");
            else if (IsOther(serial, plan.Serial)) Wrong(call, "other-serial", $"`{path}` is of serial number `{plan.Serial}`, not of `{serial}`", "plan");
            plans.Add(new(Path.GetFileName(path), plan, text));
        }

        call.Stderr.Write(DiagnosticText.Render(faults));
        return faults.Count > 0 ? null : plans.ToArray();
    }

    private DossierDone[]? Done(Call call, DeviceId device, SerialNumber? serial)
    {
        var all = new List<DossierDone>();
        var isWhole = true;
        foreach (var path in call.Parsed.GetValue(_done) ?? [])
        {
            var record = DoneFile.Read(path, call.Stderr);
            isWhole &= record is not null;
            if (record is null) continue;
            if (record.Device != device) Wrong(call, "other-device", $"`{path}` is of `{record.Device}`, not of `{device}`", "done");
            else if (IsOther(serial, record.Serial)) Wrong(call, "other-serial", $"`{path}` is of serial number `{record.Serial}`, not of `{serial}`", "done");
            all.Add(new(Path.GetFileName(path), record));
        }

        return isWhole ? all.ToArray() : null;
    }

    private int Verify(Call call, KnowledgeBase kb, string path)
    {
        foreach (var option in new Option[] { _device, _serial, _plans, _done, _out, _markdown, _today }.Where(option => call.Has(option)))
            Wrong(call, "verify-alone", $"`{option.Name}` does not go with `--verify`", option.Name[2..]);
        if (call.Problems.Count > 0) return call.Report();
        var faults = new List<Diagnostic>();
        var file = RecordedFile.Read(path, faults);
        if (file is { Kind: not RecordedKind.Dossier }) faults.Add(new("no-dossier", "this is a plan, no dossier",
            "plans are asked again by `compat review BASE --plans DIR`", path, null));
        var check = faults.Count > 0 || file is null ? null : AskOrNote(call, () => DossierCheck.Of(file, kb, faults));
        call.Stderr.Write(DiagnosticText.Render(faults));
        if (call.Problems.Count > 0) return call.Report();
        if (check is null || faults.Count > 0) return ExitCode.BadInput;
        new DossierCheckText(call.Stdout, NamesOf(kb), Places).Write(check);
        return check.Holds ? ExitCode.Done : ExitCode.NotAllowed;
    }

    private static bool IsOther(SerialNumber? serial, SerialNumber? other) => serial is { } one && other is { } two && one != two;

    private static void Wrong(Call call, string code, string message, string field) => call.Note(code, message, null, field);
}
