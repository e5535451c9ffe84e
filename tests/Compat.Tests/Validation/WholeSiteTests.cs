using Compat.Snapshots;
using Compat.Tests.Evaluation;

namespace Compat.Tests.Validation;

/// <summary>A site whose every field is stated is sound; each thing that can be wrong with one is found where it lies.</summary>
public class WholeSiteTests
{
    public static TheoryData<string> Names => [.. SpoiltSites.All.Keys];

    [Fact]
    public void The_whole_is_sound() => Assert.Empty(Check(WholeSite.Site));

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_spoilt_is_found_where_it_is(string name)
    {
        var (site, place) = SpoiltSites.All[name];
        var problem = Assert.Single(Check(site));
        Assert.Equal(name.Split(' ')[^1], problem.Code);
        Assert.StartsWith(place + ": ", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_below_what_the_contact_asks_is_a_decision_too() =>
        Assert.Empty(
            Check(WholeSite.Site with
            {
                Levels = [
                WholeSite.Decision with { Level = Level.Cleaned }, WholeSite.Decision with { Part = null, Level = Level.Sterile }]
            }));

    [Fact]
    public void A_wrong_part_is_answered_with_the_nearest_name() =>
        Assert.Equal("did you mean `pane`?", Check(WholeSite.Site with { Levels = [WholeSite.Decision with { Part = new("panel") }] })[0].Help);

    /// <summary>An edition behind it, small letters and slips lead to the code; where nothing is near, what may stand there is said.</summary>
    [Theory]
    [InlineData("EN 3", "did you mean `EN 1`?")]
    [InlineData("EN 1:2015+A1:2019", "did you mean `EN 1`?")]
    [InlineData("en 1", "did you mean `EN 1`?")]
    [InlineData("x", "write codes of `test-standards.yaml`, as `[EN 13727, EN 16615]`, or `registration: { authority, number }`")]
    public void A_test_that_is_not_known_is_answered_with_the_nearest_code(string code, string help) =>
        Assert.Equal(help, Assert.Single(Check(SpoiltSites.Claim(WholeSite.Claim with { ShownBy = [new(code)] }))).Help);

    [Fact]
    public void Every_field_changes_the_content_hash()
    {
        var stock = WholeSite.Stock;
        var here = WholeSite.Site.Here;
        Site[] others =
        [
            WholeSite.Site with { Here = here with { Temperature = null } }, WholeSite.Site with { Here = here with { Hardness = null } },
            WholeSite.Site with { Here = here with { Water = [] } }, WholeSite.Site with { Here = here with { Cloths = [] } },
            WholeSite.Site with { Here = here with { Gloves = [] } }, WholeSite.Site with { Here = here with { DryingAir = null } }, WholeSite.Site with
            {
                Here = here with { DryingAir = true },
            },
            WholeSite.Site with { Levels = [] }, WholeSite.Site with { Levels = [WholeSite.Decision with { Level = Level.Low }] }, WholeSite.Site with
            {
                Levels = [WholeSite.Decision with { Because = "b" }],
            },
            WholeSite.With(stock with { Methods = MethodSet.None }), WholeSite.With(stock with { LabelClaims = [] }),
                SpoiltSites.Claim(WholeSite.Claim with { ShownBy = [] }),
                SpoiltSites.Claim(WholeSite.Claim with { ShownBy = [], Registration = new("an office", "1") }),
                SpoiltSites.Claim(WholeSite.Claim with { StandsSoil = [] }),
            SpoiltSites.Claim(WholeSite.Claim with { For = [] }), SpoiltSites.Claim(WholeSite.Claim with { Needs = [] }),
                SpoiltSites.Claim(WholeSite.Claim with { DoesNotKill = [] }), SpoiltSites.Box(box => box with { Dilution = AxisLimit.Any }),
            WholeSite.With(stock with { ContactTimes = [] }), WholeSite.With(stock with { Removes = [] }), WholeSite.With(stock with { OneStep = false }),
                WholeSite.With(stock with { MostHardness = null }),
            WholeSite.With(stock with { Life = stock.Life with { Activated = null } }), WholeSite.With(stock with
            {
                Life = stock.Life with { Diluted = null },
            }),
            WholeSite.With(stock with { Life = stock.Life with { Opened = null } }), WholeSite.With(stock with
            {
                Life = stock.Life with { MayBeRefilled = false },
            }),
            WholeSite.With(stock with { Bath = null }), WholeSite.With(stock with { BoundByCloths = [] }),
            WholeSite.With(WholeSite.Device with { Patients = null }), WholeSite.With(WholeSite.Pane with { Because = null }),
                WholeSite.With(WholeSite.Pane with { Soil = null }), WholeSite.With(WholeSite.Pane with { Soil = [] }),
            WholeSite.With(WholeSite.Pane with { WhenDismantled = null }), SpoiltSites.Dismantled(WholeSite.Pane.WhenDismantled! with { From = null }),
            WholeSite.With(WholeSite.Edition with { Says = [] }), WholeSite.With(WholeSite.Edition with
            {
                Says = [WholeSite.Edition.Says[0] with { Forbids = true }],
            }),
            WholeSite.With(WholeSite.Edition with { Reaches = [] }), SpoiltSites.Reaches(WholeSite.Reached with { Needs = [] }),
                SpoiltSites.Reaches(WholeSite.Reached with { Parts = [] }),
            Own(rule => rule), Own(rule => rule with { IsSecondSource = true }), Own(rule => rule with { RestsOn = [ThinGround.Absence] }),
                Own(rule => rule with { RestsOn = [ThinGround.OtherAgent] }),
        ];
        var hashes = others.Append(WholeSite.Site).Select(site => Snapshot.HashOf(SnapshotWriter.Body(site))).ToArray();
        Assert.Equal(hashes.Length, hashes.Distinct().Count());
    }

    private static IReadOnlyList<Compat.Validation.Problem> Check(Site site) => Compat.Validation.SiteValidation.Check(EveryKind.Data, [], site);

    private static Site Own(Func<Rule, Rule> change) => WholeSite.Site with { Rules = [change(EyeWorkshop.Data.Rules[0] with { Id = new("own.alcohol") })] };
}
