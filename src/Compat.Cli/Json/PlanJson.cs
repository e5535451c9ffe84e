using System.Text.Json;
using Compat.Curation.Recorded;

namespace Compat.Cli.Json;

/// <summary>Writes a plan as <c>schemas/plan.schema.json</c> describes: each part and step with the question it was judged by.</summary>
internal sealed class PlanJson(Utf8JsonWriter json, Names names, KnowledgeBase kb)
{
    private readonly RecordJson _records = new(json, new EnglishTexts(names));

    /// <summary>The whole plan.</summary>
    public void Write(PlanSheet sheet, StatusDeclaration? declaration)
    {
        var words = new PlanWording(sheet, names);
        var steps = new PlanStepWording(sheet, words, names);
        json.WriteStartObject();
        json.WriteString("format", RecordedFile.PlanFormat);
        Asked(sheet.Question);
        json.WriteBoolean("whole", sheet.IsWhole);
        json.WriteBoolean("hold", sheet.Hold);
        json.WriteBoolean("prions", sheet.Prions);
        if (sheet.Prions) json.WriteString("text", KillWording.Prions);
        json.WriteNumber("maxProducts", sheet.MaxProducts);
        json.WriteStringList("products", sheet.Products.Select(id => id.Value));
        json.WriteList("parts", sheet.Parts, part => Part(part, words));
        json.WriteList("steps", sheet.Steps, step => Step(step, steps));
        json.WriteStringList("adds", steps.Adds);
        json.WriteStringList("papers", sheet.Papers.Select(paper => Words.Of(paper)));
        if (sheet.Fewer is { } fewer) Fewer(fewer, words.Fewer()!);
        if (declaration is not null) Declaration(declaration);
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(sheet.Identity);
        json.WriteEndObject();
    }

    private void Asked(PlanQuestion question)
    {
        json.WriteString("device", question.Device.Value);
        if (question.Serial is { } serial) json.WriteString("serial", serial.ToString());
        if (question.Occasion is { } occasion) json.WriteString("occasion", occasion.Value);
        if (question.Level is { } level) json.WriteString("level", Words.Of(level));
        json.WriteStringList("against", question.Against.Select(target => target.ToString()));
        if (question.Soil is { } soil) json.WriteStringList("soil", soil.Select(one => Words.Of(one)));
        json.WriteBoolean("occupied", question.Occupied);
        if (question.Cloth is { } cloth) json.WriteString("cloth", cloth);
        json.WriteStringList("accept", question.Accept.Select(one => Words.Of(one)));
        if (question.UsesPerDay is { } daily) json.WriteNumber("usesPerDay", daily);
    }

    private void Part(PlannedPart part, PlanWording words)
    {
        json.WriteStartObject();
        json.WriteString("part", part.Part.Id.Value);
        json.WriteString("heading", Words.Of(part.Heading));
        json.WriteString("reason", Words.Of(part.Reason));
        if (part.Heading == PlanHeading.HarmsThePart) json.WriteString("verdict", Words.Of(Verdict.NotAllowed));
        _records.Question(part.Question);
        if (part.Need.Level is { } level) json.WriteString("level", Words.Of(level));
        json.WriteBoolean("keptDry", part.Need.KeptDry);
        json.WriteStringList("soil", part.Need.Soil.Select(one => Words.Of(one)));
        if (part.Cleaner is { } cleaner) json.WriteString("cleaner", cleaner.Value);
        if (part.Disinfectant is { } disinfectant) json.WriteString("disinfectant", disinfectant.Value);
        json.WriteStringList("notCovered", part.NotCovered.Select(one => one.Organism.Value).Distinct());
        json.WriteList("accepted", part.Accepted, _records.Damage);
        json.WriteList("closed", part.Closed, closed =>
        {
            json.WriteStartObject();
            json.WriteString("product", closed.Product.Value);
            json.WriteString("role", Words.Of(closed.Role));
            if (closed.Closure is { } closure)
            {
                json.WriteString("code", Words.Of(closure.Code));
                json.WriteStringList("ingredients", closure.Ingredients);
                json.WriteStringList("rules", closure.Rules.Select(id => id.Value));
                json.WriteStringList("claims", closure.Claims.Select(claim => claim.Id));
                if (closure.ContactTime is { } wet) json.WriteNumber("contactTimeSeconds", wet);
                if (closure.ExposureTime is { } exposureTime && exposureTime != Interval.WithoutEnd) json.WriteNumber("exposureTimeSeconds", exposureTime);
            }

            if (closed.Missing is { } missing) json.WriteString("missing", Words.Of(missing.Code));
            json.WriteEndObject();
        });
        json.WriteList("waysOut", part.WaysOut, way =>
        {
            json.WriteStartObject();
            json.WriteString("code", Words.Of(way.Code));
            if (way.Product is { } product) json.WriteString("product", product.Value);
            json.WriteStringList("rules", way.Rules.Select(id => id.Value));
            json.WriteStringList("opens", way.Opens.Select(id => id.Value));
            if (way.How is { } how) json.WriteString("how", how);
            json.WriteEndObject();
        });
        json.WriteList("budgets", part.Budgets, budget =>
        {
            json.WriteStartObject();
            json.WriteString("mechanism", Words.Of(budget.Mechanism));
            json.WriteNumber("runs", budget.Runs);
            json.WriteEndObject();
        });
        if (part.Runs is { } runs) json.WriteNumber("runs", runs);
        json.WriteStringList("text", words.Of(part).Select(Plain));
        json.WriteEndObject();
    }

