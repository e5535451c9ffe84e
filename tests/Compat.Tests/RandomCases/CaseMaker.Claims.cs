using Compat.Tests.Reference;

namespace Compat.Tests.RandomCases;

/// <summary>Claims: published, of a label, of instructions.</summary>
internal sealed partial class CaseMaker
{
    private Claim RandomClaim(ClaimId id)
    {
        var agent = RandomAgentOfRule();
        var reaches = Chance(75) ? One(Level.Low, Level.Intermediate, Level.Intermediate, Level.High, Level.Sterile) : (Level?)null;
        var kills = RandomKills(reaches);
        var partners = _data.Agents.Skip(1).Where(a => !_trees.Below(a.Id, agent) && !_trees.Below(agent, a.Id)).ToArray();
        return new()
        {
            Id = id,
            Agent = agent,
            With = RandomPartners(partners),
            When = ClaimExposures(agent, Chance(50)),
            Reaches = reaches,
            Kills = kills,
            DoesNotKill = DoesNot(reaches, kills),
            For = Chance(30) ? [NearPart()] : [],
            Where = Chance(8) ? ClaimWhere.Machine : null,
            Refuted = Chance(12) ? "an outbreak" : null,
            Kind = One(ClaimKind.Guideline, ClaimKind.Guideline, ClaimKind.Standard, ClaimKind.Paper),
            Why = "made at random",
            Sources = [new("s-read")],
            Reviewed = Day,
        };
    }

    /// <summary>Seldom a partner; rather one that is in the product asked, and then often with an end of its strength there.</summary>
    private ClaimPartner[] RandomPartners(AgentClass[] partners)
    {
        var inProduct = (_question.Product is null ? [] : _site!.Products[0].Ingredients).Where(i => partners.Any(p => p.Id == i.Agent)).ToArray();
        if (inProduct.Length == 0 || Chance(50)) return Chance(12) && partners.Length > 0 ? [RandomPartner(One(partners).Id)] : [];
        var there = One(inProduct);
        var ends = new[] { there.Strength?.Percent.Lower, there.Strength?.Percent.Upper }.OfType<decimal>().ToArray();
        if (_trees.Basis(there.Agent!) is null || ends.Length == 0 || Chance(30)) return [RandomPartner(there.Agent!)];
        var end = One(ends) * (_question.Dilution is { IsPoint: true, Lower: { } diluted } ? diluted : 1);
        return [new(there.Agent!, AxisLimit.Within(One(Interval.AtMost(end), Interval.Below(end), Interval.AtLeast(end), Interval.Above(end))))];
    }

    private ClaimPartner RandomPartner(AgentId agent) =>
        new(agent, _trees.Basis(agent) is null ? default : Chance(60) ? AxisLimit.Within(RandomRange(Axis.Strength)) : AxisLimit.Any);

    private OrganismTarget[] RandomKills(Level? reaches) => reaches is null || Chance(25) ? Shuffled(AllTargets).Take(One(1, 2, 3)).ToArray() : [];

    private OrganismTarget[] DoesNot(Level? reaches, OrganismTarget[] kills) => !Chance(20) ? []
        : AllTargets.Where(t => !kills.Contains(t) && !(t.Group is { } g && _data.Levels.Any(l => l.Level == reaches && l.Includes.Contains(g)))).Take(1)
            .ToArray();

    private PartId NearPart()
    {
        var types = _site?.Devices.SelectMany(d => d.Parts).FirstOrDefault(p => p.Id == _question.DevicePart)?.OneOfTypes
            ?? (_question.Part is { } part ? [part] : []);
        return types.Count > 0 && Chance(80) ? One(_trees.Line(One(types))).Id : One(_data.Parts).Id;
    }

