using System.Globalization;

namespace Compat.Tests.RandomCases;

/// <summary>How many random cases a test looks at, and from which seed on.</summary>
/// <remarks>
/// COMPAT_RANDOM_TIMES: how many times the usual number, 1 where it is not set (0.1 for a quick look, 10 for a night).
/// COMPAT_RANDOM_CASES: how many cases the laws of the library look at, whatever the usual number; each test its share of them.
/// COMPAT_RANDOM_CHECKS: how many data sets the tests of check and review look at, whatever the usual number.
/// COMPAT_RANDOM_SEED: the first seed.
/// </remarks>
internal static class RandomSize
{
#if ASKED_ONCE_MORE
    private const int UsualCases = 1_000;
#else
    private const int UsualCases = 10_000;
#endif

    /// <summary>The share of 10,000 cases that a test of the library looks at.</summary>
    public static int Cases(int share = 1) => Math.Max(1, (int)(Number("COMPAT_RANDOM_CASES") ?? UsualCases * Times) / share);

    /// <summary>How many data sets a test of check and review looks at.</summary>
    /// <param name="usual">How many it usually does.</param>
    public static int Checks(int usual) => Math.Max(1, (int)(Number("COMPAT_RANDOM_CHECKS") ?? usual * Times));

    /// <summary>How often something must have been seen among so many data sets, where it is seen that often among the usual number.</summary>
    public static int Telling(int often, int usual) => (int)(often * Math.Min(1, (decimal)Checks(usual) / usual));

    /// <summary>The first seed: that of a test, or of the run.</summary>
    public static ulong Seed(ulong usual = 20261125) => (ulong)(Number("COMPAT_RANDOM_SEED") ?? usual);

    private static decimal Times => Number("COMPAT_RANDOM_TIMES") ?? 1;

    private static decimal? Number(string variable) =>
        decimal.TryParse(Environment.GetEnvironmentVariable(variable), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var n) ? n : null;
}
