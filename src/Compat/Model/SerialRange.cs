using System.Globalization;

namespace Compat.Model;

/// <summary>A serial number: letters (perhaps none), then a whole number, for example <c>AB1200</c>.</summary>
/// <param name="Prefix">The letters before the number, as written.</param>
/// <param name="Number">The number.</param>
public readonly record struct SerialNumber(string Prefix, long Number)
{
    /// <summary>Reads a serial number: letters and hyphens, then 1 to 18 digits.</summary>
    /// <returns>Whether the text is one.</returns>
    public static bool TryParse(string? text, out SerialNumber serial)
    {
        serial = default;
        if (string.IsNullOrEmpty(text)) return false;
        var digits = 0;
        while (digits < text!.Length && text[text.Length - 1 - digits] is >= '0' and <= '9') digits++;
        if (digits is 0 or > 18) return false;
        var prefix = text.Substring(0, text.Length - digits);
        if (!prefix.All(c => c is (>= 'A' and <= 'Z') or (>= 'a' and <= 'z') or '-')) return false;
        serial = new(prefix, long.Parse(text.Substring(text.Length - digits), CultureInfo.InvariantCulture));
        return true;
    }

    /// <summary>The serial number as it is written, leading zeros left out.</summary>
    public override string ToString() => Prefix + Number.ToString(CultureInfo.InvariantCulture);
}

/// <summary>Serial numbers of one prefix from a first to a last, both included.</summary>
/// <param name="Prefix">The letters before the number.</param>
/// <param name="First">The first number.</param>
/// <param name="Last">The last number; <see cref="long.MaxValue"/> where there is no last.</param>
public readonly record struct SerialRange(string Prefix, long First, long Last)
{
    /// <summary>Reads <c>AB100..AB199</c>, <c>AB200..</c> or a single serial number.</summary>
    /// <returns>Whether the text is a range that holds at least one serial number.</returns>
    public static bool TryParse(string? text, out SerialRange range)
    {
        range = default;
        if (text is null) return false;
        var dots = text.IndexOf("..", StringComparison.Ordinal);
        if (!SerialNumber.TryParse(dots < 0 ? text : text.Substring(0, dots), out var first)) return false;
        var last = dots < 0 ? first.Number : long.MaxValue;
        if (dots >= 0 && dots + 2 < text.Length)
        {
            if (!SerialNumber.TryParse(text.Substring(dots + 2), out var end) || end.Prefix != first.Prefix) return false;
            last = end.Number;
        }

        range = new(first.Prefix, first.Number, last);
        return first.Number <= last;
    }

    /// <summary>Whether a serial number lies in the range.</summary>
    public bool Contains(SerialNumber serial) => serial.Prefix == Prefix && serial.Number >= First && serial.Number <= Last;

    /// <summary>The range as it is written.</summary>
    public override string ToString() =>
        First == Last ? new SerialNumber(Prefix, First).ToString()
        : new SerialNumber(Prefix, First) + ".." + (Last == long.MaxValue ? "" : new SerialNumber(Prefix, Last).ToString());
}
