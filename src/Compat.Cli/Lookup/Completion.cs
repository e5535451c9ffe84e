using System.CommandLine;
using Compat.Cli.Commands;
using Compat.Cli.Input;
using Compat.Cli.Wording;

namespace Compat.Cli.Lookup;

/// <summary>What may stand next on a command line: what the scripts of <c>compat completions</c> ask at every press of the key.</summary>
internal static class Completion
{
    /// <summary>Words that may stand in place of the last one.</summary>
    /// <param name="words">What stands behind the program's name so far; the last one is being written.</param>
    /// <param name="root">The whole command.</param>
    public static IEnumerable<string> Of(string[] words, Command root)
    {
        if (words.Length == 0) words = [""];
        var current = words[^1];
        var command = root;
        var depth = 0;
        while (depth < words.Length - 1 && command.Subcommands.FirstOrDefault(sub => sub.Name == words[depth]) is { } below) (command, depth) = (below, depth + 1);
        return Choices(words, command, depth == words.Length - 1)
            .Where(word => word.StartsWith(current, StringComparison.Ordinal)).Distinct().Order(StringComparer.Ordinal);
    }

    private static IEnumerable<string> Choices(string[] words, Command command, bool takesCommand)
    {
        var before = words.Length > 1 ? words[^2] : "";
        if (command.Options.FirstOrDefault(option => option.Name == before) is { Arity.MaximumNumberOfValues: > 0 }) return Values(words, before);
        if (words[^1].StartsWith('-')) return command.Options.Select(option => option.Name).Append("--help");
        if (takesCommand && command.Subcommands.Count > 0) return command.Subcommands.Where(sub => !sub.Hidden).Select(sub => sub.Name);
        return command.Name switch
        {
            "list" => ListCommand.Kinds,
            "completions" => CompletionsCommand.Shells,
            "mix" => Ids(words, "agents", "products", "materials"),
            _ => [],
        };
    }

    private static IEnumerable<string> Values(string[] words, string option) => option switch
    {
        "--part" => Ids(words, "parts"),
        "--material" => Ids(words, "materials"),
        "--agent" => Ids(words, "agents"),
        "--product" or "--replace" => Ids(words, "products"),
        "--device" => Ids(words, "devices"),
        "--against" => Ids(words, "organisms").Concat(Words.All<Model.OrganismGroup>()),
        "--method" => Words.All<ApplicationMethod>(),
        "--level" => Words.All<Model.Level>(),
        "--patient" => Words.All<Model.PatientGroup>(),
        "--soil" => Words.All<Model.SoilKind>(),
        "--touched-by" => Words.All<Model.TouchedBy>(),
        "--act" => Words.All<Model.Act>(),
        _ => [],
    };

    /// <summary>Ids of the data and sites that the line names already; of the shipped data where they cannot be read.</summary>
    private static IEnumerable<string> Ids(string[] words, params string[] kinds)
    {
        var sites = words.Zip(words.Skip(1)).Where(pair => pair.First == "--site").Select(pair => pair.Second).ToArray();
        var data = words.Zip(words.Skip(1)).Where(pair => pair.First == "--data").Select(pair => pair.Second).FirstOrDefault();
        var kb = KnowledgeSource.Load(data, sites, TextWriter.Null) ?? KnowledgeBase.Shipped;
        return kinds.SelectMany(kind => Catalogue.Of(kb, kind)).Select(entry => entry.Id);
    }
}
