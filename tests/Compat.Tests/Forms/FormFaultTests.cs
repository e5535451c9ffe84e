using System.Collections;
using System.Reflection;
using Compat.Validation;

namespace Compat.Tests.Forms;

/// <summary>
/// What no file can say but code can: a number that is no member of its enumeration, a null, a figure too fine or too large. Each member that is
/// reached from what a caller hands over is spoilt by itself, and a problem names it.
/// </summary>
public sealed class FormFaultTests
{
    private static readonly NullabilityInfoContext Nullability = new();

    public static TheoryData<string> Roots => [.. RecordGraph.Roots.Keys];

    [Theory]
    [MemberData(nameof(Roots))]
    public void EnumMember_NotDefined_IsAProblem(string root) => Each(
        root,
        member => Inner(member) is { IsEnum: true } kind ? [Only(member, Enum.ToObject(kind, 99)), Only(member, Enum.ToObject(kind, -1))] : [],
        (problem, value) => problem.Code == "not-defined" && problem.Message.StartsWith($"`{Said(value)}` is no ", StringComparison.Ordinal));

    [Theory]
    [MemberData(nameof(Roots))]
    public void Member_Null_IsAProblem(string root) => Each(root, member => MustBe(member.Property) ? [null] : [], (problem, _) => problem.Code == "missing");

    [Theory]
    [MemberData(nameof(Roots))]
    public void ListItem_Null_IsAProblem(string root) => Each(root, NullItems, (problem, _) => problem.Code == "missing");

    [Theory]
    [MemberData(nameof(Roots))]
    public void Strength_Default_IsAProblem(string root) =>
        Each(root, member => Inner(member) == typeof(Strength) ? [default(Strength)] : [], (problem, _) => problem.Code == "missing");

    [Theory]
    [MemberData(nameof(Roots))]
    public void Date_Default_IsAProblem(string root) =>
        Each(root, member => Inner(member) == typeof(CalendarDate) ? [default(CalendarDate)] : [], (problem, _) => problem.Code == "missing");

    [Theory]
    [MemberData(nameof(Roots))]
    public void Figure_ThatCannotBeMeasured_IsAProblem(string root) => Each(root, Figures, (problem, _) => problem.Code == "not-measurable");

    [Theory]
    [MemberData(nameof(Roots))]
    public void Figure_AtTheEndOfWhatCanBeMeasured_IsRefusedOrReckonedWith(string root)
    {
        var (original, check) = RecordGraph.Roots[root];
        var whole = RecordGraph.Copy(original);
        foreach (var member in RecordGraph.MembersOf(whole).ToArray())
        {
            var before = member.Get();
            foreach (var value in new[] { 1_000_000_000_000m, 0.000000000000000001m }.SelectMany(figure => OfFigure(member, figure)))
            {
                member.Set(value);
                var wrong = Record.Exception(() =>
                {
                    if (check(whole).Count == 0) Use(whole);
                });
                Assert.True(wrong is null, $"{member.Path} = {Said(value)}: {wrong}");
                member.Set(before);
            }
        }
    }

    [Fact]
    public void EveryKindOfRecord_IsReached()
    {
        var reached = RecordGraph.Roots.Values.SelectMany(root => RecordGraph.MembersOf(RecordGraph.Copy(root.Whole)))
            .Select(member => member.Property.DeclaringType!).ToHashSet();
        // A value in a list is no place of its own: its default value is tried as an item.
        var kinds = RecordGraph.Kinds([.. RecordGraph.Roots.Values.Select(root => root.Whole.GetType())]);
        Assert.Equal(["SerialRange"], kinds.Except(reached).Select(kind => kind.Name));
    }

    [Fact]
    public void Whole_Null_IsAProblem()
    {
        foreach (var (name, (_, check)) in RecordGraph.Roots) Assert.Equal((name, "missing"), (name, Assert.Single(check(null!)).Code));
    }

