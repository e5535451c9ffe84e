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

    /// <summary>
    /// A question of every part type or material below with every agent below, each at values drawn at random, that is answered against it; null where none is.
    /// </summary>
    /// <param name="data">What is asked.</param>
    /// <param name="kb">The same, built.</param>
    /// <param name="random">What the values come from.</param>
    /// <param name="box">Draws inside this box of a rule, and leaves out what it does not state; everywhere where null.</param>
    public Question? Broken(KnowledgeData data, KnowledgeBase kb, Random random, ExposureBox? box = null)
    {
        var trees = new ReferenceTrees(data, []);
        foreach (var subject in Subjects(data, trees))
        {
            foreach (var agent in data.Agents.Where(one => trees.Below(one.Id, new AgentId(Agent))))
            {
                if (Asked(subject, agent.Id, trees, random, box) is not { } question) continue;
                var answer = kb.Ask(question);
                if (answer.PartVerdict >= Verdict.AllowedWithinLimits && !answer.Duties.Any(duty => duty.Kind == With)) return question;
            }
        }

        return null;
    }

    private IEnumerable<Question> Subjects(KnowledgeData data, ReferenceTrees trees)
    {
        foreach (var part in data.Parts)
            if (Part is not null ? trees.Below(part.Id, Part) : trees.Materials(part.Id).SelectMany(slot => slot.OneOf).Any(one => trees.Below(one, Material!)))
                yield return new Question { Part = part.Id };
        foreach (var material in data.Materials)
            if (Material is not null && trees.Below(material.Id, Material)) yield return new Question { Materials = [new MaterialSlot(material.Id)] };
    }

    private Question? Asked(Question subject, AgentId agent, ReferenceTrees trees, Random random, ExposureBox? box)
    {
        var methods = box is { Methods.Statement: AxisStatement.Within } ? Methods.Intersect(box.Methods.Methods) : Methods;
        var basis = trees.Basis(agent);
        var (strength, temperature, ph) =
            (In(Strength, box?.Strength, 0, 100, random), In(Temperature, box?.Temperature, 5, 134, random), In(Ph, box?.Ph, -1, 15, random));
        if (methods.IsEmpty || strength is { IsEmpty: true } || temperature is { IsEmpty: true } || ph is { IsEmpty: true }) return null;
        return subject with
        {
            Agent = agent,
            Strength = basis is not null && strength is { } share ? new Strength(share, StrengthUnit.PercentOf(basis.Value)) : null,
            Temperature = temperature,
            Ph = ph,
            ExposureTime = In(Interval.AtLeast(1), box?.ExposureTime, 1, random.Next(3) == 0 ? 4000 : 120, random),
            Uses = (int?)In(Interval.AtLeast(1), box?.Uses, 1, random.Next(3) == 0 ? 20_000 : 1, random)?.Lower,
            Method = methods.Methods[random.Next(methods.Methods.Count)],
            OnlyPart = true,
        };
    }

    /// <summary>A value of a range and of what a rule says of the axis: empty where they do not meet, null where the rule is silent on it.</summary>
    private static Interval? In(Interval range, AxisLimit? limit, decimal least, decimal most, Random random)
    {
        if (limit is { Statement: AxisStatement.Unstated } or { Statement: AxisStatement.Any }) return null;
        var drawn = (limit is { Statement: AxisStatement.Within, Range: var own } ? range.Intersect(own) : range).Intersect(Interval.Closed(least, most));
        return drawn.IsEmpty ? drawn : Interval.Exactly(In(drawn, least, most, random));
    }

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
