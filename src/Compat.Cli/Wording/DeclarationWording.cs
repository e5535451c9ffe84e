using Compat.Planning;

namespace Compat.Cli.Wording;

/// <summary>Says the declaration of the decontamination status.</summary>
public sealed class DeclarationWording(PlanWording words)
{
    /// <summary>The lines of the declaration.</summary>
    public IEnumerable<string> Of(StatusDeclaration declaration)
    {
        yield return declaration.Record is { } record ? $"Filled from a record of {record.Date}, never from the plan." : "To be filled in by who did the work; the plan says nothing of what was done.";
        foreach (var part in declaration.Parts) yield return $"{words.Part(part.Part)}: {Of(part.Status)}" + (part.Steps.Count == 0 ? "" : $" (steps {string.Join(", ", part.Steps)})");
        yield return "Everything inside the device: not decontaminated.";
        yield return "Declared by: ____________ office: ____________ date: ____________";
    }

    /// <summary>A status in words.</summary>
    public static string Of(PartStatus status) => status switch
    {
        PartStatus.Blank => "decontaminated: yes ____ no ____",
        PartStatus.NotDecontaminated => "not decontaminated",
        PartStatus.NotFully => "not decontaminated: a step was not done or not signed for",
        PartStatus.OpenSurfaces => "open surfaces decontaminated, the gap not shown",
        _ => "decontaminated",
    };
}
