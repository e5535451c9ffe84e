using Compat.Curation;
using Compat.Curation.Diagnostics;

namespace Compat.Tests.Shipped;

/// <summary>The snapshot inside the library is the one of the data folder.</summary>
public class ShippedSnapshotTests
{
    [Fact]
    public void It_is_the_one_of_the_data_folder()
    {
        var read = DataFolder.Load(RepositoryFile.Of("data"));
        Assert.Equal("", DiagnosticText.Render(read.Diagnostics));
        var same = read.KnowledgeBase!.Identity[0].Hash == KnowledgeBase.Shipped.Identity[0].Hash;
        Assert.True(
            same, "data/ has changed: rebuild the snapshot with\n  dotnet run --project src/Compat.Cli -- pack data --out src/Compat/Snapshots/shipped.bin");
    }

    /// <summary>The library does not hash its own resource again when it starts: this test does it for all.</summary>
    [Fact]
    public void Its_content_has_the_hash_that_it_states()
    {
        using var resource = typeof(KnowledgeBase).Assembly.GetManifestResourceStream("Compat.shipped.bin")!;
        Assert.Equal(KnowledgeBase.Shipped.Identity[0].Hash, KnowledgeBase.Load(resource).Identity[0].Hash);
    }
}
