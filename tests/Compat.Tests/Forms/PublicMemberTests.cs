using System.Collections;
using System.Reflection;
using Compat.Planning;

namespace Compat.Tests.Forms;

/// <summary>
/// Every public method, constructor and property of the library, called with what no caller should hand over: nulls, default values, numbers that are no
/// members, figures that are tiny or huge. A method that begins with Try says so by its result; any other by an <see cref="ArgumentException"/>.
/// </summary>
public sealed class PublicMemberTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
    private static readonly Assembly Library = typeof(KnowledgeBase).Assembly;
    private static readonly Lazy<Dictionary<Type, object>> Samples = new(FindSamples);

    [Fact]
    public void Call_WithWhatNobodyShouldHandOver_IsRefusedAsDocumented()
    {
        var failures = new SortedSet<string>(StringComparer.Ordinal);
        var calls = 0;
        foreach (var type in Library.GetExportedTypes().Where(type => !type.IsEnum && !typeof(Delegate).IsAssignableFrom(type)))
        {
            foreach (var member in type.GetMembers(Declared).OfType<MethodBase>().Select(Closed).OfType<MethodBase>())
            {
                if (type.IsAbstract && member is ConstructorInfo) continue;
                var target = member.IsStatic || member is ConstructorInfo ? null : SampleOf(type);
                if (target is null && !member.IsStatic && member is not ConstructorInfo) continue;
                foreach (var arguments in Arguments(member))
                {
                    calls++;
                    if (Call(member, target, arguments) is { } problem && !MayThrow(member, problem))
                        failures.Add($"{type.Name}.{member.Name}({string.Join(", ", arguments.Select(Said))}): {problem.GetType().Name} "
                            + $"{problem.StackTrace?.Split('\n').FirstOrDefault()?.Trim()}");
                }
            }
        }

        Assert.True(calls > 1000, calls.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.True(failures.Count == 0, $"{failures.Count}:\n" + string.Join("\n", failures.Take(60)));
    }

    [Fact]
    public void Property_OfADefaultValueOrARecordWithANull_IsReadWithoutException()
    {
        var failures = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var type in Library.GetExportedTypes().Where(type => type.IsValueType && !type.IsEnum))
            Read(Activator.CreateInstance(type)!, type.Name + " default");
        foreach (var (whole, _) in RecordGraph.Roots.Values)
        {
            var copy = RecordGraph.Copy(whole);
            foreach (var member in RecordGraph.MembersOf(copy).Where(member => !member.Property.PropertyType.IsValueType).ToArray())
            {
                var before = member.Get();
                member.Set(null);
                if (member.Path.Count(c => c == '/') == 1) Read(copy, member.Name);
                member.Set(before);
            }
        }

        Assert.True(failures.Count == 0, string.Join("\n", failures));

        void Read(object one, string name)
        {
            foreach (
                var property in one.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(property => property.GetIndexParameters().Length == 0))
                if (Call(property.GetMethod!, one, []) is { } problem) failures.Add($"{name}: {property.Name}: {problem.GetType().Name}");
            if (Call(one.GetType().GetMethod("ToString", Type.EmptyTypes)!, one, []) is { } said) failures.Add($"{name}: ToString: {said.GetType().Name}");
            if (Call(one.GetType().GetMethod("GetHashCode", Type.EmptyTypes)!, one, []) is { } hashed)
                failures.Add($"{name}: GetHashCode: {hashed.GetType().Name}");
        }
    }

    private static bool MayThrow(MethodBase member, Exception problem) =>
        !member.Name.StartsWith("Try", StringComparison.Ordinal)
        && problem is ArgumentException or Compat.Snapshots.SnapshotException or OperationCanceledException or TooManyBoxesException;

    private static Exception? Call(MethodBase member, object? target, object?[] arguments)
    {
        try
        {
            var result = member is ConstructorInfo make ? make.Invoke(arguments) : member.Invoke(target, arguments);
            if (result is IEnumerable items and not string) foreach (var _ in items) { }
            return null;
        }
        catch (TargetInvocationException outer)
        {
            return outer.InnerException;
        }
    }

    private static MethodBase? Closed(MethodBase member) => member switch
    {
        { Name: "Finalize" or "GetType" } => null,
        MethodInfo { IsGenericMethodDefinition: true } generic =>
            generic.MakeGenericMethod(generic.GetGenericArguments().Select(_ => typeof(ApplicationMethod)).ToArray()),
        MethodInfo { IsSpecialName: true } special when special.Name.StartsWith("set_", StringComparison.Ordinal) => null,
        _ => member.IsAbstract ? null : member,
    };

    /// <summary>All arguments bad at once, and each by itself beside good ones.</summary>
    private static IEnumerable<object?[]> Arguments(MethodBase member)
    {
        var types = member.GetParameters()
            .Select(parameter => parameter.ParameterType.IsByRef ? parameter.ParameterType.GetElementType()! : parameter.ParameterType).ToArray();
        var bad = types.Select(type => Bad(type).ToArray()).ToArray();
        if (types.Length == 0)
        {
            yield return [];
            yield break;
        }

        for (var n = 0; n < bad.Max(some => some.Length); n++) yield return bad.Select(some => some[Math.Min(n, some.Length - 1)]).ToArray();
        var good = types.Select(Good).ToArray();
        yield return good;
        for (var at = 0; at < types.Length; at++)
        {
            foreach (var one in bad[at])
            {
                var mixed = (object?[])good.Clone();
                mixed[at] = one;
                yield return mixed;
            }
        }
    }

    private static IEnumerable<object?> Bad(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner) return Bad(inner);
        if (type == typeof(decimal)) return [0m, -1m, 1e-28m, decimal.MaxValue, decimal.MinValue];
        if (type == typeof(double)) return [0d, double.NaN, double.PositiveInfinity, double.MinValue];
        if (type == typeof(int)) return [0, -1, int.MaxValue, int.MinValue];
        if (type == typeof(long)) return [0L, -1L, long.MaxValue, long.MinValue];
        if (type == typeof(string)) return [null, "", " ", "no such thing"];
        if (type.IsEnum) return [Enum.ToObject(type, 99), Enum.ToObject(type, -1), Enum.ToObject(type, 33)];
        if (type == typeof(Interval)) return [default(Interval), Interval.Whole, Interval.Exactly(decimal.MaxValue), Interval.Closed(2m, 1m)];
        if (type.IsValueType) return [Activator.CreateInstance(type)];
        if (type.IsArray) return [null, Array.CreateInstance(type.GetElementType()!, 0), Array.CreateInstance(type.GetElementType()!, 1)];
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
            return [null, Array.CreateInstance(type.GetGenericArguments()[0], 0), Array.CreateInstance(type.GetGenericArguments()[0], 1)];
        return [null];
    }

    private static object? Good(Type type)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner) return Good(inner);
        if (type == typeof(decimal)) return 1m;
        if (type == typeof(double)) return 1d;
        if (type == typeof(int)) return 1;
        if (type == typeof(long)) return 1L;
        if (type == typeof(string)) return "soap";
        if (type == typeof(Stream)) return new MemoryStream();
        if (type.IsArray) return Array.CreateInstance(type.GetElementType()!, 0);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>)) return Array.CreateInstance(type.GetGenericArguments()[0], 0);
        return SampleOf(type) ?? (type.IsValueType ? Activator.CreateInstance(type) : null);
    }

    private static object? SampleOf(Type type) => Samples.Value.GetValueOrDefault(type);

    /// <summary>One of each type that is found by walking from what the library answers.</summary>
    private static Dictionary<Type, object> FindSamples()
    {
        var kb = RecordGraph.With;
        var question = new Question { Device = new("viewer"), DevicePart = new("pane"), Product = new("stock"), TouchedBy = Compat.Model.TouchedBy.Hand };
        var sheet = kb.PlanOf(new PlanQuestion { Device = new("viewer") });
        var point = new Question
        {
            Part = new("window"),
            Agent = new("alcohol"),
            Strength = Evaluation.EyeWorkshop.Percent(70m),
            Method = ApplicationMethod.DampWipe,
            ExposureTime = Interval.Exactly(30m),
            Uses = 1,
        };
        var found = new Dictionary<Type, object>();
        object[] roots =
        [
            kb, point, kb.Ask(question), kb.Ask(point), kb.Prepare(point), kb.WindowOf(question), kb.NeedOf(question),
                kb.AskDevice(question with { DevicePart = null }).First(), kb.Map(point), sheet, Compat.Planning.Shelf.Of(kb), NeverList.Of(kb, sheet),
            .. RecordGraph.Roots.Values.Select(root => root.Whole), new UseBudget(Mechanism.Oxidation, [new UseLimit(new("stock"), 1)]),
            Compat.Model.MixingPartner.Of(new AgentId("soap")), new QuestionException(),
                new Compat.Validation.Problem("code", new(Compat.Validation.RecordKind.Rule, ""), "message"),
        ];
        var open = new Queue<object>(roots);
        while (open.TryDequeue(out var one))
        {
            var type = one.GetType();
            if (one is not string && one is IEnumerable items)
            {
                foreach (var item in items.Cast<object?>().Take(3)) if (item is not null) open.Enqueue(item);
                continue;
            }

            if (type.Assembly != Library || !found.TryAdd(type, one) || type.IsEnum) continue;
            foreach (
                var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0))
                if (property.GetValue(one) is { } value) open.Enqueue(value);
        }

        return found;
    }

    private static string Said(object? value) => value switch { null => "null", Array { Length: 0 } => "[]", Array => "[null]", _ => value.ToString() ?? "" };
}
