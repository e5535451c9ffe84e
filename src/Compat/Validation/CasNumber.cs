namespace Compat.Validation;

/// <summary>CAS registry numbers: two to seven digits, two digits, one check digit.</summary>
/// <remarks>
/// The check digit is the sum of the other digits, each times its place counted from the right, modulo 10 (CAS, Check Digit Verification of CAS Registry
/// Numbers).
/// </remarks>
public static class CasNumber
{
    /// <summary>Whether a text is a CAS number with a check digit that fits.</summary>
    public static bool IsValid(string? text)
    {
        var groups = text?.Split('-');
        if (groups is not { Length: 3 } || groups[0].Length is < 2 or > 7 || groups[1].Length != 2 || groups[2].Length != 1) return false;
        var digits = groups[0] + groups[1];
        if (!(digits + groups[2]).All(c => c is >= '0' and <= '9') || digits[0] == '0') return false;
        var sum = 0;
        for (var i = 0; i < digits.Length; i++) sum += (digits[digits.Length - 1 - i] - '0') * (i + 1);
        return sum % 10 == groups[2][0] - '0';
    }
}
