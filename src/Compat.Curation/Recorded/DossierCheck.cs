using Compat.Curation.Diagnostics;

namespace Compat.Curation.Recorded;

/// <summary>A need that is another than it was.</summary>
/// <param name="Part">The part.</param>
/// <param name="Was">What it needed; null where the part is new.</param>
/// <param name="Now">What it needs; null where the part is gone.</param>
public sealed record NeedDifference(DevicePartId Part, RecordedNeed? Was, RecordedNeed? Now);

/// <summary>An answer that there is now and that the file does not have.</summary>
/// <param name="Part">The part.</param>
/// <param name="Product">The product.</param>
/// <param name="IsNew">Whether the part or the product is new since: the file speaks of it nowhere. Else the file lacks what it should hold.</param>
public sealed record MissingAnswer(DevicePartId Part, ProductId Product, bool IsNew);

/// <summary>A dossier beside what is answered now.</summary>
public sealed record DossierCheck
{
    /// <summary>The dossier.</summary>
    public required RecordedFile File { get; init; }

    /// <summary>Every answer in it beside the present one: what tightened first, else in the order of the file.</summary>
    public IReadOnlyList<AnswerDifference> Answers { get; init; } = [];

    /// <summary>The needs that are others.</summary>
    public IReadOnlyList<NeedDifference> Needs { get; init; } = [];

    /// <summary>The answers it lacks.</summary>
    public IReadOnlyList<MissingAnswer> Missing { get; init; } = [];

    /// <summary>The plans in it, each with its answers beside the present ones.</summary>
    public IReadOnlyList<(RecordedFile Plan, IReadOnlyList<AnswerDifference> Answers)> Plans { get; init; } = [];

    /// <summary>The states of the data it was held against.</summary>
    public IReadOnlyList<DataIdentity> Identity { get; init; } = [];

    /// <summary>
    /// Whether all of it holds: every answer is given now, every part needs what it needed, and nothing is missing but what is new since. An answer may rest on
    /// other rules.
    /// </summary>
    public bool Holds => Needs.All(need => need.Was is null) && Missing.All(answer => answer.IsNew)
        && !Answers.Concat(Plans.SelectMany(plan => plan.Answers)).Any(answer => answer.IsStale);

    /// <summary>Makes a dossier anew and holds the file against it.</summary>
    /// <param name="file">The dossier.</param>
    /// <param name="kb">The knowledge base with its sites.</param>
    /// <param name="faults">Takes questions that the program cannot have written.</param>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public static DossierCheck Of(RecordedFile file, KnowledgeBase kb, List<Diagnostic> faults)
    {
        var now = kb.Compiled.Devices.ContainsKey(file.Device) ? Dossier.Of(kb, file.Device, file.Serial) : null;
        var needs = now?.Parts.Select(part => RecordedNeed.Of(part.Part.Id, part.Need)).ToArray() ?? [];
        var asked = file.Answers.Select(answer => (answer.Question.DevicePart, answer.Question.Product)).ToHashSet();
        var products = asked.Select(one => one.Product).ToHashSet();
        bool IsNew(Question question) => !products.Contains(question.Product) || !file.Needs.Any(need => need.Part == question.DevicePart);
        return new()
        {
            File = file,
            Answers = Sorted(file, kb, faults),
            Needs = file.Needs.Select(need => need.Part).Union(needs.Select(need => need.Part))
                .Select(part => new NeedDifference(part, file.Needs.FirstOrDefault(need => need.Part == part), needs.FirstOrDefault(need => need.Part == part)))
                    .Where(one => one.Was != one.Now).ToArray(),
            Missing = (now?.Answers ?? []).Where(answer => !asked.Contains((answer.Question.DevicePart, answer.Question.Product)))
                .Select(answer => new MissingAnswer(answer.Question.DevicePart!, answer.Question.Product!, IsNew(answer.Question))).ToArray(),
            Plans = file.Plans.Select(plan => (plan, Sorted(plan, kb, faults))).ToArray(),
            Identity = kb.Identity,
        };
    }

    private static IReadOnlyList<AnswerDifference> Sorted(RecordedFile file, KnowledgeBase kb, List<Diagnostic> faults) =>
        Reasking.Of(file, kb, faults).OrderBy(one => one.Standing).ToArray();
}
