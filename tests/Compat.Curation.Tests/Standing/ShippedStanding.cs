namespace Compat.Curation.Tests.Standing;

/// <summary>The standing rules of the shipped data that speak of rules, each stated a second time. Strengths are in percent of the agent's basis.</summary>
internal static class ShippedStanding
{
    private static readonly MethodSet Wet =
        MethodSet.Of(ApplicationMethod.WetWipe, ApplicationMethod.Spray, ApplicationMethod.Rinse, ApplicationMethod.Immerse);
    private static readonly MethodSet AnyLiquid =
        MethodSet.Of(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Spray, ApplicationMethod.Rinse, ApplicationMethod.Immerse);
    private static readonly MethodSet Running = MethodSet.Of(ApplicationMethod.Spray, ApplicationMethod.Rinse, ApplicationMethod.Immerse);
    private static readonly MethodSet Wiped = MethodSet.Of(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe, ApplicationMethod.Spray);

    public static IReadOnlyList<Stand> All { get; } =
    [
        OnPart("no-alcohol-on-coated-displays", "display-coated", "alcohol") with { Strength = Interval.AtLeast(5m) },
        OnMaterial("no-ketone-on-amorphous-plastics", "amorphous-thermoplastic", "ketone"),
        OnMaterial("no-aromatic-hydrocarbon-on-amorphous-plastics", "amorphous-thermoplastic", "aromatic-hydrocarbon"),
        OnMaterial("no-chlorinated-hydrocarbon-on-amorphous-plastics", "amorphous-thermoplastic", "chlorinated-hydrocarbon"),
        OnMaterial("no-caustic-on-strained-polycarbonate", "polycarbonate-under-strain", "alkali-hydroxide"),
        OnPart("nothing-wet-on-sockets", "socket", "any-agent") with { Methods = Wet },
        OnMaterial("nothing-wet-on-bare-electronics", "unsealed-electronics", "any-agent") with { Methods = Wet },
        OnMaterial("no-chlorine-on-contacts", "electrical-contact-metal", "chlorine-releasing"),
        OnMaterial("no-strong-chlorine-on-bare-aluminium", "bare-aluminium", "sodium-hypochlorite") with { Strength = Interval.AtLeast(0.05m) },
        OnPart("glutaraldehyde-only-by-immersion", "any-part", "glutaraldehyde") with { Methods = Wiped },
        OnPart("no-alcohol-on-incubator-hoods", "incubator-hood", "alcohol") with { Strength = Interval.AtLeast(5m) },
        OnPart("no-phenolic-on-incubator-hoods", "incubator-hood", "phenolic"),
        OnPart("no-phenolic-on-cot-mattresses", "cot-mattress", "phenolic"),
        OnPart("no-oil-on-oxygen-fittings", "oxygen-fitting", "oil"),
        OnPart("no-oil-on-probe-lenses", "probe-lens", "oil"),
        OnPart("peroxide-off-tonometer-tips", "tonometer-tip", "hydrogen-peroxide") with { With = DutyKind.TakeOff },
        OnPart("chlorine-off-tonometer-tips", "tonometer-tip", "chlorine-releasing") with { With = DutyKind.TakeOff },
        OnPart("no-wet-cleaner-on-housings", "housing", "detergent") with { Methods = Wet },
        OnPart("no-wet-water-on-housings", "housing", "water") with { Methods = Wet },
        OnPart("no-plasma-for-housings", "housing", "hydrogen-peroxide-plasma"),
        OnPart("no-steam-for-housings", "housing", "moist-heat"),
        OnPart("nothing-wet-on-vents", "vent", "any-agent") with { Methods = Wet },
        OnPart("nothing-wet-on-battery-contacts", "battery-contact", "any-agent") with { Methods = Wet },
        OnPart("nothing-wet-on-probe-connectors", "probe-connector", "any-agent") with { Methods = AnyLiquid },
        OnPart("nothing-sprayed-on-displays", "display", "any-agent") with { Methods = Running },
        OnPart("nothing-wet-on-front-surface-mirrors", "mirror", "any-agent") with { Methods = AnyLiquid },
        OnPart("nothing-sprayed-on-infusion-pumps", "infusion-part", "any-agent") with { Methods = Running },
        OnPart("no-pooling-on-displays", "display", "any-agent") with { With = DutyKind.NoPooling },
        OnPart("no-pooling-on-infusion-pumps", "infusion-part", "any-agent") with { With = DutyKind.NoPooling },
        OnPart("power-off-at-battery-contacts", "battery-contact", "any-agent") with { With = DutyKind.PowerOff },
        OnPart("no-alcohol-on-oxygen-fittings", "oxygen-fitting", "alcohol"),
        OnPart("no-solvent-on-oxygen-fittings", "oxygen-fitting", "solvent"),
        OnPart("no-glycol-on-oxygen-fittings", "oxygen-fitting", "glycol"),
        OnMaterial("no-amine-on-polycarbonate", "polycarbonate", "amine"),
        OnMaterial("no-ammonia-on-polycarbonate", "polycarbonate", "ammonia"),
        OnPart("no-solvent-on-displays", "display", "solvent"),
        OnPart("no-solvent-on-windows", "window", "solvent"),
        OnPart("no-solvent-on-labels", "label-legend", "solvent"),
        OnMaterial("no-solvent-on-prints", "print", "solvent"),
        OnMaterial("no-chlorine-on-optical-coatings", "optical-coating", "chlorine-releasing"),
        OnMaterial("no-caustic-on-optical-coatings", "optical-coating", "alkali-hydroxide"),
        OnMaterial("no-ketone-on-coatings", "coating", "ketone"),
        OnMaterial("no-steam-on-acrylic", "acrylic", "moist-heat") with { Temperature = Interval.AtLeast(95m) },
        OnMaterial("no-steam-on-abs", "abs", "moist-heat") with { Temperature = Interval.AtLeast(95m) },
        OnMaterial("chlorine-off-stainless-steel", "stainless-steel", "chlorine-releasing") with
        {
            Strength = Interval.AtLeast(0.0025m),
            With = DutyKind.TakeOff,
        },
        OnMaterial("no-hydrochloric-acid-on-stainless-steel", "stainless-steel", "hydrochloric-acid"),
        OnMaterial("anodised-aluminium-not-above-its-window", "anodised-aluminium", "any-agent") with { Ph = Interval.Above(9.5m) },
        OnMaterial("anodised-aluminium-not-below-its-window", "anodised-aluminium", "any-agent") with { Ph = Interval.Below(4m) },
        OnMaterial("no-alkali-on-bare-aluminium", "bare-aluminium", "alkali") with { Ph = Interval.Above(8.5m) },
        OnMaterial("no-ammonia-on-copper-alloys", "copper-metal", "ammonia"),
        OnMaterial("no-peracetic-acid-on-copper-alloys", "copper-metal", "peracetic-acid"),
        OnMaterial("no-peroxide-gas-on-copper-alloys", "copper-metal", "hydrogen-peroxide-gas"),
        OnMaterial("no-acid-on-zinc", "zinc", "acid"),
        OnMaterial("no-chlorine-on-plain-steel", "carbon-steel", "chlorine-releasing"),
        OnMaterial("no-aliphatic-hydrocarbon-on-silicone", "silicone-rubber", "aliphatic-hydrocarbon"),
        OnMaterial("no-aromatic-hydrocarbon-on-silicone", "silicone-rubber", "aromatic-hydrocarbon"),
        OnMaterial("no-chlorinated-hydrocarbon-on-silicone", "silicone-rubber", "chlorinated-hydrocarbon"),
        OnMaterial("no-oil-on-natural-rubber", "natural-rubber", "oil"),
        OnMaterial("no-oil-on-ethylene-propylene-rubber", "epdm-rubber", "oil"),
        OnMaterial("no-ketone-on-nitrile-rubber", "nitrile-rubber", "ketone"),
        OnMaterial("no-acid-on-acetal", "acetal", "acid") with { Ph = Interval.Below(4m) },
        OnMaterial("no-chlorine-on-acetal", "acetal", "chlorine-releasing"),
        OnPart("no-phenolic-in-breathing-systems", "respiratory-part", "phenolic"),
        OnPart("no-aldehyde-in-breathing-tubes", "breathing-tube", "aldehyde"),
        OnPart("no-iodine-in-breathing-tubes", "breathing-tube", "iodine-releasing"),
        OnPart("no-aldehyde-on-tonometer-tips", "tonometer-tip", "aldehyde"),
        OnPart("glutaraldehyde-off", "any-part", "glutaraldehyde") with { With = DutyKind.TakeOff },
        OnPart("ortho-phthalaldehyde-off", "any-part", "ortho-phthalaldehyde") with { With = DutyKind.TakeOff },
        OnPart("phenolic-off", "any-part", "phenolic") with { With = DutyKind.TakeOff },
        OnPart("chlorine-off-furniture", "furniture", "chlorine-releasing") with { With = DutyKind.TakeOff },
        OnPart("quaternary-film-off-optics", "optic", "quaternary-ammonium") with { With = DutyKind.TakeOff },
        OnPart("quaternary-film-off-what-touches-skin", "patient-contact", "quaternary-ammonium") with { With = DutyKind.TakeOff },
        OnPart("air-out-ethylene-oxide", "any-part", "ethylene-oxide") with { With = DutyKind.Ventilate },
        OnPart("clean-probes-first", "probe", "any-agent") with { With = DutyKind.CleanFirst },
        OnPart("clean-endoscopes-first", "endoscope", "any-agent") with { With = DutyKind.CleanFirst },
    ];

    private static Stand OnPart(string id, string part, string agent) => new(id, new PartId(part), null, agent);

    private static Stand OnMaterial(string id, string material, string agent) => new(id, null, new MaterialId(material), agent);
}
