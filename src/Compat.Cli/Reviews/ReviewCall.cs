using Compat.Curation.Checking;
using Compat.Curation.Diagnostics;
using Compat.Curation.Reviewing;
using Ground = Compat.Curation.Recorded.Ground;

namespace Compat.Cli.Reviews;

/// <summary>What was reviewed and where its records stand, for writing what differs.</summary>
/// <param name="Directory">The data folder that questions are asked of.</param>
/// <param name="Sites">The site files over both states.</param>
/// <param name="Title">What was compared, in words.</param>
/// <param name="IsVerbose">Whether everything is to be shown.</param>
/// <param name="Places">Where the records stand.</param>
internal sealed record ReviewCall(string Directory, IReadOnlyList<string> Sites, string Title, bool IsVerbose, EditPlaces Places)
{
    /// <summary>The revision in a checkout of which questions are asked; null where they are asked as things stand.</summary>
    public string? Checkout { get; init; }

    /// <summary>What stands before a question: where it is to be asked.</summary>
    public string AskWhere => Checkout is null ? "ask" : $"ask in a checkout of `{Checkout}`";

    /// <summary>The plans of which answers no longer hold; null where none were looked at.</summary>
    public IReadOnlyList<StalePlan>? Stale { get; init; }

    /// <summary>How many plans were looked at.</summary>
    public int Plans { get; init; }

    /// <summary>The question of a change, as a line to type.</summary>
    public string Ask(AnswerChange change) => WitnessLine.Of(change.Question, Directory, Sites);

    /// <summary>The box of a change in one line.</summary>
    public static string At(AnswerChange change) => BoxLine.Of(change.Box, change.Basis);

    /// <summary>File, line and column of what decided an answer, in HEAD or in BASE; null where it stands in no file.</summary>
    public string? Where(Ground ground) => StaleWords.PlaceOf(ground) is var record && (Places.Head.Find(record) ?? Places.Base.Find(record)) is { } place ? DiagnosticText.Where(place) : null;

    /// <summary>File, line and column of what a check found; the data folder where it stands in no file.</summary>
    public string Where(Finding finding) => Places.Head.Find(finding.Involved[0].Place) is { } place ? DiagnosticText.Where(place) : Directory;

    /// <summary>File, line and column of an edit; the data folder where it stands in no file.</summary>
    public string Where(RecordEdit edit) => Places.Of(edit) is { } place ? DiagnosticText.Where(place) : Directory;
}
