namespace Compat.Tests.PublicApi;

/// <summary>What users of the curators' library can see is recorded, so that a change of it shows in a difference.</summary>
public class CurationApiTests
{
    [Fact]
    public void It_is_as_recorded() => RecordedApi.Check(typeof(Curation.DataFolder).Assembly, "src", "Compat.Curation", "PublicApi.txt");
}
