namespace Compat.Cli.Tests;

/// <summary>Finds the files of the repository from where the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string Demo { get; } = Directory.GetFiles(File("data", "demo"), "*.yaml").Order(StringComparer.Ordinal).First();

    /// <summary>A cut of the shipped data as it once was: it stays as it is.</summary>
    public static string Base { get; } = File("tests", "Compat.Cli.Tests", "Base");

    /// <summary>The site that goes with <see cref="Base"/>.</summary>
    public static string Clinic { get; } = Path.Combine(Base, "demo", "clinic.yaml");

    public static string File(params string[] path) => Path.Combine([Root, .. path]);

    public static string Read(params string[] path) => System.IO.File.ReadAllText(File(path)).Replace("\r\n", "\n", StringComparison.Ordinal);

    private static string FindRoot()
    {
        var directory = new DirectoryInfo(AppContext.BaseDirectory);
        while (!System.IO.File.Exists(Path.Combine(directory!.FullName, "Compat.sln"))) directory = directory.Parent;
        return directory.FullName;
    }
}
