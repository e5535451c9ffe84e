namespace Compat.Tests.Validation;

/// <summary>Sites in each of which one thing is wrong: by a name that ends in the problem's code, with the place where it lies.</summary>
internal static class SpoiltSites
{
    public static IReadOnlyDictionary<string, (Site Site, string Place)> All { get; } = new Dictionary<string, (Site Site, string Place)>
    {
        ["name empty-text"] = (WholeSite.Site with { Name = " " }, "site `workshop` at site.name"),
        ["water listed-twice"] = (WholeSite.Site with { Here = new() { Water = [WaterGrade.Running, WaterGrade.Running] } }, "site `workshop` at here.water.1"),
        ["decision listed-twice"] =
            (WholeSite.Site with { Levels = [WholeSite.Decision with { Sources = [new("manual"), new("manual")] }] }, "site `workshop` at levels.0.sources.1"),
        ["title empty-text"] = (Source(source => source with { Title = " " }), "source `manual` at title"),
        ["publisher empty-text"] = (Source(source => source with { Publisher = "" }), "source `manual` at publisher"),
        ["no-address"] = (Source(source => source with { Address = "the shelf" }), "source `manual` at address"),
        ["product empty-text"] = (WholeSite.With(WholeSite.Stock with { Name = "" }), "product `stock` at name"),
        ["product note empty-text"] = (WholeSite.With(WholeSite.Stock with { Note = " " }), "product `stock` at note"),
        ["ph listed-twice"] = (
            WholeSite.With(WholeSite.Stock with { Ph = [new(Interval.Closed(6m, 8m), default), new(Interval.Closed(6m, 8m), default)] }),
            "product `stock` at ph.1"),
        ["removes listed-twice"] = (WholeSite.With(WholeSite.Stock with { Removes = [SoilKind.Dust, SoilKind.Dust] }), "product `stock` at removes.1"),
        ["claim for listed-twice"] = (Claim(WholeSite.Claim with { For = [new("window"), new("window")] }), "product `stock` at label-claims.0.for.1"),
        ["claim needs listed-twice"] =
            (Claim(WholeSite.Claim with { Needs = [ClaimNeed.Activation, ClaimNeed.Activation] }), "product `stock` at label-claims.0.needs.1"),
        ["claim soil listed-twice"] =
            (Claim(WholeSite.Claim with { StandsSoil = [SoilKind.Dust, SoilKind.Dust] }), "product `stock` at label-claims.0.stands-soil.1"),
        ["bath test empty-text"] = (Bath(WholeSite.Stock.Bath! with { Use = new() { Test = " " } }), "product `stock` at bath.test"),
        ["bath-says-nothing"] = (Bath(WholeSite.Stock.Bath! with { Use = new() }), "product `stock` at bath"),
        ["device empty-text"] = (WholeSite.With(WholeSite.Device with { Name = " " }), "device `viewer` at name"),
        ["device note empty-text"] = (WholeSite.With(WholeSite.Device with { Note = "" }), "device `viewer` at note"),
        ["patients listed-twice"] =
            (WholeSite.With(WholeSite.Device with { Patients = [PatientGroup.Eye, PatientGroup.Eye] }), "device `viewer` at patients.1"),
        ["part empty-text"] = (WholeSite.With(WholeSite.Pane with { Name = "" }), "device `viewer` at parts.0.name"),
        ["types listed-twice"] =
            (WholeSite.With(WholeSite.Pane with { OneOfTypes = [new("window"), new("window")] }), "device `viewer` at parts.0.type.one-of.1"),
        ["soil listed-twice"] = (WholeSite.With(WholeSite.Pane with { Soil = [SoilKind.Dust, SoilKind.Dust] }), "device `viewer` at parts.0.soil.1"),
        ["says listed-twice"] = (
            WholeSite.With(WholeSite.Edition with { Says = [WholeSite.Edition.Says[0], WholeSite.Edition.Says[0]] }),
            "device `viewer` at instructions.0.says.1"),
        ["says parts listed-twice"] = (
            WholeSite.With(WholeSite.Edition with { Says = [new() { Words = "mild soap", Parts = [new("pane"), new("pane")] }] }),
            "device `viewer` at instructions.0.says.0.parts.1"),
        ["reaches parts listed-twice"] =
            (Reaches(WholeSite.Reached with { Parts = [new("pane"), new("pane")] }), "device `viewer` at instructions.0.reaches.0.parts.1"),
        ["here outside-axis"] = (WholeSite.Site with { Here = new() { Hardness = Interval.Closed(1m, 20_000m) } }, "site `workshop` at here.hardness"),
        ["cold outside-axis"] = (WholeSite.Site with { Here = new() { Temperature = Interval.Closed(-60m, 20m) } }, "site `workshop` at here.temperature"),
        ["cloths listed-twice"] = (WholeSite.Site with { Here = new() { Cloths = ["cotton", "Cotton"] } }, "site `workshop` at here.cloths.1"),
        ["gloves empty-text"] = (WholeSite.Site with { Here = new() { Gloves = [" "] } }, "site `workshop` at here.gloves.0"),
        ["level unknown-device"] =
            (WholeSite.Site with { Levels = [WholeSite.Decision with { Device = new("viewers") }] }, "site `workshop` at levels.0.device"),
        ["level unknown-device-part"] =
            (WholeSite.Site with { Levels = [WholeSite.Decision with { Part = new("panel") }] }, "site `workshop` at levels.0.part"),
        ["level no-decider"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { DecidedBy = " " }] }, "site `workshop` at levels.0.decided-by"),
        ["level no-because"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Because = "" }] }, "site `workshop` at levels.0.because"),
        ["level no-source"] = (WholeSite.Site with { Levels = [WholeSite.Decision with { Sources = [] }] }, "site `workshop` at levels.0.sources"),
        ["level unknown-source"] =
            (WholeSite.Site with { Levels = [WholeSite.Decision with { Sources = [new("manuals")] }] }, "site `workshop` at levels.0.sources.0"),
        ["decided-twice"] =
            (WholeSite.Site with { Levels = [WholeSite.Decision, WholeSite.Decision with { Level = Level.Low }] }, "site `workshop` at levels.1"),
        ["claim duplicate-id"] =
            (WholeSite.With(WholeSite.Stock with { LabelClaims = [WholeSite.Claim, WholeSite.Claim] }), "product `stock` at label-claims.1.id"),
        ["claim reaches-cleaned"] = (Claim(WholeSite.Claim with { Reaches = Level.Cleaned, DoesNotKill = [] }), "product `stock` at label-claims.0.reaches"),
        ["claim claims-nothing"] = (Claim(WholeSite.Claim with { Reaches = null, Kills = [] }), "product `stock` at label-claims.0"),
        ["claim unknown-organism"] =
            (Claim(WholeSite.Claim with { Kills = [OrganismTarget.Of(new OrganismId("invented-viruses"))] }), "product `stock` at label-claims.0.kills.0"),
        ["claim level-without-group"] = (
            Claim(WholeSite.Claim with { DoesNotKill = [OrganismTarget.Of(OrganismGroup.VegetativeBacteria)] }),
            "product `stock` at label-claims.0.does-not-kill.0"),
        ["claim unknown-part"] = (Claim(WholeSite.Claim with { For = [new("windows")] }), "product `stock` at label-claims.0.for.0"),
        ["claim unknown-test"] = (Claim(WholeSite.Claim with { ShownBy = [new("EN 3")] }), "product `stock` at label-claims.0.shown-by.0"),
        ["claim test listed-twice"] =
            (Claim(WholeSite.Claim with { ShownBy = [EveryKind.Test.Code, EveryKind.Test.Code] }), "product `stock` at label-claims.0.shown-by.1"),
        ["claim no-registration"] =
            (Claim(WholeSite.Claim with { ShownBy = [], Registration = new("an office", " ") }), "product `stock` at label-claims.0.registration"),
        ["claim tests-and-registration"] =
            (Claim(WholeSite.Claim with { Registration = new("an office", "1") }), "product `stock` at label-claims.0.registration"),
        ["claim no-contact-time"] =
            (Box(box => box with { ContactTime = AxisLimit.Within(Interval.AtMost(60m)) }), "product `stock` at label-claims.0.when.contact-time"),
        ["claim strength-of-product"] = (Box(box => box with { Strength = AxisLimit.Any }), "product `stock` at label-claims.0.when.strength"),
        ["claim axis-not-named"] = (Box(box => box with { Temperature = default }), "product `stock` at label-claims.0.when"),
        ["claim outside-axis"] = (Box(box => box with { Ph = AxisLimit.Within(Interval.AtMost(20m)) }), "product `stock` at label-claims.0.when.ph"),
        ["claim outside-label"] =
            (Box(box => box with { Dilution = AxisLimit.Within(Interval.AtLeast(0.1m)) }), "product `stock` at label-claims.0.when.dilution"),
        ["claim other-method"] =
            (Box(box => box with { Methods = MethodLimit.Within(ApplicationMethod.Spray) }), "product `stock` at label-claims.0.when.methods"),
        ["ready dilution-of-ready"] = (WholeSite.With(Ready() with { LabelClaims = [WholeSite.Claim] }), "product `stock` at label-claims.0.when.dilution"),
        ["wet listed-twice"] = (
            Wet(new(ApplicationMethod.WetWipe, Interval.Closed(1m, 2m)), new(ApplicationMethod.WetWipe, Interval.Closed(1m, 2m))),
            "product `stock` at contact-times.1.method"),
        ["wet other-method"] = (Wet(new AchievedContactTime(ApplicationMethod.Spray, Interval.Closed(1m, 2m))), "product `stock` at contact-times.0.method"),
        ["dry other-method"] = (Wet(new AchievedContactTime(ApplicationMethod.DryWipe, Interval.Closed(1m, 2m))), "product `stock` at contact-times.0.method"),
        ["wet no-contact-time"] = (Wet(new AchievedContactTime(ApplicationMethod.WetWipe, Interval.AtMost(2m))), "product `stock` at contact-times.0.time"),
        ["wet empty-interval"] = (Wet(new AchievedContactTime(ApplicationMethod.WetWipe, Interval.Closed(2m, 1m))), "product `stock` at contact-times.0.time"),
        ["life outside-axis"] = (WholeSite.With(WholeSite.Stock with { Life = new() { Opened = 0m } }), "product `stock` at life.opened"),
        ["life-without-activation"] = (WholeSite.With(WholeSite.Stock with { NeedsActivation = false }), "product `stock` at life.activated"),
        ["life-without-dilution"] = (WholeSite.With(Ready() with { Life = new() { Diluted = 60m } }), "product `stock` at life.diluted"),
        ["bath unknown-agent"] = (Bath(new() { Agent = new("soaps"), Use = new() { Test = "a strip" } }), "product `stock` at bath.agent"),
        ["bath not-in-it"] = (Bath(new() { Agent = new("alcohol"), Use = new() { Test = "a strip" } }), "product `stock` at bath.agent"),
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
        ["dismantled unknown-edition"] =
            (Dismantled(new() { Geometry = Geometry.Open, From = new("second"), How = "pull" }), "device `viewer` at parts.0.when-dismantled.from"),
        ["dismantled wetter-without-instructions"] = (
            Dismantled(new() { Geometry = Geometry.Open, Wettest = ApplicationMethod.Spray, How = "pull" }),
            "device `viewer` at parts.0.when-dismantled.wettest"),
        ["dismantled chamber-no-wetness"] = (
            Dismantled(new() { Geometry = Geometry.Open, Wettest = ApplicationMethod.Chamber, How = "pull" }),
            "device `viewer` at parts.0.when-dismantled.wettest"),
        ["dismantled no-how"] = (Dismantled(new() { Geometry = Geometry.Open, How = "" }), "device `viewer` at parts.0.when-dismantled.how"),
        ["says empty-text"] = (WholeSite.With(WholeSite.Edition with { Says = [new() { Words = " " }] }), "device `viewer` at instructions.0.says.0.words"),
        ["how empty-text"] =
            (WholeSite.With(WholeSite.Edition with { Says = [new() { Words = "mild soap", How = [""] }] }), "device `viewer` at instructions.0.says.0.how.0"),
        ["says unknown-device-part"] = (
            WholeSite.With(WholeSite.Edition with { Says = [new() { Words = "mild soap", Parts = [new("pain")] }] }),
            "device `viewer` at instructions.0.says.0.parts.0"),
        ["reaches unknown-device-part"] = (Reaches(WholeSite.Reached with { Parts = [new("pain")] }), "device `viewer` at instructions.0.reaches.0.parts.0"),
        ["reaches one-subject"] = (
            Reaches(WholeSite.Reached with { Product = new("stock"), When = WholeSite.Reached.When with { Methods = MethodLimit.Any } }),
            "device `viewer` at instructions.0.reaches.0"),
        ["reaches unknown-agent"] = (Reaches(WholeSite.Reached with { Agent = new("alcohols") }), "device `viewer` at instructions.0.reaches.0.agent"),
        ["reaches unknown-product"] = (
            Reaches(WholeSite.Reached with { Agent = null, Product = new("stocks"), When = WholeSite.Wet }),
            "device `viewer` at instructions.0.reaches.0.product"),
        ["reaches dilution-of-agent"] = (
            Reaches(WholeSite.Reached with { When = WholeSite.Reached.When with { Dilution = AxisLimit.Any } }),
            "device `viewer` at instructions.0.reaches.0.when.dilution"),
        ["reaches axis-not-named"] = (Reaches(WholeSite.Reached with { When = WholeSite.Wet }), "device `viewer` at instructions.0.reaches.0.when"),
        ["reaches reaches-cleaned"] = (Reaches(WholeSite.Reached with { Reaches = Level.Cleaned }), "device `viewer` at instructions.0.reaches.0.level"),
    };

    internal static Product Ready() =>
        WholeSite.Stock with { StrengthOf = StrengthOf.Liquid, Dilution = null, LabelClaims = [], Life = new(), MostHardness = null };

    internal static Site Claim(LabelClaim claim) => WholeSite.With(WholeSite.Stock with { LabelClaims = [claim] });

    internal static Site Box(Func<ClaimBox, ClaimBox> change) => Claim(WholeSite.Claim with { When = change(WholeSite.Claim.When) });

    internal static Site Source(Func<Source, Source> change) => WholeSite.Site with { Sources = [change(WholeSite.Site.Sources[0])] };

    internal static Site Wet(params AchievedContactTime[] times) => WholeSite.With(WholeSite.Stock with { ContactTimes = times });

    internal static Site Bath(ProductBath bath) => WholeSite.With(WholeSite.Stock with { Bath = bath });

    internal static Site Dismantled(DismantledPart then) => WholeSite.With(WholeSite.Pane with { WhenDismantled = then });

    internal static Site Reaches(InstructedLevel reached) => WholeSite.With(WholeSite.Edition with { Reaches = [reached] });
}
