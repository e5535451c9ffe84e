using System.Globalization;
using System.Text;
using Compat.Knowledge;

namespace Compat.Snapshots;

/// <summary>Reads what <see cref="SnapshotWriter"/> wrote. Every count and number is checked against what is left, so that a damaged file ends in <see cref="SnapshotException"/>.</summary>
internal sealed partial class SnapshotReader
{
    /// <summary>Room made for a list before its items are seen: what a file says of a count is not believed further.</summary>
    private const int LikelyCount = 4096;

    private const int MostMembers = 256;

    private readonly byte[] _bytes;
    private readonly string[] _strings;
    private readonly object?[] _ids;
    private int _at;

    private SnapshotReader(byte[] bytes)
    {
        _bytes = bytes;
        _strings = new string[Count()];
        _ids = new object?[_strings.Length];
        var utf8 = new UTF8Encoding(false, throwOnInvalidBytes: true);
        for (var i = 0; i < _strings.Length; i++)
        {
            var length = Count();
            try
            {
                _strings[i] = utf8.GetString(_bytes, _at, length);
            }
            catch (ArgumentException)
            {
                throw new SnapshotException("a text is not UTF-8");
            }

            _at += length;
        }
    }

    public static KnowledgeData Read(byte[] bytes)
    {
        var reader = new SnapshotReader(bytes);
        try
        {
            var data = reader.WithSections(reader.Data());
            return reader._at == bytes.Length ? data : throw new SnapshotException("there are bytes after the last record");
        }
        catch (ArgumentException problem)
        {
            throw new SnapshotException(problem.Message);
        }
    }

    private long Number()
    {
        ulong value = 0;
        for (var shift = 0; shift < 63; shift += 7)
        {
            if (_at >= _bytes.Length) throw new SnapshotException("it ends too early");
            var b = _bytes[_at++];
            value |= (ulong)(b & 0x7F) << shift;
            if (b < 0x80) return (long)value;
        }

        throw new SnapshotException("a number is too long");
    }

    private int Count()
    {
        var count = Number();
        return count <= _bytes.Length - _at ? (int)count : throw new SnapshotException("a count is larger than what is left");
    }

    /// <summary>How many members of an enumeration follow.</summary>
    private int FewMembers() => Count() is <= MostMembers and var count ? count : throw new SnapshotException("a list of words is too long");

    private bool Flag() => Number() switch { 0 => false, 1 => true, _ => throw new SnapshotException("a flag is neither 0 nor 1") };

    /// <summary>The place of a text in the table of texts, or -1 for none.</summary>
    private int TextPlace()
    {
        var number = Number();
        return number <= _strings.Length ? (int)number - 1 : throw new SnapshotException("a text is missing");
    }

    private string? MaybeText() => TextPlace() is >= 0 and var place ? _strings[place] : null;

    private string Text() => MaybeText() ?? throw new SnapshotException("a text is missing");

    /// <summary>An id; where one of the same kind was made of the text before, that one.</summary>
    private TId? MaybeId<TId>(Func<string, TId> make) where TId : class
    {
        var place = TextPlace();
        if (place < 0) return null;
        if (_ids[place] is TId known) return known;
        var id = make(_strings[place]);
        _ids[place] = id;
        return id;
    }

    private TId Id<TId>(Func<string, TId> make) where TId : class => MaybeId(make) ?? throw new SnapshotException("an id is missing");

    private List<TId> Ids<TId>(Func<string, TId> make) where TId : class => List(() => Id(make));

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

    private Act[] Acts()
    {
        var acts = new Act[FewMembers()];
        for (var i = 0; i < acts.Length; i++) acts[i] = (Act)Member((int)LastMember.Act);
        return acts;
    }

    private Nature[] Natures()
    {
        var natures = new Nature[FewMembers()];
        for (var i = 0; i < natures.Length; i++) natures[i] = (Nature)Member((int)LastMember.Nature);
        return natures;
    }

    private Hazard[] Hazards()
    {
        var hazards = new Hazard[FewMembers()];
        for (var i = 0; i < hazards.Length; i++) hazards[i] = (Hazard)Member((int)LastMember.Hazard);
        return hazards;
    }
}
