using System.Text;
using Compat.Curation.Formatting;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;

namespace Compat.Curation.Tests.Formatting;

public sealed class RenewalTests
{
    private const string Site = """
        site: {id: s, name: "residence: wet-time"} # residence: kept

        products:
          # wet-times: kept
          - {id: p,   wet-times: [{method: damp-wipe, time: "20..45 s"}], label-claims: [{id: wet-time, when: { "wet-time" : ">= 30 s" }}]}
        rules:
          - id: residence
            when:
              residence:    "<= 1 min"   # of residence
            why: >-
              residence:
              is a word
        """;

    private const string RenewedSite = """
        site: {id: s, name: "residence: wet-time"} # residence: kept

        products:
          # wet-times: kept
          - {id: p,   contact-times: [{method: damp-wipe, time: "20..45 s"}], label-claims: [{id: wet-time, when: { contact-time : ">= 30 s" }}]}
        rules:
          - id: residence
            when:
              exposure-time:    "<= 1 min"   # of residence
            why: >-
              residence:
              is a word
        """;

    private const string Answers = """
        section-1: {id: wet-time, name: "residence: a"} # residence: kept
        label:
          wet-times:   [{method: damp-wipe, time: "20..45 s"}]
          label-claims:
            - { id: a, when: {wet-time: ">= 30 s"} }
        """;

    private const string RenewedAnswers = """
        section-1: {id: wet-time, name: "residence: a"} # residence: kept
        label:
          contact-times:   [{method: damp-wipe, time: "20..45 s"}]
          label-claims:
            - { id: a, when: {contact-time: ">= 30 s"} }
        """;

    [Theory]
    [InlineData("Site", Site, RenewedSite)]
    [InlineData(null, Answers, RenewedAnswers)]
    [InlineData("Conventions", "- {id: 'unstated-residence', value: '<= 1 min', reason: unstated-residence}",
        "- {id: unstated-exposure-time, value: '<= 1 min', reason: unstated-residence}")]
    [InlineData("Conventions", "- id: unstated-residence\r\n  # c\r\n  reason: r\r\n", "- id: unstated-exposure-time\r\n  # c\r\n  reason: r\r\n")]
    public void File_WithOldWords_HasOnlyThoseRenewed(string? kind, string text, string renewed)
    {
        var once = Renewed(kind, text);
        Assert.Equal(renewed, once);
        Assert.Equal(renewed, Renewed(kind, once));
    }

    [Theory]
    [InlineData("Materials", "- {id: a, name: b, residence: c}")]
    [InlineData("Rules", "- {id: a, when: {residence: '<= 1 min', exposure-time: '<= 1 min'}}")]
    [InlineData("Rules", "- {id: a, when: {residence: '<= 1 min', residence: '<= 1 min'}}")]
    [InlineData("Rules", "- {id: a, when: {residence: '<= 1 min'")]
    [InlineData("Conventions", "- {id: a, reason: unstated-residence}")]
    public void File_WhereAnOldWordMeansNothing_IsLeftAsItIs(string kind, string text) => Assert.Equal(text, Renewed(kind, text));

    /// <summary>Every word of the shipped data that was renamed is found, wherever it stands.</summary>
    [Fact]
    public void ShippedData_WrittenWithOldWords_IsRenewedToItself()
    {
        var written = 0;
        foreach (var path in Directory.GetFiles(Repository.PathOf("data"), "*.yaml", SearchOption.AllDirectories))
        {
            var text = File.ReadAllText(path);
            var old = text.Replace("exposure-time:", "residence:", StringComparison.Ordinal).Replace("contact-time:", "wet-time:", StringComparison.Ordinal)
                .Replace("contact-times:", "wet-times:", StringComparison.Ordinal).Replace(
                    "id: unstated-exposure-time", "id: unstated-residence", StringComparison.Ordinal);
            if (old == text) continue;
            written++;
            var kind = path.Contains($"{Path.DirectorySeparatorChar}demo{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                ? FileKind.Site
                : FolderLayout.KindOf(Path.GetRelativePath(Repository.PathOf("data"), path).Replace(Path.DirectorySeparatorChar, '/'), path, []);
            Assert.Equal(text, Renewed(kind.ToString(), old));
        }

        Assert.True(written > 20, $"{written} files");
    }

    private static string Renewed(string? kind, string text) =>
        Encoding.UTF8.GetString(Renewal.Of(kind is null ? null : Enum.Parse<FileKind>(kind), Encoding.UTF8.GetBytes(text)));
}
