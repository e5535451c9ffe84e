using System.Text.Json;
using Compat.Cli.Json;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Recorded;

namespace Compat.Cli.Say;

/// <summary>Writes a dossier for reading and printing. Whatever comes from data is escaped.</summary>
internal sealed class DossierMarkdown(TextWriter output)
{
    /// <param name="today">The day it was asked for; null where none was said.</param>
    public void Write(Dossier dossier, string tool, CalendarDate? today)
    {
        var names = new Names(dossier.KnowledgeBase);
        output.Write($"# Dossier of {Markdown.Plain(dossier.Device.Name)} "
            + $"({Markdown.Code(dossier.Device.Id.Value)}{(dossier.Serial is { } serial ? ", serial number " + Markdown.Plain(serial.ToString()) : "")})\n\n");
        if (today is { } day) Item($"as of {day}");
        Item($"made by compat {tool}");
        foreach (var state in dossier.KnowledgeBase.Identity) Item($"{state.Name}, version {state.Version}, content {state.Hash}");
        List("Editions of its instructions", dossier.Device.Instructions, edition =>
            $"`{edition.Id}`{(edition.Dated is { } dated ? $" of {dated}" : "")}{(edition.OnlyListed ? ", only what it lists may be used" : "")}: "
                + $"{(dossier.Speaking.Contains(edition.Id) ? "speaks of this device" : "does not speak of this device")}", "none was seen");
        Table("Parts", ["part", "type", "needs"], dossier.Parts.Select(part => new[] { $"`{part.Part.Id}`",
            string.Join(" or ", part.Part.OneOfTypes.Select(id => $"`{id}`")), Need(part) }));
        Table("Answers", ["part", "product", "answer", "decided by", "rests on"], dossier.Answers.Select(Row));
        List("Rules", dossier.Rules, EvidenceWording.Of, "none");
        List("Rules for people", dossier.PersonRules, rule => $"`{rule.Id}`: {rule.Harm}. {rule.Why}", "none");
        List("Claims", dossier.Claims, claim => $"`{claim.Id}`{(claim.Reaches is { } level ? $": reaches {NeedWording.Of(level)}" : "")}"
            + ShownBy(claim, names), "none");
        List("Sources", dossier.Sources, source => $"`{source.Id}`: {EvidenceWording.Of(source)}", "none");
        List("Plans", dossier.Plans, plan => $"`{plan.File}`: {English.Count(plan.Plan.Answers.Count, "answer")}, on "
            + $"{string.Join("; ", plan.Plan.Identity.Select(EvidenceWording.Of))}", "none");
        foreach (var done in dossier.Done)
            Table($"Done on {done.Record.Date} ({done.File})", ["step", "done", "product", "initials"],
                done.Record.Steps.Select(step => new[] { $"{step.Number}", step.Done ? "yes" : "no", step.Product is { } product ? $"`{product}`"
                : "", step.Initials }));
        List("Cautions", VerdictWording.Cautions, caution => caution, "");
    }

    private static string ShownBy(KillClaim claim, Names names) =>
        claim.Registration is { } registration ? ", " + TestWording.Of(registration)
            : claim.ShownBy.Count > 0 ? ", shown by " + TestWording.Of(claim, names) : "";

    private static string[] Row(Answer answer) =>
    [
        $"`{answer.Question.DevicePart}`",
        $"`{answer.Question.Product}`",
        ReviewWords.Of(answer.Verdict),
        string.Join(", ", Deciders.Of(answer)),
        string.Join(", ", answer.DecidedBy.Select(rule => $"`{rule.Id}`").Concat(answer.Kill?.Claims.Select(claim => $"`{claim.Id}`") ?? [])
            .Concat(answer.People?.Forbidding.Select(id => $"`{id}`") ?? [])),
    ];

    private static string Need(DossierPart part) =>
        part.NeedsNothing ? "nothing, it is kept dry" : part.Need.Level is { } level
            ? NeedWording.Of(level) + (part.Need.DecidedBy is { } who ? $", decided by {who}" : "") : "what touches it is not on record";

