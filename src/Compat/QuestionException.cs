using Compat.Validation;

namespace Compat;

/// <summary>A question that cannot be asked: an unknown id, a value outside its axis, a missing or doubled subject.</summary>
public sealed class QuestionException : ArgumentException
{
    /// <summary>Makes the error.</summary>
    public QuestionException() : this([]) { }

    /// <summary>Makes the error.</summary>
    /// <param name="message">What is wrong.</param>
    public QuestionException(string message) : base(message) => Problems = [];

    /// <summary>Makes the error with its cause.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="innerException">The cause.</param>
    public QuestionException(string message, Exception innerException) : base(message, innerException) => Problems = [];

    /// <summary>Makes the error from all that is wrong.</summary>
    /// <param name="problems">All that is wrong with the question.</param>
    public QuestionException(IReadOnlyList<Problem> problems) : base(string.Join("; ", problems.Select(p => p?.ToString()))) => Problems = problems;

    /// <summary>All that is wrong with the question.</summary>
    public IReadOnlyList<Problem> Problems { get; }
}
