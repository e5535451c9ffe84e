using Compat.Validation;

namespace Compat.Cli.Lookup;

/// <summary>Numbers that a safety data sheet prints beside a substance: CAS (<c>67-63-0</c>) and EC (<c>200-661-7</c>).</summary>
internal static class RegistryNumbers
{
    /// <summary>Whether a text has the shape of a CAS number, whatever its check digit.</summary>
    public static bool LooksLikeCas(string text) =>
        text.Split('-') is [{ Length: >= 2 and <= 7 } first, { Length: 2 } middle, { Length: 1 } check] && AreDigits(first + middle + check);

    /// <summary>What is wrong with a number by its check digit; null where nothing is, or where it is no such number.</summary>
    public static string? Fault(string text) =>
        LooksLikeCas(text) && !CasNumber.IsValid(text) ? $"`{text}` is no CAS number: its check digit does not hold"
        : EcNumber.HasShape(text) && !EcNumber.IsValid(text) ? $"`{text}` is no EC number: its check digit does not hold"
        : null;

    private static bool AreDigits(string text) => text.All(char.IsAsciiDigit);
}
