using System.Collections;
using System.Reflection;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Asks for every part type, agent and material what holds for it, what its parents say included, on both sides: what no decision map shows.</summary>
internal sealed class TraitReach(ReachSides sides, FactList found)
{
    /// <summary>
    /// What decision maps show, and what is compared below in its own way. All else that a record says must be the same up to the root, what is added later
    /// too.
    /// </summary>
    private static readonly string[] OfParts = [nameof(PartType.Under), nameof(PartType.Materials), nameof(PartType.MaterialsKnown), nameof(PartType.Wettest),
        nameof(PartType.Duties),
        nameof(PartType.Never), nameof(PartType.Geometry), nameof(PartType.TouchedBy), nameof(PartType.Patients), nameof(PartType.Soil),
            nameof(PartType.FunctionCheck), nameof(PartType.DryBeforePower)];

    private static readonly string[] OfAgents = [nameof(AgentClass.Under), nameof(AgentClass.Basis), nameof(AgentClass.Leaves), nameof(AgentClass.Duties),
        nameof(AgentClass.Usual), nameof(AgentClass.Cas),
        nameof(AgentClass.Density), nameof(AgentClass.AvailableChlorine), nameof(AgentClass.Chamber), nameof(AgentClass.InactivatedBy),
            nameof(AgentClass.BoundBy), nameof(AgentClass.Hazards)];

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
        foreach (var act in was.Never.Except(now.Never)) Part(ChangeKind.Loosened, id, "never stood before, and no longer said so", Words.Of(act), "never");
        foreach (var act in now.Never.Except(was.Never)) Part(ChangeKind.Tightened, id, "never stood now", Words.Of(act), "never");
        if (now.Geometry != was.Geometry) Part(now.Geometry < was.Geometry ? ChangeKind.Loosened
            : ChangeKind.Tightened, id, $"the shape is {Words.Of(now.Geometry)}, before {Words.Of(was.Geometry)}", null, "geometry");
        if (now.TouchedBy != was.TouchedBy)
        {
            var (needed, needs) = (LevelOf(sides.Before, was.TouchedBy), LevelOf(sides.After, now.TouchedBy));
            Part(needs < needed || now.TouchedBy is null ? ChangeKind.Loosened
                : ChangeKind.Tightened, id, $"touched by {Contact(now.TouchedBy)}, before by {Contact(was.TouchedBy)}", null, "touched-by");
        }

