using Compat.Curation.Checking;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Asks for every agent how staff are protected from it, on both sides.</summary>
internal sealed class ProtectionReach(ReachSides sides, FactList found)
{
    public static void Look(ReachSides sides, FactList found)
    {
        if (sides.AnyEdited(RecordKind.Protection, RecordKind.Agent)) new ProtectionReach(sides, found).Look();
    }

    private void Look()
    {
        foreach (var agent in sides.Agents)
        {
            var (was, now) = (sides.Saying(true, agent, Reach.Protections), sides.Saying(false, agent, Reach.Protections));
            var less = was.Where(one => !now.Any(other => AsksAsMuch(other, one))).ToArray();
            foreach (var one in less) Add(ChangeKind.DutiesDropped, agent, one, now.FirstOrDefault(other => other.Id == one.Id) is { } still
                ? $"protection of staff by `{one.Id}` is another: {string.Join(", ", Fields(one, still))}" : $"protection of staff by `{one.Id}` is gone");
            foreach (var one in now
                .Where(one => !was.Any(other => AsksAsMuch(other, one)) && less.All(other => other.Id != one.Id))) Add(ChangeKind.Tightened, agent, one,
                $"protection of staff by `{one.Id}` is on record");
            if (less.Length == 0 && NearestGloves(was) is { } gloves && NearestGloves(now)?.Id != gloves.Id)
                Add(ChangeKind.DutiesDropped, agent, gloves,
                    $"the gloves of `{gloves.Id}` are no longer those that count, but those of `{NearestGloves(now)?.Id}`");
        }
    }

    private void Add(ChangeKind kind, string agent, Protection one, string text) =>
        found.Add(RecordKind.Protection, kind, text, new FactPlace(agent), found.Causes(RecordKind.Protection, [one.Id.Value], [agent]));

    private static IEnumerable<string> Fields(Protection one, Protection other) =>
        RecordDifference.Fields(one, other).Where(field => !RecordDifference.IsRemark(typeof(Protection), field));

    /// <summary>The record whose gloves count: the nearest that names any.</summary>
    private static Protection? NearestGloves(Protection[] line) => line.FirstOrDefault(one => one.Gloves.Count > 0 && one.Agent != Model.AgentClass.Root);

    private static bool AsksAsMuch(Protection one, Protection other) => BoxValues.Holds(one.When, other.When)
        && RecordDifference.AreSameBut(one, other, nameof(one.Agent), nameof(one.When));
}
