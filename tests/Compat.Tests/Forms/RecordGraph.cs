using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using Compat.Planning;
using Compat.Tests.Evaluation;
using Compat.Tests.Validation;

namespace Compat.Tests.Forms;

/// <summary>A member of a record that is reached from what a caller hands over.</summary>
/// <param name="Path">How it is reached.</param>
/// <param name="Property">The member.</param>
/// <param name="Get">What it holds.</param>
/// <param name="Set">Puts something else into it, in place.</param>
internal sealed record RecordMember(string Path, PropertyInfo Property, Func<object?> Get, Action<object?> Set)
{
    /// <summary>The kind of record and the member, whichever record it is.</summary>
    public string Name => Property.DeclaringType!.Name + "." + Property.Name;
}

/// <summary>All that callers hand over, member by member, found by reflection: what a test says of it holds for members that are added later too.</summary>
internal static class RecordGraph
{
    private const BindingFlags Members = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance;
    private static readonly Assembly Library = typeof(KnowledgeBase).Assembly;

    /// <summary>A question with something stated in every member, to be asked of the invented knowledge base and site.</summary>
    public static Question Question { get; } = new()
    {
        Part = new("window"),
        Materials = [new(new MaterialId("glass"), new MaterialId("foam"))],
        Device = new("viewer"),
        DevicePart = new("pane"),
        Serial = new("A", 1),
        Agent = new("alcohol"),
        Product = new("stock"),
        Strength = EyeWorkshop.Percent(70m),
        Dilution = Interval.Exactly(0.5m),
        Method = ApplicationMethod.DampWipe,
        ExposureTime = Interval.Exactly(30m),
        Temperature = Interval.Exactly(20m),
        Ph = Interval.Exactly(7m),
        Uses = 1,
        Acts = [Act.SoftCloth],
        TouchedBy = TouchedBy.Hand,
        Patients = [PatientGroup.Eye],
        Soil = [SoilKind.Dust],
        Level = Level.Low,
        Against = [OrganismTarget.Of(OrganismGroup.Fungi), OrganismTarget.Of(new OrganismId("invented-virus"))],
        Cloth = "cotton",
    };

    public static PlanQuestion Plan { get; } = new()
    {
        Device = new("viewer"),
        Serial = new("A", 1),
        Occasion = new("after-outbreak"),
        Level = Level.Low,
        Against = [OrganismTarget.Of(OrganismGroup.Fungi)],
        Soil = [SoilKind.Dust],
        SoilOn = new Dictionary<DevicePartId, IReadOnlyList<SoilKind>> { [new("pane")] = [SoilKind.Dust] },
        Cloth = "cotton",
        Accept = [Consequence.Looks],
    };

    public static BathQuestion Bath { get; } = new()
    {
        Product = new("stock"),
        Today = EyeWorkshop.Day,
        Measured = EyeWorkshop.Percent(5m, "% w/w"),
        Tested = EyeWorkshop.Day,
        Activated = EyeWorkshop.Day,
        Diluted = EyeWorkshop.Day,
        Opened = EyeWorkshop.Day,
        Expires = EyeWorkshop.Day,
    };

    public static DilutionQuestion Dilution { get; } = new()
    {
        Agent = new("soap"),
        Stock = EyeWorkshop.Percent(10m, "% w/w"),
        Wanted = EyeWorkshop.Percent(1m, "% w/w"),
        Kilograms = 1m,
        StockDensity = 1m,
    };

    /// <summary>The invented site with a rule and a test, whose parts and edition have something in every member.</summary>
    public static Site Site { get; } = WholeSite.Site with
    {
        Products = [WholeSite.Stock with
        {
            LabelClaims = [WholeSite.Claim, WholeSite.Registered],
            CompositionDated = EyeWorkshop.Day,
            Density = 1m,
            Ph = [new(Interval.Exactly(7m), PhState.InUse)],
            Temperature = Interval.Closed(15m, 30m),
        }],
        Devices =
        [
            WholeSite.Device with
            {
                Parts = [WholeSite.Pane with
                {
                    Name = "pane",
                    Wettest = ApplicationMethod.DampWipe,
                    WettestFrom = new("first"),
                    Geometry = Geometry.Open,
                    Materials = [new(new MaterialId("glass"))],
                }],
                Instructions = [WholeSite.Edition with { Serials = [new("A", 1, 2)], Dated = EyeWorkshop.Day, Replaces = [] }],
            },
        ],
        Rules = [EyeWorkshop.Data.Rules[0] with { Id = new("own.alcohol"), RestsOn = [ThinGround.OtherAgent] }],
    };

    public static KnowledgeBase Base { get; } = EyeWorkshop.Build(EveryKind.Data);

    public static KnowledgeBase With { get; } = Base.With(WholeSite.Site);

    /// <summary>What is handed over, each with what checks it.</summary>
    public static IReadOnlyDictionary<string, (object Whole, Func<object, IReadOnlyList<Compat.Validation.Problem>> Check)> Roots { get; } =
        new Dictionary<string, (object, Func<object, IReadOnlyList<Compat.Validation.Problem>>)>
        {
            ["data"] = (EveryKind.Data, data => KnowledgeBase.TryBuild((KnowledgeData)data, out _)),
            ["site"] = (Site, site => Base.TryWith((Site)site, out _)),
            ["question"] = (Question, Asked),
            ["agent question"] = (Question with { Part = null, Materials = [], Product = null, Dilution = null }, Asked),
            ["product question"] = (Question with { Part = null, Materials = [], Agent = null, Strength = null }, Asked),
            ["plan"] = (Plan, question => With.TryPlan((PlanQuestion)question, out _, out var problems) ? [] : problems),
            ["bath"] = (Bath, question => Compat.Planning.Bath.TryJudge(With, (BathQuestion)question, out _, out var problems) ? [] : problems),
            ["dilution"] = (Dilution, question => Compat.Planning.Dilution.TryMake(With, (DilutionQuestion)question, out _, out var problems) ? [] : problems),
        };

