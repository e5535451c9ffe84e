using System.Text;
using Compat.Curation.Formatting;

namespace Compat.Curation.Tests.Formatting;

public sealed class DataFormatTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("compat-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_folder_is_formatted_file_by_file_with_the_sites_in_it()
    {
        Write("materials/a.yaml", "- {id: any-material, name: any}\n");
        Write("version.yaml", "# yaml-language-server: $schema=../schemas/version.schema.json\nversion: a\n");
        Write("demo/site.yaml", "site: {id: s, name: one}\n");
        Write("README.md", "- {id: a}\n");
        var result = DataFormat.Of(_folder.FullName);
        Assert.Empty(result.Diagnostics);
        Assert.Equal(
            ["demo/site.yaml", "materials/a.yaml", "version.yaml"],
            result.Files.Select(file => Path.GetRelativePath(_folder.FullName, file.Path).Replace('\\', '/')));
        Assert.Equal("site: { id: s, name: one }\n", result.Files[0].After);
        Assert.Equal("# yaml-language-server: $schema=../../schemas/materials.schema.json\n- { id: any-material, name: any }\n", result.Files[1].After);
        Assert.Null(result.Files[2].FirstChange);
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_left_as_it_is_and_the_others_are_not()
    {
        Write("materials/a.yaml", "- {id: a, name: b, colour: red}\n");
        Write("rules/a.yaml",
            "- {id: r, part: p, agent: a, when: {exposure-time: '<= 5'}, verdict: not-allowed, damage: {mechanism: crazing, onset: first-use, lasting: true, "
                + "consequence: looks}, why: w, sources: [s], reviewed: 2026-11-25}\n");
        Write("parts/a.yaml", "- {id: a, name: b}\n");
        Write("parts/b.yml", "[]");
        var result = DataFormat.Of(_folder.FullName);
        Assert.Equal(["unknown-key", "file-name", "figure"], result.Diagnostics.Select(one => one.Code));
        Assert.EndsWith("parts/a.yaml", Assert.Single(result.Files).ShownAs, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# yaml-language-server: $schema=schemas/materials.schema.json\n- {id: a, name: b}\n", "- { id: a, name: b }\n")]
    [InlineData("site: {id: s, name: one}\n", "site: { id: s, name: one }\n")]
    public void A_single_file_is_of_the_kind_it_names_or_a_site(string text, string ending)
    {
        var result = DataFormat.Of(Write("x.yaml", text));
        Assert.Empty(result.Diagnostics);
        Assert.EndsWith(ending, Assert.Single(result.Files).After, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("# yaml-language-server: $schema=schemas/material.schema.json\n[]\n", "unknown-kind")]
    [InlineData("- {id: a, name: b}\n", "schema")]
    [InlineData("# yaml-language-server: $schema=schemas/conventions.schema.json\n- { id: unstated-ph, value: '<= five', reason: r }\n", "figure")]
    [InlineData("site:\n\tid: s\n", "tab")]
    public void A_single_file_that_cannot_be_read_is_left_as_it_is(string text, string code)
    {
        var result = DataFormat.Of(Write("x.yaml", text));
        Assert.Equal(code, result.Diagnostics[0].Code);
        Assert.Empty(result.Files);
    }

    [Theory]
    [InlineData("site: { id: s, name: one }\n", null)]
    [InlineData("site: { id: s, name: one }\n\n", 2)]
    [InlineData("site: { id: s, name: one }", 1)]
    [InlineData("# c\nsite:\r\n  id: s\n  name: one\n", 2)]
    [InlineData("\uFEFFsite: { id: s, name: one }\n", 1)]
    public void The_first_line_that_would_change_is_named(string text, int? line) =>
        Assert.Equal(line, Assert.Single(DataFormat.Of(Write("x.yaml", text)).Files).FirstChange);

    [Fact]
    public void Saving_takes_the_place_of_the_file_behind_a_link_and_leaves_nothing_beside_it()
    {
        var path = Write("x.yaml", "site: {id: s, name: one}\n");
        var link = Path.Combine(_folder.FullName, "link.yaml");
        File.CreateSymbolicLink(link, path);
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.Single(DataFormat.Of(link).Files).Save();
        Assert.Equal("site: { id: s, name: one }\n", File.ReadAllText(path));
        Assert.NotNull(new FileInfo(link).LinkTarget);
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        Assert.Equal(2, _folder.GetFiles().Length);
    }

    [Fact]
    public void What_is_not_there_is_said() =>
        Assert.Equal("file-not-found", Assert.Single(DataFormat.Of(Path.Combine(_folder.FullName, "no.yaml")).Diagnostics).Code);

    private string Write(string path, string text)
    {
        var full = Path.Combine(_folder.FullName, path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        File.WriteAllBytes(full, Encoding.UTF8.GetBytes(text));
        return full;
    }
}
