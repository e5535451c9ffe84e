using System.Collections;
using System.Reflection;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Asks for every part type, agent and material what holds for it, what its parents say included, on both sides: what no decision map shows.</summary>
internal sealed class TraitReach(ReachSides sides, FactList found)
{
    // What decision maps show, and what is compared below in its own way. All else must be the same up to the root, what is added later too.
    private static readonly string[] OfParts =
    [
        nameof(PartType.Under), nameof(PartType.Materials), nameof(PartType.MaterialsKnown), nameof(PartType.Wettest), nameof(PartType.Duties),
        nameof(PartType.Never), nameof(PartType.Geometry), nameof(PartType.TouchedBy), nameof(PartType.Patients), nameof(PartType.Soil),
        nameof(PartType.FunctionCheck), nameof(PartType.DryBeforePower),
    ];

    private static readonly string[] OfAgents =
    [
        nameof(AgentClass.Under), nameof(AgentClass.Basis), nameof(AgentClass.Leaves), nameof(AgentClass.Duties), nameof(AgentClass.Usual),
            nameof(AgentClass.Cas),
        nameof(AgentClass.Density), nameof(AgentClass.AvailableChlorine), nameof(AgentClass.Chamber), nameof(AgentClass.InactivatedBy),
        nameof(AgentClass.BoundBy), nameof(AgentClass.Hazards),
    ];

    private static readonly string[] OfMaterials = [nameof(Material.Under), nameof(Material.Delicate), nameof(Material.DeclaredOnlySuffices)];

    public static void Look(ReachSides sides, FactList found)
    {
        var traits = new TraitReach(sides, found);
        if (sides.AnyEdited(RecordKind.Part)) foreach (var part in sides.Parts) traits.OfPart(part);
        if (sides.AnyEdited(RecordKind.Material)) foreach (var material in sides.Materials) traits.OfMaterial(material);
        if (!sides.AnyEdited(RecordKind.Agent)) return;
        foreach (var agent in sides.Agents) traits.OfAgent(agent);
        traits.Inactivation();
        traits.LeftOut();
    }

    private void OfPart(string id)
    {
        var (was, now) = (sides.Before.Part(sides.Before.Parts[id]), sides.After.Part(sides.After.Parts[id]));
        var (patients, patientsNow) = (Patients(sides.Before, id), Patients(sides.After, id));
        Either(was.Never, now.Never, "never stood before, and no longer said so", "never stood now", Words.Of, Tell("never"));
        if (now.Geometry != was.Geometry) Tell("geometry")(Loosened(now.Geometry < was.Geometry),
            $"the shape is {Words.Of(now.Geometry)}, before {Words.Of(was.Geometry)}", null);
        if (now.TouchedBy != was.TouchedBy)
        {
            var (needed, needs) = (LevelOf(sides.Before, was.TouchedBy), LevelOf(sides.After, now.TouchedBy));
            Tell("touched-by")(Loosened(needs < needed || now.TouchedBy is null), $"touched by {Contact(now.TouchedBy)}, before by {Contact(was.TouchedBy)}",
                null);
        }

        Either(patients, patientsNow, "no longer for", "now for", Words.Of, Tell("patients", "touched-by"));
        Either(was.Soil, now.Soil, "usually no longer soiled by", "usually soiled by", Words.Of, Tell("soil"));
        if (was.DryBeforePower != now.DryBeforePower)
        {
            var (seconds, secondsNow) = (was.DryBeforePower ?? 0m, now.DryBeforePower ?? 0m);
            var text = $"dry {secondsNow:0.##} s before power, before {seconds:0.##} s";
            Tell("dry-before-power")(secondsNow < seconds ? ChangeKind.DutiesDropped : ChangeKind.Tightened, text, null);
        }

        if (was.FunctionCheck != now.FunctionCheck)
        {
            var text = now.FunctionCheck is null ? "the function check is gone"
                : $"the function check is {(was.FunctionCheck is null ? "on record" : "another")}";
            Tell("function-check")(was.FunctionCheck is null ? ChangeKind.Tightened : ChangeKind.DutiesDropped, text, null);
        }

        foreach (var field in Otherwise(kb => kb.Parts, kb => kb.Data.Parts, id, OfParts)) Tell(field)(ChangeKind.Loosened, $"{field} is another", null);

        Teller Tell(params string[] fields) => TellerOf(RecordKind.Part, id, fields);
    }

