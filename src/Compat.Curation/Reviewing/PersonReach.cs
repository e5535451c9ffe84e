using Compat.Curation.Checking;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Asks for every agent on every part and every kind of patient which person rules speak, on both sides, and compares them as boxes.</summary>
internal sealed class PersonReach(ReachSides sides, FactList found)
{
    private readonly Dictionary<string, IReadOnlyList<Said>> _known = [];

    private sealed record Said(ChangeKind Kind, string Text, string Rule);

    public static void Look(ReachSides sides, FactList found)
    {
        if (sides.AnyEdited(RecordKind.PersonRule, RecordKind.Agent, RecordKind.Part)) new PersonReach(sides, found).Look();
    }

    private void Look()
    {
        foreach (var agent in sides.Agents)
        {
            var (ofBefore, ofAfter) = (Rules(true, agent), Rules(false, agent));
            if (ofBefore.Length + ofAfter.Length == 0) continue;
            var units = sides.UnitsOf(agent);
            if (units.IsOne && ofBefore.Concat(ofAfter).All(rule => !sides.IsEdited(RecordKind.PersonRule, rule.Id.Value))
                && ofBefore.Select(rule => rule.Id).SequenceEqual(ofAfter.Select(rule => rule.Id)) && !sides.AnyEdited(RecordKind.Part)) continue;
            foreach (var part in sides.Parts.Prepend(null))
            {
                var (was, now) = (On(true, ofBefore, part), On(false, ofAfter, part));
                foreach (var patient in Enum.GetValues<PatientGroup>())
                    foreach (var occupied in new[] { false, true }) Look(agent, part, patient, occupied, was, now, units);
            }
        }
    }

    private PersonRule[] Rules(bool isBefore, string agent) =>
        sides.Saying(isBefore, agent, (kb, node) => kb.Data.PersonRules.Where(rule => Reach.Names(kb, rule.Agent, node)).OrderBy(rule => rule.Id));

    private PersonRule[] On(bool isBefore, PersonRule[] rules, string? part) => rules.Where(rule => sides.IsFor(isBefore, rule.For, part)).ToArray();

    private void Look(string agent, string? part, PatientGroup patient, bool occupied, PersonRule[] onBefore, PersonRule[] onAfter, UnitPair units)
    {
        var (was, now) = (Speaking(onBefore, patient, occupied), Speaking(onAfter, patient, occupied));
        if (was.Length + now.Length == 0 || (occupied && !was.Concat(now).Any(rule => rule.Occupied))) return;
        var key = $"{string.Join(" ", was.Select(rule => rule.Id))}|{string.Join(" ", now.Select(rule => rule.Id))}|{patient}|{units}";
        if (!_known.TryGetValue(key, out var said)) _known[key] = said = Compare(was, now, patient, units).ToArray();
        var place = new FactPlace(agent, Words.Of(patient), part);
        foreach (var one in said) found.Add(RecordKind.PersonRule, one.Kind, one.Text, place, found.Causes(RecordKind.PersonRule, [one.Rule], [agent], part));
    }

    private static PersonRule[] Speaking(PersonRule[] rules, PatientGroup patient, bool occupied) =>
        rules.Where(rule => Reach.IsForPatients(rule, [patient], occupied)).ToArray();

    private IEnumerable<Said> Compare(PersonRule[] was, PersonRule[] now, PatientGroup patient, UnitPair units)
    {
        var asksOtherwise = false;
        foreach (var rule in was)
        {
            if (Uncovered(rule, now, units.IsOne) is not { } open) continue;
            asksOtherwise = true;
            yield return new(ChangeKind.Loosened,
                $"`{rule.Id}` {Does(rule)} for {Words.Of(patient)} at {BoxLine.Of(BoxValues.ToBox(open), units.Before)} no longer", rule.Id.Value);
        }

        foreach (var rule in now)
        {
            if (Uncovered(rule, was, units.IsOne) is not { } closed) continue;
            asksOtherwise = true;
            yield return new(ChangeKind.Tightened,
                $"`{rule.Id}` {Does(rule)} for {Words.Of(patient)} at {BoxLine.Of(BoxValues.ToBox(closed), units.After)}, which was not said before",
                rule.Id.Value);
        }

        if (was.Length == 0 && now.Length > 0
            && !now.Any(rule => rule.Verdict == PersonVerdict.NotAllowed && RecordDifference.AreSame(rule.When, ExposureBox.Unbounded)))
            yield return new(ChangeKind.Loosened,
                $"a rule speaks of {Words.Of(patient)} now: where it forbids nothing, the answer is no longer kept within limits", now[0].Id.Value);
        if (asksOtherwise) yield break;
        foreach (var rule in was.Where(rule => !now.Any(other => other.Id == rule.Id)))
            yield return new(ChangeKind.EvidenceWeakened, $"`{rule.Id}` says so for {Words.Of(patient)} no more, another rule still does", rule.Id.Value);
        foreach (var rule in now.Where(rule => !was.Any(other => other.Id == rule.Id)))
            yield return new(ChangeKind.EvidenceStrengthened, $"`{rule.Id}` says so for {Words.Of(patient)} too", rule.Id.Value);
        foreach (var rule in now.Where(rule => sides.IsEdited(RecordKind.PersonRule, rule.Id.Value) && was.Any(other => other.Id == rule.Id)))
            yield return new(ChangeKind.Tightened, $"`{rule.Id}` is another for {Words.Of(patient)}, and what is asked is no less", rule.Id.Value);
    }

    private static string Does(PersonRule rule) =>
        $"{(rule.Verdict == PersonVerdict.NotAllowed ? "forbids" : "asks duties for")} `{rule.Agent}`{(rule.Occupied ? " in an occupied device" : "")}";

    /// <summary>The first box in which a rule speaks and none of others asks as much; null where there is none.</summary>
    private static Box<Stretch>? Uncovered(PersonRule rule, PersonRule[] others, bool isOneUnit)
    {
        foreach (var method in BoxValues.Methods(rule.When).Methods)
        {
            var holes = others.Where(other => AsksAsMuch(other, rule, isOneUnit) && BoxValues.Methods(other.When).Contains(method))
                .Select(other => BoxValues.Of(other.When));
            if (Subtraction.MaximalBoxes(BoxValues.Of(rule.When) with { Methods = MethodSet.Of(method) }, holes) is [var first, ..]) return first;
        }

        return null;
    }

    /// <summary>
    /// Whether a rule asks at least what another does where both speak. A field that none of these lines names must be the same, or left out.
    /// </summary>
    private static bool AsksAsMuch(PersonRule one, PersonRule other, bool isOneUnit) =>
        (isOneUnit || (one.When.Strength.Statement != AxisStatement.Within && other.When.Strength.Statement != AxisStatement.Within))
        && (one.Verdict == PersonVerdict.NotAllowed || (other.Verdict == PersonVerdict.WithDuties && !DutyComparison.NotMet(other.Duties, one.Duties).Any()))
        && RecordDifference.IsSameOrUnset(
            one, other, nameof(one.Agent), nameof(one.Patients), nameof(one.Occupied), nameof(one.When), nameof(one.Verdict), nameof(one.Duties),
                nameof(one.For),
            nameof(one.Harm), nameof(one.Sources));
}

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
