using System.Globalization;
using System.Text;
using Compat.Knowledge;

namespace Compat.Snapshots;

/// <summary>Reads what <see cref="SnapshotWriter"/> wrote. Every count and number is checked against what is left, so that a damaged file ends in <see cref="SnapshotException"/>.</summary>
internal sealed partial class SnapshotReader
{
    private readonly byte[] _bytes;
    private readonly string[] _strings;
    private readonly Dictionary<(Type, string), object> _ids = [];
    private int _at;

    private SnapshotReader(byte[] bytes, int start)
    {
        _bytes = bytes;
        _at = start;
        _strings = new string[Count()];
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

    public static KnowledgeData Read(byte[] bytes, int start)
    {
        var reader = new SnapshotReader(bytes, start);
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

    private KnowledgeData Data() => new()
    {
        Version = Text(),
        Materials = List(Material),
        Parts = List(Part),
        Agents = List(Agent),
        Sources = List(Source),
        Rules = List(Rule),
        Conventions = List(Convention),
        StandingRules = List(Standing),
    };

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

    private bool Flag() => Number() switch { 0 => false, 1 => true, _ => throw new SnapshotException("a flag is neither 0 nor 1") };

    private string? MaybeText()
    {
        var number = Number();
        if (number == 0) return null;
        return number <= _strings.Length ? _strings[number - 1] : throw new SnapshotException("a text is missing");
    }

    private string Text() => MaybeText() ?? throw new SnapshotException("a text is missing");

    private TId? MaybeId<TId>(Func<string, TId> make) where TId : class
    {
        if (MaybeText() is not { } text) return null;
        if (!_ids.TryGetValue((typeof(TId), text), out var id)) _ids[(typeof(TId), text)] = id = make(text);
        return (TId)id;
    }

    private TId Id<TId>(Func<string, TId> make) where TId : class => MaybeId(make) ?? throw new SnapshotException("an id is missing");

    private List<TId> Ids<TId>(Func<string, TId> make) where TId : class => List(() => Id(make));

    private TEnum? MaybeMember<TEnum>() where TEnum : struct, Enum
    {
        var number = Number();
        return number == 0 ? null : Known<TEnum>(number - 1);
    }

    private TEnum Member<TEnum>() where TEnum : struct, Enum => Known<TEnum>(Number());

    private static TEnum Known<TEnum>(long number) where TEnum : struct, Enum =>
        number < Members<TEnum>.All.Length ? Members<TEnum>.All[number] : throw new SnapshotException("a word is not known");

    /// <summary>The members of an enumeration by their number, which counts from 0 without gaps.</summary>
    private static class Members<TEnum> where TEnum : struct, Enum
    {
        public static readonly TEnum[] All = (TEnum[])Enum.GetValues(typeof(TEnum));
    }

    private decimal? MaybeFigure() => MaybeText() is not { } text ? null
        : decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var figure) ? figure
        : throw new SnapshotException("a figure is no number");

    private CalendarDate? MaybeDate() => MaybeText() is not { } text ? null
        : CalendarDate.TryParse(text, out var date) ? date : throw new SnapshotException("a date is none");

    private List<T> List<T>(Func<T> read)
    {
        var count = Count();
        var list = new List<T>(count);
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

    private MethodSet Methods() => MethodSet.Of(List(Member<ApplicationMethod>).ToArray());

    private AxisLimit Limit()
    {
        var statement = Member<AxisStatement>();
        return new AxisLimit(statement, statement == AxisStatement.Within ? Range() : Interval.Whole);
    }

    private ExposureBox Box()
    {
        var (strength, dilution, residence) = (Limit(), Limit(), Limit());
        var (temperature, ph, uses) = (Limit(), Limit(), Limit());
        return new ExposureBox
        {
            Strength = strength,
            Dilution = dilution,
            Residence = residence,
            Temperature = temperature,
            Ph = ph,
            Uses = uses,
            Methods = new MethodLimit(Member<AxisStatement>(), Methods()),
        };
    }

    private Material Material() => new()
    {
        Id = Id(t => new MaterialId(t)),
        Name = Text(),
        Under = MaybeId(t => new MaterialId(t)),
        Delicate = MaybeMember<Delicacy>(),
        DeclaredOnlySuffices = Flag(),
        AlsoCalled = List(Text),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private MaterialSlot Slot() => new(Ids(t => new MaterialId(t)).ToArray());

    private bool? Known() => Number() switch { 0 => null, 1 => false, 2 => true, _ => throw new SnapshotException("a flag is not known") };

    private PartType Part() => new()
    {
        Id = Id(t => new PartId(t)),
        Name = Text(),
        Under = MaybeId(t => new PartId(t)),
        AlsoCalled = List(Text),
        Materials = Maybe(() => List(Slot)),
        MaterialsKnown = Known(),
        Wettest = MaybeMember<ApplicationMethod>(),
        Never = Maybe(() => List(Member<Act>)),
        Geometry = MaybeMember<Geometry>(),
        TouchedBy = MaybeMember<TouchedBy>(),
        Patients = List(Word<People.PatientGroup>),
        Duties = List(Duty),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private AgentClass Agent() => new()
    {
        Id = Id(t => new AgentId(t)),
        Name = Text(),
        Under = MaybeId(t => new AgentId(t)),
        AlsoCalled = List(Text),
        Cas = List(Text),
        Basis = MaybeText() is not { } unit ? null : StrengthUnit.TryParse(unit, out var basis) ? basis : throw new SnapshotException("a unit is not known"),
        Density = MaybeFigure(),
        AvailableChlorine = MaybeFigure(),
        Nature = List(Member<Nature>),
        Usual = new UsualRange { Strength = MaybeRange(), Ph = MaybeRange(), Temperature = MaybeRange(), Sources = Ids(t => new SourceId(t)) },
        Leaves = MaybeMember<Residue>(),
        Chamber = Flag(),
        InactivatedBy = Ids(t => new AgentId(t)),
        BoundBy = List(Text),
        Hazards = List(Member<Hazard>),
        Duties = List(Duty),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private Duty Duty() => new()
    {
        Kind = Member<DutyKind>(),
        Ways = List(Way),
        Within = MaybeFigure(),
        Parts = Ids(t => new PartId(t)),
        AfterUses = MaybeCount(),
        Note = MaybeText(),
    };

    private int? MaybeCount() => Number() switch { 0 => null, <= int.MaxValue and var n => (int)n, _ => throw new SnapshotException("a number is too large") };

    private DutyWay Way() => new()
    {
        Method = MaybeMember<ApplicationMethod>(),
        Act = MaybeMember<Act>(),
        Water = MaybeMember<WaterGrade>(),
        Times = MaybeCount(),
        Seconds = MaybeFigure(),
        Litres = MaybeFigure(),
    };

    private Source Source() => new()
    {
        Id = Id(t => new SourceId(t)),
        Kind = Member<SourceKind>(),
        Title = Text(),
        Publisher = MaybeText(),
        Edition = MaybeText(),
        Section = MaybeText(),
        Address = MaybeText(),
        Recalled = Flag(),
        Trust = Member<Trust>(),
        Note = MaybeText(),
    };

    private Damage Damage() => new()
    {
        Mechanism = Member<Mechanism>(),
        Onset = Member<Onset>(),
        Lasting = Flag(),
        Consequence = Member<Consequence>(),
        LookFor = MaybeText(),
        WithdrawIf = MaybeText(),
    };

    private RuleTarget Target()
    {
        var part = MaybeId(t => new PartId(t));
        var material = MaybeId(t => new MaterialId(t));
        var device = MaybeId(t => new DeviceId(t));
        var devicePart = MaybeId(t => new DevicePartId(t));
        if (part is not null) return RuleTarget.On(part);
        if (material is not null) return RuleTarget.On(material);
        if (device is null) throw new SnapshotException("a rule has no target");
        return devicePart is null ? RuleTarget.On(device) : RuleTarget.On(device, devicePart);
    }

    private Rule Rule() => new()
    {
        Id = new RuleId(Text()),
        Target = Target(),
        Agent = MaybeId(t => new AgentId(t)),
        Product = MaybeId(t => new ProductId(t)),
        CompositionDated = MaybeDate(),
        When = Box(),
        Allows = Flag(),
        SeenWith = Ids(t => new AgentId(t)),
        WholeClass = Flag(),
        Overrides = List(() => new RuleId(Text())),
        Damage = Maybe(Damage),
        CountsTowards = MaybeMember<Mechanism>(),
        Duties = List(Duty),
        Why = Text(),
        KnownBy = MaybeMember<KnownBy>(),
        Tested = Maybe(() => new TestEvidence { On = Member<TestPiece>(), Strained = Flag(), Exposure = Box() }),
        Edition = MaybeId(t => new EditionId(t)),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = MaybeDate() ?? throw new SnapshotException("a review date is missing"),
    };

    private Convention Convention() => new() { Key = Member<ConventionKey>(), Range = Range(), Methods = Methods(), Reason = Text() };

    private StandingRule Standing() => new()
    {
        Id = Id(t => new StandingRuleId(t)),
        Part = MaybeId(t => new PartId(t)),
        Material = MaybeId(t => new MaterialId(t)),
        Agent = Id(t => new AgentId(t)),
        When = Box(),
        AlwaysWith = MaybeMember<DutyKind>(),
        Reason = Text(),
        Sources = Ids(t => new SourceId(t)),
    };
}
