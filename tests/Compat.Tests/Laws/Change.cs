using Compat.Tests.RandomCases;
using Compat.Tests.Reference;

namespace Compat.Tests.Laws;

/// <summary>Small changes of a case, each null where the case has nothing to change.</summary>
internal static class Change
{
    public static Case? AddNotAllowed(Case c, Random random)
    {
        var site = c.Site is { Rules.Count: > 0 } && random.Next(2) == 0;
        var like = site ? c.Site!.Rules : c.Data.Rules;
        if (like.Count == 0) return null;
        var (a, b) = (like[random.Next(like.Count)], like[random.Next(like.Count)]);
        static AxisLimit Forbids(AxisLimit limit) => limit.Statement == AxisStatement.Unstated ? AxisLimit.Any : limit;
        static AxisLimit Beyond(AxisLimit limit) => limit.Range.Upper is { } last ? AxisLimit.Within(new(last, !limit.Range.UpperIncluded, null, false))
            : Forbids(limit);
        var added = a with
        {
            Id = new(site ? "site.added" : "base.added"),
            Allows = false,
            SeenWith = [],
            WholeClass = false,
            CountsTowards = null,
            Tested = null,
            KnownBy = a.Edition is null ? null : KnownBy.Instructions,
            Damage = new() { Mechanism = Mechanism.Swelling, Onset = Onset.FirstUse, Lasting = true, Consequence = Consequence.Looks },
            When = a.When with
            {
                Strength = Forbids(a.When.Strength),
                Dilution = Forbids(a.When.Dilution),
                ExposureTime = Beyond(b.When.ExposureTime),
                Temperature = Forbids(b.When.Temperature),
                Ph = Forbids(a.When.Ph),
                Uses = Beyond(b.When.Uses),
                Methods = a.When.Methods.Statement == AxisStatement.Unstated ? MethodLimit.Any : a.When.Methods,
            },
        };
        return site ? c with { Site = c.Site! with { Rules = [.. c.Site.Rules, added] } } : c with { Data = c.Data with { Rules = [.. c.Data.Rules, added] } };
    }

    public static Case? AddIngredient(Case c, Random random)
    {
        if (c.Site?.Products.FirstOrDefault() is not { } product || DutyEndsWithExposureTime(c)) return null;
        var agent = c.Data.Agents[random.Next(1, c.Data.Agents.Count)].Id;
        var trees = new ReferenceTrees(c.Data, []);
        if (trees.Line(agent).Any(a => a.Chamber)) return null;
        var strength = trees.Basis(agent) is { } basis ? new Strength(Interval.Exactly(random.Next(1, 20)), StrengthUnit.PercentOf(basis)) : (Strength?)null;
        Ingredient added = random.Next(5) == 0 ? new() { Unknown = "dye" } : new() { Agent = agent, Strength = strength };
        return c with { Site = c.Site with { Products = [product with { Ingredients = [.. product.Ingredients, added] }] } };
    }

    public static Case? AddMaterial(Case c, Random random)
    {
        // A type that another candidate stands below is not only the part asked: its rules may then pass to that one.
        if (c.Site?.Devices.SelectMany(d => d.Parts).FirstOrDefault(p => p.Id == c.Question.DevicePart) is { Materials: null, OneOfTypes.Count: > 1 })
            return null;
        return WithSlots(c, slots => slots.Count == 0 ? null : [.. slots, new MaterialSlot(c.Data.Materials[random.Next(c.Data.Materials.Count)].Id)]);
    }

    public static Case? AddOneOf(Case c, Random random)
    {
        var part = c.Site?.Devices.SelectMany(d => d.Parts).FirstOrDefault(p => p.Id == c.Question.DevicePart);
        var type = c.Data.Parts[random.Next(c.Data.Parts.Count)].Id;
        if (part is not null && random.Next(2) == 0 && !part.OneOfTypes.Contains(type)) return WithPart(c, part with
        {
            OneOfTypes = [.. part.OneOfTypes, type],
        });
        var member = c.Data.Materials[random.Next(c.Data.Materials.Count)].Id;
        MaterialSlot[]? Wider(IReadOnlyList<MaterialSlot> slots) => slots.Count == 0
            || slots[0].OneOf.Contains(member) ? null : [new MaterialSlot([.. slots[0].OneOf, member]), .. slots.Skip(1)];
        if (random.Next(2) == 0) return WithSlots(c, Wider);

        // Of any type: what it has no longer for certain, its 'allowed' rules take no further down. What is named beside it may be the new member.
        if (IsNamedBeside(c)) return null;
        return c.Data.Parts.Single(p => p.Id == type).Materials is { } own && Wider(own) is { } wider
            ? c with { Data = c.Data with { Parts = c.Data.Parts.Select(p => p.Id == type ? p with { Materials = wider } : p).ToArray() } } : null;
    }

