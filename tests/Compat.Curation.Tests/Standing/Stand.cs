using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Standing;

/// <summary>A standing rule of the shipped data, stated once more in code: what must never be allowed, or never without a duty.</summary>
internal sealed record Stand(string Id, PartId? Part, MaterialId? Material, string Agent)
{
    public Interval Strength { get; init; } = Interval.AtLeast(0);

    public Interval Temperature { get; init; } = Interval.Whole;

    public Interval Ph { get; init; } = Interval.Whole;

    public MethodSet Methods { get; init; } = MethodSet.All;

    /// <summary>The duty without which it must not be allowed; null where it must never be.</summary>
    public DutyKind? With { get; init; }

    /// <summary>A question of every part type or material below with every agent below, each at values drawn at random, that is answered against it; null where none is.</summary>
    public Question? Broken(KnowledgeData data, KnowledgeBase kb, Random random)
    {
        var trees = new ReferenceTrees(data, []);
        foreach (var subject in Subjects(data, trees))
        {
            foreach (var agent in data.Agents.Where(one => trees.Below(one.Id, new AgentId(Agent))))
            {
                var question = Asked(subject, agent.Id, trees, random);
                var answer = kb.Ask(question);
                if (answer.PartVerdict >= Verdict.AllowedWithinLimits && !answer.Duties.Any(duty => duty.Kind == With)) return question;
            }
        }

        return null;
    }

    private IEnumerable<Question> Subjects(KnowledgeData data, ReferenceTrees trees)
    {
        foreach (var part in data.Parts)
            if (Part is not null ? trees.Below(part.Id, Part) : trees.Materials(part.Id).SelectMany(slot => slot.OneOf).Any(one => trees.Below(one, Material!))) yield return new Question { Part = part.Id };
        foreach (var material in data.Materials)
            if (Material is not null && trees.Below(material.Id, Material)) yield return new Question { Materials = [new MaterialSlot(material.Id)] };
    }

    private Question Asked(Question subject, AgentId agent, ReferenceTrees trees, Random random) => subject with
    {
        Agent = agent,
        Strength = trees.Basis(agent) is { } basis ? new Strength(Interval.Exactly(In(Strength, 0, 100, random)), StrengthUnit.PercentOf(basis)) : null,
        Temperature = Interval.Exactly(In(Temperature, 5, 134, random)),
        Ph = Interval.Exactly(In(Ph, -1, 15, random)),
        Residence = Interval.Exactly(random.Next(3) == 0 ? random.Next(1, 4000) : random.Next(1, 120)),
        Uses = random.Next(3) == 0 ? random.Next(1, 20_000) : 1,
        Method = Methods.Methods[random.Next(Methods.Methods.Count)],
        OnlyPart = true,
    };

    /// <summary>A value of a range, near its ends as often as not; strengths are drawn small as often as large.</summary>
    private static decimal In(Interval range, decimal least, decimal most, Random random)
    {
        var (low, high) = (Math.Max(range.Lower ?? least, least), Math.Min(range.Upper ?? most, most));
        decimal[] ends = [low, low + 0.001m, high - 0.001m, high];
        for (var tries = 0; ; tries++)
        {
            var share = (decimal)Math.Pow(random.NextDouble(), ((tries + random.Next(2)) * 2 % 6) + 1);
            var value = tries == 0 && random.Next(2) == 0 ? ends[random.Next(ends.Length)] : Math.Round(low + ((high - low) * share), 3);
            if (range.Contains(value)) return value;
        }
    }
}