    private void List<T>(string heading, IReadOnlyCollection<T> items, Func<T, string> text, string none)
    {
        output.Write($"\n## {Markdown.Text(heading)}\n\n");
        foreach (var item in items) Item(text(item));
        if (items.Count == 0) Item(none);
    }

    private void Table(string heading, string[] columns, IEnumerable<string[]> rows)
    {
        output.Write($"\n## {Markdown.Text(heading)}\n\n");
        Markdown.Table(output, columns, rows.Select(row => row.Select(cell => Markdown.Text(cell.Unjoined()))));
    }

    private void Item(string text) => output.Write($"- {Markdown.Text(text.Unjoined())}\n");
}

/// <summary>Says what of a dossier no longer holds.</summary>
internal sealed class DossierCheckText(TextWriter output, Names names, SourceMap? places)
{
    /// <summary>All of it, what tightened first; the last line says it in short.</summary>
    public void Write(DossierCheck check)
    {
        foreach (var state in Changed(check)) Line(state);
        foreach (var need in check.Needs) Line(need.Was is null ? $"new since: `{need.Part}`: {Of(need.Now)}"
            : $"another need: `{need.Part}`: {Of(need.Was)} -> {Of(need.Now)}");
        Write(check.File, check.Answers);
        foreach (var missing in check.Missing.OrderBy(missing => missing.IsNew)) Line($"{Of(missing)}: `{missing.Part}` with `{missing.Product}`");
        foreach (var (plan, answers) in check.Plans) Write(plan, answers);
        var all = check.Answers.Concat(check.Plans.SelectMany(plan => plan.Answers)).ToArray();
        var counts = all.GroupBy(one => one.Standing).OrderBy(group => group.Key).Select(
            group => $"{StaleWords.Of(group.Key)}: {English.Count(group.Count(), "answer")}")
            .Concat(check.Needs.Count(need => need.Was is not null) is > 0 and var others ? [$"other needs: {others}"] : [])
            .Concat(check.Missing.GroupBy(missing => missing.IsNew).OrderBy(group => group.Key)
                .Select(group => $"{Of(group.First())}: {English.Count(group.Count(), "answer")}"));
        Line($"{(check.Holds ? "all of it holds" : "not all of it holds")}: {string.Join(", ", counts)}");
    }

    private void Write(RecordedFile file, IReadOnlyList<AnswerDifference> answers)
    {
        foreach (var difference in answers.Where(one => one.Standing != Standing.Holds))
        {
            Line($"{(file.Kind == RecordedKind.Plan ? file.Path + ": " : "")}{StaleWords.Of(difference.Standing)}: {StaleWords.Of(difference)}");
            foreach (var change in StaleWords.Changes(difference, names)) Line("  " + change);
            foreach (var ground in difference.Grounds) Line("  " + StaleWords.Of(ground, places?.Find(StaleWords.PlaceOf(ground)) is { } place
                ? DiagnosticText.Where(place) : null));
        }
    }

    private static IEnumerable<string> Changed(DossierCheck check)
    {
        foreach (var was in check.File.Identity)
        {
            if (check.Identity.FirstOrDefault(state => state.Name == was.Name) is not { } now) yield return $"other data: `{was.Name}` is not there now";
            else if (now != was) yield return $"other data: {EvidenceWording.Of(was)} -> {EvidenceWording.Of(now)}";
        }

        foreach (var now in check.Identity.Where(state => !check.File.Identity.Any(was =>
            was.Name == state.Name))) yield return $"other data: `{now.Name}` was not there then";
    }

    private static string Of(MissingAnswer missing) => missing.IsNew ? "new since" : "not in the file";

    private static string Of(RecordedNeed? need) =>
        need is null ? "no such part now" : need.KeptDry ? "nothing, kept dry" : need.Level is { } level ? Words.Of(level) : "level not on record";

    private void Line(string text) => output.Write(Printable.Of(text) + "\n");
}