    private static IReadOnlyList<Compat.Validation.Problem> Asked(object question)
    {
        var isAsked = With.TryAsk((Question)question, out _, out var problems);
        Assert.Equal(isAsked, With.TryPrepare((Question)question, out _, out var same));
        Assert.Equal(problems.Select(problem => problem.ToString()), same.Select(problem => problem.ToString()));
        return problems;
    }

    /// <summary>Whether a type is a record, or a value, of the library that has members to set.</summary>
    public static bool IsRecord(Type type) => type.Assembly == Library && !type.IsEnum && !typeof(Id).IsAssignableFrom(type)
        && !typeof(DottedId).IsAssignableFrom(type)
        && type != typeof(StrengthUnit) && type != typeof(MethodSet) && type != typeof(CalendarDate) && type != typeof(Interval);

    /// <summary>The members of a type that its maker sets.</summary>
    public static IEnumerable<PropertyInfo> Settable(Type type) => type.GetProperties(Members)
        .Where(property => property is { CanRead: true } && property.GetMethod!.IsPublic && property.Name != "EqualityContract"
            && Setter(property) is not null);

    /// <summary>Every kind of record that is reached from some roots.</summary>
    public static IEnumerable<Type> Kinds(params Type[] roots)
    {
        var seen = new HashSet<Type>();
        var open = new Queue<Type>(roots);
        while (open.TryDequeue(out var type))
        {
            if (!IsRecord(type) || !seen.Add(type)) continue;
            foreach (var property in Settable(type)) foreach (var inner in Inner(property.PropertyType)) open.Enqueue(inner);
        }

        return seen;
    }

    /// <summary>A copy that shares no record with what it is of; every list of it is one that its maker keeps and can change.</summary>
    public static T Copy<T>(T whole, List<IList>? owned = null) => (T)CopyOf(whole!, owned)!;

    /// <summary>Every member reached in a whole that was copied; setting one changes that whole.</summary>
    public static IEnumerable<RecordMember> MembersOf(object whole, string path = "")
    {
        foreach (var property in Settable(whole.GetType()))
        {
            var member = new RecordMember(path + "/" + property.Name, property, () => property.GetValue(whole), value => Put(whole, property, value));
            yield return member;
            var value = property.GetValue(whole);
            if (value is null) continue;
            if (value is not string && value is IEnumerable items)
            {
                var at = 0;
                foreach (var item in items)
                {
                    if (item is not null && IsRecord(item.GetType()) && !item.GetType().IsValueType)
                        foreach (var inner in MembersOf(item, $"{member.Path}.{at}")) yield return inner;
                    at++;
                }
            }
            else if (IsRecord(value.GetType()) && value.GetType().IsValueType)
            {
                // A value is copied when it is read: what is changed of it is put back.
                foreach (var inner in Settable(value.GetType()))
                    yield return new RecordMember($"{member.Path}/{inner.Name}", inner, () => inner.GetValue(property.GetValue(whole)), changed =>
                    {
                        var boxed = property.GetValue(whole)!;
                        Put(boxed, inner, changed);
                        Put(whole, property, boxed);
                    });
            }
            else if (IsRecord(value.GetType()))
            {
                foreach (var inner in MembersOf(value, member.Path)) yield return inner;
            }
        }
    }

    /// <summary>The types that a member holds: of a list, of its items.</summary>
    public static IEnumerable<Type> Inner(Type type) =>
        Nullable.GetUnderlyingType(type) is { } inner ? [inner]
        : type.IsGenericType ? type.GetGenericArguments().SelectMany(Inner) : [type];

    /// <summary>The field of a member that is set where it is made only, or the property itself.</summary>
    private static MemberInfo? Setter(PropertyInfo property) =>
        property.SetMethod is not null ? property : property.DeclaringType!.GetField($"<{property.Name}>k__BackingField", Members);

    private static void Put(object whole, PropertyInfo property, object? value)
    {
        if (Setter(property) is FieldInfo field) field.SetValue(whole, value);
        else property.SetValue(whole, value);
    }

    private static object? CopyOf(object whole, List<IList>? owned)
    {
        var type = whole.GetType();
        if (whole is not string && whole is IEnumerable items)
        {
            var kind = type.GetInterfaces().First(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IEnumerable<>)).GetGenericArguments()[0];
            if (kind.IsGenericType && kind.GetGenericTypeDefinition() == typeof(KeyValuePair<,>)) return whole;
            var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(kind))!;
            foreach (var item in items) list.Add(item is null ? null : CopyOf(item, owned));
            owned?.Add(list);
            return list;
        }

        if (!IsRecord(type)) return whole;
        var copy = type.IsValueType ? RuntimeHelpers.GetObjectValue(whole) : type.GetMethod("<Clone>$")!.Invoke(whole, null)!;
        foreach (var property in Settable(type))
            if (property.GetValue(whole) is { } value && CopyOf(value, owned) is { } inner && (!ReferenceEquals(inner, value) || value is IEnumerable))
                Hand(copy, property, inner, owned);
        return copy;
    }

    /// <summary>Hands a member over as its maker does: a list that only the constructor takes goes through that.</summary>
    private static void Hand(object copy, PropertyInfo property, object value, List<IList>? owned)
    {
        if (Setter(property) is FieldInfo && copy is MaterialSlot && value is List<MaterialId> ids)
        {
            var array = ids.ToArray();
            owned?.Add(array);
            Put(copy, property, new MaterialSlot(array).OneOf);
            return;
        }

        Put(copy, property, value);
    }
}
