namespace Compat.Tests.PublicApi;

/// <summary>What users of the library can see is recorded, so that a change of it shows in a difference.</summary>
public class LibraryApiTests
{
    [Fact]
    public void It_is_as_recorded() => RecordedApi.Check(typeof(KnowledgeBase).Assembly, "src", "Compat", "PublicApi.txt");
}
