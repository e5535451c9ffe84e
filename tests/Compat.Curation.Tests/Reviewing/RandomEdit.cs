namespace Compat.Curation.Tests.Reviewing;

/// <summary>One random edit of a record: of rules mostly, else of a part, a material, an agent, a source or a convention.</summary>
internal static class RandomEdit
{
    /// <summary>Edits a base so many times; what comes out may be invalid.</summary>
    public static KnowledgeData Of(KnowledgeData data, Random random, int times)
    {
        for (var i = 0; i < times; i++) data = Of(data, random, "edited." + i);
        return data;
    }

    private static KnowledgeData Of(KnowledgeData data, Random random, string newId) => random.Next(12) switch
    {
        0 => data with { Rules = Without(data.Rules, One(data.Rules, random).Id) },
        1 => data with
        {
            Rules = [.. data.Rules, One(data.Rules, random) with
            {
                Id = new(newId),
                Target = random.Next(2) == 0 ? RuleTarget.On(One(data.Parts, random).Id) : RuleTarget.On(One(data.Materials, random).Id),
            }],
        },
        2 or 3 or 4 => data with { Rules = Onto(data.Rules, random, rule => rule with { When = Moved(rule.When, random) }) },
        5 => data with
        {
            Rules = Onto(data.Rules, random, rule => rule with
            {
                Overrides = [],
                Duties = random.Next(2) == 0 ? rule.Duties : rule.Duties.Count > 0 ? [] : [new Duty { Kind = DutyKind.CleanFirst }],
            }),
        },
        6 => data with
        {
            Parts = Onto(data.Parts, random, part => part with
            {
                Wettest = ApplicationMethod.DampWipe + random.Next(5),
                Never = random.Next(2) == 0 ? [Act.SoftCloth] : part.Never,
            }),
        },
        7 => data with
        {
            Parts = Onto(data.Parts, random, part => part with
            {
                Materials = [.. part.Materials ?? [], new MaterialSlot(One(data.Materials, random).Id)],
                Geometry = random.Next(3) == 0 ? Geometry.Seam : part.Geometry,
            }),
        },
        8 => data with
        {
            Materials = Onto(data.Materials, random, material => material with { Delicate = material.Delicate is null ? Delicacy.Coating : null }),
        },
        9 => data with
        {
            Agents = Onto(data.Agents, random, agent => agent.Under is null ? agent : agent with
            {
                Under = One(data.Agents, random).Id,
                Leaves = random.Next(2) == 0 ? Residue.Nothing : Residue.Film,
            }),
        },
        10 => data with { Sources = Onto(data.Sources, random, source => source with { Recalled = !source.Recalled }) },
        _ => data with
        {
            Conventions = data.Conventions.Select(
                one => one.Key == ConventionKey.UnstatedExposureTime ? one with { Range = Interval.AtMost(45) } : one.Key == ConventionKey.DryingTime
                ? one with { Range = Interval.Closed(30, 90) } : one).ToArray(),
        },
    };

    /// <summary>A box with one end moved, opened or closed.</summary>
    private static ExposureBox Moved(ExposureBox box, Random random)
    {
        AxisLimit Limit(AxisLimit limit) => limit.Statement != AxisStatement.Within ? limit
            : limit.Range is var range && random.Next(3) == 0 ? AxisLimit.Within(new(range.Lower, !range.LowerIncluded, range.Upper, !range.UpperIncluded))
            : AxisLimit.Within(new(range.Lower, range.LowerIncluded, range.Upper * 2, range.UpperIncluded));
        return random.Next(5) switch
        {
            0 => box with { Strength = Limit(box.Strength) },
            1 => box with { ExposureTime = Limit(box.ExposureTime) },
            2 => box with { Temperature = Limit(box.Temperature) },
            3 => box with { Ph = Limit(box.Ph), Methods = MethodLimit.Within(ApplicationMethod.WetWipe, ApplicationMethod.Rinse) },
            _ => box with { Uses = Limit(box.Uses) },
        };
    }

    private static Rule[] Without(IReadOnlyList<Rule> rules, RuleId gone) =>
        rules.Where(rule => rule.Id != gone).Select(rule => rule with { Overrides = rule.Overrides.Where(id => id != gone).ToArray() }).ToArray();

    private static T[] Onto<T>(IReadOnlyList<T> list, Random random, Func<T, T> change)
    {
        var at = random.Next(list.Count);
        return list.Select((one, i) => i == at ? change(one) : one).ToArray();
    }

    private static T One<T>(IReadOnlyList<T> list, Random random) => list[random.Next(list.Count)];
}
