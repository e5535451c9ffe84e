namespace Compat.Deciding;

/// <summary>What is decided of a component by one method in a box, laid on the axes of the question: each extent is the values at which it can be
/// met.</summary>
internal sealed class Piece(ApplicationMethod method, Box<Stretch> box, Decision decision, Component? component)
{
    public ApplicationMethod Method { get; } = method;

    /// <summary>The exposures, by the one method.</summary>
    public Box<Stretch> Box { get; } = box with { Methods = MethodSet.Of(method) };

    public Decision Decision { get; } = decision;

    /// <summary>The component; null of a barrier.</summary>
    public Component? Component { get; } = component;

    public bool OnlyForbids => Component is { OnlyForbids: true };

    public Verdict Verdict => Decision.Verdict;
}

/// <summary>What is asked, resolved, so that what follows need not do it anew.</summary>
/// <param name="Substance">The substance.</param>
/// <param name="Variants">The variants of the part.</param>
internal sealed record Asked(Substance Substance, IReadOnlyList<PartVariant> Variants)
{
    /// <summary>The rules that can speak of each component; null where they were not gathered yet.</summary>
    public Scene[]? Scenes { get; init; }

    /// <summary>The pieces of every method; null where they were not collected yet.</summary>
    public IReadOnlyList<Piece>? Pieces { get; init; }

    public static Asked Of(CompiledBase kb, Question question) => new(SubstanceResolver.Resolve(kb, question), PartResolver.Variants(kb, question));

    /// <summary>Its pieces, where a substance that is the same but for its temperature and methods has them too, those of other methods set apart.</summary>
    public IReadOnlyList<Piece>? PiecesOf(Substance other) =>
        other.Temperature.Equals(Substance.Temperature) && other.Methods.LiesIn(Substance.Methods) ? Pieces : null;
}

/// <summary>Collects the pieces of a question: every component on every method, cut into leaves and laid on the question's axes.</summary>
internal sealed class Pieces(CompiledBase kb, Question question, Substance substance, IReadOnlyList<PartVariant> variants, Scene[]? scenes = null)
{
    /// <summary>Why nothing is permitted where there is no value to judge.</summary>
    public static Reason NoValue { get; } = new(ReasonCode.NoValue, []);

    private Interval ExposureTime => question.ExposureTime ?? Interval.Above(0m);

    private readonly Box<Stretch> _asked = AskedOf(question, substance);

    /// <summary>What is asked, any strength of it by any method.</summary>
    public static Box<Stretch> AskedOf(Question question, Substance substance) => Box<Stretch>.Whole with
    {
        Dilution = Stretch.Of(substance.Dilution),
        ExposureTime = Stretch.Of(question.ExposureTime ?? Interval.Above(0m)),
        Temperature = Stretch.Of(substance.Temperature),
        Ph = Stretch.Of(substance.WholePh),
        Uses = Stretch.Of(RuleCompiler.WholeNumbers(question.Uses is { } n ? Interval.Closed(1m, n) : Interval.AtLeast(1m))),
    };

    /// <remarks>Of nothing nothing follows: a component of which a method has no piece, because it has no value on some axis, is not established.</remarks>
    public IReadOnlyList<Piece> All()
    {
        if (IsNothing) return substance.Methods.Methods.Select(method => Nothing(method, substance.Components.FirstOrDefault())).ToArray();
        var pieces = new List<Piece>();
        var withoutEnd = question.ExposureTime is { } asked && asked.Equals(Interval.Exactly(Interval.WithoutEnd));
        var open = MethodSet.None;
        foreach (var method in substance.Methods.ToArray())
        {
            if (BarrierOf(method, question, variants) is { } barrier) pieces.Add(new Piece(method, Box<Stretch>.Whole, barrier, null));
            else open = open.With(method);
        }

        if (open.IsEmpty) return pieces;
        for (var c = 0; c < substance.Components.Count; c++)
        {
            var component = substance.Components[c];
            var leaves = new Leaves(scenes?[c] ?? new Scene(kb, variants, substance, component, withoutEnd));
            var domain = kb.Grid.CellsOf(_asked with { Strength = Stretch.Of(Reached(component.Strength)) });
            foreach (var method in open.ToArray())
            {
                var before = pieces.Count;
                foreach (var leaf in leaves.Of(method, domain)) Lay(pieces, component, method, leaf);
                if (pieces.Count == before) pieces.Add(Nothing(method, component));
            }
        }

        return pieces;
    }

    /// <summary>Whether some axis has no value at which what is asked could be met.</summary>
    public bool IsNothing => substance.IsNothing || ExposureTime.Intersect(Axes.RangeOf(Axis.ExposureTime)).IsEmpty || question.Uses < 1;

    private Piece Nothing(ApplicationMethod method, Component? component) =>
        new(method, Box<Stretch>.Whole, new Decision { Verdict = Verdict.NotEstablished, Variant = variants[0], Reasons = [NoValue] }, component);

    /// <summary>The decision where the part stands neither the method nor an act, whatever the agent; null where it stands both.</summary>
    internal static Decision? BarrierOf(ApplicationMethod method, Question question, IReadOnlyList<PartVariant> variants)
    {
        foreach (var variant in variants)
        {
            Model.Act? act = null;
            for (var i = 0; i < question.Acts.Count && act is null; i++)
                if (variant.NeverStands(question.Acts[i])) act = question.Acts[i];
            if (act is null && variant.Stands(method)) continue;
            var reason = act is { } never
                ? new Reason(ReasonCode.NeverActs, [Words.Of(never)], null, variant.Member)
                : new Reason(ReasonCode.TooWet, [Words.Of(method), Words.Of(variant.Wettest)], null, variant.Member);
            return new Decision { Verdict = Verdict.NotAllowed, Variant = variant, Reasons = [reason] };
        }

        return null;
    }

    /// <summary>All strengths that occur over the dilutions considered.</summary>
    private Interval Reached(Interval atOne)
    {
        var dilution = substance.Dilution;
        if (dilution.Equals(Interval.Exactly(1m))) return atOne;
        return new Interval(atOne.Lower * (dilution.Lower ?? 0m), true, atOne.Upper is { } high ? high * (dilution.Upper ?? 1m) : null, true);
    }

    private void Lay(List<Piece> pieces, Component component, ApplicationMethod method, Leaf leaf)
    {
        var box = kb.Grid.ValuesOf(leaf.Cells);
        if (!box.Temperature.Meets(_asked.Temperature) || !box.ExposureTime.Meets(_asked.ExposureTime) || !box.Uses.Meets(_asked.Uses)) return;
        foreach (var here in substance.DilutionsAt(component, box.Strength, box.Ph, box.Dilution))
            pieces.Add(new Piece(method, box with { Dilution = here }, leaf.Decision, component));
    }
}

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
