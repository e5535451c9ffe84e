using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;

namespace Compat.Cli.Checks;

/// <summary>What was checked and where its records stand, for writing what was found.</summary>
/// <param name="Directory">The data folder.</param>
/// <param name="Sites">The site files over it.</param>
/// <param name="IsVerbose">Whether everything is to be shown.</param>
/// <param name="Places">Where each record stands.</param>
/// <param name="BasisOf">The unit of an agent's strength, by the agent's id; null where there is none.</param>
internal sealed record CheckCall(string Directory, IReadOnlyList<string> Sites, bool IsVerbose, SourceMap Places, Func<string?, StrengthUnit?> BasisOf)
{
    /// <summary>What kept the files from being read; empty where nothing did.</summary>
    public IReadOnlyList<Diagnostic> Unreadable { get; init; } = [];

    /// <summary>The place of a record; null where it stands in no file.</summary>
    public SourcePlace? Find(Involved involved) => Places.Find(involved.Place);
}