    private void Step(PlanStep step, PlanStepWording words)
    {
        json.WriteStartObject();
        json.WriteNumber("number", step.Number);
        json.WriteString("order", Words.Of(step.Order));
        json.WriteStringList("parts", step.Parts.Select(id => id.Value));
        if (step.Product is { } product) json.WriteString("product", product.Value);
        if (step.Setting is { } setting)
        {
            json.WriteString("method", Words.Of(setting.Method));
            json.WriteInterval("dilution", Interval.Exactly(setting.Dilution), JsonWriting.UnitOf(Axis.Dilution));
            json.WriteNumber("contactTimeSeconds", setting.ContactTime);
            json.WriteString("contactTimeReached", Words.Of(setting.Reached));
            json.WriteInterval("exposureTime", setting.ExposureTime, JsonWriting.UnitOf(Axis.ExposureTime));
            json.WriteInterval("temperature", setting.Temperature, JsonWriting.UnitOf(Axis.Temperature));
            json.WriteBoolean("measureTemperature", setting.MeasureTemperature);
        }

        json.WriteBoolean("oneStep", step.OneStep);
        if (step.Cloth is { } cloth) json.WriteString("cloth", cloth);
        json.WriteStringList("gloves", step.Gloves);
        json.WriteList("duties", step.Duties, duty =>
        {
            json.WriteStartObject();
            json.WriteStringList("parts", duty.Parts.Select(id => id.Value));
            json.WritePropertyName("duty");
            _records.Duty(duty.Duty);
            json.WriteEndObject();
        });
        json.WriteStringList("protection", step.Protection.Select(one => one.Id.Value));
        json.WriteList("hazards", step.Hazards, Hazard);
        if (step.AtOtherStrengths.Count > 0) json.WriteList("atOtherStrengths", step.AtOtherStrengths, Hazard);
        if (step.BeforePower is { } wait) json.WriteNumber("beforePowerSeconds", wait);
        json.WriteList("answers", step.Answers, answer =>
        {
            json.WriteStartObject();
            json.WriteString("part", answer.Part.Value);
            // The uses are left out, so that the boxes say how many there may be: a limit that comes later is then seen.
            json.WriteRecorded(_records, RecordedAnswer.Of(kb.Ask(answer.Question with { Uses = null }), kb));
            json.WriteEndObject();
        });
        json.WriteString("text", Plain(words.Line(step)));
        json.WriteStringList("details", words.Details(step).Select(Plain));
        json.WriteEndObject();
    }

    private void Hazard(StepHazard hazard)
    {
        json.WriteStartObject();
        json.WriteString("hazard", hazard.Found.Hazard.Id.Value);
        json.WriteString("severity", Words.Of(hazard.Found.Hazard.Severity));
        json.WriteString("where", Words.Of(hazard.Where));
        if (hazard.Other is { } other) json.WriteString("other", other.Value);
        json.WriteEndObject();
    }

    private void Fewer(OneFewer fewer, string text)
    {
        json.WriteStartObject("oneFewer");
        json.WriteStringList("products", fewer.Products.Select(id => id.Value));
        json.WriteStringList("lost", fewer.Lost.Select(id => id.Value));
        json.WriteStringList("gained", fewer.Gained.Select(id => id.Value));
        json.WriteStringList("harsher", fewer.Harsher.Select(id => id.Value));
        json.WriteNumber("moreSteps", fewer.MoreSteps);
        json.WriteNumber("moreContactTimeSeconds", fewer.MoreContactTime);
        json.WriteString("text", Plain(text));
        json.WriteEndObject();
    }

    private void Declaration(StatusDeclaration declaration)
    {
        json.WriteStartObject("declaration");
        json.WriteBoolean("fromRecord", declaration.Record is not null);
        if (declaration.Record is { } record) json.WriteString("date", record.Date.ToString());
        json.WriteList("parts", declaration.Parts, part =>
        {
            json.WriteStartObject();
            json.WriteString("part", part.Part.Value);
            json.WriteString("status", Words.Of(part.Status));
            json.WriteEndObject();
        });
        json.WriteEndObject();
    }

    private static string Plain(string text) => text.Replace('\u00a0', ' ');
}
