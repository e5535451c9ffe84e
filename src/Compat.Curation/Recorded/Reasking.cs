using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Validation;

namespace Compat.Curation.Recorded;

/// <summary>Asks recorded answers again.</summary>
public static class Reasking
{
    /// <summary>Problems of a question that come of the data having changed; any other means that the file was.</summary>
    private static readonly HashSet<string> OfTheData = ["no-basis", "no-conversion", "too-many-variants"];

    /// <summary>The JSON files below a folder, by name; what of it cannot be read is reported.</summary>
    /// <param name="directory">The folder.</param>
    /// <param name="faults">Takes what is wrong.</param>
    public static IReadOnlyList<RecordedFile> ReadAll(string directory, List<Diagnostic> faults)
    {
        var found = FolderFiles.Find(directory, faults, ".json") ?? [];
        if (found.Count == 0 && faults.Count == 0)
            faults.Add(new("no-files", "there is no JSON file in this folder", "write plans there: `compat plan … --json > FILE.json`", directory, null));
        return found.Select(one => RecordedFile.Read(one.Full, faults)).OfType<RecordedFile>().ToArray();
    }

    /// <summary>Asks every answer of a file again.</summary>
    /// <param name="file">The file.</param>
    /// <param name="kb">The knowledge base it is asked of, its sites laid over it.</param>
    /// <param name="faults">Takes questions that this program cannot have written.</param>
    /// <returns>One difference an answer, in the order of the file.</returns>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public static IReadOnlyList<AnswerDifference> Of(RecordedFile file, KnowledgeBase kb, List<Diagnostic> faults)
    {
        var found = new List<AnswerDifference>();
        foreach (var answer in file.Answers)
            if (Of(answer, kb, file.Path, faults) is { } difference) found.Add(difference);
        return found;
    }

    /// <summary>Asks one answer again; null where the program cannot have written its question, which is reported.</summary>
    internal static AnswerDifference? Of(RecordedAnswer answer, KnowledgeBase kb, string path, List<Diagnostic> faults)
    {
        if (kb.TryAsk(answer.Question, out var now, out var problems)) return AnswerDifference.Between(answer, RecordedAnswer.Of(now, kb));
        if (problems.All(IsOfTheData)) return AnswerDifference.NotAsked(answer, problems);
        faults.AddRange(problems.Where(problem => !IsOfTheData(problem)).Select(problem => At(path, answer, problem)));
        return null;
    }

    private static bool IsOfTheData(Problem problem) => problem.Code.StartsWith("unknown-", StringComparison.Ordinal) || OfTheData.Contains(problem.Code);

    private static Diagnostic At(string path, RecordedAnswer answer, Problem problem) => answer.Place is { } place
        ? Diagnostic.At(place, problem.Code, $"this question cannot be asked: {problem.Message}", problem.Help)
        : new(problem.Code, $"a question cannot be asked: {problem.Message}", problem.Help, path, null);
}