        var (patients, patientsNow) = (NeedMaker.Of(sides.Before, new Question { Part = new(id) }).Patients,
            NeedMaker.Of(sides.After, new Question { Part = new(id) }).Patients);
        foreach (var patient in patients.Except(patientsNow)) Part(ChangeKind.Loosened, id, "no longer for", Words.Of(patient), "patients", "touched-by");
        foreach (var patient in patientsNow.Except(patients)) Part(ChangeKind.Tightened, id, "now for", Words.Of(patient), "patients", "touched-by");
        foreach (var soil in was.Soil.Except(now.Soil)) Part(ChangeKind.Loosened, id, "usually no longer soiled by", Words.Of(soil), "soil");
        foreach (var soil in now.Soil.Except(was.Soil)) Part(ChangeKind.Tightened, id, "usually soiled by", Words.Of(soil), "soil");
        if (was.DryBeforePower != now.DryBeforePower)
            Part((now.DryBeforePower ?? 0m) < (was.DryBeforePower ?? 0m) ? ChangeKind.DutiesDropped
                : ChangeKind.Tightened, id, $"dry {now.DryBeforePower ?? 0:0.##} s before power, before {was.DryBeforePower ?? 0:0.##} s", null,
                "dry-before-power");
        if (was.FunctionCheck != now.FunctionCheck)
            Part(was.FunctionCheck is null ? ChangeKind.Tightened : ChangeKind.DutiesDropped, id, now.FunctionCheck is null ? "the function check is gone"
                : $"the function check is {(was.FunctionCheck is null ? "on record" : "another")}", null, "function-check");
        foreach (var field in Otherwise<PartType>(one => sides.LineOfPart(one, id), kb => kb.Data.Parts, one => one.Id, OfParts)) Part(ChangeKind.Loosened, id,
            $"{field} is another", null, field);
    }

    private void Part(ChangeKind kind, string id, string text, string? with, params string[] fields) =>
        found.Add(RecordKind.Part, kind, text, new FactPlace(id, with), Rather(sides.EditsAbove(RecordKind.Part, id), fields));

    private void OfAgent(string id)
    {
        var (was, now) = (sides.Before.Agent(new AgentId(id)), sides.After.Agent(new AgentId(id)));
        foreach (var (axis, before, after) in new[] { ("strength", was.Strength, now.Strength), ("ph", was.Ph, now.Ph),
            ("temperature", was.Temperature, now.Temperature) })
        {
            if (before.Equals(after)) continue;
            var loosened = after is { } range && !(before is { } former && former.LiesIn(range));
            var (unitNow, unitBefore) = axis == "strength" ? (now.Basis, was.Basis) : (null, null);
            Agent(loosened ? ChangeKind.Loosened
                : ChangeKind.Tightened, id,
                $"a question that leaves the {axis} out is judged over {Shown(after, unitNow)}, before over {Shown(before, unitBefore)}", null,
                "usual." + axis);
        }

        if (was.Chamber != now.Chamber) Agent(ChangeKind.Loosened, id,
            $"a question that leaves the method out is {(now.Chamber ? "now" : "no longer")} asked of the chamber", null, "chamber");
        if (was.Agent.Density != now.Agent.Density) Agent(ChangeKind.Loosened, id,
            $"strengths are converted by a density of {Shown(now.Agent.Density)}, before {Shown(was.Agent.Density)}", null, "density");
        if (!was.AvailableChlorine.Equals(now.AvailableChlorine))
            found.Add(RecordKind.Agent, ChangeKind.Loosened,
                $"strengths are converted by {Shown(now.AvailableChlorine)} of available chlorine, before {Shown(was.AvailableChlorine)}", new FactPlace(id),
                Rather(EditsBelow(id), "available-chlorine"));
        var (hazards, hazardsNow) = (Above(true, id, one => one.Hazards), Above(false, id, one => one.Hazards));
        foreach (var hazard in hazards.Except(hazardsNow)) Agent(ChangeKind.Loosened, id, "a hazard to people is gone", Words.Of(hazard), "hazards");
        foreach (var hazard in hazardsNow.Except(hazards)) Agent(ChangeKind.Tightened, id, "a hazard to people is on record", Words.Of(hazard), "hazards");
        var (bound, boundNow) = (Above(true, id, one => one.BoundBy), Above(false, id, one => one.BoundBy));
        foreach (var by in bound.Except(boundNow)) Agent(ChangeKind.Loosened, id, "no longer said to be bound", by, "bound-by");
        foreach (var by in boundNow.Except(bound)) Agent(ChangeKind.Tightened, id, "said to be bound", by, "bound-by");
        if (StrengthUnit.VolumesOfOxygen.Suits(was.Agent) != StrengthUnit.VolumesOfOxygen.Suits(now.Agent)) Agent(ChangeKind.Loosened, id,
            "a strength in volumes of oxygen is another", null, "cas");
        foreach (var field in Otherwise<AgentClass>(one => sides.LineOfAgent(one, id), kb => kb.Data.Agents, one => one.Id,
            OfAgents)) Agent(ChangeKind.Loosened, id, $"{field} is another", null, field);
    }

    /// <summary>The edits of an agent and of all that stood or stand below it, those that came or went too.</summary>
    private IEnumerable<RecordEdit> EditsBelow(string id) =>
        sides.All.Where(edit => edit.Kind == RecordKind.Agent && !edit.IsWording
            && (sides.LineOfAgent(true, edit.Id).Contains(id) || sides.LineOfAgent(false, edit.Id).Contains(id)));

    private void Agent(ChangeKind kind, string id, string text, string? with, params string[] fields) =>
        found.Add(RecordKind.Agent, kind, text, new FactPlace(id, with), Rather(sides.EditsAbove(RecordKind.Agent, id), fields));

    /// <summary>Asks the everyday question of a ward, which leaves strength and pH out, of every part and every agent whose usual figures are others.</summary>
    private void LeftOut()
    {
        var agents = sides.Agents
            .Where(id => sides.Before.Agent(new AgentId(id)) is var was && sides.After.Agent(new AgentId(id)) is var now
            && !(was.Strength.Equals(now.Strength) && was.Ph.Equals(now.Ph) && was.Temperature.Equals(now.Temperature))).ToArray();
        if (agents.Length == 0) return;
        var (before, after) = (KnowledgeBase.OfChecked(sides.Before.Data, []), KnowledgeBase.OfChecked(sides.After.Data, []));
        var asked = agents.SelectMany(agent => sides.Parts
            .Select(part => new Question { Agent = new(agent), Part = new(part), Method = ApplicationMethod.DampWipe, ExposureTime = Interval.Exactly(30m),
            Uses = 1, OnlyPart = true })).ToArray();
        var verdicts = asked.AsParallel().AsOrdered()
            .Select(question => (Question: question, Was: before.Ask(question).Verdict, Now: after.Ask(question).Verdict)).ToArray();
        foreach (var (question, was, now) in verdicts.Where(one => one.Was != one.Now).OrderBy(one => one.Was).ThenByDescending(one => one.Now))
            found.Add(RecordKind.Agent, now > was ? ChangeKind.Loosened
                : ChangeKind.Tightened, $"asked as a damp wipe of 30 s with strength, pH and temperature left out: {Plain(was)} -> {Plain(now)}",
                new FactPlace(question.Agent!.Value, null, question.Part!.Value),
                    Rather(sides.EditsAbove(RecordKind.Agent, question.Agent.Value), "usual.strength", "usual.ph", "usual.temperature"));
    }

    private static string Plain(Verdict verdict) => Words.Of(verdict).Replace('-', ' ');

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
            var named = Above(isBefore, agent, one => one.InactivatedBy).Select(id => kb.Agents[id.Value]).ToArray();
            if (named.Length > 0) pairs.UnionWith(sides.Agents.Where(by => named.Any(top => kb.Agents.IsAtOrBelow(kb.Agents[by], top)))
                .Select(by => (agent, by)));
        }

        return pairs;
    }

    private T[] Above<T>(bool isBefore, string id, Func<AgentClass, IEnumerable<T>> of)
    {
        var kb = sides.Of(isBefore);
        return kb.Agents.Upward(kb.Agents[id]).SelectMany(node => of(kb.Data.Agents[node])).Distinct().ToArray();
    }

    private void OfMaterial(string id)
    {
        var (was, now) = (sides.Before.DeclaredOnlySuffices(sides.Before.Materials[id]), sides.After.DeclaredOnlySuffices(sides.After.Materials[id]));
        if (was != now) Material(now ? ChangeKind.Loosened
            : ChangeKind.Tightened, $"what a data sheet leaves out {(now ? "no longer matters" : "matters now")}", "declared-only-suffices");
        foreach (var field in Otherwise<Material>(one => sides.LineOfMaterial(one, id), kb => kb.Data.Materials, one => one.Id,
            OfMaterials)) Material(ChangeKind.Loosened, $"{field} is another", field);

        void Material(ChangeKind kind, string text, string field) =>
            found.Add(RecordKind.Material, kind, text, new FactPlace(id), Rather(sides.EditsAbove(RecordKind.Material, id), field));
    }

    /// <summary>
    /// The fields that say another thing of something on the two sides, by itself or by what stands above it, but for those that are compared in their own
    /// way.
    /// </summary>
    private IEnumerable<string> Otherwise<T>(Func<bool, IEnumerable<string>> lineOf, Func<CompiledBase, IReadOnlyList<T>> recordsOf, Func<T, Id> idOf,
        string[] except) where T : class
    {
        var (was, now) = (Line(true), Line(false));
        return RecordDifference.Deciding(typeof(T), except)
            .Where(property => !RecordDifference.AreSame(Said(property, was), Said(property, now))).Select(property => RecordDifference.Spelled(property.Name));

        T[] Line(bool isBefore) => lineOf(isBefore).Select(id => recordsOf(sides.Of(isBefore)).First(one => idOf(one).Value == id)).ToArray();

        // What may be left out is said by the nearest that says it; else what each of them says adds up.
        static object[] Said(PropertyInfo property, T[] upward)
        {
            var all = upward.Select(property.GetValue).OfType<object>();
            if (new NullabilityInfoContext().Create(property).ReadState == NullabilityState.Nullable) all = all.Take(1);
            return all.SelectMany(one => one is IEnumerable list and not string ? list.Cast<object>() : [one]).Distinct().ToArray();
        }
    }

    /// <summary>Of some edits those of a field or of the place in the tree; what came or went has all fields.</summary>
    private static IEnumerable<RecordEdit> Rather(IEnumerable<RecordEdit> edits, params string[] fields) =>
        edits.Where(edit => edit.Action != EditAction.Changed || edit.Fields.Any(field => field == "under" || fields.Contains(field)));

    private static Model.Level? LevelOf(CompiledBase kb, TouchedBy? contact) =>
        contact is { } known ? NeedMaker.Of(kb, new Question { TouchedBy = known, Soil = [] }).Level ?? Model.Level.Cleaned : null;

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
