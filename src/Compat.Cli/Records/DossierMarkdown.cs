using Compat.Cli.Reviews;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Curation.Recorded;
using Compat.Serialization;

namespace Compat.Cli.Records;

/// <summary>Writes a dossier for reading and printing. Whatever comes from data is escaped.</summary>
internal sealed class DossierMarkdown(TextWriter output)
{
    /// <summary>The whole file.</summary>
    /// <param name="dossier">What is in it.</param>
    /// <param name="tool">The version of the program.</param>
    /// <param name="today">The day it was asked for; null where none was said.</param>
    public void Write(Dossier dossier, string tool, CalendarDate? today)
    {
        var names = new Names(dossier.KnowledgeBase);
        output.Write($"# Dossier of {Markdown.Plain(dossier.Device.Name)} ({Markdown.Code(dossier.Device.Id.Value)}{(dossier.Serial is { } serial ? ", serial number " + Markdown.Plain(serial.ToString()) : "")})\n\n");
        if (today is { } day) Item($"as of {day}");
        Item($"made by compat {tool}");
        foreach (var state in dossier.KnowledgeBase.Identity) Item($"{state.Name}, version {state.Version}, content {state.Hash}");
        List("Editions of its instructions", dossier.Device.Instructions, edition =>
            $"`{edition.Id}`{(edition.Dated is { } dated ? $" of {dated}" : "")}{(edition.OnlyListed ? ", only what it lists may be used" : "")}: {(dossier.Speaking.Contains(edition.Id) ? "speaks of this device" : "does not speak of this device")}", "none was seen");
        Table("Parts", ["part", "type", "needs"], dossier.Parts.Select(part => new[] { $"`{part.Part.Id}`", string.Join(" or ", part.Part.OneOfTypes.Select(id => $"`{id}`")), Need(part) }));
        Table("Answers", ["part", "product", "answer", "decided by", "rests on"], dossier.Answers.Select(Row));
        List("Rules", dossier.Rules, EvidenceWording.Of, "none");
        List("Rules for people", dossier.PersonRules, rule => $"`{rule.Id}`: {rule.Harm}. {rule.Why}", "none");
        List("Claims", dossier.Claims, claim => $"`{claim.Id}`{(claim.Reaches is { } level ? $": reaches {NeedWording.Of(level)}" : "")}{(claim.Registration is { } registration ? ", " + TestWording.Of(registration) : claim.ShownBy.Count > 0 ? ", shown by " + TestWording.Of(claim, names) : "")}", "none");
        List("Sources", dossier.Sources, source => $"`{source.Id}`: {EvidenceWording.Of(source)}", "none");
        List("Plans", dossier.Plans, plan => $"`{plan.File}`: {ReviewWords.Count(plan.Plan.Answers.Count, "answer")}, on {string.Join("; ", plan.Plan.Identity.Select(EvidenceWording.Of))}", "none");
        foreach (var done in dossier.Done)
            Table($"Done on {done.Record.Date} ({done.File})", ["step", "done", "product", "initials"], done.Record.Steps.Select(step => new[] { $"{step.Number}", step.Done ? "yes" : "no", step.Product is { } product ? $"`{product}`" : "", step.Initials }));
        List("Cautions", VerdictWording.Cautions, caution => caution, "");
    }

    private static string[] Row(Answer answer) =>
    [
        $"`{answer.Question.DevicePart}`",
        $"`{answer.Question.Product}`",
        ReviewWords.Of(answer.Verdict),
        string.Join(", ", Deciders.Of(answer)),
        string.Join(", ", answer.DecidedBy.Select(rule => $"`{rule.Id}`").Concat(answer.Kill?.Claims.Select(claim => $"`{claim.Id}`") ?? []).Concat(answer.People?.Forbidding.Select(id => $"`{id}`") ?? [])),
    ];

    private static string Need(DossierPart part) =>
        part.NeedsNothing ? "nothing, it is kept dry" : part.Need.Level is { } level ? NeedWording.Of(level) + (part.Need.DecidedBy is { } who ? $", decided by {who}" : "") : "what touches it is not on record";

    private void List<T>(string heading, IReadOnlyCollection<T> items, Func<T, string> text, string none)
    {
        output.Write($"\n## {Markdown.Text(heading)}\n\n");
        foreach (var item in items) Item(text(item));
        if (items.Count == 0) Item(none);
    }

    private void Table(string heading, string[] columns, IEnumerable<string[]> rows)
    {
        output.Write($"\n## {Markdown.Text(heading)}\n\n| {string.Join(" | ", columns)} |\n|{string.Concat(columns.Select(_ => " --- |"))}\n");
        foreach (var row in rows) output.Write($"| {string.Join(" | ", row.Select(cell => Markdown.Text(cell.Replace('\u00a0', ' '))))} |\n");
    }

    private void Item(string text) => output.Write($"- {Markdown.Text(text.Replace('\u00a0', ' '))}\n");
}
