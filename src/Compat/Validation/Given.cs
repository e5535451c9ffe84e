namespace Compat.Validation;

/// <summary>What a caller must hand over.</summary>
internal static class Given
{
    /// <summary>A problem for each thing that is missing.</summary>
    public static IReadOnlyList<Problem> Check(params (string Name, object? Thing)[] things) =>
        things.Where(one => one.Thing is null)
            .Select(one => new Problem("missing", new ProblemPlace(RecordKind.Question, "", Words.InKebabCase(one.Name)),
            $"no {Words.InKebabCase(one.Name).Replace('-', ' ')} is given")).ToArray();
}
