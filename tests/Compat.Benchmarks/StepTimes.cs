using System.Diagnostics;
using System.Globalization;

namespace Compat.Benchmarks;

/// <summary>How long each step of a check took.</summary>
internal sealed class StepTimes(Stopwatch watch)
{
    private readonly List<(string What, TimeSpan From)> _steps = [("validation", TimeSpan.Zero)];

    /// <summary>How long all of them took.</summary>
    public TimeSpan Whole { get; private set; }

    public void Begin(string what) => _steps.Add((what, watch.Elapsed));

    public void End() => Whole = watch.Elapsed;

    public string Sum() => string.Join(", ", _steps.Select((step, i) =>
        string.Create(
            CultureInfo.InvariantCulture, $"{step.What} {((i + 1 < _steps.Count ? _steps[i + 1].From : Whole) - step.From).TotalMilliseconds:0} ms")));
}