    private void OfAgent(string id)
    {
        var (was, now) = (sides.Before.Agent(new AgentId(id)), sides.After.Agent(new AgentId(id)));
        Usual("strength", was.Strength, now.Strength, was.Basis, now.Basis);
        Usual("ph", was.Ph, now.Ph);
        Usual("temperature", was.Temperature, now.Temperature);
        if (was.Chamber != now.Chamber)
            Tell("chamber")(ChangeKind.Loosened, $"a question that leaves the method out is {(now.Chamber ? "now" : "no longer")} asked of the chamber", null);
        if (was.Agent.Density != now.Agent.Density)
            Tell("density")(ChangeKind.Loosened, $"strengths are converted by a density of {Shown(now.Agent.Density)}, before {Shown(was.Agent.Density)}",
                null);
        if (!was.AvailableChlorine.Equals(now.AvailableChlorine))
        {
            var text = $"strengths are converted by {Shown(now.AvailableChlorine)} of available chlorine, before {Shown(was.AvailableChlorine)}";
            found.Add(RecordKind.Agent, ChangeKind.Loosened, text, new FactPlace(id), Rather(EditsBelow(id), "available-chlorine"));
        }

        if (StrengthUnit.VolumesOfOxygen.Suits(was.Agent) != StrengthUnit.VolumesOfOxygen.Suits(now.Agent))
            Tell("cas")(ChangeKind.Loosened, "a strength in volumes of oxygen is another", null);
        Either(Above(true, id, one => one.Hazards), Above(false, id, one => one.Hazards), "a hazard to people is gone", "a hazard to people is on record",
            Words.Of, Tell("hazards"));
        Either(Above(true, id, one => one.BoundBy), Above(false, id, one => one.BoundBy), "no longer said to be bound", "said to be bound", by => by,
            Tell("bound-by"));
        foreach (var field in Otherwise(kb => kb.Agents, kb => kb.Data.Agents, id, OfAgents)) Tell(field)(ChangeKind.Loosened, $"{field} is another", null);

        Teller Tell(params string[] fields) => TellerOf(RecordKind.Agent, id, fields);

        void Usual(string axis, Interval? before, Interval? after, StrengthUnit? unitBefore = null, StrengthUnit? unit = null)
        {
            if (before.Equals(after)) return;
            var loosened = after is { } range && !(before is { } former && former.LiesIn(range));
            var text = $"a question that leaves the {axis} out is judged over {Shown(after, unit)}, before over {Shown(before, unitBefore)}";
            Tell("usual." + axis)(Loosened(loosened), text, null);
        }
    }

    private void OfMaterial(string id)
    {
        var (was, now) = (sides.Before.DeclaredOnlySuffices(sides.Before.Materials[id]), sides.After.DeclaredOnlySuffices(sides.After.Materials[id]));
        if (was != now) Tell("declared-only-suffices")(Loosened(now), $"what a data sheet leaves out {(now ? "no longer matters" : "matters now")}", null);
        foreach (var field in Otherwise(kb => kb.Materials, kb => kb.Data.Materials, id, OfMaterials)) Tell(field)(ChangeKind.Loosened, $"{field} is another",
            null);

        Teller Tell(params string[] fields) => TellerOf(RecordKind.Material, id, fields);
    }

    /// <summary>Tells of a change, with what meets the thing it is of, or with nothing.</summary>
    private delegate void Teller(ChangeKind kind, string text, string? with);

    /// <summary>Tells of changes of some fields of a part type, agent or material, laid to the edits of these fields at it and above it.</summary>
    private Teller TellerOf(RecordKind kind, string id, string[] fields) =>
        (change, text, with) => found.Add(kind, change, text, new FactPlace(id, with), Rather(sides.EditsAbove(kind, id), fields));

    /// <summary>Tells what is gone from a list, and what came.</summary>
    private static void Either<T>(IReadOnlyCollection<T> was, IReadOnlyCollection<T> now, string gone, string came, Func<T, string> wordOf, Teller tell)
    {
        foreach (var one in was.Except(now)) tell(ChangeKind.Loosened, gone, wordOf(one));
        foreach (var one in now.Except(was)) tell(ChangeKind.Tightened, came, wordOf(one));
    }

