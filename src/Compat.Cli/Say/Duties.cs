namespace Compat.Cli.Say;

/// <summary>Says what a duty asks.</summary>
internal static class DutyWording
{
    /// <summary>What the phrase of a <see cref="DutyKind.TakeOff"/> starts with.</summary>
    internal const string TakeItOff = "take it off: ";

    public static string Of(Duty duty, Names names)
    {
        var text = Core(duty, names);
        if (duty.Within is { } seconds) text += ", within " + FigureWording.Duration(seconds);
        return duty.Note is null || duty.Kind is DutyKind.Protect or DutyKind.Ventilate or DutyKind.Inspect ? text : text + " (" + duty.Note + ")";
    }

    private static string Core(Duty duty, Names names) => duty.Kind switch
    {
        DutyKind.TakeOff => TakeItOff + Ways(duty),
        DutyKind.WipeDry => "wipe it dry or let it dry: " + Ways(duty),
        DutyKind.Dry => "dry the part: " + Ways(duty),
        DutyKind.KeepOff => "keep it off: " + string.Join(", ", duty.Parts.Select(names.Part)),
        DutyKind.CleanFirst => "clean the part first",
        DutyKind.KeepWet => "keep it visibly wet, wetting it again as often as it takes",
        DutyKind.Protect => "protect yourself: " + duty.Note,
        DutyKind.Ventilate => "ventilate: " + duty.Note,
        DutyKind.Inspect => "inspect the part after " + Uses(duty) + (duty.Note is null ? "" : "; look for: " + duty.Note),
        DutyKind.NoPooling => "let no liquid pool on it or enter it",
        DutyKind.PowerOff => "switch the device off and disconnect it first",
        _ => "discard the part after " + Uses(duty),
    };

    private static string Ways(Duty duty) =>
        duty.Ways.Count == 0 ? "no way is left" : string.Join(", or ", duty.Ways.Select(Way));

    private static string Way(DutyWay way)
    {
        var text = way.Act switch
        {
            Act.SoftCloth => "with a soft cloth",
            Act.HeatDrying => "by warm air or heat",
            Act.CompressedAir => "by compressed air",
            Act.Brush => "with a brush",
            Act.Rub => "by rubbing",
            _ => way.Method is null ? "in the air" : MethodWay(way.Method.Value),
        };
        var water = way.Water is { } grade ? Words.Of(grade) + " water" : way.Method is null ? null : "water";
        if (water is not null) text += " with " + water;
        if (way.Times is { } times) text += ", " + times + (times == 1 ? " time" : " times");
        if (way.Seconds is { } seconds) text += ", " + FigureWording.Duration(seconds) + " each";
        if (way.Litres is { } litres) text += ", " + FigureWording.Number(litres) + "\u00a0L each";
        return text;
    }

    private static string MethodWay(ApplicationMethod method) => method switch
    {
        ApplicationMethod.DampWipe => "a damp wipe",
        ApplicationMethod.WetWipe => "a wet wipe",
        ApplicationMethod.Rinse => "a rinse",
        ApplicationMethod.Immerse => "a bath",
        ApplicationMethod.Spray => "a spray",
        _ => Words.Of(method),
    };

    private static string Uses(Duty duty) => duty.AfterUses == 1 ? "each use" : duty.AfterUses + "\u00a0uses";
}

/// <summary>Says what happens to a part in the plainest words, for people who use it and look after it for a minute.</summary>
internal static class DamageWording
{
    /// <summary>What happens, and what that means; without a final stop.</summary>
    public static string Of(Damage damage)
    {
        var what = Of(damage.Mechanism);
        var then = Of(damage.Consequence);
        return then.Length == 0 || what == then ? what : $"{what}, {then}";
    }

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
