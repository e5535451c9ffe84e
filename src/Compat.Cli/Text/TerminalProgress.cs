using System.Diagnostics;

namespace Compat.Cli.Text;

/// <summary>Shows on a terminal what a long run is at, once it has taken a second; silent where stderr is no terminal. Steps may come from several threads.</summary>
/// <param name="stderr">Where to.</param>
/// <param name="isTerminal">Whether that is a terminal.</param>
/// <param name="doing">What is done, before what it is done to: <c>checking</c>.</param>
/// <param name="patience">How long nothing is shown; a second where left out.</param>
internal sealed class TerminalProgress(TextWriter stderr, bool isTerminal, string doing = "checking", TimeSpan? patience = null) : IDisposable
{
    private static readonly TimeSpan BetweenCounts = TimeSpan.FromMilliseconds(100);
    private readonly TimeSpan _patience = patience ?? TimeSpan.FromSeconds(1);
    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private readonly Lock _lock = new();
    private TimeSpan _last;
    private int _shown;

    /// <summary>The progress of a command whose notes go to a writer.</summary>
    public static TerminalProgress Of(TextWriter stderr, string doing = "checking") => new(GuardedWriter.Behind(stderr), !Console.IsErrorRedirected && GuardedWriter.Behind(stderr) == Console.Error, doing);

    /// <summary>Takes what is looked at now.</summary>
    public void Step(string what)
    {
        if (!isTerminal || _watch.Elapsed < _patience) return;
        lock (_lock) Show(what);
    }

    /// <summary>Takes how many of how many are done; some are passed over, so that it costs little.</summary>
    public void Count(int done, int all)
    {
        if (!isTerminal || _watch.Elapsed < _patience) return;
        lock (_lock)
        {
            if (_shown > 0 && _watch.Elapsed - _last < BetweenCounts) return;
            _last = _watch.Elapsed;
            Show(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{done} of {all}"));
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_lock) Clear();
    }

    private void Show(string what)
    {
        Clear();
        var text = $"{doing} {what} …";
        stderr.Write(text);
        stderr.Flush();
        _shown = text.Length;
    }

    private void Clear()
    {
        if (_shown == 0) return;
        stderr.Write("\r" + new string(' ', _shown) + "\r");
        _shown = 0;
    }
}
