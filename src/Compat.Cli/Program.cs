using Compat;
using Compat.Cli;
using Compat.Snapshots;

// The shipped data is read on another core while the arguments are parsed.
if (CommandLine.MayAskShipped(args)) new Thread(ReadAhead) { IsBackground = true }.Start();
Console.SetOut(StandardStream.Output());
Console.SetError(StandardStream.Notes());
try
{
    return CommandLine.Run(args, Console.Out, Console.Error, isTerminal: !Console.IsOutputRedirected);
}
catch (OutputLostException lost)
{
    if (!lost.ReaderIsGone) Console.Error.WriteLine($"error: the output cannot be written: {lost.Message}");
    return ExitCode.BadInput;
}

static void ReadAhead()
{
    try
    {
        _ = KnowledgeBase.Shipped;
    }
    catch (SnapshotException)
    {
        // The same exception is met again where the data is used.
    }
}
