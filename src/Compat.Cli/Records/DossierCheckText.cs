using Compat.Cli.Reviews;
using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Recorded;

namespace Compat.Cli.Records;

/// <summary>Says what of a dossier no longer holds.</summary>
internal sealed class DossierCheckText(TextWriter output, Names names, SourceMap? places)
{
    /// <summary>All of it, what tightened first; the last line says it in short.</summary>
    public void Write(DossierCheck check)
    {
        foreach (var state in Changed(check)) Line(state);
        foreach (var need in check.Needs) Line(need.Was is null ? $"new since: `{need.Part}`: {Of(need.Now)}" : $"another need: `{need.Part}`: {Of(need.Was)} -> {Of(need.Now)}");
        Write(check.File, check.Answers);
        foreach (var missing in check.Missing.OrderBy(missing => missing.IsNew)) Line($"{Of(missing)}: `{missing.Part}` with `{missing.Product}`");
        foreach (var (plan, answers) in check.Plans) Write(plan, answers);
        var all = check.Answers.Concat(check.Plans.SelectMany(plan => plan.Answers)).ToArray();
        var counts = all.GroupBy(one => one.Standing).OrderBy(group => group.Key).Select(group => $"{StaleWords.Of(group.Key)}: {ReviewWords.Count(group.Count(), "answer")}")
            .Concat(check.Needs.Count(need => need.Was is not null) is > 0 and var others ? [$"other needs: {others}"] : [])
            .Concat(check.Missing.GroupBy(missing => missing.IsNew).OrderBy(group => group.Key).Select(group => $"{Of(group.First())}: {ReviewWords.Count(group.Count(), "answer")}"));
        Line($"{(check.Holds ? "all of it holds" : "not all of it holds")}: {string.Join(", ", counts)}");
    }

    private void Write(RecordedFile file, IReadOnlyList<AnswerDifference> answers)
    {
        foreach (var difference in answers.Where(one => one.Standing != Standing.Holds))
        {
            Line($"{(file.Kind == RecordedKind.Plan ? file.Path + ": " : "")}{StaleWords.Of(difference.Standing)}: {StaleWords.Of(difference)}");
            foreach (var change in StaleWords.Changes(difference, names)) Line("  " + change);
            foreach (var ground in difference.Grounds) Line("  " + StaleWords.Of(ground, places?.Find(StaleWords.PlaceOf(ground)) is { } place ? DiagnosticText.Where(place) : null));
        }
    }

    /// <summary>The states of the data that are others than they were.</summary>
    private static IEnumerable<string> Changed(DossierCheck check)
    {
        foreach (var was in check.File.Identity)
        {
            if (check.Identity.FirstOrDefault(state => state.Name == was.Name) is not { } now) yield return $"other data: `{was.Name}` is not there now";
            else if (now != was) yield return $"other data: {EvidenceWording.Of(was)} -> {EvidenceWording.Of(now)}";
        }

        foreach (var now in check.Identity.Where(state => !check.File.Identity.Any(was => was.Name == state.Name))) yield return $"other data: `{now.Name}` was not there then";
    }

    private static string Of(MissingAnswer missing) => missing.IsNew ? "new since" : "not in the file";

    private static string Of(RecordedNeed? need) =>
        need is null ? "no such part now" : need.KeptDry ? "nothing, kept dry" : need.Level is { } level ? Words.Of(level) : "level not on record";

    private void Line(string text) => output.Write(Printable.Of(text) + "\n");
}
