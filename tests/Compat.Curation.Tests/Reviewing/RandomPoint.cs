using Compat.Curation.Reviewing;
using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Reviewing;

/// <summary>A question with every axis stated, and what the reference says of it on one side.</summary>
internal sealed record RandomPoint(Question Question, string Subject, decimal Strength, Device? Device = null)
{
    private static readonly decimal[] Strengths = [0.5m, 1, 3, 5, 20, 35, 50, 60, 70, 85];
    private static readonly decimal[] ExposureTimes = [15, 30, 45, 60, 90, 120, 240, 600, 1200, 5000];
    private static readonly decimal[] Temperatures = [5, 10, 15, 20, 22, 25, 40, 50, 80];
    private static readonly decimal[] Phs = [3, 4, 5, 7, 8, 9, 11, 12, 14];
    private static readonly int[] Uses = [1, 2, 3, 4, 10, 11, 20, 100, 101, 200, 500];

    /// <summary>A point on a subject and an agent that both sides have.</summary>
    public static RandomPoint Make(RandomReview pair, Random random)
    {
        var device = pair.Sites.SelectMany(site => site.Devices).FirstOrDefault();
        var question = random.Next(3) switch
        {
            0 when device is not null => new Question
            {
                Device = device.Id,
                DevicePart = One(device.Parts).Id,
                Serial = random.Next(4) == 0 ? null : One(Samples.Serials(device).ToArray()),
            },
            1 => new Question { Materials = [new MaterialSlot(One(pair.Before.Materials).Id)] },
            _ => new Question { Part = One(pair.Before.Parts).Id },
        };
        var agent = One(pair.Before.Agents);
        var basis = new ReferenceTrees(pair.Before, []).Basis(agent.Id);
        var strength = One(Strengths);
        return new(
            question with
            {
                Agent = agent.Id,
                Strength = basis is { } unit ? new Strength(Interval.Exactly(strength), StrengthUnit.PercentOf(unit)) : null,
                Method = One(MethodSet.All.Methods),
                ExposureTime = Interval.Exactly(One(ExposureTimes)),
                Temperature = Interval.Exactly(One(Temperatures)),
                Ph = Interval.Exactly(One(Phs)),
                Uses = One(Uses),
            },
            question.Part?.Value ?? (question.Device is null ? question.Materials[0].OneOf[0].Value : $"{question.Device}/{question.DevicePart}"),
            strength,
            question.Device is null ? null : device);

        T One<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
    }

    /// <summary>The verdict by the reference, for every use up to the one asked.</summary>
    public Verdict Ask(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        var reference = new ReferenceEvaluator(data, sites, Question);
        return reference.Of(reference.Choices().Single(), Interval.Closed(1, Question.Uses!.Value));
    }

    /// <summary>Whether a change is one of this point, and not of one set of editions among several that may speak for it.</summary>
    public bool IsOf(AnswerChange change) => Question.Serial is not null || change.Serial is null;

    /// <summary>Whether the point lies in the box of a change.</summary>
    public bool LiesIn(AnswerChange change) =>
        change.Subject == Subject && IsSpokenFor(change)
            && change.SubjectKind == (
                Question.Device is not null ? SubjectKind.DevicePart : Question.Part is not null ? SubjectKind.PartType : SubjectKind.Material)
        && change.Agent == Question.Agent && change.Methods.Contains(Question.Method!.Value)
        && On(change.Box.Strength, Strength) && On(change.Box.ExposureTime, Question.ExposureTime!.Value.Lower!.Value)
            && On(change.Box.Temperature, Question.Temperature!.Value.Lower!.Value)
        && On(change.Box.Ph, Question.Ph!.Value.Lower!.Value) && On(change.Box.Uses, Question.Uses!.Value);

    /// <summary>Whether the same editions speak for the serial number asked and for that of a change.</summary>
    private bool IsSpokenFor(AnswerChange change) => Question.Serial is null || change.Serial is not { } serial || Device is null
        || Speaking(serial).SequenceEqual(Speaking(Question.Serial.Value));

    private IEnumerable<InstructionsEdition> Speaking(SerialNumber serial)
    {
        var covering = Device!.Instructions.Where(edition => edition.Serials.Count == 0 || edition.Serials.Any(range => range.Contains(serial))).ToArray();
        return covering.Where(edition => !covering.Any(other => other.Replaces.Contains(edition.Id)));
    }

    private static bool On(AxisLimit limit, decimal value) => limit.Statement != AxisStatement.Within || limit.Range.Contains(value);
}
