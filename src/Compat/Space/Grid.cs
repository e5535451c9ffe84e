namespace Compat.Space;

/// <summary>A run of neighbouring cells on an axis: from <paramref name="low"/> up to, not with, <paramref name="end"/>. The default value is empty.</summary>
internal readonly struct Run(int low, int end) : IExtent<Run>, IEquatable<Run>
{
    /// <summary>The first cell.</summary>
    public int Low { get; } = low;

    /// <summary>The cell behind the last.</summary>
    public int End { get; } = end;

    /// <summary>The last cell.</summary>
    public int High => End - 1;

    public int Length => End - Low;

    /// <summary>Every cell of an axis.</summary>
    public static Run Whole => new(0, int.MaxValue);

    Run IExtent<Run>.Whole => Whole;

    public bool IsEmpty => Low >= End;

    /// <summary>The cells from one to another, both included.</summary>
    public static Run Of(int low, int high) => new(low, high + 1);

    public bool Meets(Run other) => Math.Max(Low, other.Low) < Math.Min(End, other.End);

    public bool LiesIn(Run other) => IsEmpty || (Low >= other.Low && End <= other.End);

    public Run Intersect(Run other) => new(Math.Max(Low, other.Low), Math.Min(End, other.End));

    public Run Before(Run other) => new(Low, Math.Min(End, other.Low));

    public Run After(Run other) => new(Math.Max(Low, other.End), End);

    public bool EndsAt(Run next) => End == next.Low;

    public Run Through(Run next) => new(Low, next.End);

    /// <summary>By first cell, then by last.</summary>
    public int CompareTo(Run other) => Low != other.Low ? Low.CompareTo(other.Low) : End.CompareTo(other.End);

    public bool Equals(Run other) => Low == other.Low && End == other.End;

    public override bool Equals(object? obj) => obj is Run other && Equals(other);

    public override int GetHashCode() => (Low * 397) ^ End;

    public override string ToString() => $"{Low}..{High}";
}

/// <summary>The sorted boundaries of all rules on one axis. Between two neighbours lies a cell in which no rule tells values apart; cells are numbered from
/// 0.</summary>
internal sealed class CutTable
{
    private readonly List<Cut> _cuts;

    /// <param name="known">Boundaries that are known, in order.</param>
    /// <param name="more">What more rules hold on the axis.</param>
    public CutTable(IReadOnlyCollection<Cut> known, IEnumerable<Stretch> more)
    {
        _cuts = [.. known];
        foreach (var stretch in more)
        {
            if (stretch.From is { } from) Insert(from);
            if (stretch.To is { } to) Insert(to);
        }
    }

    /// <summary>The boundaries, in order.</summary>
    public IReadOnlyList<Cut> Cuts => _cuts;

    /// <summary>Every cell.</summary>
    public Run All => new(0, _cuts.Count + 1);

    /// <summary>Whether the ends of a stretch are boundaries of the table.</summary>
    public bool Has(Stretch stretch) => (stretch.From is not { } from || Has(from)) && (stretch.To is not { } to || Has(to));

    /// <summary>The cells a stretch touches, outward.</summary>
    public Run CellsOf(Stretch stretch) => stretch.IsEmpty ? default
        : Run.Of(stretch.From is { } from ? CountUpTo(from, including: true) : 0, stretch.To is { } to ? CountUpTo(to, including: false) : _cuts.Count);

    /// <summary>The values of a run of cells.</summary>
    public Stretch ValuesOf(Run run) => run.IsEmpty ? default
        : new(run.Low == 0 ? Cut.Start : _cuts[run.Low - 1], run.End > _cuts.Count ? Cut.End : _cuts[run.High]);

    private bool Has(Cut cut) => CountUpTo(cut, including: false) is var at && at < _cuts.Count && _cuts[at].CompareTo(cut) == 0;

    /// <summary>Puts a boundary in its place. Rules share most of theirs, so that few places move.</summary>
    private void Insert(Cut cut)
    {
        var at = CountUpTo(cut, including: false);
        if (at == _cuts.Count || _cuts[at].CompareTo(cut) != 0) _cuts.Insert(at, cut);
    }

    private int CountUpTo(Cut cut, bool including)
    {
        int low = 0, high = _cuts.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            var order = _cuts[middle].CompareTo(cut);
            if (order < 0 || (including && order == 0)) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}

/// <summary>The cells into which the boundaries of all rules cut the axes: boxes of values as boxes of cells, and back.</summary>
internal sealed class Grid(Func<Axis, CutTable> tableOf)
{
    private readonly CutTable _strength = tableOf(Axis.Strength), _dilution = tableOf(Axis.Dilution), _exposureTime = tableOf(Axis.ExposureTime);
    private readonly CutTable _temperature = tableOf(Axis.Temperature), _ph = tableOf(Axis.Ph), _uses = tableOf(Axis.Uses);

    /// <summary>The boundaries on an axis that rules can name.</summary>
    public CutTable this[Axis axis] => axis switch
    {
        Axis.Strength => _strength,
        Axis.Dilution => _dilution,
        Axis.ExposureTime => _exposureTime,
        Axis.Temperature => _temperature,
        Axis.Ph => _ph,
        Axis.Uses => _uses,
        _ => throw new ArgumentOutOfRangeException(nameof(axis)),
    };

    /// <summary>Whether every end of a box is a boundary.</summary>
    public bool Has(in Box<Stretch> box) =>
        _strength.Has(box.Strength) && _dilution.Has(box.Dilution) && _exposureTime.Has(box.ExposureTime)
        && _temperature.Has(box.Temperature) && _ph.Has(box.Ph) && _uses.Has(box.Uses);

    /// <summary>The cells a box touches, outward.</summary>
    public Box<Run> CellsOf(in Box<Stretch> box) => new()
    {
        Methods = box.Methods,
        Strength = _strength.CellsOf(box.Strength),
        Dilution = _dilution.CellsOf(box.Dilution),
        ExposureTime = _exposureTime.CellsOf(box.ExposureTime),
        Temperature = _temperature.CellsOf(box.Temperature),
        Ph = _ph.CellsOf(box.Ph),
        Uses = _uses.CellsOf(box.Uses),
        ContactTime = Run.Whole,
    };

    /// <summary>The values of a box of cells.</summary>
    public Box<Stretch> ValuesOf(in Box<Run> box) => new()
    {
        Methods = box.Methods,
        Strength = _strength.ValuesOf(box.Strength),
        Dilution = _dilution.ValuesOf(box.Dilution),
        ExposureTime = _exposureTime.ValuesOf(box.ExposureTime),
        Temperature = _temperature.ValuesOf(box.Temperature),
        Ph = _ph.ValuesOf(box.Ph),
        Uses = _uses.ValuesOf(box.Uses),
        ContactTime = Stretch.Whole,
    };
}