/// <summary>Writes a dossier as <c>schemas/dossier.schema.json</c> describes: the same data give the same bytes.</summary>
internal sealed class DossierJson(Utf8JsonWriter json, Names names)
{
    private readonly RecordJson _records = new(json, new EnglishTexts(names));

    /// <param name="today">The day it was asked for; null where none was said.</param>
    public void Write(Dossier dossier, string tool, CalendarDate? today)
    {
        var whole = new WholeJson(json, new EnglishTexts(names), _records);
        json.WriteStartObject();
        json.WriteString("format", RecordedFile.DossierFormat);
        json.WriteString("tool", tool);
        if (today is { } day) json.WriteString("today", day.ToString());
        Device(dossier);
        json.WriteList("parts", dossier.Parts, part =>
        {
            json.WriteStartObject();
            json.WriteString("part", part.Part.Id.Value);
            if (part.Part.Name is { } name) json.WriteString("name", name);
            json.WriteStringList("types", part.Part.OneOfTypes.Select(id => id.Value));
            json.WriteBoolean("needsNothing", part.NeedsNothing);
            whole.Need(part.Need);
            json.WriteEndObject();
        });
        json.WriteList("answers", dossier.Answers, answer =>
        {
            json.WriteStartObject();
            json.WriteString("part", answer.Question.DevicePart!.Value);
            json.WriteRecorded(_records, RecordedAnswer.Of(answer, dossier.KnowledgeBase));
            json.WriteEndObject();
        });
        json.WriteList("rules", dossier.Rules, _records.Rule);
        json.WriteList("personRules", dossier.PersonRules, rule => _records.PersonRule(rule, null));
        json.WriteList("claims", dossier.Claims, whole.Claim);
        json.WriteList("sources", dossier.Sources, _records.Source);
        json.WriteList("plans", dossier.Plans, Plan);
        json.WriteList("records", dossier.Done, Done);
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(dossier.KnowledgeBase.Identity);
        json.WriteEndObject();
    }

    private void Device(Dossier dossier)
    {
        json.WriteStartObject("device");
        json.WriteString("id", dossier.Device.Id.Value);
        json.WriteString("name", dossier.Device.Name);
        if (dossier.Serial is { } serial) json.WriteString("serial", serial.ToString());
        if (dossier.Device.Note is { } note) json.WriteString("note", note);
        json.WriteList("instructions", dossier.Device.Instructions, edition => Edition(edition, dossier.Speaking.Contains(edition.Id)));
        json.WriteEndObject();
    }

    private void Edition(InstructionsEdition edition, bool speaks)
    {
        json.WriteStartObject();
        json.WriteString("edition", edition.Id.Value);
        if (edition.Dated is { } dated) json.WriteString("dated", dated.ToString());
        json.WriteStringList("serials", edition.Serials.Select(range => range.ToString()));
        json.WriteStringList("replaces", edition.Replaces.Select(id => id.Value));
        json.WriteBoolean("onlyListed", edition.OnlyListed);
        if (edition.Source is { } source) json.WriteString("source", source.Value);
        json.WriteBoolean("speaks", speaks);
        json.WriteEndObject();
    }

    private void Plan(DossierPlan plan)
    {
        json.WriteStartObject();
        json.WriteString("file", plan.File);
        json.WritePropertyName("plan");
        using (var document = JsonDocument.Parse(plan.Json)) document.RootElement.WriteTo(json);
        json.WriteEndObject();
    }

    private void Done(DossierDone done)
    {
        json.WriteStartObject();
        json.WriteString("file", done.File);
        json.WriteString("device", done.Record.Device.Value);
        if (done.Record.Serial is { } serial) json.WriteString("serial", serial.ToString());
        json.WriteString("date", done.Record.Date.ToString());
        json.WriteList("steps", done.Record.Steps, step =>
        {
            json.WriteStartObject();
            json.WriteNumber("step", step.Number);
            json.WriteBoolean("done", step.Done);
            json.WriteString("initials", step.Initials);
            if (step.Product is { } product) json.WriteString("product", product.Value);
            json.WriteEndObject();
        });
        json.WriteEndObject();
    }
}
