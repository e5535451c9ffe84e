namespace Compat.Model;

/// <summary>The degree of protection against water that sets the wettest method a part stands (IEC 60529).</summary>
public sealed record WaterIngress
{
    /// <summary>The second numeral of the code, 0 to 9.</summary>
    public required int Numeral { get; init; }

    /// <summary>What it means for cleaning, in words.</summary>
    public required string Means { get; init; }

    /// <summary>The code as it is written, without the first numeral: <c>IPX4</c>.</summary>
    public string Code => "IPX" + Numeral.ToString(System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Reads the numeral of <c>IPX0</c> to <c>IPX9</c>; nothing else is taken.</summary>
    /// <returns>Whether the text is such a code.</returns>
    public static bool TryParse(string? text, out int numeral)
    {
        numeral = text is { Length: 4 } && text.StartsWith("IPX", StringComparison.Ordinal) ? text[3] - '0' : -1;
        return numeral is >= 0 and <= 9;
    }
}
