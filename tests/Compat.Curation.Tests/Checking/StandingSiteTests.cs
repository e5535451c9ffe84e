using Compat.Curation.Checking;
using Compat.Tests.Evaluation;

namespace Compat.Curation.Tests.Checking;

/// <summary>Standing rules on what a site adds: products, devices, several editions of their instructions. Invented data.</summary>
public class StandingSiteTests
{
    private static readonly Product Spirit = EyeWorkshop.Mixture("spirit", StrengthOf.Liquid, ("ethanol", 70, 70));
    private static readonly Product Weak = EyeWorkshop.Mixture("weak-spirit", StrengthOf.Liquid, ("ethanol", 20, 20));
    private static readonly RuleTarget Front = RuleTarget.On(new DeviceId("lamp"), new DevicePartId("front"));

    [Theory]
    [InlineData("spirit", true)]
    [InlineData("weak-spirit", false)]
    public void A_site_that_allows_a_product_against_a_standing_rule_is_refused(string product, bool isRefused)
    {
        var rule = OfProduct(product) with { KnownBy = KnownBy.Practice };
        var problems = EyeWorkshop.Base.TryWith(Site([], rule), out _);
        Assert.Equal(isRefused ? ["breaks-standing-rule"] : [], problems.Select(problem => problem.Code));
    }

    [Fact]
    public void Instructions_that_allow_a_product_against_a_standing_rule_are_a_note()
    {
        var finding = Assert.Single(
            Departing(
                EyeWorkshop.Data,
                Site([Edition("e-1", [])], OfProduct("spirit") with { Edition = new("e-1") }, OfProduct("weak-spirit") with { Edition = new("e-1") })));
        Assert.Equal((FindingKind.InstructionsDepart, false, "spirit"), (finding.Kind, finding.IsFault, finding.Agent));
        Assert.Equal("spirit", finding.Witness!.Product!.Value);
    }

    [Fact]
    public void A_note_on_instructions_hides_no_fault_beside_it()
    {
        var data = EyeWorkshop.Data with
        {
            StandingRules = [new()
            {
                Id = new("no-alcohol-on-coated-windows"),
                Part = new("coated-window"),
                Agent = new("alcohol"),
                When = new() { Strength = AxisLimit.Within(Interval.AtLeast(50m)) },
                Reason = "for good",
                Sources = [new("seen")],
            }],
        };
        var found = Departing(data, Site([Edition("e-1", [])], [new(new MaterialId("glass"))], OfAlcohol("e-1")));
        Assert.Equal([FindingKind.BrokenStandingRule, FindingKind.InstructionsDepart], found.Select(finding => finding.Kind).Distinct().Order());
        Assert.Equal(ApplicationMethod.WetWipe, found.Single(finding => finding.IsFault).Witness!.Method);
    }

    [Fact]
    public void An_edition_that_departs_is_told_though_another_does_not()
    {
        var site = Site([Edition("e-1", [new("AB", 1, 9)]), Edition("e-2", [new("AB", 10, long.MaxValue)]) with { OnlyListed = true }], OfAlcohol("e-1"));
        var finding = Assert.Single(Departing(EyeWorkshop.Data, site));
        Assert.Equal(FindingKind.InstructionsDepart, finding.Kind);
        Assert.Equal("AB", finding.Witness!.Serial!.Value.Prefix);
        Assert.InRange(finding.Witness!.Serial!.Value.Number, 1, 9);
        var kb = EyeWorkshop.Base.With(site);
        Assert.True(kb.Ask(finding.Witness! with { OnlyPart = true }).Verdict >= Verdict.AllowedWithinLimits);
        Assert.False(kb.Ask(finding.Witness! with { OnlyPart = true, Serial = null }).Verdict >= Verdict.AllowedWithinLimits);
    }

    private static Finding[] Departing(KnowledgeData data, Site site)
    {
        var report = DataCheck.Run(data, [site], new() { Today = EyeWorkshop.Day }, out var problems);
        Assert.Empty(problems);
        return report!.Findings.Where(finding => finding.Kind is FindingKind.BrokenStandingRule or FindingKind.InstructionsDepart).ToArray();
    }

    private static Rule OfProduct(string product) =>
        EyeWorkshop.Allowed("lamp." + product, Front, "water", EyeWorkshop.Wipe(default) with { Dilution = AxisLimit.Any }) with
        {
            Agent = null,
            Product = new(product),
            KnownBy = KnownBy.Instructions,
            Overrides = [new("thin-coating.alcohol")],
        };

    private static Rule OfAlcohol(string edition) =>
        EyeWorkshop.Allowed("lamp.alcohol", Front, "alcohol",
            EyeWorkshop.Wipe(AxisLimit.Any) with { Methods = MethodLimit.Within(ApplicationMethod.DampWipe) }) with
        {
            WholeClass = true,
            KnownBy = KnownBy.Instructions,
            Edition = new(edition),
            Overrides = [new("thin-coating.alcohol")]
        };

    private static InstructionsEdition Edition(string id, SerialRange[] serials) =>
        new() { Id = new(id), Dated = EyeWorkshop.Day, Serials = serials, Source = new("seen") };

    private static Site Site(InstructionsEdition[] editions, params Rule[] rules) => Site(editions, null, rules);

    private static Site Site(InstructionsEdition[] editions, MaterialSlot[]? materials, params Rule[] rules) => new()
    {
        Id = new("corner"),
        Name = "corner",
        Products = [Spirit, Weak],
        Devices = [new()
        {
            Id = new("lamp"),
            Name = "lamp",
            Instructions = editions,
            Parts = [new()
            {
                Id = new("front"),
                Name = "front",
                OneOfTypes = [new("coated-window")],
                Materials = materials,
                MaterialsKnown = materials is null ? null : true,
                TouchedBy = TouchedBy.Hand,
            }],
        }],
        Rules = rules,
    };
}
