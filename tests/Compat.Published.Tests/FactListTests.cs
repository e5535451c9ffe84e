using System.Text.RegularExpressions;
using Xunit.Abstractions;

namespace Compat.Published.Tests;

/// <summary>Every published fact of the collection is used somewhere that exists, or is listed with the reason it is not.</summary>
public sealed class FactListTests(ITestOutputHelper output)
{
    private const string NotUsed = "not used: ";

    private static readonly Regex Line =
        new(@"^[A-Z]+[A-Za-z0-9-]* \| (not used: \S.*|[a-z]+:[A-Za-z0-9.-]+(, [a-z]+:[A-Za-z0-9.-]+)*)$", RegexOptions.CultureInvariant);

    private static string[] Facts => [.. typeof(FactListTests).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith("facts/", StringComparison.Ordinal)).SelectMany(RowTable.Read)];

    [Fact]
    public void Every_fact_has_one_line_of_the_form()
    {
        Assert.NotEmpty(Facts);
        Assert.All(Facts, line => Assert.Matches(Line, line));
        Assert.Empty(Facts.GroupBy(line => RowTable.Cells(line)[0]).Where(same => same.Count() > 1).Select(same => same.Key));
    }

    [Fact]
    public void What_a_fact_names_exists()
    {
        Assert.Empty(Used.SelectMany(line => Places(line).Where(place => !Exists(place)).Select(place => line + ": " + place)));
        var unused = Facts.Length - Used.Length;
        output.WriteLine($"facts used {Used.Length}, not used {unused}");
    }

    [Theory]
    [InlineData("rule:no-such-rule")]
    [InlineData("test:NoSuchTests")]
    [InlineData("rows:no-such-table")]
    [InlineData("nothing:ethanol")]
    public void A_place_that_does_not_exist_is_seen(string place) => Assert.False(Exists(place));

    private static string[] Used => [.. Facts.Where(line => !RowTable.Cells(line)[1].StartsWith(NotUsed, StringComparison.Ordinal))];

    private static string[] Places(string line) => RowTable.Cells(line)[1].Split(", ");

    private static bool Exists(string place)
    {
        var (kind, id) = (place[..place.IndexOf(':')], place[(place.IndexOf(':') + 1)..]);
        return kind switch
        {
            "test" => typeof(FactListTests).Assembly.GetType("Compat.Published.Tests." + id) is not null,
            "rows" => typeof(FactListTests).Assembly.GetManifestResourceInfo(id) is not null,
            _ => Records.TryGetValue(kind, out var ids) && ids.Contains(id),
        };
    }

    private static readonly KnowledgeData Data = KnowledgeBase.Shipped.Data;

    private static readonly Dictionary<string, HashSet<string>> Records = new()
    {
        ["rule"] = [.. Data.Rules.Select(one => one.Id.Value)],
        ["claim"] = [.. Data.Claims.Select(one => one.Id.Value)],
        ["part"] = [.. Data.Parts.Select(one => one.Id.Value)],
        ["agent"] = [.. Data.Agents.Select(one => one.Id.Value)],
        ["material"] = [.. Data.Materials.Select(one => one.Id.Value)],
        ["hazard"] = [.. Data.MixingHazards.Select(one => one.Id.Value)],
        ["person"] = [.. Data.PersonRules.Select(one => one.Id.Value)],
        ["protection"] = [.. Data.Protections.Select(one => one.Id.Value)],
        ["organism"] = [.. Data.Organisms.Select(one => one.Id.Value)],
        ["level"] = [.. Data.Levels.Select(one => Words.Of(one.Level))],
        ["test"] = [.. Data.TestStandards.Select(one => one.Code.Value)],
        ["need"] = [.. Data.Needs.Select(one => one.Id.Value)],
        ["word"] = [.. Data.InstructionWords.Select(one => one.Id.Value)],
        ["standing"] = [.. Data.StandingRules.Select(one => one.Id.Value)],
        ["occasion"] = [.. Data.Occasions.Select(one => one.Id.Value)],
        ["source"] = [.. Data.Sources.Select(one => one.Id.Value)],
    };
}
