namespace Compat.Validation;

/// <summary>EC numbers of the European inventories of substances: three digits, three digits, one check digit.</summary>
/// <remarks>
/// The check digit is the sum of the other digits, each times its place counted from the left, modulo 11; a sum that leaves ten makes no number.
/// </remarks>
public static class EcNumber
{
    /// <summary>Whether a text has the shape of an EC number, whatever its check digit.</summary>
    public static bool HasShape(string? text) =>
        text?.Split('-') is { Length: 3 } groups && groups[0].Length == 3 && groups[1].Length == 3 && groups[2].Length == 1
        && string.Concat(groups).All(c => c is >= '0' and <= '9');

    /// <summary>Whether a text is an EC number with a check digit that fits.</summary>
    public static bool IsValid(string? text)
    {
        if (!HasShape(text)) return false;
        var digits = text!.Where(c => c != '-').Select(c => c - '0').ToArray();
        var sum = 0;
        for (var i = 0; i < 6; i++) sum += digits[i] * (i + 1);
        return sum % 11 == digits[6];
    }
}
