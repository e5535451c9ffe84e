using System.Diagnostics.CodeAnalysis;
using Compat.Validation;

namespace Compat.Planning;

/// <summary>What somebody wrote down of one step.</summary>
/// <param name="Number">The number of the step on the sheet.</param>
/// <param name="Done">Whether it was done.</param>
/// <param name="Initials">Who says so.</param>
/// <param name="Product">The product that was used; needed where the step on the sheet brings one.</param>
public sealed record DoneStep(int Number, bool Done, string Initials, ProductId? Product);

/// <summary>A record of what was done on a device, written by those who did it.</summary>
public sealed record DoneRecord
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>Its serial number; null where it was not written down.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The day.</summary>
    public required CalendarDate Date { get; init; }

    /// <summary>The steps.</summary>
    public IReadOnlyList<DoneStep> Steps { get; init => field = Frozen.Of(value); } = [];
}

/// <summary>What a declaration says of a part.</summary>
public enum PartStatus
{
    /// <summary>A blank: nobody wrote down what was done.</summary>
    Blank,

    /// <summary>Not decontaminated: kept dry, internal, not taken in, or nothing could be done.</summary>
    NotDecontaminated,

    /// <summary>A step was not done, or nobody signed for it.</summary>
    NotFully,

    /// <summary>Open surfaces were; the gap is not shown.</summary>
    OpenSurfaces,

    /// <summary>Every step with a product was done and signed.</summary>
    Decontaminated,
}

/// <summary>What a declaration says of a part.</summary>
/// <param name="Part">The part.</param>
/// <param name="Status">Its status.</param>
/// <param name="Steps">The steps with a product that concern it.</param>
public sealed record DeclaredPart(DevicePartId Part, PartStatus Status, IReadOnlyList<int> Steps);

/// <summary>The declaration of the decontamination status: with blanks, or filled from a record; never from the plan.</summary>
public sealed record StatusDeclaration
{
    /// <summary>The record it is filled from; null where it has blanks.</summary>
    public DoneRecord? Record { get; init; }

    /// <summary>The parts, in the order of the device.</summary>
    public IReadOnlyList<DeclaredPart> Parts { get; init; } = [];

    /// <summary>Makes the declaration, or says why a record does not go with the plan.</summary>
    /// <param name="sheet">The plan that the steps of the record are numbered by.</param>
    /// <param name="record">What was done; null for blanks.</param>
    /// <param name="declaration">The declaration, or null.</param>
    /// <param name="problems">All that is wrong; empty where nothing is.</param>
    /// <returns>Whether there is a declaration.</returns>
    public static bool TryMake(PlanSheet sheet, DoneRecord? record, [NotNullWhen(true)] out StatusDeclaration? declaration, out IReadOnlyList<Problem> problems)
    {
        problems = Given.Check((nameof(sheet), sheet));
        if (problems.Count == 0 && record is not null)
            problems = Unreadable(record) ? [Wrong("missing", "the record lacks its device, its steps or the initials of one")]
                : Check(sheet, record).ToArray();
        declaration = problems.Count > 0 ? null : new StatusDeclaration
        {
            Record = record,
            Parts = sheet.Parts.Select(part => Of(sheet, part, record)).ToArray(),
        };
        return declaration is not null;
    }

    private static bool Unreadable(DoneRecord record) => record.Device is null || record.Steps is null || record.Steps.Any(step => step?.Initials is null);

    private static IEnumerable<Problem> Check(PlanSheet sheet, DoneRecord record)
    {
        if (record.Device != sheet.Question.Device)
            yield return Wrong("done-device", $"the record is of `{record.Device}`, the plan of `{sheet.Question.Device}`");
        if (sheet.Question.Serial is { } serial && record.Serial is { } other && serial != other)
            yield return Wrong("done-serial", $"the record is of serial number `{other}`, the plan of `{serial}`");
        foreach (var twice in record.Steps.GroupBy(step => step.Number).Where(group => group.Count() > 1))
            yield return Wrong("done-twice", $"step {twice.Key} is written down twice");
        foreach (var step in record.Steps)
        {
            if (sheet.Steps.FirstOrDefault(one => one.Number == step.Number) is not { } planned)
                yield return Wrong("done-step", $"the plan has no step {step.Number}");
            else if (planned.Product is { } product && step.Done && step.Product != product)
                yield return Wrong("done-product", step.Product is null ? $"step {step.Number} does not say with which product it was done"
                    : $"step {step.Number} was done with `{step.Product}`; the plan says `{product}`",
                    "a record is held against the plan it was written on: same occasion, same data");
        }
    }

    private static Problem Wrong(string code, string message, string? help = null) => new(code, new(RecordKind.Question, "", "done"), message, help);

    private static DeclaredPart Of(PlanSheet sheet, PlannedPart part, DoneRecord? record)
    {
        if (part.Heading is PlanHeading.CannotBeDone or PlanHeading.NeedsNothing) return new(part.Part.Id, PartStatus.NotDecontaminated, []);
        var steps = sheet.Steps.Where(step => step.Product is not null && step.Parts.Contains(part.Part.Id)).Select(step => step.Number).ToArray();
        var status = record is null ? PartStatus.Blank
            : !steps.All(number => record.Steps.Any(step => step.Number == number && step.Done && step.Initials.Trim().Length > 0)) ? PartStatus.NotFully
            : part.Heading == PlanHeading.GapNotShown ? PartStatus.OpenSurfaces : PartStatus.Decontaminated;
        return new(part.Part.Id, status, steps);
    }
}
