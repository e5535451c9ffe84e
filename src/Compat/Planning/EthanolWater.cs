namespace Compat.Planning;

/// <summary>
/// Mixtures of ethanol and water: density and strength by the general formula of OIML R 22 (1973, International alcoholometric tables, annex).
/// </summary>
/// <remarks>The formula holds from -20 °C to 40 °C. Strengths by volume are those at 20 °C, as the tables count them.</remarks>
public static class EthanolWater
{
    /// <summary>The lowest temperature of the formula, in °C.</summary>
    public const double LowestTemperature = -20;

    /// <summary>The highest temperature of the formula, in °C.</summary>
    public const double HighestTemperature = 40;

    /// <summary>The temperature at which strengths by volume are counted, in °C.</summary>
    public const double ReferenceTemperature = 20;

    private static readonly double[] A =
    [
        998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388,
        306287.4042, -613838.1234, 747017.2998, -547846.1354, 223446.0334, -39032.85426,
    ];

    private static readonly double[] B = [-0.20618513, -0.0052682542, 3.6130013e-05, -3.8957702e-07, 7.169354e-09, -9.9739231e-11];

    private static readonly double[][] C =
    [
        [
            0.1693443461530087, -10.46914743455169, 71.96353469546523, -704.7478054272792, 3924.090430035045, -12101.64659068747,
            22486.46550400788, -26055.62982188164, 18523.73922069467, -7420.201433430137, 1285.617841998974,
        ],
        [
            -0.0119301300505701, 0.2517399633803461, -2.170575700536993, 13.53034988843029, -50.29988758547014,
            109.635566657757, -142.2753946421155, 108.043594285623, -44.14153236817392, 7.442971530188783,
        ],
        [
            -0.0006802995733503803, 0.01876837790289664, -0.2002561813734156, 1.02299296671922, -2.895696483903638,
            4.810060584300675, -4.672147440794683, 2.458043105903461, -0.5411227621436812,
        ],
        [4.075376675622027e-06, -8.76305857347111e-06, 6.515031360099368e-06, -1.51578483698721e-06],
        [-2.788074354782409e-08, 1.345612883493354e-08],
    ];

    /// <summary>The density of a mixture.</summary>
    /// <param name="massPercent">Ethanol in percent of the mass, 0 to 100, both included.</param>
    /// <param name="temperature">The temperature in °C, <see cref="LowestTemperature"/> to <see cref="HighestTemperature"/>, both included.</param>
    /// <returns>The density in kg/m³.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure lies outside its range.</exception>
    public static double Density(double massPercent, double temperature)
    {
        if (!(massPercent >= 0 && massPercent <= 100)) throw new ArgumentOutOfRangeException(nameof(massPercent), massPercent, "0 to 100 %");
        if (!(temperature >= LowestTemperature && temperature <= HighestTemperature))
            throw new ArgumentOutOfRangeException(nameof(temperature), temperature, "-20 to 40 °C");
        var share = massPercent / 100;
        var warmth = temperature - ReferenceTemperature;
        var density = Polynomial(A, share) + (warmth * Polynomial(B, warmth));
        for (var i = C.Length - 1; i >= 0; i--) density += Math.Pow(warmth, i + 1) * share * Polynomial(C[i], share);
        return density;
    }

    /// <summary>Percent of volume at 20 °C of a percent of mass.</summary>
    /// <param name="massPercent">Ethanol in percent of the mass, 0 to 100, both included.</param>
    /// <exception cref="ArgumentOutOfRangeException">The figure lies outside its range.</exception>
    public static double VolumePercent(double massPercent) =>
        massPercent * Density(massPercent, ReferenceTemperature) / Density(100, ReferenceTemperature);

    /// <summary>Percent of mass of a percent of volume at 20 °C.</summary>
    /// <param name="volumePercent">Ethanol in percent of the volume, 0 to 100, both included.</param>
    /// <exception cref="ArgumentOutOfRangeException">The figure lies outside its range.</exception>
    public static double MassPercent(double volumePercent)
    {
        if (!(volumePercent >= 0 && volumePercent <= 100)) throw new ArgumentOutOfRangeException(nameof(volumePercent), volumePercent, "0 to 100 %");
        var (low, high) = (0.0, 100.0);
        for (var i = 0; i < 100 && low < high; i++)
        {
            var middle = (low + high) / 2;
            if (VolumePercent(middle) < volumePercent) low = middle;
            else high = middle;
        }

        return volumePercent is 0 or 100 ? volumePercent : high;
    }

    private static double Polynomial(double[] coefficients, double x)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--) sum = (sum * x) + coefficients[i];
        return sum;
    }
}
