using System.Globalization;
using System.Text;
using Compat.Knowledge;

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
        writer.Text(data.Version);
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

    private void Text(string? value)
    {
        if (value is null)
        {
            Number(0);
            return;
        }

        if (!_numbers.TryGetValue(value, out var number))
        {
            number = _strings.Count;
            _strings.Add(value);
            _numbers[value] = number;
        }

        Number(number + 1);
    }

    private void Id(Id? id) => Text(id?.Value);

    private void Member<TEnum>(TEnum? value) where TEnum : struct, Enum => Number(value is { } member ? Convert.ToInt32(member, CultureInfo.InvariantCulture) + 1 : 0);

    private void Figure(decimal? value) => Text(value is { } figure ? Interval.Figure(figure) : null);

    private void Date(CalendarDate? value) => Text(value?.ToString());

    private void List<T>(IEnumerable<T> items, Action<T> write)
    {
        var array = items.ToArray();
        Number(array.Length);
        foreach (var item in array) write(item);
    }

    private void Ids(IEnumerable<Id> ids) => List(ids, Id);

    private void Texts(IEnumerable<string> texts) => List(texts, Text);

    private void Maybe<T>(T? value, Action<T> write) where T : class
    {
        Flag(value is not null);
        if (value is not null) write(value);
    }

    private void Range(Interval range)
    {
        Figure(range.Lower);
        Flag(range.LowerIncluded);
        Figure(range.Upper);
        Flag(range.UpperIncluded);
    }

    private void MaybeRange(Interval? range)
    {
        Flag(range is not null);
        if (range is { } value) Range(value);
    }

    private void Methods(MethodSet set) => List(set.Methods, m => Number((int)m));

    private void Limit(AxisLimit limit)
    {
        Number((int)limit.Statement);
        if (limit.Statement == AxisStatement.Within) Range(limit.Range);
    }

    private void Box(ExposureBox box)
    {
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++) Limit(box.On(axis));
        Number((int)box.Methods.Statement);
        Methods(box.Methods.Methods);
    }

    private void Material(Material x)
    {
        Id(x.Id);
        Id(x.Under);
        Text(x.Name);
        Member(x.Delicate);
        Flag(x.DeclaredOnlySuffices);
        Texts(x.AlsoCalled);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Slot(MaterialSlot slot) => Ids(slot.OneOf);

    private void MaybeSlots(IReadOnlyList<MaterialSlot>? slots) => Maybe(slots, list => List(list, Slot));

    private void Part(PartType x)
    {
        Id(x.Id);
        Id(x.Under);
        Text(x.Name);
        Texts(x.AlsoCalled);
        MaybeSlots(x.Materials);
        Number(x.MaterialsKnown is { } known ? known ? 2 : 1 : 0);
        Member(x.Wettest);
        Maybe(x.Never, acts => List(acts, act => Number((int)act)));
        Member(x.Geometry);
        Member(x.TouchedBy);
        Texts(x.Patients.Select(Words.Of));
        List(x.Duties, Duty);
        Ids(x.Sources);
        Text(x.Note);
        Maybe(x.Soil, WordList);
        Maybe(x.WayOut, WordList);
        Text(x.FunctionCheck);
        Figure(x.DryBeforePower);
        Maybe(x.WaterIngress, ingress =>
        {
            Number(ingress.Numeral);
            Text(ingress.Means);
        });
    }

    private void Agent(AgentClass x)
    {
        Id(x.Id);
        Id(x.Under);
        Text(x.Name);
        Texts(x.AlsoCalled);
        Texts(x.Cas);
        Texts(x.Ec);
        Text(x.Basis?.Text);
        Figure(x.Density);
        Figure(x.AvailableChlorine);
        List(x.Nature, n => Number((int)n));
        MaybeRange(x.Usual.Strength);
        MaybeRange(x.Usual.Ph);
        MaybeRange(x.Usual.Temperature);
        Ids(x.Usual.Sources);
        Member(x.Leaves);
        Flag(x.Chamber);
        Ids(x.InactivatedBy);
        Texts(x.BoundBy);
        List(x.Hazards, h => Number((int)h));
        List(x.Duties, Duty);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Duty(Duty x)
    {
        Number((int)x.Kind);
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
        Id(x.Id);
        Number((int)x.Kind);
        Text(x.Title);
        Text(x.Publisher);
        Text(x.Edition);
        Text(x.Section);
        Text(x.Address);
        Flag(x.Recalled);
        Number((int)x.Trust);
        Text(x.Note);
    }

    private void Damage(Damage x)
    {
        Number((int)x.Mechanism);
        Number((int)x.Onset);
        Flag(x.Lasting);
        Number((int)x.Consequence);
        Text(x.LookFor);
        Text(x.WithdrawIf);
    }

    private void Rule(Rule x)
    {
        Text(x.Id.Value);
        Id(x.Target.Part);
        Id(x.Target.Material);
        Id(x.Target.Device);
        Id(x.Target.DevicePart);
        Id(x.Agent);
        Id(x.Product);
        Date(x.CompositionDated);
        Flag(x.Allows);
        Box(x.When);
        Ids(x.SeenWith);
        Flag(x.WholeClass);
        Texts(x.Overrides.Select(id => id.Value));
        Maybe(x.Damage, Damage);
        Member(x.CountsTowards);
        List(x.Duties, Duty);
        Text(x.Why);
        Member(x.KnownBy);
        Maybe(x.Tested, tested =>
        {
            Number((int)tested.On);
            Flag(tested.Strained);
            Box(tested.Exposure);
        });
        Id(x.Edition);
        Ids(x.Sources);
        Date(x.Reviewed);
        Flag(x.IsSecondSource);
        WordList(x.RestsOn);
    }

    private void Convention(Convention x)
    {
        Number((int)x.Key);
        Range(x.Range);
        Methods(x.Methods);
        WordList(x.Consequences);
        WordList(x.Hazards);
        Text(x.Reason);
    }

    private void Standing(StandingRule x)
    {
        Id(x.Id);
        Id(x.Part);
        Id(x.Material);
        Id(x.Agent);
        Box(x.When);
        Member(x.AlwaysWith);
        Text(x.Reason);
        Ids(x.Sources);
        Word(x.NeverAbove);
        Word(x.Patient);
        Text(x.BoundBy);
        Id(x.MixingWith);
        Word(x.MixingWithSoil);
    }
}
