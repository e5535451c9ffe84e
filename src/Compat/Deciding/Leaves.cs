namespace Compat.Deciding;

/// <summary>A box of cells in which the same rules apply.</summary>
internal sealed record Leaf(Box<Run> Cells, Decision Decision);

/// <summary>Cuts a box of exposures along the rules that cross it, and only along these, until every piece is decided.</summary>
/// <remarks>
/// Where that would take more than a set amount of work, what some prohibition forbids as a whole, whatever else holds there, is not cut further:
/// the verdicts are the same, and of the rules that forbid a place only those are named that forbid all around it.
/// </remarks>
internal sealed class Leaves(Scene scene, int mostLooks = Leaves.MostLooks) : ICutVisitor<Run, Leaves.Known>
{
    /// <summary>At so many rules is looked before larger pieces are taken, and at ten times as many before it is given up.</summary>
    public const int MostLooks = 2_000_000;

    private const int MostDeep = 2_000;
    private bool _larger;
    private int _looks;
    private readonly Decider _decider = new(scene);
    private readonly List<Leaf> _found = [];
    private readonly List<(List<int> Candidates, Box<Run> Domain, IReadOnlyList<Leaf> Leaves)> _before = [];

    /// <summary>The pieces of a box for one method. Methods that the same rules speak of have the same pieces.</summary>
    /// <exception cref="TooManyBoxesException">There are more than <see cref="Subtraction.MostBoxes"/>.</exception>
    public IReadOnlyList<Leaf> Of(ApplicationMethod method, Box<Run> domain)
    {
        var all = new List<int>();
        for (var i = 0; i < scene.Candidates.Length; i++)
            if (scene.Candidates[i].Rule.Methods.Contains(method)) all.Add(i);
        foreach (var before in _before)
            if (before.Domain.Equals(domain) && before.Candidates.SequenceEqual(all)) return before.Leaves;
        var box = domain with { Methods = MethodSet.Of(method) };
        if (_larger || !Cut(box, all))
        {
            _larger = true;
            if (!Cut(box, all)) throw new TooManyBoxesException();
        }

        var leaves = _found.ToArray();
        _before.Add((all, domain, leaves));
        return leaves;
    }

    /// <summary>Where a box is cut next: along the first candidate that crosses it.</summary>
    public Next Look(in Box<Run> box, Known known, out Known inside, out Box<Run> crossing)
    {
        inside = new Known([], [.. known.Covering], known.Depth + 1);
        crossing = default;
        _looks += known.Open.Count;
        if (_looks > (_larger ? 10L * MostLooks : mostLooks) || known.Depth > MostDeep) return Next.Stop;
        foreach (var i in known.Open)
        {
            var candidate = scene.Candidates[i];
            if (candidate.Cells.Meets(box)) (box.LiesIn(candidate.Cells) ? inside.Covering : inside.Open).Add(i);
        }

        if (inside.Open.Count > 0 && !(_larger && inside.Covering.Exists(ForbidsForSure)))
        {
            crossing = scene.Candidates[inside.Open[0]].Cells;
            return Next.Halve;
        }

        _looks += inside.Covering.Count;
        var applies = new bool[scene.Candidates.Length];
        foreach (var i in inside.Covering) applies[i] = true;
        _found.Add(new Leaf(box, _decider.Worst(applies)));
        return _found.Count <= Subtraction.MostBoxes ? Next.Done : Next.Stop;
    }

    private bool Cut(in Box<Run> box, List<int> all)
    {
        _found.Clear();
        _looks = 0;
        var self = this;
        return Cutter.Cut(ref self, box, new Known(all, [], 0));
    }

    /// <summary>Whether a candidate forbids wherever it applies: nothing sets it aside.</summary>
    private bool ForbidsForSure(int candidate) =>
        !scene.Candidates[candidate].Rule.Allows && (scene.Overriders[candidate].Length == 0 || scene.Candidates[candidate].Rule.OfInstructions);

    /// <summary>What is known of a box.</summary>
    /// <param name="Open">The candidates that cross it, or may.</param>
    /// <param name="Covering">Those that apply in all of it.</param>
    /// <param name="Depth">How often it was cut.</param>
    internal readonly record struct Known(List<int> Open, List<int> Covering, int Depth);
}
