using System.Diagnostics;
using Compat.Curation.Editing;

namespace Compat.Curation.Tests.Editing;

/// <summary>Files are written whole or not at all, and nothing but the file that was meant is ever touched.</summary>
public sealed class WholeFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("compat-whole").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Replace_NewFile_IsWrittenAndLeavesNothingBeside()
    {
        WholeFile.Replace(At("a"), "one");
        WholeFile.Replace(At("a"), "two");
        Assert.Equal("two", File.ReadAllText(At("a")));
        Assert.Equal([At("a")], Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void Replace_FileBesideOfAnyName_IsNotTouched()
    {
        foreach (var name in new[] { "a.new", "a.tmp", ".a", "a~" }) File.WriteAllText(At(name), "mine");
        WholeFile.Replace(At("a"), "one");
        Assert.All(new[] { "a.new", "a.tmp", ".a", "a~" }, name => Assert.Equal("mine", File.ReadAllText(At(name))));
    }

    [Fact]
    public void Replace_Link_ReplacesWhatItLeadsTo()
    {
        File.WriteAllText(At("a"), "one");
        File.CreateSymbolicLink(At("link"), At("a"));
        WholeFile.Replace(At("link"), "two");
        Assert.Equal("two", File.ReadAllText(At("a")));
        Assert.NotNull(new FileInfo(At("link")).LinkTarget);
    }

    [Fact]
    public void Replace_LinkThatLeadsNowhere_IsRefused()
    {
        File.CreateSymbolicLink(At("link"), At("gone"));
        Assert.Throws<IOException>(() => WholeFile.Replace(At("link"), "two"));
        Assert.Equal([At("link")], Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void Replace_WhatIsNoFileOfBytes_IsRefusedAndStays()
    {
        Directory.CreateDirectory(At("folder"));
        Assert.Throws<IOException>(() => WholeFile.Replace(At("folder"), "two"));
        if (!OperatingSystem.IsLinux()) return;
        Process.Start("mkfifo", At("pipe")).WaitForExit();
        File.CreateSymbolicLink(At("link"), At("pipe"));
        Assert.Throws<IOException>(() => WholeFile.Replace(At("pipe"), "two"));
        Assert.Throws<IOException>(() => WholeFile.Replace(At("link"), "two"));
        Assert.Equal(3, Directory.GetFileSystemEntries(_folder).Length);
        Assert.Equal(0, new FileInfo(At("pipe")).Length);
    }

    [Fact]
    public void Replace_ModeOfAFile_IsKept()
    {
        if (OperatingSystem.IsWindows()) return;
        File.WriteAllText(At("a"), "one");
        File.SetUnixFileMode(At("a"), UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
        WholeFile.Replace(At("a"), "two");
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead, File.GetUnixFileMode(At("a")));
    }

    [Fact]
    public void Replace_WriterThatFails_LeavesTheOldFileAndNothingBeside()
    {
        File.WriteAllText(At("a"), "one");
        Assert.Throws<IOException>(() => WholeFile.Replace(At("a"), (Stream _) => throw new IOException("full")));
        Assert.Equal("one", File.ReadAllText(At("a")));
        Assert.Equal([At("a")], Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void Replace_FileChangedSinceItWasRead_IsRefused()
    {
        File.WriteAllText(At("a"), "one");
        var read = File.ReadAllBytes(At("a"));
        File.WriteAllText(At("a"), "two");
        Assert.Throws<IOException>(() => WholeFile.Replace(At("a"), "three", read));
        Assert.Equal("two", File.ReadAllText(At("a")));
        Assert.Equal([At("a")], Directory.GetFileSystemEntries(_folder));
        WholeFile.Replace(At("a"), "three", "two"u8.ToArray());
        Assert.Equal("three", File.ReadAllText(At("a")));
    }

    /// <summary>Of writers that each read a number and write the next, none is lost: the number counts those that were not refused.</summary>
    [Fact]
    public void Replace_ManyAtOnce_NoUpdateIsLost()
    {
        File.WriteAllText(At("a"), "0");
        var done = 0;
        Parallel.For(0, 400, new ParallelOptions { MaxDegreeOfParallelism = 8 }, _ =>
        {
            try
            {
                byte[] read;
                using (var stream = new FileStream(At("a"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete))
                {
                    read = new byte[stream.Length];
                    stream.ReadExactly(read);
                }

                WholeFile.Replace(
                    At("a"), (int.Parse(read, System.Globalization.CultureInfo.InvariantCulture) + 1)
                    .ToString(System.Globalization.CultureInfo.InvariantCulture), read);
                Interlocked.Increment(ref done);
            }
            catch (IOException)
            {
                // Refused: another writer came first.
            }
        });
        Assert.InRange(done, 1, 400);
        Assert.Equal(done.ToString(System.Globalization.CultureInfo.InvariantCulture), File.ReadAllText(At("a")));
    }

    [Fact]
    public void Create_FileThatIsThere_IsRefused()
    {
        WholeFile.Create(At("a"), "one");
        Assert.Throws<IOException>(() => WholeFile.Create(At("a"), "two"));
        Assert.Equal("one", File.ReadAllText(At("a")));
        Assert.Equal([At("a")], Directory.GetFileSystemEntries(_folder));
    }

    private string At(string name) => Path.Combine(_folder, name);
}
