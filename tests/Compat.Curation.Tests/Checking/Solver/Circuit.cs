using Google.OrTools.Sat;

namespace Compat.Curation.Tests.Checking.Solver;

/// <summary>Truth values and ranks as the solver states them.</summary>
internal sealed class Circuit
{
    private int _names;

    public Circuit()
    {
        True = Model.TrueLiteral();
        False = Model.FalseLiteral();
    }

    public CpModel Model { get; } = new();

    public ILiteral True { get; }

    public ILiteral False { get; }

    public IntVar Rank(IEnumerable<long> values) => Model.NewIntVarFromDomain(Google.OrTools.Util.Domain.FromValues(values.ToArray()), "x" + _names++);

    /// <summary>Whether a rank lies in a range.</summary>
    public ILiteral Within(IntVar rank, long low, long high)
    {
        var (from, to, both) = (New(), New(), New());
        Model.Add(rank >= low).OnlyEnforceIf(from);
        Model.Add(rank < low).OnlyEnforceIf(from.Not());
        Model.Add(rank <= high).OnlyEnforceIf(to);
        Model.Add(rank > high).OnlyEnforceIf(to.Not());
        Model.AddBoolAnd([from, to]).OnlyEnforceIf(both);
        Model.AddBoolOr([from.Not(), to.Not()]).OnlyEnforceIf(both.Not());
        return both;
    }

    public ILiteral And(params IEnumerable<ILiteral> all)
    {
        var some = all.ToArray();
        if (some.Length == 0) return True;
        if (some.Length == 1) return some[0];
        var both = New();
        Model.AddBoolAnd(some).OnlyEnforceIf(both);
        Model.AddBoolOr(some.Select(one => one.Not())).OnlyEnforceIf(both.Not());
        return both;
    }

    public ILiteral Or(params IEnumerable<ILiteral> all) => And(all.Select(one => one.Not())).Not();

    public ILiteral Differ(ILiteral one, ILiteral other) => Or(And(one, other.Not()), And(one.Not(), other));

    private BoolVar New() => Model.NewBoolVar("b" + _names++);
}
