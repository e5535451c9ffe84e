using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Cards;

/// <summary>Says the steps of a plan as a card does: what to use on which parts, how, how long wet, and what follows.</summary>
internal sealed class UseLines(CardNames words, NeverList never, Names names)
{
    /// <summary>The lines of the steps, in working order.</summary>
    public IEnumerable<CardLine> Of(IReadOnlyList<PlanStep> steps)
    {
        if (steps.Count == 0) yield break;
        yield return new("First:", string.Join(" ", steps.Where(step => step.Order < StepOrder.Clean).Select(Before)));
        foreach (var step in steps.Where(step => step.Order is >= StepOrder.Clean and <= StepOrder.TakeDisinfectantOff))
        {
            if (step.Order is StepOrder.TakeCleanerOff or StepOrder.TakeDisinfectantOff)
            {
                var duties = Duties(step).ToArray();
                yield return new($"Take {words.Product(step.Product!)} off:", (duties.All(duty => duty.NamesParts) ? "" : words.Parts(step.Parts) + ": ") + Joined(duties));
                continue;
            }

            yield return new($"{(step.Order == StepOrder.Clean ? "Clean" : step.OneStep ? "Clean and disinfect in one step" : "Disinfect")} with {words.Product(step.Product!)}:", words.Parts(step.Parts));
            foreach (var detail in Details(step)) yield return new("", detail, IsDetail: true);
        }

        var last = steps.Where(step => step.Order == StepOrder.Dry).Select(Drying);
        yield return new("Last:", string.Join(" ", last.Append("Look it over, check that it works, label it: done, not done, date, initials.")));
    }

    private string Before(PlanStep step) => step.Order switch
    {
        StepOrder.PowerOff => "Switch off, unplug, take it off the patient, let it cool.",
        StepOrder.Protect => "Protect yourself as the label says" + (step.Gloves.Count > 0 ? $"; gloves of {string.Join(" or ", step.Gloves)}." : "."),
        StepOrder.TakeOffCovers => "Discard covers and single-use items.",
        _ => $"Take gel and loose soil off with a dry cloth: {words.Parts(step.Parts)}.",
    };

    private string Drying(PlanStep step)
    {
        var ways = Joined(Duties(step));
        return $"{(ways.Length == 0 ? "Dry" : char.ToUpperInvariant(ways[0]) + ways[1..])}; {(step.BeforePower is { } wait ? $"no power for {FigureWording.Duration(wait)}." : "no power before it is dry.")}";
    }

    private IEnumerable<string> Details(PlanStep step)
    {
        if (step.Setting is { } setting) yield return string.Join("; ", How(setting, step));
        var duties = Joined(Duties(step));
        if (duties.Length > 0) yield return duties;
        var former = step.Hazards.Where(hazard => hazard.Where == MeetingPlace.FormerResidue && !IsNever(step.Product!, hazard.Other!)).Select(hazard => words.Product(hazard.Other!)).Distinct().ToArray();
        if (former.Length > 0) yield return $"never onto what is left of {string.Join(", ", former)}: take that off with water first";
    }

    /// <summary>Whether two stand among what never meets, residue included, so that it need not be said twice.</summary>
    private bool IsNever(ProductId one, ProductId other) => never.NeverTogether.Any(pair => (pair.One == one && pair.Other == other) || (pair.One == other && pair.Other == one));

    /// <summary>What accompanies a step. What can be kept to on every part is said of every part, the strictest figure of all; only ways that differ name their parts.</summary>
    private IEnumerable<(string Text, bool NamesParts)> Duties(PlanStep step)
    {
        var off = step.Duties.Where(duty => duty.Duty.Kind == DutyKind.KeepOff).SelectMany(duty => duty.Duty.Parts).Distinct().Select(names.PartName).ToArray();
        if (off.Length > 0) yield return ("keep it off " + string.Join(", ", off), false);
        var takesOff = step.Order is StepOrder.TakeCleanerOff or StepOrder.TakeDisinfectantOff;
        var said = step.Duties.Where(duty => duty.Duty.Kind is not DutyKind.KeepOff).GroupBy(duty => DutyWording.Of(duty.Duty with { Within = null }, names)).Select(group =>
        {
            var duty = group.First().Duty with { Within = group.Min(one => one.Duty.Within) };
            var parts = group.SelectMany(one => one.Parts).Distinct().ToArray();
            var text = DutyWording.Of(duty, names);
            return (Parts: duty.Ways.Count > 0 && step.Parts.Except(parts).Any() ? words.Parts(parts) : "", Text: takesOff && duty.Kind == DutyKind.TakeOff ? text[DutyWording.TakeItOff.Length..] : text);
        });
        foreach (var same in said.GroupBy(one => one.Parts, one => one.Text))
            yield return same.Key.Length == 0 ? (string.Join("; ", same), false) : ($"{same.Key}: {string.Join(", and ", same)}", true);
    }

    private static string Joined(IEnumerable<(string Text, bool NamesParts)> duties) => string.Join("; ", duties.Select(duty => duty.Text));

    private static IEnumerable<string> How(StepSetting setting, PlanStep step)
    {
        if (step.Dilute) yield return $"mix {FigureWording.Number(decimal.Round(setting.Dilution * 1000m, 3))}\u00a0mL with water, made up to 1\u00a0L";
        yield return Method(setting.Method) + (step.Cloth is { } cloth ? $" (cloth of {cloth})" : "");
        if (setting.ContactTime > 0m)
        {
            var time = FigureWording.Duration(setting.ContactTime);
            yield return setting.Reached switch
            {
                ContactTimeReached.ByItself when setting.Method >= ApplicationMethod.Rinse => $"leave it in for {time} or more",
                ContactTimeReached.ByItself => $"keep visibly wet for {time}",
                ContactTimeReached.WipeAgain => $"keep visibly wet for {time}: wipe again as often as it takes",
                _ => $"keep visibly wet for {time}: time it",
            };
        }

        if (setting.ExposureTime.Upper is { } last && last != Interval.WithoutEnd) yield return $"off again {(setting.ExposureTime.UpperIncluded ? "by" : "before")} {FigureWording.Duration(last)} after first wetting";
        if (setting.MeasureTemperature) yield return $"at {FigureWording.Temperature(setting.Temperature)}: measure it";
    }

    private static string Method(ApplicationMethod method) => method switch
    {
        ApplicationMethod.DampWipe => "wipe damp, no drop comes out of the cloth",
        ApplicationMethod.WetWipe => "wipe wet, nothing runs off",
        ApplicationMethod.Spray => "spray it",
        ApplicationMethod.Rinse => "rinse with it",
        ApplicationMethod.Immerse => "soak in it",
        _ => "by " + Words.Of(method).Replace('-', ' '),
    };
}
