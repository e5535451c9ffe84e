using System.Globalization;

namespace Compat.Snapshots;

/// <summary>Reads what <see cref="SnapshotWriter"/> wrote.</summary>
/// <remarks>Every count and number is checked against what is left, so that a damaged file ends in <see cref="SnapshotException"/>.</remarks>
internal sealed partial class SnapshotReader
{
    /// <summary>Room made for a list before its items are seen: what a file says of a count is not believed further.</summary>
    private const int LikelyCount = 4096;

    private const int MostMembers = 256;

    private readonly byte[] _bytes;
    private readonly SnapshotTexts _texts;
    private readonly int _end;
    private int _at;

    /// <summary>Reads one record, or its begin.</summary>
    public SnapshotReader(SnapshotTexts texts, byte[] bytes, int at, int end)
    {
        _texts = texts;
        _bytes = bytes;
        _at = at;
        _end = end;
    }

    /// <summary>Reads a whole body.</summary>
    private SnapshotReader(byte[] bytes)
    {
        _bytes = bytes;
        _end = bytes.Length;
        var starts = Starts();
        _texts = new SnapshotTexts(bytes, starts);
        _at = starts[starts.Length - 1];
    }

    public bool IsAtEnd => _at == _end;

    /// <summary>Finds the records of a body; each is read when it is first asked for.</summary>
    public static KnowledgeData Read(byte[] bytes) => new SnapshotReader(bytes).Sections();

    /// <summary>A count, then the length of each of as many pieces, which follow: where each begins, and where the last one ends.</summary>
    private int[] Starts()
    {
        var starts = new int[Count() + 1];
        long at = 0;
        for (var i = 1; i < starts.Length; i++) starts[i] = (int)Math.Min(int.MaxValue, at += Count());
        if (at > _end - _at) throw new SnapshotException("it ends too early");
        for (var i = 0; i < starts.Length; i++) starts[i] += _at;
        return starts;
    }

    private long Number()
    {
        ulong value = 0;
        for (var shift = 0; shift < 63; shift += 7)
        {
            if (_at >= _end) throw new SnapshotException("it ends too early");
            var b = _bytes[_at++];
            value |= (ulong)(b & 0x7F) << shift;
            if (b < 0x80) return (long)value;
        }

        throw new SnapshotException("a number is too long");
    }

    private int Count()
    {
        var count = Number();
        return count <= _end - _at ? (int)count : throw new SnapshotException("a count is larger than what is left");
    }

    /// <summary>How many members of an enumeration follow.</summary>
    private int FewMembers() => Count() is <= MostMembers and var count ? count : throw new SnapshotException("a list of words is too long");

    public bool Flag() => Number() switch { 0 => false, 1 => true, _ => throw new SnapshotException("a flag is neither 0 nor 1") };

    private bool? MaybeFlag() => Number() switch { 0 => null, 1 => false, 2 => true, _ => throw new SnapshotException("a flag is not known") };

    private int Whole() => Number() is <= int.MaxValue and var number ? (int)number : throw new SnapshotException("a number is too large");

    private int? MaybeWhole() => Whole() is > 0 and var number ? number : null;

    /// <summary>The place of a text in the table of texts, or -1 for none.</summary>
    private int TextPlace()
    {
        var number = Number();
        return number <= _texts.Count ? (int)number - 1 : throw new SnapshotException("a text is missing");
    }

    public string? MaybeText() => TextPlace() is >= 0 and var place ? _texts[place] : null;

    public string Text() => MaybeText() ?? throw new SnapshotException("a text is missing");

    /// <summary>An id; where one of the same kind was made of the text before, that one.</summary>
    private TId? MaybeId<TId>(Func<string, TId> make) where TId : class => TextPlace() is >= 0 and var place ? _texts.Id(place, make) : null;

    private TId Id<TId>(Func<string, TId> make) where TId : class => MaybeId(make) ?? throw new SnapshotException("an id is missing");

    /// <summary>The number of a member of an enumeration, at most that of its last one (<see cref="LastMember"/>).</summary>
    private int Member(int last)
    {
        var number = Number();
        return number <= last ? (int)number : throw new SnapshotException("a word is not known");
    }

    private int? MaybeMember(int last)
    {
        var number = Number();
        if (number == 0) return null;
        return number - 1 <= last ? (int)(number - 1) : throw new SnapshotException("a word is not known");
    }

    private decimal? MaybeFigure() => MaybeText() is not { } text ? null
        : decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var figure) ? figure
        : throw new SnapshotException("a figure is no number");

    private decimal Figure() => MaybeFigure() ?? throw new SnapshotException("a figure is missing");

    private CalendarDate Date() => MaybeDate() ?? throw new SnapshotException("a date is missing");

    private CalendarDate? MaybeDate() => MaybeText() is not { } text ? null
        : CalendarDate.TryParse(text, out var date) ? date : throw new SnapshotException("a date is none");

    private List<T> List<T>(Func<T> read)
    {
        var count = Count();
        var list = new List<T>(Math.Min(count, LikelyCount));
        for (var i = 0; i < count; i++) list.Add(read());
        return list;
    }

    private T? Maybe<T>(Func<T> read) where T : class => Flag() ? read() : null;

    private Interval Range()
    {
        var lower = MaybeFigure();
        var lowerIncluded = Flag();
        var upper = MaybeFigure();
        return new Interval(lower, lowerIncluded, upper, Flag());
    }

    private Interval? MaybeRange() => Flag() ? Range() : null;

    private MethodSet Methods()
    {
        var methods = new ApplicationMethod[FewMembers()];
        for (var i = 0; i < methods.Length; i++) methods[i] = (ApplicationMethod)Member((int)LastMember.ApplicationMethod);
        return MethodSet.Of(methods);
    }

    private AxisLimit Limit()
    {
        var statement = (AxisStatement)Member((int)LastMember.AxisStatement);
        return new AxisLimit(statement, statement == AxisStatement.Within ? Range() : Interval.Whole);
    }

    private MethodLimit MethodLimit() => new((AxisStatement)Member((int)LastMember.AxisStatement), Methods());

    private StrengthUnit? MaybeUnit() =>
        MaybeText() is not { } unit ? null : StrengthUnit.TryParse(unit, out var basis) ? basis : throw new SnapshotException("a unit is not known");

    private TestCode Code() => TestCode.TryParse(Text(), out var code) ? code : throw new SnapshotException("a code of a test is malformed");

    private AirConcentration Concentration() => new(Figure(), Text());
}
