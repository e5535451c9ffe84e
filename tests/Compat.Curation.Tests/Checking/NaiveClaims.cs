using Compat.Tests.Reference;

namespace Compat.Curation.Tests.Checking;

/// <summary>Claims that promise more than another one lets stand, found by trying every agent, part, method and grid point of two boxes.</summary>
internal sealed class NaiveClaims(KnowledgeData data)
{
    private static readonly Axis[] Axes = [Axis.Strength, Axis.ExposureTime, Axis.Temperature, Axis.Ph];
    private readonly ReferenceTrees _trees = new(data, []);

    /// <summary>The claim, what it promises (null for the level itself), and who speaks against it.</summary>
    public IEnumerable<(string Claim, string? Target, string Other)> Found() =>
        from claim in data.Claims.Where(one => one.Refuted is null)
        from other in data.Claims.Where(one => one != claim)
        from target in Denied(claim, other)
        where data.Agents.Any(
            agent => data.Parts.Any(part => Enum.GetValues<ApplicationMethod>().Skip(1).Any(method => Meet(claim, other, target, agent.Id, part.Id, method))))
        select (claim.Id.Value, target?.ToString(), other.Id.Value);

    private IEnumerable<OrganismTarget?> Denied(Claim claim, Claim other)
    {
        if (other.Refuted is not null && other.Reaches is { } level && claim.Reaches is { } reached && reached >= level) yield return null;
        OrganismTarget[] not = [.. other.DoesNotKill, .. other.Refuted is null ? [] : other.Kills];
        foreach (var target in not.Distinct().Where(target => !claim.DoesNotKill.Contains(target)))
        {
            var group = target.Group ?? data.Organisms.Single(one => one.Id == target.Organism).Group;
            if (claim.Kills.Contains(OrganismTarget.Of(group)) || data.Levels.Any(one => one.Level == claim.Reaches && one.Includes.Contains(group)))
                yield return target;
        }
    }

    private bool Meet(Claim claim, Claim other, OrganismTarget? target, AgentId agent, PartId part, ApplicationMethod method)
    {
        bool Speaks(Claim one) => _trees.Below(agent, one.Agent) && (one.For.Count == 0 || one.For.Any(named => _trees.Below(part, named)));
        if (!Speaks(claim) || !Speaks(other) || !claim.With.All(partner => other.With.Any(named => _trees.Below(partner.Agent, named.Agent)))) return false;
        if (other.StandsSoil.Count > 0 && claim.Needs.Contains(ClaimNeed.CleanFirst) && !other.StandsSoil.Any(claim.StandsSoil.Contains)) return false;
        var methods = Methods(other);
        if (!Methods(claim).Contains(method)
            || (!methods.Contains(method)
            && !methods.Any(own => own > method && own != ApplicationMethod.Chamber && method != ApplicationMethod.Chamber))) return false;
        var values = Axes.Select(axis => Grid(axis).Where(value => Range(claim, axis).Contains(value) && Binds(Range(other, axis), axis, value)).ToArray())
            .ToArray();
        var killers = target?.Organism is null ? []
            : data.Claims.Where(one => one is { Refuted: null, Where: null, With.Count: 0 } && one.Kills.Contains(target) && Speaks(one)
            && one.Needs.All(claim.Needs.Contains) && Methods(one).Contains(method)).ToArray();
        return ReferenceEvaluator.Cross<decimal>(values).Any(point => !killers.Any(one => Axes.Zip(point).All(at => Range(one, at.First).Contains(at.Second))));
    }

    private static bool Binds(Interval range, Axis axis, decimal value) =>
        axis == Axis.Ph ? range.Contains(value) : new Interval(null, false, range.Upper, range.UpperIncluded).Contains(value);

    /// <summary>All ends of the boxes of claims, the values between them and one beyond.</summary>
    private decimal[] Grid(Axis axis)
    {
        var ends = data.Claims.SelectMany(one => new[] { Range(one, axis).Lower, Range(one, axis).Upper }).OfType<decimal>().Append(1m).Distinct().Order()
            .ToArray();
        return [ends[0] - 1, .. ends, .. ends.Zip(ends.Skip(1), (a, b) => (a + b) / 2), ends[^1] + 1];
    }

    private ApplicationMethod[] Methods(Claim claim) => claim.When.Methods.Statement switch
    {
        AxisStatement.Within => [.. claim.When.Methods.Methods.Methods],
        AxisStatement.Unstated => [.. _trees.Convention(ConventionKey.ClaimMethods).Methods.Methods],
        _ => [.. MethodSet.All.Methods],
    };

    private Interval Range(Claim claim, Axis axis)
    {
        var line = _trees.Line(claim.Agent);
        var (limit, silent) = axis switch
        {
            Axis.Strength => (claim.When.Strength, ReferenceTrees.Nearest(line, one => one.Usual.Strength) ?? Interval.Whole),
            Axis.ExposureTime => (claim.When.ContactTime, Interval.Whole),
            Axis.Temperature => (claim.When.Temperature, _trees.Convention(ConventionKey.ClaimTemperature).Range),
            _ => (claim.When.Ph, ReferenceTrees.Nearest(line, one => one.Usual.Ph) ?? _trees.Convention(ConventionKey.UnstatedPh).Range),
        };
        return limit.Statement switch { AxisStatement.Within => limit.Range, AxisStatement.Unstated => silent, _ => Interval.Whole };
    }
}
