namespace Compat.Cli.Tests;

/// <summary>Runs the command inside the test process.</summary>
internal sealed record CliRun(int Code, string Output, string Notes)
{
    public static CliRun Of(params string[] args) => Of(isTerminal: false, args);

    public static CliRun OnTerminal(params string[] args) => Of(isTerminal: true, args);

    private static CliRun Of(bool isTerminal, string[] args)
    {
        using var stdout = new StringWriter();
        using var stderr = new StringWriter();
        var code = CommandLine.Run(args, stdout, stderr, isTerminal);
        return new CliRun(code, stdout.ToString(), stderr.ToString());
    }

    /// <summary>The output as one line, so that a test does not depend on where lines break.</summary>
    public string Flat => string.Join(' ', Output.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The notes as one line.</summary>
    public string FlatNotes => string.Join(' ', Notes.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