    public static Case? AddDuty(Case c, Random random)
    {
        Duty[] all =
        [
            new() { Kind = DutyKind.TakeOff, Ways = [DutyWay.By(ApplicationMethod.Rinse)] },
            new() { Kind = DutyKind.Dry, Ways = [DutyWay.By(Act.HeatDrying)] },
            new() { Kind = DutyKind.WipeDry, Ways = [DutyWay.By(Act.SoftCloth)] },
            new() { Kind = DutyKind.CleanFirst },
        ];
        var duty = all[random.Next(all.Length)];
        T[] Onto<T>(IReadOnlyList<T> list, Func<T, T> change)
        {
            var at = random.Next(Math.Max(1, list.Count));
            return list.Select((x, i) => i == at ? change(x) : x).ToArray();
        }

        return random.Next(4) switch
        {
            0 => c with { Data = c.Data with { Agents = Onto(c.Data.Agents, a => a with { Duties = [.. a.Duties, duty] }) } },
            1 => c with { Data = c.Data with { Parts = Onto(c.Data.Parts, p => p with { Duties = [.. p.Duties, duty] }) } },
            2 when c.Site is { } site => c with { Site = site with { Rules = Onto(site.Rules, r => r with { Duties = [.. r.Duties, duty] }) } },
            _ => c with { Data = c.Data with { Rules = Onto(c.Data.Rules, r => r with { Duties = [.. r.Duties, duty] }) } },
        };
    }

    public static Case? Widen(Case c, Random random)
    {
        var q = c.Question;
        Interval? Wider(Interval? range, decimal by, decimal least, decimal most) => range is not { Lower: { } low, Upper: { } high }
            || low == Interval.WithoutEnd ? range
            : Interval.Closed(random.Next(2) == 0 ? low : Math.Max(least, low - by), random.Next(2) == 0 ? high : Math.Min(most, high + by));
        return c with
        {
            Question = q with
            {
                ExposureTime = Wider(q.ExposureTime, 20, 1, 10_000),
                Temperature = Wider(q.Temperature, 10, -40, 200),
                Ph = Wider(q.Ph, 1, -1, 15),
                Dilution = Wider(q.Dilution, 0.05m, 0.001m, 1),
                Strength = q.Strength is { } s ? s with { Range = Wider(s.Range, 5, 0, 100)!.Value } : null,
                Uses = q.Uses + random.Next(3),
            },
        };
    }

    public static Case? StayLonger(Case c, Random random)
    {
        if (DutyEndsWithExposureTime(c) || c.Question.ExposureTime is not { Upper: { } most } asked || most == Interval.WithoutEnd) return null;
        return c with
        {
            Question = c.Question with { ExposureTime = random.Next(6) == 0 ? Interval.Exactly(Interval.WithoutEnd) : asked.Scale(1 + (random.Next(40) / 4m)) },
        };
    }

    public static Case? ForgetSerial(Case c, Random random) => c.Question.Serial is null ? null : c with { Question = c.Question with { Serial = null } };

    public static Case? OnlyListed(Case c, Random random)
    {
        if (c.Site?.Devices.FirstOrDefault() is not { Instructions.Count: > 0 } device) return null;
        var at = random.Next(device.Instructions.Count);
        return c with
        {
            Site = c.Site with
            {
                Devices = [device with { Instructions = device.Instructions.Select((e, i) => i == at ? e with { OnlyListed = true } : e).ToArray() }],
            },
        };
    }

    public static Case? RemoveAllowed(Case c, Random random)
    {
        var may = c.Data.Rules.Concat(c.Site?.Rules ?? []).Where(r => r.Allows && r.Duties.Count == 0).ToArray();
        return may.Length == 0 ? null : CaseShrinker.Drop(c, may[random.Next(may.Length)].Id);
    }