    private static ChangeKind Loosened(bool isLoosened) => isLoosened ? ChangeKind.Loosened : ChangeKind.Tightened;

    /// <summary>The fields that say another thing of something on the two sides, by itself or by what stands above it, but for some.</summary>
    private IEnumerable<string> Otherwise<T>(Func<CompiledBase, Tree> treeOf, Func<CompiledBase, IReadOnlyList<T>> recordsOf, string id, string[] except)
        where T : class
    {
        var (was, now) = (Line(sides.Before), Line(sides.After));
        return RecordDifference.Deciding(typeof(T), except).Where(property => !RecordDifference.AreSame(Said(property, was), Said(property, now)))
            .Select(property => RecordDifference.Spelled(property.Name));

        T[] Line(CompiledBase kb) => treeOf(kb).Upward(treeOf(kb)[id]).Select(node => recordsOf(kb)[node]).ToArray();

        // What may be left out is said by the nearest that says it; else what each of them says adds up.
        static object[] Said(PropertyInfo property, T[] upward)
        {
            var all = upward.Select(property.GetValue).OfType<object>();
            if (new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable) all = all.Take(1);
            return all.SelectMany(one => one is IEnumerable list and not string ? list.Cast<object>() : [one]).Distinct().ToArray();
        }
    }

    /// <summary>The edits of an agent and of all that stood or stand below it, those that came or went too.</summary>
    private IEnumerable<RecordEdit> EditsBelow(string id) => sides.All.Where(edit => edit.Kind == RecordKind.Agent && !edit.IsWording
        && (sides.LineOfAgent(true, edit.Id).Contains(id) || sides.LineOfAgent(false, edit.Id).Contains(id)));

    /// <summary>Asks the everyday question of a ward, which leaves strength and pH out, of every part and every agent whose usual figures are others.</summary>
    private void LeftOut()
    {
        var agents = sides.Agents.Where(id => HasOtherFigures(sides.Before.Agent(new AgentId(id)), sides.After.Agent(new AgentId(id)))).ToArray();
        if (agents.Length == 0) return;
        var (before, after) = (KnowledgeBase.OfChecked(sides.Before.Data, []), KnowledgeBase.OfChecked(sides.After.Data, []));
        var everyday = new Question { Method = ApplicationMethod.DampWipe, ExposureTime = Interval.Exactly(30m), Uses = 1, OnlyPart = true };
        var asked = agents.SelectMany(agent => sides.Parts.Select(part => everyday with { Agent = new(agent), Part = new(part) })).ToArray();
        var verdicts = asked.AsParallel().AsOrdered()
            .Select(question => (Question: question, Was: before.Ask(question).Verdict, Now: after.Ask(question).Verdict)).ToArray();
        foreach (var (question, was, now) in verdicts.Where(one => one.Was != one.Now).OrderBy(one => one.Was).ThenByDescending(one => one.Now))
        {
            var text = $"asked as a damp wipe of 30 s with strength, pH and temperature left out: {Plain(was)} -> {Plain(now)}";
            found.Add(RecordKind.Agent, Loosened(now > was), text, new FactPlace(question.Agent!.Value, null, question.Part!.Value),
                Rather(sides.EditsAbove(RecordKind.Agent, question.Agent.Value), "usual.strength", "usual.ph", "usual.temperature"));
        }

        static bool HasOtherFigures(AgentTraits was, AgentTraits now) =>
            !was.Strength.Equals(now.Strength) || !was.Ph.Equals(now.Ph) || !was.Temperature.Equals(now.Temperature);
    }

    /// <summary>Which agents destroy which, on both sides.</summary>
    private void Inactivation()
    {
        var (was, now) = (Destroyers(true), Destroyers(false));
        foreach (var (agent, by) in was.Except(now)) Add(ChangeKind.Loosened, "no longer said to be inactivated", agent, by);
        foreach (var (agent, by) in now.Except(was)) Add(ChangeKind.Tightened, "said to be inactivated", agent, by);

        void Add(ChangeKind kind, string text, string agent, string by) => found.Add(RecordKind.Agent, kind, text, new FactPlace(agent, by),
            Rather(sides.EditsAbove(RecordKind.Agent, agent), "inactivated-by").Concat(Rather(sides.EditsAbove(RecordKind.Agent, by))));
    }

