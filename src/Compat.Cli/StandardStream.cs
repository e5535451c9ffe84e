using System.Runtime.InteropServices;
using System.Text;

namespace Compat.Cli;

/// <summary>What is written cannot reach its reader.</summary>
internal sealed class OutputLostException : IOException
{
    /// <summary>Makes the exception.</summary>
    /// <param name="message">What the system says.</param>
    /// <param name="readerIsGone">Whether the reader went away, which is nobody's fault.</param>
    public OutputLostException(string message, bool readerIsGone)
        : base(message)
    {
        ReaderIsGone = readerIsGone;
    }

    /// <summary>Whether the reader went away.</summary>
    public bool ReaderIsGone { get; }
}

/// <summary>The program's output or its notes as a stream. The framework's own passes over a reader that went away, so that a script would read half an answer as a whole one.</summary>
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

    /// <inheritdoc/>
    public override bool CanRead => false;

    /// <inheritdoc/>
    public override bool CanSeek => false;

    /// <inheritdoc/>
    public override bool CanWrite => true;

    /// <inheritdoc/>
    public override long Length => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <summary>A writer of UTF-8 on the output: what cannot be written is an <see cref="OutputLostException"/>.</summary>
    public static TextWriter Output() => Writer(1, mayBeLost: false, Console.OpenStandardOutput);

    /// <summary>A writer of UTF-8 on the notes: where they cannot be written there is nowhere left to say so.</summary>
    public static TextWriter Notes() => Writer(2, mayBeLost: true, Console.OpenStandardError);

    /// <inheritdoc/>
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

    /// <inheritdoc/>
    public override void Flush()
    {
    }

    /// <inheritdoc/>
    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    /// <inheritdoc/>
    public override void SetLength(long value) => throw new NotSupportedException();

    private static StreamWriter Writer(int handle, bool mayBeLost, Func<Stream> ofTheFramework) =>
        new(OperatingSystem.IsWindows() ? ofTheFramework() : new StandardStream(handle, mayBeLost), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true };

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
