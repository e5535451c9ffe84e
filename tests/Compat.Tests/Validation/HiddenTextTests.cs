using System.Collections;
using System.Reflection;
using Compat.Tests.Evaluation;
using Compat.Validation;

namespace Compat.Tests.Validation;

/// <summary>
/// No text of any record may hold a character that nobody sees: every text property that a record can reach is spoilt, by reflection, so that none is
/// forgotten.
/// </summary>
public sealed class HiddenTextTests
{
    /// <summary>One of each class: C0, C1, DEL, line ends, spaces that are none, joiners, bidirectional signs, fillers, selectors, tags.</summary>
    public static TheoryData<string> Hidden =>
    [
        "\0", "\a", "\b", "\t", "\n", "\v", "\f", "\r", "\u001b", "\u007f", "\u0080", "\u0085", "\u009b", "\u00a0", "\u00ad", "\u034f", "\u061c", "\u115f",
            "\u1680", "\u180e", "\u2003", "\u200b",
        "\u200c", "\u200d", "\u200e", "\u200f", "\u2028", "\u2029", "\u202a", "\u202e", "\u202f", "\u2060", "\u2066", "\u2069", "\u206a", "\u2800", "\u3000",
            "\u3164", "\ufe0f", "\ufeff", "\uffa0",
        "\ufff9", "\U000e0001", "\U000e0041", "\U000e007f", "\U000e0100",
    ];

    private static Site Site => WholeSite.Site with
    {
        Products = [WholeSite.Stock with
        {
            Note = "invented",
            LabelClaims = [WholeSite.Claim, WholeSite.Registered],
            Ingredients = [.. WholeSite.Stock.Ingredients, new() { Unknown = "a scent" }],
        }],
        Devices =
        [
            WholeSite.Device with
            {
                Note = "invented",
                Parts = [WholeSite.Pane with { Name = "pane" }],
                Instructions = [WholeSite.Edition with { Serials = [new("AB", 1, 2)] }],
            },
        ],
        Rules = [Rule],
    };

    private static Rule Rule => EyeWorkshop.Data.Rules.First(rule => rule.Damage is not null) with
    {
        Id = new("own.alcohol"),
        Duties = [new() { Kind = DutyKind.Inspect, AfterUses = 1, Note = "cracks" }],
    };

    private static KnowledgeData Data => EveryKind.Data with
    {
        Rules = [Rule],
        Agents = EveryKind.Data.Agents.Select(agent => agent with { Duties = Rule.Duties }).ToArray(),
        Parts = EveryKind.Data.Parts.Select(part => part with { Duties = Rule.Duties, WaterIngress = new() { Numeral = 4, Means = "splashes do not enter" } })
            .ToArray(),
    };

