using Compat.Tests.Reference;
using Google.OrTools.Sat;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>The same rules stated as constraints: a general-purpose solver says for each fault whether some exposure shows it.</summary>
internal sealed class SolverCheck
{
    private readonly KnowledgeData _data;
    private readonly ReferenceTrees _trees;
    private readonly Func<Rule, int> _evidence;
    private readonly HashSet<string> _proved = [];
    private readonly HashSet<string> _asked = [];

    /// <summary>Asks the solver of every subject and agent.</summary>
    /// <param name="data">The records.</param>
    /// <param name="evidence">How strong the sources of a rule are.</param>
    /// <param name="relates">Whether an 'allowed' and a 'not allowed' can contradict each other at all, or the second is an exception by its place.</param>
    public SolverCheck(KnowledgeData data, Func<Rule, int> evidence, Func<Rule, Rule, bool> relates)
    {
        _data = data;
        _trees = new ReferenceTrees(data, []);
        _evidence = evidence;
        var subjects = data.Materials.Select(material => new Question { Materials = [new MaterialSlot(material.Id)] })
            .Concat(data.Parts.Select(part => new Question { Part = part.Id }));
        foreach (var question in subjects.SelectMany(_ => data.Agents, (subject, agent) => subject with { Agent = agent.Id }))
            Ask(NaiveCheck.Whole(_trees, question), relates);
    }

    public IEnumerable<string> Contradictions => Proved("contradiction");

    public IEnumerable<string> Broken => Proved("broken");

    public IEnumerable<string> Dead => _data.Rules.Select(rule => rule.Id.Value).Except(Proved("speaks"));

    public IEnumerable<string> Redundant => Proved("speaks").Except(Proved("changes"));

    private IEnumerable<string> Proved(string what) => _proved.Where(one => one.StartsWith(what + " ", StringComparison.Ordinal))
        .Select(one => one[(what.Length + 1)..]);

    private void Ask(Question question, Func<Rule, Rule, bool> relates)
    {
        var asked = new ReferenceEvaluator(_trees, [], question);
        var stages = asked.Stages();
        var standings = _data.StandingRules.Where(rule => NaiveCheck.HoldsFor(_trees, rule, question)).ToArray();
        if (stages.All(stage => stage.Rules.Count == 0) || !_asked.Add(Mark(question, asked, stages, standings))) return;
        var exposure = new SolverExposure(asked, question, stages, _data.StandingRules);
        var circuit = exposure.Circuit;
        var goals = new Dictionary<string, ILiteral>();
        var stood = stages.Select(stage => circuit.Or(stage.Stood.Methods.Select(method => circuit.Within(exposure.Method, (int)method, (int)method))))
            .ToArray();
        var worlds = stages.Select(stage => new World(circuit, stage, exposure.Holds(stage), null, _evidence)).ToArray();
        for (var v = 0; v < stages.Count; v++)
        {
            var rules = stages[v].Rules.Where(one => one.Voice != ReferenceEvaluator.VoiceOfDuties).Select(one => one.Rule).Distinct().ToArray();
            foreach (var rule in rules) Rule(v, rule);
            foreach (var allowed in rules.Where(rule => rule.Allows))
                foreach (var forbids in rules.Where(rule => !rule.Allows && relates(allowed, rule)))
                    Goal($"contradiction {allowed.Id} {forbids.Id}", v, worlds[v].Meet(allowed, forbids));
        }

        var first = standings.Length == 0 ? [] : stages.Select(stage => new World(circuit, stage, exposure.HoldsAtFirstUse(stage), null, _evidence).Allowed)
            .ToArray();
        foreach (var standing in standings)
        {
            var missing = standing.AlwaysWith is { } kind
                ? circuit.And(worlds.Select((world, v) => stages[v].OwnDuties.Any(d => d.Kind == kind) ? circuit.False : world.Carries(kind).Not()))
                : circuit.True;
            goals[$"broken {standing.Id}"] = circuit.And([exposure.Within(standing), missing, .. worlds.Select(world => world.Allowed), .. first, .. stood]);
        }

        Prove(circuit, goals);

        void Rule(int v, Rule rule)
        {
            if (_proved.Contains($"changes {rule.Id}")) return;
            var without = new World(circuit, stages[v], exposure.Holds(stages[v]), rule, _evidence);
            var changes = circuit.And(worlds[v].IsLive(rule), worlds[v].Differs(without));
            Goal($"changes {rule.Id}", v, changes);
            Goal($"speaks {rule.Id}", v, circuit.Or(changes, worlds[v].Decides(rule)));
        }

        void Goal(string name, int v, ILiteral shows) =>
            goals[name] = circuit.Or(goals.TryGetValue(name, out var before) ? before : circuit.False, circuit.And(stood[v], shows));
    }

    /// <summary>All that is stated to the solver: where it is the same, so is what can be proved.</summary>
    private static string Mark(Question question, ReferenceEvaluator asked, IReadOnlyList<Stage> stages, IEnumerable<StandingRule> standings) =>
        string.Join("\n",
        stages.Select(
            stage =>
                $"{stage.Materials} {stage.MaterialsKnown} {stage.OwnDutiesCanBeMet} {stage.Stood} "
                    + $"{string.Join(",", stage.OwnDuties.Select(duty => duty.Kind))}\n"
            + string.Join("\n",
                stage.Rules.Select(
                    one => $"{one.Rule.Id} {one.Voice} {one.Methods} {one.DutiesCanBeMet} "
                        + $"{string.Join(" ", one.Box.OrderBy(axis => axis.Key).Select(axis => axis.Value))}")))
            .Concat(standings.Select(one => one.Id.Value)).Append(question.Strength?.Range.ToString())
                .Append(string.Join(" ", asked.Judged(question.ExposureTime!.Value))));

    /// <summary>Asks for an exposure that shows any goal not yet proved, again and again until there is none.</summary>
    private void Prove(Circuit circuit, Dictionary<string, ILiteral> goals)
    {
        foreach (var name in goals.Keys.Where(_proved.Contains).ToArray()) goals.Remove(name);
        while (goals.Count > 0)
        {
            circuit.Model.AddBoolOr(goals.Values);
            using var solver = new CpSolver { StringParameters = "num_workers:1" };
            var status = solver.Solve(circuit.Model);
            if (status == CpSolverStatus.Infeasible) return;
            Assert.True(status is CpSolverStatus.Optimal or CpSolverStatus.Feasible, status.ToString());
            foreach (var (name, shows) in goals.ToArray())
            {
                if (!solver.BooleanValue(shows)) continue;
                _proved.Add(name);
                goals.Remove(name);
            }
        }
    }
}
