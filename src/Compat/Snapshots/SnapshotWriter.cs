using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;

namespace Compat.Snapshots;

/// <summary>
/// Writes records as bytes in a canonical order: the same records give the same bytes, whatever the order of files. Hashes of content are of these.
/// </summary>
/// <remarks>How each record is written follows from its declaration (Compat.Generators).</remarks>
internal sealed partial class SnapshotWriter
{
    private readonly List<byte> _bytes = [];
    private readonly List<string> _strings = [];
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

    /// <summary>The body of a snapshot: a table of texts, then the records.</summary>
    public static byte[] Body(KnowledgeData data)
    {
        var writer = new SnapshotWriter();
        writer.Must(data.Version);
        writer.Sections(data);
        return writer.Finish();
    }

    /// <summary>The records of a site, for its hash: they are never read back.</summary>
    public static byte[] Body(Site site)
    {
        var writer = new SnapshotWriter();
        writer.Write(site);
        return writer.Finish();
    }

    /// <summary>The table of texts — how many, how long each, the texts — and what was written.</summary>
    private byte[] Finish()
    {
        var whole = new SnapshotWriter();
        whole.Pieces(_strings.Select(Encoding.UTF8.GetBytes).ToArray());
        whole._bytes.AddRange(_bytes);
        return whole._bytes.ToArray();
    }

    /// <summary>How many pieces, how long each, the pieces.</summary>
    private void Pieces(IReadOnlyCollection<byte[]> pieces)
    {
        Number(pieces.Count);
        foreach (var piece in pieces) Number(piece.Length);
        foreach (var piece in pieces) _bytes.AddRange(piece);
    }

    private void Number(long value)
    {
        var rest = (ulong)value;
        for (; rest >= 0x80; rest >>= 7) _bytes.Add((byte)(rest | 0x80));
        _bytes.Add((byte)rest);
    }

    private void Flag(bool value) => Number(value ? 1 : 0);

    private void MaybeFlag(bool? value) => Number(value is { } known ? known ? 2 : 1 : 0);

    private void Whole(int value) => Number(value);

    private void MaybeWhole(int? value) => Number(value ?? 0);

    private void Text(string? value, [CallerArgumentExpression(nameof(value))] string what = "")
    {
        if (value is null)
        {
            Number(0);
            return;
        }

        Seen(value, what);

        if (!_numbers.TryGetValue(value, out var number))
        {
            number = _strings.Count;
            _strings.Add(value);
            _numbers[value] = number;
        }

        Number(number + 1);
    }

    private void Id(Id? id) => Text(id?.Value);

    /// <summary>A text that no record of its kind may lack.</summary>
    private void Must(string? value, [CallerArgumentExpression(nameof(value))] string what = "")
    {
        if (value is null) Missing(what);
        Text(value, what);
    }

    /// <summary>An id that no record of its kind may lack.</summary>
    private void Must(Id? id, [CallerArgumentExpression(nameof(id))] string what = "") => Must(id?.Value, what);

    /// <summary>An id that no record of its kind may lack.</summary>
    private void Must(DottedId? id, [CallerArgumentExpression(nameof(id))] string what = "") => Must(id?.Value, what);

    private void Member<TEnum>(TEnum? value, [CallerArgumentExpression(nameof(value))] string what = "") where TEnum : struct, Enum
    {
        if (value is { } stated) Defined(stated, what);
        Number(value is { } member ? Convert.ToInt32(member, CultureInfo.InvariantCulture) + 1 : 0);
    }

    /// <summary>A member that no record of its kind may lack, by its number.</summary>
    private void Coded<TEnum>(TEnum value, [CallerArgumentExpression(nameof(value))] string what = "") where TEnum : struct, Enum
    {
        Defined(value, what);
        Number(Convert.ToInt32(value, CultureInfo.InvariantCulture));
    }

    private void WordList<TEnum>(IReadOnlyList<TEnum> members, [CallerArgumentExpression(nameof(members))] string what = "") where TEnum : struct, Enum =>
        List(members, member => Word<TEnum>(member, ""), what);

