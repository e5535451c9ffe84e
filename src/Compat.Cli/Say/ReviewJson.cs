using System.Text.Json;
using Compat.Curation.Recorded;
using Compat.Curation.Reviewing;

namespace Compat.Cli.Say;

/// <summary>Writes what a review found as <c>schemas/review.schema.json</c> describes.</summary>
internal sealed class ReviewJson(Utf8JsonWriter json, ReviewCall call, Names names)
{
    public void Write(ReviewReport report)
    {
        json.WriteStartObject();
        json.WriteString("compared", call.Title);
        json.WriteNumber("pairs", report.Compared);
        json.WriteBoolean("loosened", report.IsLoosened);
        if (call.Stale is { } stale)
        {
            json.WriteNumber("plans", call.Plans);
            json.WriteList("stalePlans", stale, Write);
        }

        json.WriteList("groups", report.Groups, Write);
        json.WriteList("edits", report.Edits, Write);
        json.WriteStringList("contradictions", report.Contradictions.Select(finding => finding.Message));
        json.WriteStringList("brokenStandingRules", report.BrokenStandingRules.Select(finding => finding.Message));
        json.WriteEndObject();
    }

    private void Write(ReviewGroup group)
    {
        json.WriteStartObject();
        json.WriteString("kind", Words.Of(group.Kind));
        if (group.Cause is { } cause)
        {
            json.WritePropertyName("cause");
            Write(cause);
        }

        json.WriteList("answers", group.Answers, Write);
        json.WriteList("facts", group.Facts, fact =>
        {
            json.WriteStartObject();
            json.WriteString("text", fact.Text);
            if (fact.Evidence is { } weight) json.WriteString("evidence", Words.Of(weight));
            if (fact.About is { } about) json.WriteString("about", Words.Of(about));
            json.WriteList("reaches", fact.Reaches, place =>
            {
                json.WriteStartObject();
                json.WriteString("subject", place.Subject);
                if (place.With is { } with) json.WriteString("with", with);
                if (place.Part is { } part) json.WriteString("part", part);
                json.WriteEndObject();
            });
            json.WriteEndObject();
        });
        json.WriteEndObject();
    }

    private void Write(StalePlan plan)
    {
        json.WriteStartObject();
        json.WriteString("file", plan.Plan.Path);
        json.WriteString("device", plan.Plan.Device.Value);
        json.WriteBoolean("goesStale", plan.GoesStale);
        json.WriteList("answers", plan.Answers, stale =>
        {
            var difference = stale.Difference;
            json.WriteStartObject();
            json.WriteString("standing", Words.Of(difference.Standing));
            if (difference.Recorded.Step is { } step) json.WriteNumber("step", step);
            json.WriteString("part", difference.Recorded.Question.DevicePart!.Value);
            if (difference.Recorded.Question.Product is { } product) json.WriteString("product", product.Value);
            json.WriteString("from", Words.Of(difference.Recorded.Verdict));
            if (difference.Present is { } now) json.WriteString("to", Words.Of(now.Verdict));
            json.WriteStringList("changes", StaleWords.Changes(difference, names));
            json.WriteList("rules", difference.Grounds, Write);
            json.WriteList("causes", stale.Causes, Write);
            json.WriteBoolean("staleInBase", stale.WasStale);
            json.WriteEndObject();
        });
        json.WriteEndObject();
    }

    private void Write(Ground ground)
    {
        json.WriteStartObject();
        json.WriteString("record", Words.Of(ground.Kind));
        json.WriteString("id", ground.Id);
        json.WriteBoolean("decidesNow", ground.IsNow);
        if (call.Where(ground) is { } where) json.WriteString("where", where);
        json.WriteEndObject();
    }

    private void Write(RecordEdit edit)
    {
        json.WriteStartObject();
        json.WriteString("record", edit.CalledAs ?? Words.Of(edit.Kind));
        json.WriteString("id", edit.Id);
        json.WriteString("action", Words.Of(edit.Action));
        if (edit.FormerId is { } former) json.WriteString("formerId", former);
        json.WriteBoolean("wordingOnly", edit.IsWording);
        json.WriteList("fields", call.Places.FieldsOf(edit), field =>
        {
            json.WriteStartObject();
            json.WriteString("field", field.Field);
            if (field.Before is { } before) json.WriteString("before", before);
            if (field.After is { } after) json.WriteString("after", after);
            json.WriteEndObject();
        });
        if (call.Places.Of(edit) is { } place)
        {
            json.WriteString("file", place.Source.Path);
            json.WriteNumber("line", place.Position.Line);
            json.WriteNumber("column", place.Position.Column);
        }

        json.WriteEndObject();
    }

    private void Write(AnswerChange change)
    {
        json.WriteStartObject();
        json.WriteString("subjectKind", Words.Of(change.SubjectKind));
        json.WriteString("subject", change.Subject);
        if (change.Serial is { } serial) json.WriteString("serial", serial.ToString());
        json.WriteString("agent", change.Agent.Value);
        if (!change.IsNewSubject && !change.IsNewAgent && !change.IsInAnotherUnit) json.WriteString("from", Words.Of(change.From));
        json.WriteString("to", Words.Of(change.To));
        json.WriteStringList("methods", change.Methods.Methods.Select(Words.Of));
        json.WriteString("box", ReviewCall.At(change));
        json.WriteStringList("decidedBefore", change.DecidedBefore.Select(id => id.Value));
        json.WriteStringList("decidedAfter", change.DecidedAfter.Select(id => id.Value));
        if (change.Prevented is { } prevented) json.WriteString("prevented", Words.Of(prevented));
        if (change.Prevents is { } prevents) json.WriteString("prevents", Words.Of(prevents));
        json.WriteList("setAside", change.SetAside, one =>
        {
            json.WriteStartObject();
            json.WriteString("rule", one.Rule.Value);
            json.WriteString("by", one.By.Value);
            json.WriteEndObject();
        });
        json.WriteString("evidenceBefore", Words.Of(change.EvidenceBefore));
        json.WriteString("evidenceAfter", Words.Of(change.EvidenceAfter));
        json.WriteStringList("dutiesDropped", change.DutiesDropped.Select(duty => DutyWording.Of(duty, names).Unjoined()));
        json.WriteStringList("dutiesAdded", change.DutiesAdded.Select(duty => DutyWording.Of(duty, names).Unjoined()));
        json.WriteString("ask", call.Ask(change));
        json.WriteEndObject();
    }
}
