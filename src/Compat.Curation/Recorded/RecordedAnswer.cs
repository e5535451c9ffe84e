using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Curation.Recorded;

/// <summary>
/// An answer as it is written down, so that it can be asked again and held against what is answered then: what decides and what was promised, without wording.
/// </summary>
public sealed record RecordedAnswer
{
    /// <summary>The question.</summary>
    public required Question Question { get; init; }

    /// <summary>The verdict: the worst of what was judged.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What the part stands, by itself.</summary>
    public required Verdict PartVerdict { get; init; }

    /// <summary>The rules that decided, by id.</summary>
    public IReadOnlyList<RuleId> Rules { get; init; } = [];

    /// <summary>The person rules that spoke, by id.</summary>
    public IReadOnlyList<PersonRuleId> PersonRules { get; init; } = [];

    /// <summary>The claims that met the need, by id: of a label <c>product: claim</c>, of instructions <c>device: edition</c>.</summary>
    public IReadOnlyList<string> Claims { get; init; } = [];

    /// <summary>The editions of the device's instructions that could speak, by id.</summary>
    public IReadOnlyList<EditionId> Editions { get; init; } = [];

    /// <summary>What keeps an 'allowed' within limits.</summary>
    public IReadOnlyList<Limit> Limits { get; init; } = [];

    /// <summary>What must accompany a use.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>The boxes in which it is allowed, the first 32, without duties and rules; strengths in percent of the agent's basis.</summary>
    public IReadOnlyList<AllowedBox> Boxes { get; init; } = [];

    /// <summary>How many boxes there are.</summary>
    public int BoxCount { get; init; }

    /// <summary>The number of the step that it was asked for, of a plan; null elsewhere.</summary>
    public int? Step { get; init; }

    /// <summary>Where it stands in the file it was read from; null where it was made now.</summary>
    public SourcePlace? Place { get; init; }

    /// <summary>Writes down an answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="kb">The knowledge base that gave it.</param>
    public static RecordedAnswer Of(Answer answer, KnowledgeBase kb) => new()
    {
        Question = answer.Question,
        Verdict = answer.Verdict,
        PartVerdict = answer.PartVerdict,
        Rules = answer.DecidedBy.Select(rule => rule.Id).Distinct().Order().ToArray(),
        PersonRules = (answer.People?.Rules.Select(rule => rule.Id) ?? []).Distinct().Order().ToArray(),
        Claims = (answer.Kill?.Claims.Select(claim => claim.Id) ?? []).Distinct().Order(StringComparer.Ordinal).ToArray(),
        Editions = answer.Question.Device is { } device ? Deciding.Editions.Speaking(kb.Compiled.Devices[device], answer.Question.Serial) : [],
        Limits = answer.Limits,
        Duties = answer.Duties,
        Boxes = answer.Boxes.Select(Written).ToArray(),
        BoxCount = answer.BoxCount,
    };

    /// <summary>Reads an answer; what is wrong with it is reported.</summary>
    /// <param name="fields">The answer, with its question in it.</param>
    internal static RecordedAnswer? Read(RecordFields fields)
    {
        if (fields.Record("question") is not { } question || fields.Word<Verdict>("verdict") is not { } verdict
            || fields.Word<Verdict>("partVerdict") is not { } part) return null;
        return new()
        {
            Question = RecordedQuestion.Read(question),
            Verdict = verdict,
            PartVerdict = part,
            Rules = fields.Ids("rules", text => new RuleId(text)),
            PersonRules = fields.Ids("personRules", text => new PersonRuleId(text)),
            Claims = fields.Texts("claims"),
            Editions = fields.Ids("editions", text => new EditionId(text)),
            Limits = fields.Records("limits").Select(limit => limit.Word<LimitCode>("code") is { } code ? new Limit(code, limit.Texts("arguments")) : null)
                .OfType<Limit>().ToArray(),
            Duties = fields.Records("duties").Select(RecordedDuty.Read).OfType<Duty>().ToArray(),
            Boxes = fields.Records("boxes").Select(Box).OfType<AllowedBox>().ToArray(),
            BoxCount = fields.Number("boxCount") ?? 0,
            Place = new SourcePlace(fields.Faults.Source, Schemas.NodePath.PointAt(fields.Mapping)),
        };
    }

    private static AllowedBox Written(AllowedBox box) => box with
    {
        ExposureTime = RecordedRange.Written(box.ExposureTime),
        Uses = RecordedRange.Written(box.Uses),
        Duties = [],
        DecidedBy = [],
    };

    private static AllowedBox? Box(RecordFields fields) => fields.Word<ApplicationMethod>("method") is not { } method ? null : new()
    {
        Method = method,
        Strength = RecordedRange.Read(fields, "strength", "%"),
        Dilution = RecordedRange.Read(fields, "dilution", Axis.Dilution),
        ExposureTime = RecordedRange.Read(fields, "exposureTime", Axis.ExposureTime) ?? Interval.Whole,
        Temperature = RecordedRange.Read(fields, "temperature", Axis.Temperature) ?? Interval.Whole,
        Ph = RecordedRange.Read(fields, "ph", Axis.Ph) ?? Interval.Whole,
        Uses = RecordedRange.Read(fields, "uses", Axis.Uses) ?? Interval.Whole,
    };
}
