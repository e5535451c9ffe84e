using System.Diagnostics;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Curation.Tests.Reading;

/// <summary>
/// In a folder of files no link is followed and nothing but a file of bytes is read; each is named. A file that the caller names is read once, whatever it is.
/// </summary>
public sealed class FolderFilesTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("compat-folder").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Find_Links_AreNamedAndNotFollowed()
    {
        Directory.CreateDirectory(At("rules"));
        File.WriteAllText(At("rules/one.yaml"), "");
        File.CreateSymbolicLink(At("rules/two.yaml"), At("rules/one.yaml"));
        Directory.CreateSymbolicLink(At("rules/loop"), _folder);
        Assert.Equal(["rules/one.yaml"], Found(out var faults));
        Assert.Equal(["rules/loop", "rules/two.yaml"], Named(faults, "link-in-folder"));
    }

    [Fact]
    public void Find_Pipe_IsNamedAndNotOpened()
    {
        if (!OperatingSystem.IsLinux()) return;
        Shell("mkfifo one.yaml");
        Assert.Empty(Found(out var faults)!);
        Assert.Equal(["one.yaml"], Named(faults, "no-regular-file"));
    }

    [Fact]
    public void Find_NameThatIsNoUtf8_IsNamed()
    {
        if (!OperatingSystem.IsLinux()) return;
        Shell("touch $'\\xff.yaml'");
        var found = Found(out var faults);

        // The framework cannot take away a file of such a name.
        Shell("rm $'\\xff.yaml'");
        Assert.Empty(found!);
        Assert.Single(Named(faults, "file-name"));
    }

    [Fact]
    public void Find_FolderWithinFolders_IsReadToADepth()
    {
        var deep = string.Join('/', Enumerable.Repeat("d", 21));
        Directory.CreateDirectory(At(deep));
        File.WriteAllText(At(deep + "/a.yaml"), "");
        File.WriteAllText(At("d/a.yaml"), "");
        Assert.Equal(["d/a.yaml"], Found(out var faults));
        Assert.Equal([deep], Named(faults, "folder-too-deep"));
    }

    [Theory]
    [InlineData("nowhere", "there is no such folder")]
    [InlineData("file", "this is a file, not a folder")]
    public void Find_NoFolder_IsSaid(string name, string message)
    {
        File.WriteAllText(At("file"), "");
        var faults = new List<Diagnostic>();
        Assert.Null(FolderFiles.Find(At(name), faults));
        Assert.Equal(message, Assert.Single(faults).Message);
    }

    [Fact]
    public async Task LayOver_SiteFromAPipe_IsReadOnce()
    {
        if (!OperatingSystem.IsLinux()) return;
        Shell("mkfifo site");
        var writer = Task.Run(() => File.WriteAllText(At("site"), "site: { id: a, name: a }\n"));
        var read = SiteFile.LayOver(KnowledgeBase.Shipped, At("site"), At("site"));
        await writer;
        Assert.DoesNotContain(read.Diagnostics, fault => fault.Code is "file-not-readable" or "empty-file");
        Assert.Equal(2, read.Sites.Count);
    }

    private void Shell(string line)
    {
        using var shell = Process.Start(new ProcessStartInfo("bash", ["-c", line]) { WorkingDirectory = _folder })!;
        shell.WaitForExit();
    }

    private List<string>? Found(out List<Diagnostic> faults)
    {
        faults = [];
        return FolderFiles.Find(_folder, faults)?.ConvertAll(one => one.Path);
    }

    private string[] Named(List<Diagnostic> faults, string code) =>
        faults.Where(fault => fault.Code == code).Select(fault => Path.GetRelativePath(_folder, fault.File!)).Order(StringComparer.Ordinal).ToArray();

    private string At(string name) => Path.Combine(_folder, name);
}