    private ClaimBox ClaimExposures(AgentId? agent, bool wide) => new()
    {
        Strength = agent is null || _trees.Basis(agent) is null ? default
            : wide || Chance(30) ? AxisLimit.Any : Chance(20) && ReferenceTrees.Nearest(_trees.Line(agent), a => a.Usual.Strength) is not null
                ? AxisLimit.Unstated : AxisLimit.Within(RandomRange(Axis.Strength)),
        ContactTime =
            AxisLimit.Within(Chance(85) ? Interval.AtLeast(One(_pool[Axis.ExposureTime])) : new(One(_pool[Axis.ExposureTime]), Chance(50), 700, Chance(50))),
        Temperature = wide || Chance(30) ? AxisLimit.Any : Chance(30) ? AxisLimit.Unstated : AxisLimit.Within(RandomRange(Axis.Temperature)),
        Ph = wide || Chance(30) ? AxisLimit.Any : Chance(20) ? AxisLimit.Unstated : AxisLimit.Within(RandomRange(Axis.Ph)),
        Methods = wide || Chance(30) ? MethodLimit.Any : Chance(20) ? MethodLimit.Unstated
            : MethodLimit.Within(MethodSet.Ladder.Methods.Where(_ => Chance(50)).Append(ApplicationMethod.WetWipe).ToArray()),
    };

    private void MakeSiteWhole()
    {
        var parts = _site!.Devices.SelectMany(d => d.Parts).ToArray();
        _site = _site with
        {
            Here = new()
            {
                Temperature = Chance(40) ? Between(Axis.Temperature) : null,
                Hardness = Chance(40) ? Interval.Closed(100, One(150, 300)) : null,
            },
            Levels = parts.Length > 0 && Chance(20)
                ? [new() { Device = DeviceName, Part = Chance(60) ? One(parts).Id : null, Level = One(Level.Low, Level.Intermediate, Level.High),
                    DecidedBy = "an office", Because = "so", Sources = [new("s-read")] }] : [],
            Products = _site.Products.Select(WithLabel).ToArray(),
            Devices = _site.Devices.Select(WithLevels).ToArray(),
        };
    }

    private Product WithLabel(Product product) => product with
    {
        LabelClaims = Chance(50) ? Enumerable.Range(1, One(1, 2, 3)).Select(i => RandomLabelClaim(new("label-" + i), product)).ToArray() : [],
        Methods = Chance(15) ? MethodSet.Of(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe) : MethodSet.None,
        BoundByCloths = Chance(12) ? [Cloth] : [],
        MostHardness = Chance(30) ? 200 : null,
    };

    private LabelClaim RandomLabelClaim(LabelClaimId id, Product product)
    {
        var reaches = Chance(75) ? One(Level.Low, Level.Intermediate, Level.High) : (Level?)null;
        var kills = RandomKills(reaches);
        var when = ClaimExposures(null, Chance(40));
        var tests = Chance(80) ? Shuffled(_data.TestStandards.Select(t => t.Code).ToArray()).Take(One(1, 2, 3, 4)).ToArray() : [];
        return new()
        {
            Id = id,
            When = when with
            {
                Dilution = product.StrengthOf == StrengthOf.Concentrate && Chance(60) ? AxisLimit.Within(RandomRange(Axis.Dilution)) : default,
                Temperature = Chance(30) ? default : when.Temperature,
                Ph = Chance(80) || when.Ph.Statement == AxisStatement.Unstated ? default : when.Ph,
                Methods = Chance(30) ? default : when.Methods,
            },
            Reaches = reaches,
            Kills = kills,
            DoesNotKill = DoesNot(reaches, kills),
            For = Chance(15) ? [NearPart()] : [],
            ShownBy = tests,
            Registration = tests.Length == 0 && Chance(50) ? new("an office", "1") : null,
        };
    }

    private Device WithLevels(Device device) => device with
    {
        Parts = device.Parts.Select(p => Chance(25) ? p with { TouchedBy = One(Enum.GetValues<TouchedBy>()), Because = "so" } : p).ToArray(),
        Patients = Chance(20) ? [One(SomePatients)] : null,
        Instructions = device.Instructions.Select(e => Chance(35) ? e with { Reaches = [RandomInstructed()] } : e).ToArray(),
    };

    private InstructedLevel RandomInstructed()
    {
        var byProduct = _question.Product is not null && Chance(50);
        var agent = byProduct ? null : RandomAgentOfRule();
        var when = ClaimExposures(agent, true);
        return new()
        {
            Parts = Chance(50) && _question.DevicePart is { } part ? [part] : [],
            Agent = agent,
            Product = byProduct ? ProductName : null,
            When = byProduct ? when with { Dilution = AxisLimit.Any } : when,
            Reaches = One(Level.Low, Level.Intermediate, Level.High, Level.Sterile),
        };
    }
}
