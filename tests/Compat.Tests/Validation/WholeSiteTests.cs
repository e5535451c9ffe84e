using Compat.Efficacy;
using Compat.Snapshots;
using Compat.Tests.Evaluation;

namespace Compat.Tests.Validation;

/// <summary>A site whose every field is stated is sound; each thing that can be wrong with one is found where it lies.</summary>
public class WholeSiteTests
{
    private static readonly Dictionary<string, (Site Site, string Place)> Spoilt = new()
    {
        ["here outside-axis"] = (WholeSite.Site with { Here = new() { Hardness = Interval.Closed(1m, 20_000m) } }, "site `workshop` at here.hardness"),
        ["cold outside-axis"] = (WholeSite.Site with { Here = new() { Temperature = Interval.Closed(-60m, 20m) } }, "site `workshop` at here.temperature"),
        ["cloths listed-twice"] = (WholeSite.Site with { Here = new() { Cloths = ["cotton", "Cotton"] } }, "site `workshop` at here.cloths.1"),
        ["gloves empty-text"] = (WholeSite.Site with { Here = new() { Gloves = [" "] } }, "site `workshop` at here.gloves.0"),
        ["level unknown-device"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Device = new("viewers") }] }, "site `workshop` at levels.0.device"),
        ["level unknown-device-part"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Part = new("panel") }] }, "site `workshop` at levels.0.part"),
        ["level no-decider"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { DecidedBy = " " }] }, "site `workshop` at levels.0.decided-by"),
        ["level no-because"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Because = "" }] }, "site `workshop` at levels.0.because"),
        ["level no-source"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Sources = [] }] }, "site `workshop` at levels.0.sources"),
        ["level unknown-source"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Sources = [new("manuals")] }] }, "site `workshop` at levels.0.sources.0"),
        ["decided-twice"] = (WholeSite.Site with { Levels = [WholeSite.Decision, WholeSite.Decision with { Level = Level.Low }] }, "site `workshop` at levels.1"),
        ["claim duplicate-id"] = (WholeSite.With(WholeSite.Stock with { LabelClaims = [WholeSite.Claim, WholeSite.Claim] }), "product `stock` at label-claims.1.id"),
        ["claim reaches-cleaned"] = (Claim(WholeSite.Claim with { Reaches = Level.Cleaned, DoesNotKill = [] }), "product `stock` at label-claims.0.reaches"),
        ["claim claims-nothing"] = (Claim(WholeSite.Claim with { Reaches = null, Kills = [] }), "product `stock` at label-claims.0"),
        ["claim unknown-organism"] = (Claim(WholeSite.Claim with { Kills = [OrganismTarget.Of(new OrganismId("invented-viruses"))] }), "product `stock` at label-claims.0.kills.0"),
        ["claim level-without-group"] = (Claim(WholeSite.Claim with { DoesNotKill = [OrganismTarget.Of(OrganismGroup.VegetativeBacteria)] }), "product `stock` at label-claims.0.does-not-kill.0"),
        ["claim unknown-part"] = (Claim(WholeSite.Claim with { For = [new("windows")] }), "product `stock` at label-claims.0.for.0"),
        ["claim no-shown-by"] = (Claim(WholeSite.Claim with { ShownBy = "" }), "product `stock` at label-claims.0.shown-by"),
        ["claim no-wet-time"] = (Box(box => box with { WetTime = AxisLimit.Within(Interval.AtMost(60m)) }), "product `stock` at label-claims.0.when.wet-time"),
        ["claim strength-of-product"] = (Box(box => box with { Strength = AxisLimit.Any }), "product `stock` at label-claims.0.when.strength"),
        ["claim axis-not-named"] = (Box(box => box with { Temperature = default }), "product `stock` at label-claims.0.when"),
        ["claim outside-axis"] = (Box(box => box with { Ph = AxisLimit.Within(Interval.AtMost(20m)) }), "product `stock` at label-claims.0.when.ph"),
        ["claim outside-label"] = (Box(box => box with { Dilution = AxisLimit.Within(Interval.AtLeast(0.1m)) }), "product `stock` at label-claims.0.when.dilution"),
        ["claim other-method"] = (Box(box => box with { Methods = MethodLimit.Within(ApplicationMethod.Spray) }), "product `stock` at label-claims.0.when.methods"),
        ["ready dilution-of-ready"] = (WholeSite.With(Ready() with { LabelClaims = [WholeSite.Claim] }), "product `stock` at label-claims.0.when.dilution"),
        ["wet listed-twice"] = (Wet(new(ApplicationMethod.WetWipe, Interval.Closed(1m, 2m)), new(ApplicationMethod.WetWipe, Interval.Closed(1m, 2m))), "product `stock` at wet-times.1.method"),
        ["wet other-method"] = (Wet(new AchievedWetTime(ApplicationMethod.Spray, Interval.Closed(1m, 2m))), "product `stock` at wet-times.0.method"),
        ["dry other-method"] = (Wet(new AchievedWetTime(ApplicationMethod.DryWipe, Interval.Closed(1m, 2m))), "product `stock` at wet-times.0.method"),
        ["wet no-wet-time"] = (Wet(new AchievedWetTime(ApplicationMethod.WetWipe, Interval.AtMost(2m))), "product `stock` at wet-times.0.time"),
        ["wet empty-interval"] = (Wet(new AchievedWetTime(ApplicationMethod.WetWipe, Interval.Closed(2m, 1m))), "product `stock` at wet-times.0.time"),
        ["life outside-axis"] = (WholeSite.With(WholeSite.Stock with { Life = new() { Opened = 0m } }), "product `stock` at life.opened"),
        ["life-without-activation"] = (WholeSite.With(WholeSite.Stock with { NeedsActivation = false }), "product `stock` at life.activated"),
        ["life-without-dilution"] = (WholeSite.With(Ready() with { Life = new() { Diluted = 60m } }), "product `stock` at life.diluted"),
        ["bath unknown-agent"] = (Bath(new() { Agent = new("soaps"), Use = new() }), "product `stock` at bath.agent"),
        ["bath not-in-it"] = (Bath(new() { Agent = new("alcohol"), Use = new() }), "product `stock` at bath.agent"),
        ["bath no-minimum"] = (Bath(WholeSite.Stock.Bath! with { Use = new() { Minimum = Interval.AtMost(2m) } }), "product `stock` at bath.minimum"),
        ["bath-of-no-bath"] = (WholeSite.With(WholeSite.Stock with { Methods = MethodSet.Of(ApplicationMethod.WetWipe) }), "product `stock` at bath"),
        ["one-step-removes-nothing"] = (WholeSite.With(WholeSite.Stock with { Removes = [] }), "product `stock` at one-step"),
        ["hardness-of-ready"] = (WholeSite.With(Ready() with { MostHardness = 100m }), "product `stock` at most-hardness"),
        ["hardness outside-axis"] = (WholeSite.With(WholeSite.Stock with { MostHardness = 20_000m }), "product `stock` at most-hardness"),
        ["bound listed-twice"] = (WholeSite.With(WholeSite.Stock with { BoundByCloths = ["cotton", "cotton"] }), "product `stock` at bound-by-cloths.1"),
        ["no-patient"] = (WholeSite.With(WholeSite.Device with { Patients = [] }), "device `viewer` at patients"),
        ["asks-less"] = (WholeSite.With(WholeSite.Pane with { Because = null }), "device `viewer` at parts.0.touched-by"),
        ["part no-because"] = (WholeSite.With(WholeSite.Pane with { Because = " " }), "device `viewer` at parts.0.because"),
        ["because-of-nothing"] = (WholeSite.With(WholeSite.Pane with { TouchedBy = null }), "device `viewer` at parts.0.because"),
        ["dismantled unknown-edition"] = (Dismantled(new() { Geometry = Geometry.Open, From = new("second"), How = "pull" }), "device `viewer` at parts.0.when-dismantled.from"),
        ["dismantled wetter-without-instructions"] = (Dismantled(new() { Geometry = Geometry.Open, Wettest = ApplicationMethod.Spray, How = "pull" }), "device `viewer` at parts.0.when-dismantled.wettest"),
        ["dismantled chamber-no-wetness"] = (Dismantled(new() { Geometry = Geometry.Open, Wettest = ApplicationMethod.Chamber, How = "pull" }), "device `viewer` at parts.0.when-dismantled.wettest"),
        ["dismantled no-how"] = (Dismantled(new() { Geometry = Geometry.Open, How = "" }), "device `viewer` at parts.0.when-dismantled.how"),
        ["says empty-text"] = (WholeSite.With(WholeSite.Edition with { Says = [new() { Words = " " }] }), "device `viewer` at instructions.0.says.0.words"),
        ["how empty-text"] = (WholeSite.With(WholeSite.Edition with { Says = [new() { Words = "mild soap", How = [""] }] }), "device `viewer` at instructions.0.says.0.how.0"),
        ["says unknown-device-part"] = (WholeSite.With(WholeSite.Edition with { Says = [new() { Words = "mild soap", Parts = [new("pain")] }] }), "device `viewer` at instructions.0.says.0.parts.0"),
        ["reaches unknown-device-part"] = (Reaches(WholeSite.Reached with { Parts = [new("pain")] }), "device `viewer` at instructions.0.reaches.0.parts.0"),
        ["reaches one-subject"] = (Reaches(WholeSite.Reached with { Product = new("stock"), When = WholeSite.Reached.When with { Methods = MethodLimit.Any } }), "device `viewer` at instructions.0.reaches.0"),
        ["reaches unknown-agent"] = (Reaches(WholeSite.Reached with { Agent = new("alcohols") }), "device `viewer` at instructions.0.reaches.0.agent"),
        ["reaches unknown-product"] = (Reaches(WholeSite.Reached with { Agent = null, Product = new("stocks"), When = WholeSite.Wet }), "device `viewer` at instructions.0.reaches.0.product"),
        ["reaches dilution-of-agent"] = (Reaches(WholeSite.Reached with { When = WholeSite.Reached.When with { Dilution = AxisLimit.Any } }), "device `viewer` at instructions.0.reaches.0.when.dilution"),
        ["reaches axis-not-named"] = (Reaches(WholeSite.Reached with { When = WholeSite.Wet }), "device `viewer` at instructions.0.reaches.0.when"),
        ["reaches reaches-cleaned"] = (Reaches(WholeSite.Reached with { Reaches = Level.Cleaned }), "device `viewer` at instructions.0.reaches.0.level"),
    };

    public static TheoryData<string> Names => [.. Spoilt.Keys];

    [Fact]
    public void The_whole_is_sound() => Assert.Empty(Check(WholeSite.Site));

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_spoilt_is_found_where_it_is(string name)
    {
        var (site, place) = Spoilt[name];
        var problem = Assert.Single(Check(site));
        Assert.Equal(name.Split(' ')[^1], problem.Code);
        Assert.StartsWith(place + ": ", problem.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_below_what_the_contact_asks_is_a_decision_too() =>
        Assert.Empty(Check(WholeSite.Site with { Levels = [WholeSite.Decision with { Level = Level.Cleaned }, WholeSite.Decision with { Part = null, Level = Level.Sterile }] }));

    [Fact]
    public void A_wrong_part_is_answered_with_the_nearest_name() =>
        Assert.Equal("did you mean `pane`?", Check(WholeSite.Site with { Levels = [WholeSite.Decision with { Part = new("panel") }] })[0].Help);

    [Fact]
    public void Every_field_changes_the_content_hash()
    {
        var stock = WholeSite.Stock;
        var here = WholeSite.Site.Here;
        Site[] others =
        [
            WholeSite.Site with { Here = here with { Temperature = null } }, WholeSite.Site with { Here = here with { Hardness = null } },
            WholeSite.Site with { Here = here with { Water = [] } }, WholeSite.Site with { Here = here with { Cloths = [] } },
            WholeSite.Site with { Here = here with { Gloves = [] } }, WholeSite.Site with { Here = here with { DryingAir = null } }, WholeSite.Site with { Here = here with { DryingAir = true } },
            WholeSite.Site with { Levels = [] }, WholeSite.Site with { Levels = [WholeSite.Decision with { Level = Level.Low }] }, WholeSite.Site with { Levels = [WholeSite.Decision with { Because = "b" }] },
            WholeSite.With(stock with { Methods = MethodSet.None }), WholeSite.With(stock with { LabelClaims = [] }), Claim(WholeSite.Claim with { ShownBy = null }), Claim(WholeSite.Claim with { StandsSoil = [] }),
            Claim(WholeSite.Claim with { For = [] }), Claim(WholeSite.Claim with { Needs = [] }), Claim(WholeSite.Claim with { DoesNotKill = [] }), Box(box => box with { Dilution = AxisLimit.Any }),
            WholeSite.With(stock with { WetTimes = [] }), WholeSite.With(stock with { Removes = [] }), WholeSite.With(stock with { OneStep = false }), WholeSite.With(stock with { MostHardness = null }),
            WholeSite.With(stock with { Life = stock.Life with { Activated = null } }), WholeSite.With(stock with { Life = stock.Life with { Diluted = null } }),
            WholeSite.With(stock with { Life = stock.Life with { Opened = null } }), WholeSite.With(stock with { Life = stock.Life with { MayBeRefilled = false } }),
            WholeSite.With(stock with { Bath = null }), WholeSite.With(stock with { BoundByCloths = [] }),
            WholeSite.With(WholeSite.Device with { Patients = null }), WholeSite.With(WholeSite.Pane with { Because = null }), WholeSite.With(WholeSite.Pane with { Soil = null }), WholeSite.With(WholeSite.Pane with { Soil = [] }),
            WholeSite.With(WholeSite.Pane with { WhenDismantled = null }), Dismantled(WholeSite.Pane.WhenDismantled! with { From = null }),
            WholeSite.With(WholeSite.Edition with { Says = [] }), WholeSite.With(WholeSite.Edition with { Says = [WholeSite.Edition.Says[0] with { Forbids = true }] }),
            WholeSite.With(WholeSite.Edition with { Reaches = [] }), Reaches(WholeSite.Reached with { Needs = [] }), Reaches(WholeSite.Reached with { Parts = [] }),
            Own(rule => rule), Own(rule => rule with { IsSecondSource = true }), Own(rule => rule with { RestsOn = [ThinGround.Absence] }), Own(rule => rule with { RestsOn = [ThinGround.OtherAgent] }),
        ];
        var hashes = others.Append(WholeSite.Site).Select(site => Snapshot.HashOf(SnapshotWriter.Body(site))).ToArray();
        Assert.Equal(hashes.Length, hashes.Distinct().Count());
    }

    private static IReadOnlyList<Compat.Validation.Problem> Check(Site site) => Compat.Validation.SiteValidation.Check(EveryKind.Data, [], site);

    private static Site Own(Func<Rule, Rule> change) => WholeSite.Site with { Rules = [change(EyeWorkshop.Data.Rules[0] with { Id = new("own.alcohol") })] };

    private static Product Ready() => WholeSite.Stock with { StrengthOf = StrengthOf.Liquid, Dilution = null, LabelClaims = [], Life = new(), MostHardness = null };

    private static Site Claim(LabelClaim claim) => WholeSite.With(WholeSite.Stock with { LabelClaims = [claim] });

    private static Site Box(Func<ClaimBox, ClaimBox> change) => Claim(WholeSite.Claim with { When = change(WholeSite.Claim.When) });

    private static Site Wet(params AchievedWetTime[] times) => WholeSite.With(WholeSite.Stock with { WetTimes = times });

    private static Site Bath(ProductBath bath) => WholeSite.With(WholeSite.Stock with { Bath = bath });

    private static Site Dismantled(DismantledPart then) => WholeSite.With(WholeSite.Pane with { WhenDismantled = then });

    private static Site Reaches(InstructedLevel reached) => WholeSite.With(WholeSite.Edition with { Reaches = [reached] });
}
