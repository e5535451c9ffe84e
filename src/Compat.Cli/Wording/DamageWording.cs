namespace Compat.Cli.Wording;

/// <summary>Says what happens to a part in the plainest words, for people who use it and look after it for a minute.</summary>
public static class DamageWording
{
    /// <summary>What happens, and what that means; without a final stop.</summary>
    public static string Of(Damage damage)
    {
        var what = Of(damage.Mechanism);
        var then = Of(damage.Consequence);
        return then.Length == 0 || what == then ? what : $"{what}, {then}";
    }

    /// <summary>What happens.</summary>
    public static string Of(Mechanism mechanism) => mechanism switch
    {
        Mechanism.StressCracking => "it cracks",
        Mechanism.Crazing => "fine cracks spread",
        Mechanism.Swelling => "it swells",
        Mechanism.Softening => "it goes soft",
        Mechanism.Embrittlement => "it turns brittle",
        Mechanism.PlasticiserLoss => "it goes hard",
        Mechanism.Hydrolysis => "it breaks down",
        Mechanism.Oxidation => "it is eaten away",
        Mechanism.Discoloration => "it changes colour",
        Mechanism.Staining => "it stains",
        Mechanism.Stickiness => "it turns sticky",
        Mechanism.CoatingClouding => "its coating goes milky",
        Mechanism.CoatingLoss => "its coating comes off",
        Mechanism.LegendWear => "its print wears off",
        Mechanism.BondFailure => "its glue or seal lets go",
        Mechanism.Corrosion => "it corrodes",
        Mechanism.Pitting => "it corrodes in pits",
        Mechanism.MetalStressCracking => "the metal cracks",
        Mechanism.Tarnish => "it tarnishes",
        Mechanism.Etching => "its surface is etched",
        Mechanism.Abrasion => "it is scratched",
        Mechanism.LiquidEntry => "liquid gets in",
        Mechanism.ContactFault => "its contacts fail",
        Mechanism.MeasurementFault => "it measures wrongly",
        Mechanism.Deposit => "a deposit stays on it",
        Mechanism.Fire => "it can catch fire",
        _ => "it warps",
    };

    /// <summary>What it means; empty where it only looks worse.</summary>
    public static string Of(Consequence consequence) => consequence switch
    {
        Consequence.Looks => "",
        Consequence.Legibility => "it can no longer be read",
        Consequence.Wear => "it wears out early",
        Consequence.LiquidTightness => "it is no longer tight",
        Consequence.ElectricalSafety => "it is no longer electrically safe",
        Consequence.Measurement => "it measures wrongly",
        _ => "it can harm the patient",
    };
}
