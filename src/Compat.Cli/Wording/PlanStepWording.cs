using Compat.Planning;

namespace Compat.Cli.Wording;

/// <summary>Says the steps of a plan.</summary>
public sealed class PlanStepWording(PlanSheet sheet, PlanWording words, Names names)
{
    /// <summary>What the step does, in one line.</summary>
    public string Line(PlanStep step) => step.Order switch
    {
        StepOrder.PowerOff => "Switch off, disconnect from the mains and the patient, let it cool",
        StepOrder.Protect => "Protect yourself and the room" + (step.Gloves.Count > 0 ? ": gloves of " + string.Join("; ", step.Gloves) : ""),
        StepOrder.TakeOffCovers => "Take off covers and single-use items, and discard them",
        StepOrder.DryWipe => "Take gel and loose soil off with a dry cloth: " + words.Parts(step.Parts),
        StepOrder.Clean => $"Clean with {Product(step)}: {words.Parts(step.Parts)}",
        StepOrder.TakeCleanerOff => $"Take {Product(step)} off: {words.Parts(step.Parts)}",
        StepOrder.Disinfect => $"{(step.OneStep ? "Clean and disinfect in one step" : "Disinfect")} with {Product(step)}: {words.Parts(step.Parts)}",
        StepOrder.TakeDisinfectantOff => $"Take {Product(step)} off: {words.Parts(step.Parts)}",
        StepOrder.Dry => "Dry" + (step.BeforePower is { } wait ? $", and wait {FigureWording.Duration(wait)} before power" : ", and no power before it is dry"),
        StepOrder.Inspect => "Inspect " + words.Parts(step.Parts),
        StepOrder.CheckFunction => "Check that it does what it is for",
        StepOrder.Store => "Store it clean, dry and covered",
        _ => "Label it: what was done, what was not, date, initials",
    };

    /// <summary>What goes with the step, a line each.</summary>
    public IEnumerable<string> Details(PlanStep step)
    {
        if (step.Setting is { } setting) foreach (var line in Of(setting, step)) yield return line;
        if (step.Setting is not null && step.Gloves.Count > 0) yield return "gloves: " + string.Join("; ", step.Gloves);
        foreach (var duty in step.Duties) yield return DutyWording.Of(duty.Duty, names) + (step.Parts.Count == duty.Parts.Count ? "" : $" [{words.Parts(duty.Parts)}]");
        if (step.Order == StepOrder.Protect) foreach (var line in Protecting(step)) yield return line;
        foreach (var hazard in step.Hazards.Where(one => one.Where != MeetingPlace.FormerResidue)) yield return Of(hazard);
        foreach (var note in step.AtOtherStrengths) yield return $"only at other strengths than here ({MixingWording.Strengths(note.Found.Hazard, names)}), with {words.Product(note.Other!)}: {string.Join(", ", note.Found.Hazard.Effects.Select(MixingWording.Of))}";
        var former = step.Hazards.Where(one => one.Where == MeetingPlace.FormerResidue).Select(one => one.Other!).Distinct().ToArray();
        if (former.Length > 0) yield return $"never onto what was left by {string.Join(", ", former.Select(id => words.Product(id)))}: take that off with water first";
        foreach (var look in step.LookFor) yield return $"{PlanWording.Damage(look.Damage)} [{words.Parts(look.Parts)}]";
        foreach (var check in step.Checks) yield return $"{words.Part(check.Key)}: {check.Value}";
    }

    private static IEnumerable<string> Of(StepSetting setting, PlanStep step)
    {
        if (step.Dilute) yield return $"mix {FigureWording.Number(decimal.Round(setting.Dilution * 1000m, 6))}\u00a0mL with water, made up to 1\u00a0L ({FigureWording.Dilution(Interval.Exactly(setting.Dilution))})";
        yield return $"by {Words.Of(setting.Method)}" + (step.Cloth is { } cloth ? $", cloth of {cloth}" : "");
        if (setting.ContactTime > 0m)
        {
            var time = FigureWording.Duration(setting.ContactTime);
            yield return setting.Reached switch
            {
                ContactTimeReached.ByItself when setting.Method >= ApplicationMethod.Rinse => $"leave it in for at least {time}",
                ContactTimeReached.ByItself => $"keep visibly wet for {time}",
                ContactTimeReached.WipeAgain => $"keep visibly wet for {time}, wipe again as often as it takes",
                _ => $"keep visibly wet for {time}: time it",
            };
        }

        if (setting.ExposureTime.Upper is { } last && last != Interval.WithoutEnd) yield return $"off the part {(setting.ExposureTime.UpperIncluded ? "by" : "before")} {FigureWording.Duration(last)} after first wetting, re-wetting included";
        if (setting.MeasureTemperature) yield return $"at {FigureWording.Temperature(setting.Temperature)}: measure it";
    }

    private string Of(StepHazard hazard)
    {
        var record = hazard.Found.Hazard;
        var other = hazard.Other is { } id ? words.Product(id) : record.WithSoil is { } soil ? Words.Of(soil) : MixingWording.Other(record);
        var place = hazard.Where switch
        {
            MeetingPlace.Part => "on the part",
            MeetingPlace.Soil => "on the part: clean it off first",
            _ => "on a cloth, a glove, in a bucket",
        };
        var separated = record.SeparatedBy.Count == 0 ? "" : "; what separates them: " + string.Join(", ", record.SeparatedBy.Select(MixingWording.Of));
        return $"{MixingWording.Of(record.Severity).ToLowerInvariant()} with {other} {place}: {string.Join(", ", record.Effects.Select(MixingWording.Of))}{separated}";
    }

    /// <summary>A line for each thing to protect from and the products that ask it; what all of them ask comes first and names none.</summary>
    private IEnumerable<string> Protecting(PlanStep step)
    {
        var used = sheet.Steps.Where(one => one.Product is not null && one.Setting is not null).GroupBy(one => one.Product!).Select(same => (Name: words.Product(same.Key), same.First().Protection)).ToArray();
        var all = string.Join(", ", used.Select(one => one.Name));
        foreach (var (name, text) in Aspects)
        {
            var said = step.Protection.Select(record => (Text: text(record), For: string.Join(", ", used.Where(one => one.Protection.Contains(record)).Select(one => one.Name))))
                .Where(one => one.Text is not null).GroupBy(one => one.For).OrderByDescending(same => same.Key == all);
            foreach (var same in said)
                yield return name + (same.Key == all ? "" : $" [{same.Key}]") + ": " + string.Join(" ", same.Select(one => one.Text!.EndsWith('.') ? one.Text : one.Text + ".").Distinct());
        }
    }

    private static readonly (string Name, Func<Protection, string?> Of)[] Aspects =
    [
        ("gloves that do not hold", one => one.GlovesFail.Count > 0 ? string.Join("; ", one.GlovesFail) : null),
        ("not for", one => one.NotFor),
        ("eyes", one => one.Eyes),
        ("breathing", one => one.Breathing),
        ("air", one => one.Ventilation),
        ("fire", one => one.Fire),
        ("oxygen", one => one.Oxygen),
        ("equipment under power", one => one.Energised),
        ("disposal", one => one.Disposal),
    ];

    private string Product(PlanStep step) => words.Product(step.Product!);

    /// <summary>Whether the occasion adds something, in words.</summary>
    public IReadOnlyList<string> Adds => sheet.Occasion?.Adds ?? [];
}
