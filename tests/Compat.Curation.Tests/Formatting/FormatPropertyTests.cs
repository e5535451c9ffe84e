using System.Text;
using System.Text.RegularExpressions;
using Compat.Curation.Diagnostics;
using Compat.Curation.Formatting;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;
using Compat.Tests.RandomCases;
using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Core;

namespace Compat.Curation.Tests.Formatting;

/// <summary>Records of the shipped data and of the demo site, written in random ways and formatted.</summary>
public sealed class FormatPropertyTests
{
    private static readonly (FileKind Kind, SourceText Source, YamlNode Root)[] Files = [.. Read()];

    [Fact]
    public void Comments_and_values_are_kept_and_a_second_time_changes_nothing() => Holds(100, seed =>
    {
        var random = new Random(seed);
        var (kind, source, root) = Some(random);
        var scrambler = new Scrambler(random, withComments: true, withBlankLines: true);
        var text = scrambler.Write(root, source);
        var once = Formatted(kind, text);
        var comments = Enumerable.Range(1, scrambler.Comments).Select(i => $"# c{i};");
        return Canonical(Tree(once)) == Canonical(root)
            && comments.All(comment => Regex.Count(once, Regex.Escape(comment)) == 1)
            && Formatted(kind, once) == once
            && !Regex.IsMatch(once, @" \n|\n\n\n|\r|^\n|\n\n\z|[^\n]\z")
            && Regex.Matches(once, "^ *", RegexOptions.Multiline).All(indent => indent.Length % 2 == 0);
    });

    [Fact]
    public void However_it_is_spaced_quoted_and_ordered_there_is_one_form() => Holds(60, seed =>
    {
        var random = new Random(seed);
        var (kind, source, root) = Some(random);
        var once = new Scrambler(random, withComments: false, withBlankLines: false).Write(root, source);
        var other = new Scrambler(random, withComments: false, withBlankLines: false).Write(root, source);
        return Formatted(kind, once).TrimStart('\n') == Formatted(kind, other).TrimStart('\n');
    });

    [Fact]
    public void The_shipped_data_give_the_same_records_in_canonical_form()
    {
        var folder = Repository.PathOf("data");
        var result = DataFormat.Of(folder);
        Assert.Equal("", DiagnosticText.Render(result.Diagnostics));
        var before = result.Files.Where(file => !file.ShownAs.Contains("/demo/", StringComparison.Ordinal)).ToDictionary(PathIn, file => file.Before.ToArray());
        var after = result.Files.Where(file => !file.ShownAs.Contains("/demo/", StringComparison.Ordinal))
            .ToDictionary(PathIn, file => Encoding.UTF8.GetBytes(file.After));
        Assert.Equal(KnowledgeText.Write(DataFolder.Read(before, "data").Data), KnowledgeText.Write(DataFolder.Read(after, "data").Data));

        string PathIn(FormattedFile file) => file.ShownAs[(folder.Length + 1)..];
    }

    private static void Holds(int usual, Func<int, bool> holds)
    {
        var config = Config.QuickThrowOnFailure.WithMaxTest(RandomSize.Checks(usual)).WithQuietOnSuccess(true)
            .WithReplay(FSharpOption<Replay>.Some(new Replay(new Rnd(RandomSize.Seed()), FSharpOption<int>.None)));
        Check.One(config, Prop.ForAll(Arb.From(Gen.Choose(0, int.MaxValue - 1)), holds));
    }

    private static (FileKind Kind, SourceText Source, YamlNode Root) Some(Random random)
    {
        var (kind, source, root) = random.Next(6) == 0 ? Files.First(file => file.Kind == FileKind.Site) : Files[random.Next(Files.Length)];
        if (root is not YamlSequence list) return (kind, source, root);
        var from = random.Next(list.Items.Count);
        return (kind, source, list with { Items = list.Items.Skip(from).Take(1 + random.Next(4)).ToArray() });
    }

    private static string Formatted(FileKind kind, string text)
    {
        var faults = new List<Diagnostic>();
        var formatted = TextFormatter.Run(kind, new("f", text), null, faults);
        Assert.True(formatted is not null, DiagnosticText.Render(faults) + text);
        return formatted;
    }

    private static YamlNode Tree(string text)
    {
        var faults = new DiagnosticList(new("f", text));
        var root = YamlReader.Read(faults);
        Assert.Equal("", DiagnosticText.Render(faults.Found));
        return root!;
    }

    /// <summary>A tree as text, its keys sorted.</summary>
    private static string Canonical(YamlNode node) => node switch
    {
        YamlScalar scalar => (scalar.IsPlain && ScalarText.MistakenFor(scalar.Text) is { } ? "plain " : "") + $"\"{scalar.Text}\"",
        YamlSequence list => $"[{string.Join(", ", list.Items.Select(Canonical))}]",
        YamlMapping mapping =>
            $"{{{string.Join(", ", mapping.Entries.OrderBy(entry => entry.Key.Text, StringComparer.Ordinal).Select(entry => entry.Key.Text + ": " + Canonical(entry.Value)))}}}",
        _ => "?",
    };

    private static IEnumerable<(FileKind, SourceText, YamlNode)> Read()
    {
        foreach (var file in DataFormat.Of(Repository.PathOf("data")).Files)
        {
            var source = new SourceText(file.ShownAs, file.After);
            var kind = FolderLayout.KindOf(file.ShownAs[(Repository.PathOf("data").Length + 1)..], "", []) ?? FileKind.Site;
            yield return (kind, source, Tree(file.After));
        }
    }
}