    [Theory]
    [MemberData(nameof(Hidden))]
    public void Text_WithACharacterThatNobodySees_IsRefusedByItsName(string hidden)
    {
        var text = "a" + hidden + "b";
        Assert.Equal(1, HiddenText.Find(text, out var length));
        Assert.Equal(hidden.Length, length);
        Assert.Equal("a\uFFFDb", HiddenText.Shown(text));
        var problem = Assert.Single(SiteValidation.Check(EveryKind.Data, [], WholeSite.Site with { Name = text }));
        Assert.Equal(("character", "name"), (problem.Code, problem.Place.Field));
        Assert.Contains(HiddenText.NameAt(text, 1), problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_WithHalfAPair_IsRefused()
    {
        foreach (var half in new[] { '\ud800', '\udc00' })
        {
            Assert.Equal(1, HiddenText.Find("a" + half + "b", out var length));
            Assert.Equal(1, length);
            Assert.Equal("a\uFFFDb", HiddenText.Shown("a" + half + "b"));
        }
    }

    [Theory]
    [InlineData("plain text, 70 % v/v °C µ é ü ß ≤ ³ – … “x”")]
    [InlineData("漢字 العربية кириллица हिन्दी")]
    [InlineData("e\u0301 \U0001F600 \uE000")]
    public void Text_ThatIsSeen_IsTaken(string text)
    {
        Assert.Equal(-1, HiddenText.Find(text, out _));
        Assert.Same(text, HiddenText.Shown(text));
    }

    [Fact]
    public void EveryTextOfTheData_IsLookedAt() => EveryTextIsLookedAt(Data, typeof(KnowledgeData), data => KnowledgeValidation.Check(data));

    [Fact]
    public void EveryTextOfASite_IsLookedAt() => EveryTextIsLookedAt(Site, typeof(Site), site => SiteValidation.Check(EveryKind.Data, [], site));

    private static void EveryTextIsLookedAt<T>(T whole, Type type, Func<T, IReadOnlyList<Problem>> check) where T : notnull
    {
        Assert.DoesNotContain(check(whole), problem => problem.Code == "character");
        var seen = new HashSet<string>();
        foreach (var (property, spoilt) in Spoilt(whole))
        {
            seen.Add(property);
            var problem = Assert.Single(check((T)spoilt), one => one.Code == "character");
            Assert.Contains("U+001B", problem.Message, StringComparison.Ordinal);
        }

        Assert.Equal(Texts(type, []).Order(), seen.Order());
    }

    /// <summary>The record with one text of it, or of what it holds, spoilt; each text property of each type in turn.</summary>
    private static IEnumerable<(string Property, object Spoilt)> Spoilt(object record)
    {
        foreach (var property in Properties(record.GetType()))
        {
            var name = $"{property.DeclaringType!.Name}.{property.Name}";
            var value = property.GetValue(record);
            if (property.PropertyType == typeof(string))
            {
                yield return (name, With(record, property, "a\u001b[2Jb"));
            }
            else if (typeof(IReadOnlyList<string>).IsAssignableFrom(property.PropertyType))
            {
                yield return (name, With(record, property, new[] { "a\u001b[2Jb" }));
            }
            else if (value is IEnumerable list && ItemOf(property.PropertyType) is { } item && IsOurs(item))
            {
                var items = list.Cast<object>().ToArray();
                for (var i = 0; i < items.Length; i++)
                {
                    foreach (var (inner, spoilt) in Spoilt(items[i]))
                    {
                        var changed = Array.CreateInstance(item, items.Length);
                        items.CopyTo(changed, 0);
                        changed.SetValue(spoilt, i);
                        yield return (inner, With(record, property, changed));
                    }
                }
            }
            else if (value is not null && IsOurs(value.GetType()))
            {
                foreach (var (inner, spoilt) in Spoilt(value)) yield return (inner, With(record, property, spoilt));
            }
        }
    }

    /// <summary>The text properties that a type can reach.</summary>
    private static IEnumerable<string> Texts(Type type, HashSet<Type> seen)
    {
        if (!seen.Add(type)) yield break;
        foreach (var property in Properties(type))
        {
            var held = ItemOf(property.PropertyType) ?? Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            if (held == typeof(string)) yield return $"{property.DeclaringType!.Name}.{property.Name}";
            else if (IsOurs(held)) foreach (var inner in Texts(held, seen)) yield return inner;
        }
    }

    private static IEnumerable<PropertyInfo> Properties(Type type) =>
        type.GetProperties(BindingFlags.Instance | BindingFlags.Public).Where(one => one.GetIndexParameters().Length == 0 && one.SetMethod is not null);

    private static Type? ItemOf(Type type) => type.IsGenericType && typeof(IEnumerable).IsAssignableFrom(type) ? type.GetGenericArguments()[0] : null;

    private static bool IsOurs(Type type) => type.Assembly == typeof(KnowledgeBase).Assembly && !type.IsEnum;

    private static object With(object record, PropertyInfo property, object value)
    {
        var copy = typeof(object).GetMethod("MemberwiseClone", BindingFlags.Instance | BindingFlags.NonPublic)!.Invoke(record, null)!;
        property.SetValue(copy, value);
        return copy;
    }
}
