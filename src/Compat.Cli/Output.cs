using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Text;

namespace Compat.Cli;

/// <summary>What is written cannot reach its reader.</summary>
internal sealed class OutputLostException : IOException
{
    public OutputLostException(string message, bool readerIsGone)
        : base(message)
    {
        ReaderIsGone = readerIsGone;
    }

    public bool ReaderIsGone { get; }
}

/// <summary>The program's output or its notes as a stream. The framework's own passes over a reader that went away, so that a script would read half an answer
/// as a whole one.</summary>
internal sealed class StandardStream : Stream
{
    private const int Interrupted = 4;
    private const int TryAgain = 11;
    private const int ReaderGone = 32;
    private readonly int _handle;
    private readonly bool _mayBeLost;

    private StandardStream(int handle, bool mayBeLost)
    {
        _handle = handle;
        _mayBeLost = mayBeLost;
    }

    public override bool CanRead => false;
    public override bool CanSeek => false;
    public override bool CanWrite => true;
    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>A writer of UTF-8 on the output: what cannot be written is an <see cref="OutputLostException"/>.</summary>
    public static TextWriter Output() => Writer(1, mayBeLost: false, Console.OpenStandardOutput);

    /// <summary>A writer of UTF-8 on the notes: where they cannot be written there is nowhere left to say so.</summary>
    public static TextWriter Notes() => Writer(2, mayBeLost: true, Console.OpenStandardError);

    public override void Write(byte[] buffer, int offset, int count)
    {
        while (count > 0)
        {
            var written = (int)write(_handle, ref buffer[offset], (nuint)count);
            if (written < 0 && !Again(Marshal.GetLastPInvokeError())) return;
            offset += Math.Max(written, 0);
            count -= Math.Max(written, 0);
        }
    }

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();

    private static StreamWriter Writer(int handle, bool mayBeLost, Func<Stream> ofTheFramework) =>
        new(OperatingSystem.IsWindows() ? ofTheFramework() : new StandardStream(handle, mayBeLost),
            new UTF8Encoding(encoderShouldEmitUTF8Identifier: false))
        { AutoFlush = true };

    /// <summary>Whether to try again after a fault; false where the rest is given up.</summary>
    private bool Again(int fault)
    {
        if (fault == Interrupted) return true;
        if (fault == TryAgain || (fault == 35 && OperatingSystem.IsMacOS()))
        {
            Thread.Sleep(1);
            return true;
        }

        return _mayBeLost ? false : throw new OutputLostException(Marshal.GetPInvokeErrorMessage(fault), fault == ReaderGone);
    }

    [DllImport("libc", ExactSpelling = true, SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint write(int handle, ref byte bytes, nuint count);
}

/// <summary>Guards whoever reads the output, on a terminal or in the log of a pipeline: no hidden character goes through, and no line is a command to the
/// runner of a workflow.</summary>
/// <remarks>Names and texts are refused where they are read; this is the last door. Tabs and line ends pass, a no-break space becomes a plain one. Whole lines
/// are handed on; the rest by <see cref="Flush"/>.</remarks>
internal sealed class GuardedWriter(TextWriter inner) : TextWriter
{
    /// <summary>What a runner takes for a command anywhere in a line; two colons only where the line begins.</summary>
    private static readonly string[] Marks = ["##[", "##vso["];

    private readonly StringBuilder _held = new();
    private bool _isBlank = true;

    public override Encoding Encoding => inner.Encoding;

    /// <summary>The writer behind a guarded one, for what is a command on purpose or writes a line over again; the same where it is not guarded.</summary>
    public static TextWriter Behind(TextWriter writer)
    {
        if (writer is not GuardedWriter guarded) return writer;
        guarded.Flush();
        return guarded.Inner;
    }

    private TextWriter Inner => inner;

    public override void Write(char value)
    {
        _held.Append(value);
        if (value == '\n') Flush();
    }

    public override void Write(string? value)
    {
        if (value is null) return;
        var end = value.LastIndexOf('\n') + 1;
        _held.Append(value, 0, end);
        if (end > 0) Flush();
        _held.Append(value, end, value.Length - end);
    }

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Flush()
    {
        if (_held.Length > 0) inner.Write(Harmless(_held.ToString()));
        _held.Clear();
        inner.Flush();
    }

    private string Harmless(string text)
    {
        var shown = new StringBuilder(text.Length);
        for (var i = 0; i < text.Length;)
        {
            var length = 1;
            if (text[i] is '\n' or '\t' or ' ' or '\u00a0' || (text[i] == '\r' && i + 1 < text.Length && text[i + 1] == '\n'))
            {
                shown.Append(text[i] == '\u00a0' ? ' ' : text[i]);
                _isBlank = text[i] == '\n' || _isBlank;
            }
            else
            {
                if (_isBlank && text.AsSpan(i).StartsWith("::")) shown.Append(": ");
                else if (Array.Find(Marks, mark => text.AsSpan(i).StartsWith(mark)) is { } mark) shown.Append(mark, 0, length = mark.Length - 1).Append(' ');
                else if (HiddenText.IsHidden(text, i, out length)) shown.Append(HiddenText.Instead);
                else shown.Append(text, i, length);
                _isBlank = false;
            }

            i += length;
        }

        return shown.ToString();
    }
}

/// <summary>Shows on a terminal what a long run is at, once it has taken a second; silent where stderr is no terminal. Steps may come from several
/// threads.</summary>
/// <param name="patience">How long nothing is shown; a second where left out.</param>
internal sealed class TerminalProgress(TextWriter stderr, bool isTerminal, string doing = "checking", TimeSpan? patience = null) : IDisposable
{
    private static readonly TimeSpan BetweenCounts = TimeSpan.FromMilliseconds(100);
    private readonly TimeSpan _patience = patience ?? TimeSpan.FromSeconds(1);
    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private readonly Lock _lock = new();
    private TimeSpan _last;
    private int _shown;

    public static TerminalProgress Of(TextWriter stderr, string doing = "checking") =>
        new(GuardedWriter.Behind(stderr), !Console.IsErrorRedirected && GuardedWriter.Behind(stderr) == Console.Error, doing);

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
