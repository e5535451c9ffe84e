using System.Linq.Expressions;
using NRules;
using NRules.RuleModel;
using NRules.RuleModel.Builders;
using RulesEngine.Models;

namespace Compat.Benchmarks.Asking;

/// <summary>An engine that notes on a probe which rules hold.</summary>
internal interface IPeer
{
    string Name { get; }

    void Run(Probe probe, int part);
}

/// <summary>RulesEngine: as shipped one workflow of all rules, at its best one a target, of which only those that reach the part are run.</summary>
internal sealed class RulesEnginePeer(Workload work, bool atItsBest) : IPeer
{
    private const string All = "all";

    private readonly RulesEngine.RulesEngine _engine = new(Workflows(work, atItsBest), new ReSettings
    {
        EnableScopedParams = false,
        EnableFormattedErrorMessage = false,
        EnableExceptionAsErrorMessage = false,
        UseFastExpressionCompiler = true,
    });
    private readonly HashSet<string> _known = [.. work.Rules.Select(rule => $"{rule.Target}")];

    public string Name => atItsBest ? "RulesEngine, a set a target" : "RulesEngine, as shipped";

    public void Run(Probe probe, int part)
    {
        if (!atItsBest) Run(All, probe);
        else
            foreach (var target in work.TargetsOf(part))
                if (_known.Contains($"{target}")) Run($"{target}", probe);
    }

    private void Run(string workflow, Probe probe)
    {
        var results = _engine.ExecuteAllRulesAsync(workflow, new RuleParameter("q", probe)).AsTask().GetAwaiter().GetResult();
        foreach (var result in results)
            if (result.IsSuccess) probe.Note(int.Parse(result.Rule.RuleName, System.Globalization.CultureInfo.InvariantCulture));
    }

    private static Workflow[] Workflows(Workload work, bool atItsBest) =>
        Enumerable.Range(0, work.Rules.Length).GroupBy(i => atItsBest ? $"{work.Rules[i].Target}" : All)
            .Select(group => new Workflow { WorkflowName = group.Key, Rules = group.Select(i => Of(work.Rules[i], i, !atItsBest)).ToArray() }).ToArray();

    private static RulesEngine.Models.Rule Of(BoxRule rule, int number, bool namesTarget) => new()
    {
        RuleName = $"{number}",
        Expression = (namesTarget ? $"q.Reaches({rule.Target}) && " : "")
            + $"q.IsOf({rule.Agent}) && q.Strength >= {rule.StrengthLow} && q.Strength <= {rule.StrengthHigh} && q.ExposureTime "
            + $"{(rule.Allows ? "<=" : ">=")} {rule.ExposureTime} && q.Uses({rule.Methods})",
    };
}

/// <summary>NRules: as shipped one session of all rules, facts taken back after each question; at its best one session a target, nothing taken back.</summary>
internal sealed class NRulesPeer : IPeer
{
    private readonly Workload _work;
    private readonly bool _atItsBest;
    private readonly ISession? _all;
    private readonly ILookup<int, int> _byTarget;
    private readonly Dictionary<int, ISession> _sessions = [];

    public NRulesPeer(Workload work, bool atItsBest)
    {
        (_work, _atItsBest) = (work, atItsBest);
        _byTarget = Enumerable.Range(0, work.Rules.Length).ToLookup(i => work.Rules[i].Target);
        if (!atItsBest) _all = Session(Enumerable.Range(0, work.Rules.Length), namesTarget: true);
    }

    public string Name => _atItsBest ? "NRules, a session a target" : "NRules, as shipped";

    public void Run(Probe probe, int part)
    {
        if (_all is not null)
        {
            _all.Insert(probe);
            _all.Fire();
            _all.Retract(probe);
            return;
        }

        foreach (var target in _work.TargetsOf(part))
        {
            if (!_byTarget.Contains(target)) continue;
            if (!_sessions.TryGetValue(target, out var session)) _sessions[target] = session = Session(_byTarget[target], namesTarget: false);
            session.Insert(probe);
            session.Fire();
        }
    }

    private ISession Session(IEnumerable<int> rules, bool namesTarget) => new RuleCompiler().Compile(rules.Select(i => Of(i, namesTarget)).ToArray())
        .CreateSession();

    private IRuleDefinition Of(int number, bool namesTarget)
    {
        var rule = _work.Rules[number];
        var builder = new RuleBuilder();
        builder.Name($"{number}");
        var pattern = builder.LeftHandSide().Pattern(typeof(Probe), "q");
        var q = Expression.Parameter(typeof(Probe), "q");
        if (namesTarget) Condition(nameof(Probe.Reaches), rule.Target);
        Condition(nameof(Probe.IsOf), rule.Agent);
        Condition(nameof(Probe.In), number);
        builder.RightHandSide().Action(Expression.Lambda<Action<IContext, Probe>>(
            Expression.Call(q, typeof(Probe).GetMethod(nameof(Probe.Note))!, Expression.Constant(number)),
                Expression.Parameter(typeof(IContext), "context"), q));
        return builder.Build();

        void Condition(string method, int argument) =>
            pattern.Condition(Expression.Lambda<Func<Probe, bool>>(Expression.Call(q, typeof(Probe).GetMethod(method)!, Expression.Constant(argument)), q));
    }
}