    private HashSet<(string, string)> Destroyers(bool isBefore)
    {
        var kb = sides.Of(isBefore);
        var pairs = new HashSet<(string, string)>();
        foreach (var agent in sides.Agents)
        {
            var named = Above(isBefore, agent, one => one.InactivatedBy);
            if (named.Length > 0) pairs.UnionWith(sides.Agents.Where(by => named.Any(top => Reach.Names(kb, top, kb.Agents[by]))).Select(by => (agent, by)));
        }

        return pairs;
    }

    private T[] Above<T>(bool isBefore, string id, Func<AgentClass, IEnumerable<T>> of)
    {
        var kb = sides.Of(isBefore);
        return kb.Agents.Upward(kb.Agents[id]).SelectMany(node => of(kb.Data.Agents[node])).Distinct().ToArray();
    }

    /// <summary>Of some edits those of a field or of the place in the tree; what came or went has all fields.</summary>
    private static IEnumerable<RecordEdit> Rather(IEnumerable<RecordEdit> edits, params string[] fields) =>
        edits.Where(edit => edit.Action != EditAction.Changed || edit.Fields.Any(field => field == "under" || fields.Contains(field)));

    private static IReadOnlyList<PatientGroup> Patients(CompiledBase kb, string part) => NeedMaker.Of(kb, new Question { Part = new(part) }).Patients;

    private static Model.Level? LevelOf(CompiledBase kb, TouchedBy? contact) =>
        contact is { } known ? NeedMaker.Of(kb, new Question { TouchedBy = known, Soil = [] }).Level ?? Model.Level.Cleaned : null;

    private static string Plain(Verdict verdict) => Words.Of(verdict).Replace('-', ' ');

    private static string Contact(TouchedBy? contact) => contact is { } known ? Words.Of(known) : "what nobody wrote down";

    private static string Shown(decimal? figure) => figure is { } known ? Interval.Figure(known) : "nothing on record";

    private static string Shown(Interval? share) => share is { IsPoint: true } one ? Shown(one.Lower) : share?.ToString() ?? Shown((decimal?)null);

    private static string Shown(Interval? range, StrengthUnit? unit) =>
        range is not { } known ? "all that there can be" : unit is null ? known.ToString() : known.Scale(1m / unit.PercentPerUnit).ToString(unit.Text);
}

/// <summary>Asks for everything that can touch a part, with each soil on it and with none, what is needed, on both sides.</summary>
internal static class NeedReach
{
    public static void Look(ReachSides sides, FactList found)
    {
        if (!sides.AnyEdited(RecordKind.Need)) return;
        foreach (var contact in Enum.GetValues<TouchedBy>())
        {
            var plain = "";
            foreach (var soil in Enum.GetValues<SoilKind>().Select(one => (SoilKind?)one).Prepend(null))
            {
                var question = new Question { TouchedBy = contact, Soil = soil is { } one ? [one] : [] };
                var (was, now) = (NeedMaker.Of(sides.Before, question), NeedMaker.Of(sides.After, question));
                if (was.Level == now.Level && was.KeptDry == now.KeptDry && was.CleanFirst == now.CleanFirst) continue;
                var said = $"it needs {Said(now)}, before {Said(was)}";
                if (soil is null) plain = said;
                else if (said == plain) continue;
                var loosened = now.KeptDry != was.KeptDry ? was.KeptDry || was.Level is not null : now.Level < was.Level
                    || (was.Level is not null && now.Level is null) || (was.CleanFirst && !now.CleanFirst);
                var records = was.DecidedByRules.Concat(now.DecidedByRules).Select(id => id.Value);
                found.Add(RecordKind.Need, loosened ? ChangeKind.Loosened : ChangeKind.Tightened, $"{(soil is null ? "" : "soiled, ")}{said}",
                    new FactPlace(Words.Of(contact), soil is { } known ? Words.Of(known) : null), found.Causes(RecordKind.Need, records, []));
            }
        }
    }

    private static string Said(Need need) =>
        need.KeptDry ? "to be kept dry" : (need.Level is { } level ? Words.Of(level) : "what nobody wrote down") + (need.CleanFirst ? ", cleaned first" : "");
}
