using System.Globalization;

namespace Compat.Published.Tests;

/// <summary>
/// Contact times, temperatures, least strengths and reuse days of liquid sterilants: Guideline for Disinfection and Sterilization in Healthcare Facilities
/// (2008), table 4. Where the table gives a range, the careful end must be kept.
/// </summary>
public sealed class SterilantTableTests
{
    private const decimal Day = 86_400m;

    public static TheoryData<string> Rows => RowTable.Lines("sterilants");

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_class_reaches_its_level_after_the_time_of_the_table_and_no_sooner(string row)
    {
        var cells = RowTable.Cells(row);
        var level = Enum.Parse<Level>(cells[4], ignoreCase: true);
        Claim[] At(decimal seconds) => KnowledgeBase.Shipped.Data.Claims.Where(claim => Holds(claim, cells, level, seconds)).ToArray();
        if (cells[5] == "never")
        {
            Assert.Empty(At(1_000_000m));
            return;
        }

        var claims = At(Number(cells[5]));
        Assert.NotEmpty(claims);
        Assert.Empty(At(Number(cells[5]) - 1m));
        if (cells[6] != "-") Assert.All(claims, claim => Assert.Equal(Number(cells[6]), claim.Bath?.Reuse / Day));
        if (cells[7] != "-") Assert.All(claims, claim => Assert.Equal(Number(cells[7]), claim.Bath?.Minimum?.Lower));
    }

    /// <summary>Whether a general claim of the agent, not refuted, reaches the level at the row's strength and temperature after a time.</summary>
    private static bool Holds(Claim claim, IReadOnlyList<string> cells, Level level, decimal seconds)
    {
        if (claim.Agent.Value != cells[0] || claim.Refuted is not null || claim.For.Count > 0 || !(claim.Reaches >= level)) return false;
        if (claim.With.Count > 0 != (cells[2] != "-")) return false;
        foreach (var partner in claim.With)
            if (cells[2].Split(' ') is not [var name, var percent] || partner.Agent.Value != name || !partner.Strength.Range.Contains(Number(percent)))
                return false;
        return In(claim.When.Strength, Number(cells[1])) && In(claim.When.Temperature, Number(cells[3])) && In(claim.When.ContactTime, seconds);
    }

    private static bool In(AxisLimit limit, decimal value) => limit.Statement == AxisStatement.Any
        || (limit.Statement == AxisStatement.Within && limit.Range.Contains(value));

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
