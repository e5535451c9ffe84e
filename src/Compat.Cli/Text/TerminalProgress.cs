namespace Compat.Cli.Checks;

/// <summary>Shows on a terminal what a long check looks at; silent where stderr is no terminal.</summary>
internal sealed class CheckProgress(TextWriter stderr, bool isTerminal) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);
    private readonly System.Diagnostics.Stopwatch _watch = System.Diagnostics.Stopwatch.StartNew();
    private int _shown;

    /// <summary>Takes what is looked at now.</summary>
    public void Step(string what)
    {
        if (!isTerminal || _watch.Elapsed < Patience) return;
        Clear();
        var text = $"checking {what} …";
        stderr.Write(text);
        stderr.Flush();
        _shown = text.Length;
    }

    /// <inheritdoc/>
    public void Dispose() => Clear();

    private void Clear()
    {
        if (_shown == 0) return;
        stderr.Write("\r" + new string(' ', _shown) + "\r");
        _shown = 0;
    }
}