    private void CodeList<TEnum>(IReadOnlyList<TEnum> members, [CallerArgumentExpression(nameof(members))] string what = "") where TEnum : struct, Enum =>
        List(members, member => Coded(member, ""), what);

    private void Word<TEnum>(TEnum? member, [CallerArgumentExpression(nameof(member))] string what = "") where TEnum : struct, Enum
    {
        if (member is { } stated) Defined(stated, what);
        Text(member is { } some ? Words.Of(some) : null);
    }

    private void Figure(decimal? value, [CallerArgumentExpression(nameof(value))] string what = "")
    {
        if (value is { } stated) Measurable(stated, what);
        Text(value is { } figure ? Interval.Figure(figure) : null);
    }

    private void Date(CalendarDate? value, [CallerArgumentExpression(nameof(value))] string what = "")
    {
        if (value is { } day && day.Equals(default)) Missing(what);
        Text(value?.ToString());
    }

    private void List<T>(IEnumerable<T>? items, Action<T> write, [CallerArgumentExpression(nameof(items))] string what = "")
    {
        if (items is null) Missing(what);
        var array = items?.ToArray() ?? [];
        Number(array.Length);
        for (var i = 0; i < array.Length; i++)
        {
            Enter(what, i);
            if (array[i] is { } item) write(item);
            else Missing("");
            Leave();
        }
    }

    private void Ids(IEnumerable<Id> ids, [CallerArgumentExpression(nameof(ids))] string what = "") => List(ids, id => Must(id, ""), what);

    private void Texts(IEnumerable<string> texts, [CallerArgumentExpression(nameof(texts))] string what = "") => List(texts, text => Must(text, ""), what);

    private void Maybe<T>(T? value, Action<T> write, [CallerArgumentExpression(nameof(value))] string what = "") where T : class
    {
        Flag(value is not null);
        if (value is not null) In(value, write, what);
    }

    /// <summary>A record inside another that may not lack it.</summary>
    private void In<T>(T? value, Action<T> write, [CallerArgumentExpression(nameof(value))] string what = "") where T : class
    {
        if (value is null)
        {
            Missing(what);
            return;
        }

        Enter(what);
        write(value);
        Leave();
    }

    private void Range(Interval range, [CallerArgumentExpression(nameof(range))] string what = "")
    {
        Figure(range.Lower, what);
        Flag(range.LowerIncluded);
        Figure(range.Upper, what);
        Flag(range.UpperIncluded);
    }

    private void MaybeRange(Interval? range, [CallerArgumentExpression(nameof(range))] string what = "")
    {
        Flag(range is not null);
        if (range is { } value) Range(value, what);
    }

    private void Methods(MethodSet set) => List(set.Methods, m => Number((int)m), "");

    private void Limit(AxisLimit limit, [CallerArgumentExpression(nameof(limit))] string what = "")
    {
        Coded(limit.Statement, what);
        if (limit.Statement == AxisStatement.Within) Range(limit.Range, what);
    }

    private void Methods(MethodLimit limit, [CallerArgumentExpression(nameof(limit))] string what = "")
    {
        Coded(limit.Statement, what);
        Methods(limit.Methods);
    }

    private void Unit(StrengthUnit? unit, [CallerArgumentExpression(nameof(unit))] string what = "") => Text(unit?.Text, what);

    private void Strength(Strength? strength, [CallerArgumentExpression(nameof(strength))] string what = "")
    {
        if (strength is not { } some)
        {
            Text(null);
            return;
        }

        Must(some.Unit?.Text, what);
        Range(some.Range, what);
    }

    private void Code(TestCode? code, [CallerArgumentExpression(nameof(code))] string what = "") => Must(code?.Value, what);

    private void Serials(SerialRange serials, string what) => Must(serials.Prefix is null ? null : serials.ToString(), what);

    private void Concentration(AirConcentration value, [CallerArgumentExpression(nameof(value))] string what = "")
    {
        Figure(value.Value, what);
        Must(value.Unit, what);
    }
}
