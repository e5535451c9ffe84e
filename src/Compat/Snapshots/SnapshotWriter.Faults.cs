using Compat.Validation;

namespace Compat.Snapshots;

/// <content>
/// What cannot be written cannot be asked: a null where a record must say something, a character that nobody sees, a number that is no member of its
/// enumeration, a figure that the arithmetic could not carry to its last digit. What is written of each record says what must be looked at, so that
/// nothing is forgotten.
/// </content>
internal sealed partial class SnapshotWriter
{
    /// <summary>How many digits a figure may have, and how many behind its point; files have at most 12, before their units are brought to ours.</summary>
    private const int MostDigits = 18;

    /// <summary>Larger than any figure of this trade.</summary>
    private const decimal Largest = 1_000_000_000_000m;

    private readonly List<Problem>? _faults;
    private readonly List<(string What, int At, ProblemPlace Place, int Start)> _path = [];
    private ProblemPlace _place = new(RecordKind.Question, "");
    private int _start;

    private SnapshotWriter(List<Problem>? faults = null) => _faults = faults;

    /// <summary>All that cannot be written of the records of a knowledge base.</summary>
    public static IReadOnlyList<Problem> FaultsOf(KnowledgeData? data) => FaultsOf(data, RecordKind.Site, "records", (writer, x) =>
    {
        writer.Must(x.Version);
        writer.Sections(x);
    });

    /// <summary>All that cannot be written of a site.</summary>
    public static IReadOnlyList<Problem> FaultsOf(Site? site) => FaultsOf(site, RecordKind.Site, "site", static (writer, x) => writer.Write(x));

    /// <summary>All that cannot be written of a question.</summary>
    public static IReadOnlyList<Problem> FaultsOf(Question? question) =>
        FaultsOf(question, RecordKind.Question, "question", static (writer, x) => writer.Question(x));

    /// <summary>All that cannot be written of a question for a plan.</summary>
    public static IReadOnlyList<Problem> FaultsOf(PlanQuestion? question) =>
        FaultsOf(question, RecordKind.Question, "question", static (writer, x) => writer.Plan(x));

    /// <summary>All that cannot be written of a bath.</summary>
    public static IReadOnlyList<Problem> FaultsOf(BathQuestion? question) =>
        FaultsOf(question, RecordKind.Question, "question", static (writer, x) => writer.Bath(x));

    /// <summary>All that cannot be written of a dilution.</summary>
    public static IReadOnlyList<Problem> FaultsOf(DilutionQuestion? question) =>
        FaultsOf(question, RecordKind.Question, "question", static (writer, x) => writer.Dilution(x));

    private static IReadOnlyList<Problem> FaultsOf<T>(T? record, RecordKind kind, string what, Action<SnapshotWriter, T> write) where T : class
    {
        if (record is null) return [new("missing", new ProblemPlace(kind, ""), $"no {what} is given")];
        var writer = new SnapshotWriter([]);
        write(writer, record);
        return writer._faults!;
    }

    private void Question(Question x)
    {
        Id(x.Part);
        List(x.Materials, Write);
        Id(x.Device);
        Id(x.DevicePart);
        if (x.Serial is { } serial) Must(serial.Prefix, nameof(x.Serial));
        Id(x.Agent);
        Id(x.Product);
        if (x.Strength is { } strength) Strength(strength, nameof(x.Strength));
        if (x.Dilution is { } dilution) Ratio(dilution);
        Member(x.Method);
        if (x.ExposureTime is { } exposureTime)
        {
            if (exposureTime.Lower != Interval.WithoutEnd) Figure(exposureTime.Lower, nameof(x.ExposureTime));
            if (exposureTime.Upper != Interval.WithoutEnd) Figure(exposureTime.Upper, nameof(x.ExposureTime));
        }

        MaybeRange(x.Temperature);
        MaybeRange(x.Ph);
        CodeList(x.Acts);
        Member(x.TouchedBy);
        CodeList(x.Patients);
        Maybe(x.Soil, soil => CodeList(soil, ""));
        Member(x.Level);
        List(x.Against, Write);
    }

