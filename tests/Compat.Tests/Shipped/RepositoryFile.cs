namespace Compat.Tests.Shipped;

/// <summary>Finds the files of the repository from where the tests run.</summary>
internal static class RepositoryFile
{
    public static string Of(params string[] path)
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Compat.sln"))) root = Path.GetDirectoryName(root) ?? throw new DirectoryNotFoundException("Compat.sln");
        return Path.Combine([root, .. path]);
    }
}