    /// <summary>Spoils each member by itself, and holds the problems that are found against what is expected.</summary>
    private static void Each(string root, Func<RecordMember, IEnumerable<object?>> spoilt, Func<Problem, object?, bool> isIt)
    {
        var (original, check) = RecordGraph.Roots[root];
        var whole = RecordGraph.Copy(original);
        var failures = new List<string>();
        foreach (var member in RecordGraph.MembersOf(whole).ToArray())
        {
            var before = member.Get();
            foreach (var value in spoilt(member))
            {
                member.Set(value);
                try
                {
                    if (!check(whole).Any(problem => isIt(problem, value))) failures.Add($"{member.Path} = {Said(value)}: " + string.Join("; ", check(whole)));
                }
                catch (Exception problem) when (problem is not Xunit.Sdk.XunitException)
                {
                    failures.Add($"{member.Path} = {Said(value)}: {problem}");
                }

                member.Set(before);
            }
        }

        Assert.True(failures.Count == 0, $"{failures.Count} go unseen:\n" + string.Join("\n", failures.Take(40)));
    }

    private static string Said(object? value) => value switch
    {
        null => "null",
        Enum member => member.ToString(),
        IEnumerable items and not string => items.Cast<object?>().Select(Said).FirstOrDefault() ?? "",
        _ => value.ToString() ?? "",
    };

    private static Type Inner(RecordMember member) => RecordGraph.Inner(member.Property.PropertyType).First();

    /// <summary>A value as a member holds it: of a list, a list of that one.</summary>
    private static object? Only(RecordMember member, object value)
    {
        if (!typeof(IEnumerable).IsAssignableFrom(member.Property.PropertyType)) return value;
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(value.GetType()))!;
        list.Add(value);
        return list;
    }

    private static IEnumerable<object?> NullItems(RecordMember member)
    {
        var type = member.Property.PropertyType;
        if (!type.IsGenericType || type.GetGenericTypeDefinition() != typeof(IReadOnlyList<>) || type.GetGenericArguments()[0].IsEnum) yield break;
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(type.GetGenericArguments()[0]))!;
        list.Add(type.GetGenericArguments()[0] is { IsValueType: true } value ? Activator.CreateInstance(value) : null);
        yield return list;
    }

    private static bool MustBe(PropertyInfo property) => !property.PropertyType.IsValueType
        && Nullability.Create(property).ReadState == NullabilityState.NotNull;

    private static IEnumerable<object?> Figures(RecordMember member)
    {
        // An exposure time of a question may be without end, and its dilution, a share of two volumes, has all the digits of a decimal.
        var figures = new[] { 1e-28m, decimal.MaxValue, decimal.MinValue, 5000.0000000000000000000000001m };
        return figures.Where(
            figure => member.Name != (figure == Interval.WithoutEnd ? "Question.ExposureTime" : figure == figures[3] ? "Question.Dilution" : ""))
            .SelectMany(figure => OfFigure(member, figure));
    }

    /// <summary>A figure as a member holds it: by itself or as a range.</summary>
    private static IEnumerable<object?> OfFigure(RecordMember member, decimal figure)
    {
        var range = Interval.Exactly(figure);
        var type = Inner(member);
        if (type == typeof(decimal)) yield return figure;
        else if (type == typeof(Interval) && member.Property.DeclaringType != typeof(AxisLimit)) yield return range;
        else if (type == typeof(AxisLimit)) yield return AxisLimit.Within(range);
    }

    /// <summary>Asks what can be asked of records that are sound.</summary>
    private static void Use(object whole)
    {
        var kb = whole switch
        {
            KnowledgeData data when KnowledgeBase.TryBuild(data, out var built).Count == 0
                && built!.TryWith(RecordGraph.Site, out var with).Count == 0 => with!,
            Site site when RecordGraph.Base.TryWith(site, out var with).Count == 0 => with!,
            _ => null,
        };
        if (kb is null) return;
        foreach (var root in new[] { "agent question", "product question" }) kb.TryAsk((Question)RecordGraph.Roots[root].Whole, out _, out _);
        foreach (var agent in kb.Data.Agents)
            kb.TryAsk(new Question { Part = new("window"), Agent = agent.Id, Strength = Evaluation.EyeWorkshop.Percent(1m, "% w/w") }, out _, out _);
        kb.TryAsk(new Question { Part = new("window"), Product = new("stock") }, out _, out _);
        kb.TryPlan(RecordGraph.Plan, out _, out _);
        Compat.Planning.Bath.TryJudge(kb, RecordGraph.Bath, out _, out _);
        Compat.Planning.Dilution.TryMake(kb, RecordGraph.Dilution, out _, out _);
        Compat.Planning.LabelDilution.TryMake(kb, new("stock"), 1m, out _, out _);
    }
}