    public static Case? Reorder(Case c, Random random)
    {
        T[] Mixed<T>(IReadOnlyList<T> list)
        {
            var copy = list.ToArray();
            random.Shuffle(copy);
            return copy;
        }

        return c with
        {
            Data = c.Data with
            {
                Materials = Mixed(c.Data.Materials),
                Parts = Mixed(c.Data.Parts),
                Agents = Mixed(c.Data.Agents),
                Sources = Mixed(c.Data.Sources),
                Conventions = Mixed(c.Data.Conventions),
                Rules = Mixed(c.Data.Rules).Select(r => r with { Overrides = Mixed(r.Overrides), SeenWith = Mixed(r.SeenWith) }).ToArray(),
            },
            Site = c.Site is not { } site ? null : site with
            {
                Rules = Mixed(site.Rules),
                Products = site.Products.Select(p => p with { Ingredients = Mixed(p.Ingredients), Ph = Mixed(p.Ph) }).ToArray(),
                Devices = site.Devices.Select(d => d with { Parts = Mixed(d.Parts), Instructions = Mixed(d.Instructions) }).ToArray(),
            },
        };
    }

    /// <summary>An 'allowed' that ends takes its duty with it, as one that is removed does.</summary>
    private static bool DutyEndsWithExposureTime(Case c) =>
        c.Data.Rules.Concat(c.Site?.Rules ?? []).Any(r => r.Allows && r.Duties.Count > 0 && r.When.ExposureTime.Statement != AxisStatement.Any);

    private static Case WithPart(Case c, DevicePart part) =>
        c with
        {
            Site = c.Site! with
            {
                Devices = c.Site.Devices.Select(d => d with { Parts = d.Parts.Select(p => p.Id == part.Id ? part : p).ToArray() }).ToArray(),
            },
        };

    /// <summary>Names a material, where no entry with several candidates of a type that is asked has anything to do with it.</summary>
    public static Case? NameAnother(Case c, Random random)
    {
        var trees = new ReferenceTrees(c.Data, []);
        var name = c.Data.Materials[random.Next(c.Data.Materials.Count)].Id;
        var open = TypesAsked(c).SelectMany(trees.Materials).Concat(PartAsked(c)?.Materials ?? []).Where(s => s.OneOf.Count > 1).SelectMany(s => s.OneOf);
        if (!TypesAsked(c).Any() || c.Question.Materials.Count > 0 || open.Any(m => trees.Below(m, name) || trees.Below(name, m))) return null;
        return c with { Question = c.Question with { Materials = [new MaterialSlot(name)] } };
    }

    /// <summary>Says that there are other materials than those on record.</summary>
    public static Case? KnowPartly(Case c, Random random) =>
        c.Question.Materials.Count == 0 || c.Question.MaterialsKnown == true ? null : c with { Question = c.Question with { MaterialsKnown = false } };

    /// <summary>The types of the part asked.</summary>
    public static IReadOnlyList<PartId> TypesAsked(Case c) => c.Question.Part is { } type ? [type] : PartAsked(c)?.OneOfTypes ?? [];

    private static DevicePart? PartAsked(Case c) => c.Site?.Devices.SelectMany(d => d.Parts).FirstOrDefault(p => p.Id == c.Question.DevicePart);

    /// <summary>Whether something is named beside a list, which it then decides and adds to.</summary>
    private static bool IsNamedBeside(Case c) =>
        (c.Question.Materials.Count > 0 && TypesAsked(c).Count > 0) || PartAsked(c)?.Materials is not null;

    /// <summary>Changes the materials where the part asked has them from, alone: the question, the device part or its type.</summary>
    private static Case? WithSlots(Case c, Func<IReadOnlyList<MaterialSlot>, MaterialSlot[]?> change)
    {
        if (c.Question.Materials.Count > 0)
            return (TypesAsked(c).Count == 0 || c.Question.MaterialsKnown == true)
                && change(c.Question.Materials) is { } asked ? c with { Question = c.Question with { Materials = asked } } : null;
        var part = PartAsked(c);
        if (part?.Materials is { } stated) return part.MaterialsKnown == true && change(stated) is { } slots ? WithPart(c, part with { Materials = slots })
            : null;
        if ((part?.OneOfTypes[0] ?? c.Question.Part) is not { } type) return null;
        var record = new ReferenceTrees(c.Data, []).Line(type).FirstOrDefault(p => p.Materials is not null);
        if (record is null || change(record.Materials!) is not { } changed) return null;
        return c with
        {
            Data = c.Data with
            {
                Parts = c.Data.Parts.Select(p => p.Id == type ? p with { Materials = changed, MaterialsKnown = record.MaterialsKnown } : p).ToArray(),
            },
        };
    }
}
