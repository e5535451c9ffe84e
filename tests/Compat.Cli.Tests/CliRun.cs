namespace Compat.Cli.Tests;

/// <summary>Runs the command inside the test process.</summary>
internal sealed record CliRun(int Code, string Output, string Notes)
{
    private static readonly Lazy<KnowledgeBase> Base = new(() => Curation.DataFolder.Load(Repository.Base).KnowledgeBase!);

    public static CliRun Of(params string[] args) => Of(isTerminal: false, null, args);

    public static CliRun OnTerminal(params string[] args) => Of(isTerminal: true, null, args);

    /// <summary>Runs it on the small frozen base of these tests in place of the shipped data, so that what it says changes only where words do.</summary>
    public static CliRun OnBase(params string[] args) => Of(isTerminal: false, Base.Value, args);

    private static CliRun Of(bool isTerminal, KnowledgeBase? data, string[] args)
    {
        using var stdout = new StringWriter();
        using var stderr = new StringWriter();
        var code = CommandLine.Run(args, stdout, stderr, isTerminal, data: data);
        return new CliRun(code, stdout.ToString(), stderr.ToString());
    }

    /// <summary>The output as one line, so that a test does not depend on where lines break.</summary>
    public string Flat => string.Join(' ', Output.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The notes as one line.</summary>
    public string FlatNotes => string.Join(' ', Notes.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
