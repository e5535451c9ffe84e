using System.Diagnostics;
using System.Globalization;

namespace Compat.Benchmarks.Asking;

/// <summary>What a question costs, in microseconds, and the bytes it allocates.</summary>
internal sealed record Figures(double Mean, double Median, double P99, double Bytes)
{
    /// <summary>
    /// Asks every question: the mean over whole passes, the best of several where they are short; median and p99 over single questions, short ones asked many
    /// times each.
    /// </summary>
    public static Figures Of(int count, Action<int> ask)
    {
        for (var warm = 0; warm < 3; warm++) Pass(count, ask, 0.2);
        var mean = Enumerable.Range(0, 5).Select(_ => Pass(count, ask, 0.2)).Min();
        var repeat = mean < 5 ? 64 : 1;
        var single = new double[count];
        for (var i = 0; i < count; i++)
        {
            single[i] = double.MaxValue;
            for (var round = 0; round < (repeat > 1 ? 3 : 1); round++)
            {
                var from = Stopwatch.GetTimestamp();
                for (var n = 0; n < repeat; n++) ask(i);
                single[i] = Math.Min(single[i], Stopwatch.GetElapsedTime(from).TotalMicroseconds / repeat);
            }
        }

        var bytes = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < count; i++) ask(i);
        bytes = GC.GetAllocatedBytesForCurrentThread() - bytes;
        Array.Sort(single);
        return new Figures(mean, single[count / 2], single[count * 99 / 100], (double)bytes / count);
    }

    /// <summary>One pass, given up after some seconds; microseconds a question.</summary>
    public static double Pass(int count, Action<int> ask, double seconds)
    {
        var from = Stopwatch.GetTimestamp();
        var asked = 0;
        for (; asked < count; asked++)
        {
            ask(asked);
            if ((asked & 63) == 63 && Stopwatch.GetElapsedTime(from).TotalSeconds > seconds) { asked++; break; }
        }

        return Stopwatch.GetElapsedTime(from).TotalMicroseconds / asked;
    }

    public string Row(string name) =>
        string.Create(CultureInfo.InvariantCulture, $"  {name,-46} {Mean,12:0.000} {Median,12:0.000} {P99,12:0.000} {Bytes,10:0}");
}
