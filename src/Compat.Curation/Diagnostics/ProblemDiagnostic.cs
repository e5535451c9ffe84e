using Compat.Curation.Reading;
using Compat.Validation;

namespace Compat.Curation.Diagnostics;

/// <summary>Brings a problem with records to its place in the files.</summary>
internal static class ProblemDiagnostic
{
    /// <summary>The problem at its place; with the place of the other record it speaks of, where that is in a file too.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="place">Where it lies; null where it stands in no file.</param>
    /// <param name="all">Where all records stand.</param>
    /// <param name="shownAs">The name of the file or folder as a whole.</param>
    public static Diagnostic Of(Problem problem, SourcePlace? place, SourceMap all, string shownAs)
    {
        if (place is null) return new(problem.Code, Named(problem), problem.Help, shownAs, null);
        var other = problem.Other is { } first && all.Find(first) is { } found && found != place ? new RelatedPlace("first given here", found) : null;
        return Diagnostic.At(place, problem.Code, problem.Message, problem.Help, other);
    }

    private static string Named(Problem problem) =>
        problem.Place.Id.Length == 0 ? problem.Message : $"{Words.Of(problem.Place.Kind)} `{problem.Place.Id}`: {problem.Message}";
}
