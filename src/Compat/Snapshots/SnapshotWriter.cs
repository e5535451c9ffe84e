using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using Compat.Validation;

namespace Compat.Snapshots;

/// <summary>Writes records as bytes in a canonical order: the same records give the same bytes, whatever the order of files. Also what content hashes are taken over.</summary>
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

    private void Box(ExposureBox box)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++) Limit(box.On(axis), axis.ToString());
        Methods(box.Methods);
    }

    private void Methods(MethodLimit limit, [CallerArgumentExpression(nameof(limit))] string what = "")
    {
        Coded(limit.Statement, what);
        Methods(limit.Methods);
    }

    private void Material(Material x)
    {
        Begin(RecordKind.Material, x.Id);
        Id(x.Under);
        Must(x.Name);
        Member(x.Delicate);
        Flag(x.DeclaredOnlySuffices);
        Texts(x.AlsoCalled);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Slot(MaterialSlot slot) => Ids(slot.OneOf);

    private void MaybeSlots(IReadOnlyList<MaterialSlot>? slots, [CallerArgumentExpression(nameof(slots))] string what = "") => Maybe(slots, list => List(list, Slot, ""), what);

    private void Part(PartType x)
    {
        Begin(RecordKind.Part, x.Id);
        Id(x.Under);
        Must(x.Name);
        Texts(x.AlsoCalled);
        MaybeSlots(x.Materials);
        Number(x.MaterialsKnown is { } known ? known ? 2 : 1 : 0);
        Member(x.Wettest);
        Maybe(x.Never, acts => CodeList(acts, ""));
        Member(x.Geometry);
        Member(x.TouchedBy);
        WordList(x.Patients);
        List(x.Duties, Duty);
        Ids(x.Sources);
        Text(x.Note);
        Maybe(x.Soil, soil => WordList(soil, ""));
        Maybe(x.WayOut, ways => WordList(ways, ""));
        Text(x.FunctionCheck);
        Figure(x.DryBeforePower);
        Maybe(x.WaterIngress, ingress =>
        {
            Number(ingress.Numeral);
            Must(ingress.Means);
        });
    }

    private void Agent(AgentClass x)
    {
        Begin(RecordKind.Agent, x.Id);
        Id(x.Under);
        Must(x.Name);
        Texts(x.AlsoCalled);
        Texts(x.Cas);
        Texts(x.Ec);
        Text(x.Basis?.Text);
        Figure(x.Density);
        Figure(x.AvailableChlorine);
        CodeList(x.Nature);
        In(x.Usual, usual =>
        {
            MaybeRange(usual.Strength);
            MaybeRange(usual.Ph);
            MaybeRange(usual.Temperature);
            Ids(usual.Sources);
        });
        Member(x.Leaves);
        Flag(x.Chamber);
        Ids(x.InactivatedBy);
        Texts(x.BoundBy);
        CodeList(x.Hazards);
        List(x.Duties, Duty);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Duty(Duty x)
    {
        Coded(x.Kind);
        List(x.Ways, Way);
        Figure(x.Within);
        Ids(x.Parts);
        Number(x.AfterUses ?? 0);
        Text(x.Note);
    }

    private void Way(DutyWay x)
    {
        Member(x.Method);
        Member(x.Act);
        Member(x.Water);
        Number(x.Times ?? 0);
        Figure(x.Seconds);
        Figure(x.Litres);
    }

    private void Source(Source x)
    {
        Begin(RecordKind.Source, x.Id);
        Coded(x.Kind);
        Must(x.Title);
        Text(x.Publisher);
        Text(x.Edition);
        Text(x.Section);
        Text(x.Address);
        Flag(x.Recalled);
        Coded(x.Trust);
        Text(x.Note);
    }

    private void Damage(Damage x)
    {
        Coded(x.Mechanism);
        Coded(x.Onset);
        Flag(x.Lasting);
        Coded(x.Consequence);
        Text(x.LookFor);
        Text(x.WithdrawIf);
    }

    private void Rule(Rule x)
    {
        Begin(RecordKind.Rule, x.Id);
        In(x.Target, target =>
        {
            Id(target.Part);
            Id(target.Material);
            Id(target.Device);
            Id(target.DevicePart);
        });
        Id(x.Agent);
        Id(x.Product);
        Date(x.CompositionDated);
        Flag(x.Allows);
        In(x.When, Box);
        Ids(x.SeenWith);
        Flag(x.WholeClass);
        List(x.Overrides, id => Must(id, ""));
        Maybe(x.Damage, Damage);
        Member(x.CountsTowards);
        List(x.Duties, Duty);
        Must(x.Why);
        Member(x.KnownBy);
        Maybe(x.Tested, tested =>
        {
            Coded(tested.On);
            Flag(tested.Strained);
            In(tested.Exposure, Box);
        });
        Id(x.Edition);
        Ids(x.Sources);
        Date(x.Reviewed);
        Flag(x.IsSecondSource);
        WordList(x.RestsOn);
    }

    private void Convention(Convention x)
    {
        At(RecordKind.Convention, Words.Of(x.Key));
        Coded(x.Key);
        Range(x.Range);
        Methods(x.Methods);
        WordList(x.Consequences);
        WordList(x.Hazards);
        Must(x.Reason);
    }

    private void Standing(StandingRule x)
    {
        Begin(RecordKind.StandingRule, x.Id);
        Id(x.Part);
        Id(x.Material);
        Must(x.Agent);
        In(x.When, Box);
        Member(x.AlwaysWith);
        Must(x.Reason);
        Ids(x.Sources);
        Word(x.NeverAbove);
        Word(x.Patient);
        Text(x.BoundBy);
        Id(x.MixingWith);
        Word(x.MixingWithSoil);
    }
}