    private void Plan(PlanQuestion x)
    {
        Must(x.Device);
        if (x.Serial is { } serial) Must(serial.Prefix, nameof(x.Serial));
        Member(x.Level);
        List(x.Against, Write);
        Maybe(x.Soil, soil => CodeList(soil, ""));
        List(x.SoilOn, pair => CodeList(pair.Value, ""));
        CodeList(x.Accept);
    }

    private void Bath(BathQuestion x)
    {
        Date(x.Today);
        if (x.Measured is { } measured) Strength(measured, nameof(x.Measured));
        Date(x.Tested);
        Date(x.Activated);
        Date(x.Diluted);
        Date(x.Opened);
        Date(x.Expires);
    }

    private void Dilution(DilutionQuestion x)
    {
        Must(x.Agent);
        Strength(x.Stock, nameof(x.Stock));
        Strength(x.Wanted, nameof(x.Wanted));
        Figure(x.Litres);
        Figure(x.Kilograms);
        Figure(x.StockDensity);
        Figure(x.Temperature);
    }

    /// <summary>Begins a record that has an id of its own.</summary>
    private void At(RecordKind kind, string id)
    {
        if (_faults is null) return;
        _place = new ProblemPlace(kind, id);
        _start = _path.Count;
    }

    private void Enter(string what, int at = -1)
    {
        if (_faults is not null) _path.Add((what, at, _place, _start));
    }

    private void Leave()
    {
        if (_faults is null) return;
        (_, _, _place, _start) = _path[_path.Count - 1];
        _path.RemoveAt(_path.Count - 1);
    }

    private void Missing(string what) => Fault("missing", what, "nothing is said where something must be");

    /// <summary>Whoever shows a record need not look for characters that nobody sees, line breaks among them.</summary>
    private void Seen(string text, string what)
    {
        if (_faults is not null && HiddenText.Find(text, out _) is var at && at >= 0)
            Fault("character", what, $"the text holds {HiddenText.NameAt(text, at)}, a character that cannot be seen",
                "leave it out; a text stands on one line");
    }

    private void Defined<TEnum>(TEnum value, string what) where TEnum : struct, Enum
    {
        if (_faults is not null && !Enum.IsDefined(value))
            Fault("not-defined", what, $"`{value}` is no {Words.InKebabCase(typeof(TEnum).Name).Replace('-', ' ')}",
                "the members are: " + string.Join(", ", Words.All<TEnum>()));
    }

    private void Measurable(decimal value, string what)
    {
        if (_faults is null || IsMeasurable(value)) return;
        Fault("not-measurable", what, $"`{Interval.Figure(value)}` is no figure that can be measured",
            $"at most {MostDigits} digits, as many behind the point, and up to 1,000,000,000,000: round it to the worse side");
    }

    /// <summary>
    /// A share of two volumes, 1 in 11 for one, fills all 28 digits of a decimal: it is taken to its last, and refused only where it is too small to reckon
    /// with.
    /// </summary>
    private void Ratio(Interval share)
    {
        foreach (var end in new[] { share.Lower, share.Upper })
            if (end is { } figure)
                Measurable(decimal.Round(figure, MostDigits) is var near && near == 0m && figure != 0m ? figure : near, nameof(Compat.Question.Dilution));
    }

    private static bool IsMeasurable(decimal value)
    {
        if (Math.Abs(value) > Largest || decimal.Round(value, MostDigits) != value) return false;
        // Divided by a 1 with 28 zeros behind its point a decimal loses the zeros behind its own.
        var bits = decimal.GetBits(value / 1.0000000000000000000000000000m);
        return new decimal(bits[0], bits[1], bits[2], false, 0) < 1_000_000_000_000_000_000m;
    }

    private void Fault(string code, string what, string message, string? help = null)
    {
        if (_faults is null) return;
        var field = new List<string>();
        for (var i = _start; i < _path.Count; i++)
        {
            Name(_path[i].What);
            if (_path[i].At >= 0) field.Add(_path[i].At.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        Name(what);
        _faults.Add(new Problem(code, _place with { Field = string.Join(".", field) }, message, help));

        // An expression such as `x.Usual` names its field behind the first point.
        void Name(string expression)
        {
            var name = expression.Substring(expression.IndexOf('.') + 1);
            if (name.Length > 0) field.AddRange(name.Split('.').Select(Words.InKebabCase));
        }
    }
}
