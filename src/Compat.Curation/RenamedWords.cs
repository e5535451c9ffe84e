namespace Compat.Curation;

/// <summary>
/// The words of files and of the command that were renamed. Old ones are refused with the new one named; <c>compat format --renew</c> converts files.
/// </summary>
public static class RenamedWords
{
    /// <summary>What converts a file, as the end of an error.</summary>
    public const string Help = "`compat format --renew FILE` writes the new words into files";

    private static readonly Dictionary<string, string> Keys = new()
    {
        ["residence"] = "exposure-time",
        ["wet-time"] = "contact-time",
        ["wet-times"] = "contact-times",
    };

    private static readonly Dictionary<string, string> Values = new() { ["unstated-residence"] = "unstated-exposure-time" };

    private static readonly Dictionary<string, string> Options = new() { ["--residence"] = "--exposure-time", ["--contact"] = "--contact-time" };

    /// <summary>What a key of a file is called now; null where it was not renamed to one of those known at its place.</summary>
    internal static string? OfKey(string key, IEnumerable<string> known) => Of(Keys, key, known);

    /// <summary>What a word that stands as a value is called now; null where it was not renamed to one of those known at its place.</summary>
    internal static string? OfValue(string word, IEnumerable<string> known) => Of(Values, word, known);

    /// <summary>What an option of the command is called now; null where it was not renamed to one of those that are known.</summary>
    /// <param name="option">The option, with its hyphens.</param>
    /// <param name="known">The options there are.</param>
    public static string? OfOption(string option, IEnumerable<string> known) => Of(Options, option, known);

    private static string? Of(Dictionary<string, string> table, string word, IEnumerable<string> known) =>
        table.TryGetValue(word, out var now) && known.Contains(now) ? now : null;
}
