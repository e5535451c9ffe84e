using System.Diagnostics.CodeAnalysis;
using Compat.Validation;

namespace Compat;

public sealed partial class KnowledgeBase
{
    private QuestionPreparer? _preparer;

    /// <summary>Made when first asked for; whichever thread makes it makes the same.</summary>
    private QuestionPreparer Preparer => _preparer ??= new QuestionPreparer(_compiled);

    /// <summary>Checks a question and turns it into numbers, to be asked as often as wanted.</summary>
    /// <param name="question">The question.</param>
    /// <exception cref="QuestionException">It cannot be asked; <see cref="TryPrepare"/> lists why without exception.</exception>
    public PreparedQuestion Prepare(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return TryPrepare(question, out var prepared, out var problems) ? prepared : throw new QuestionException(problems);
    }

    /// <summary>Checks a question and turns it into numbers, or says why it cannot be asked.</summary>
    /// <param name="question">The question.</param>
    /// <param name="prepared">The question in numbers, or null.</param>
    /// <param name="problems">All that is wrong with the question; empty where nothing is.</param>
    /// <returns>Whether it can be asked.</returns>
    public bool TryPrepare(Question question, [NotNullWhen(true)] out PreparedQuestion? prepared, out IReadOnlyList<Problem> problems)
    {
        problems = QuestionValidation.Check(_compiled, question);
        prepared = problems.Count > 0 ? null : Preparer.Prepare(question);
        return prepared is not null;
    }

    /// <summary>The verdict of a prepared question alone: that of <see cref="Ask(PreparedQuestion)"/>. Allocates nothing where
    /// <see cref="PreparedQuestion.IsLookedUp"/>.</summary>
    /// <param name="question">A question that this knowledge base prepared.</param>
    /// <exception cref="ArgumentException">Another knowledge base prepared it.</exception>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public Verdict VerdictOf(PreparedQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Base != _compiled) throw new ArgumentException("another knowledge base prepared it", nameof(question));
        return question.LookUp() ?? AnswerTo(question).Verdict;
    }

    /// <summary>Answers a prepared question: the verdict at once, what explains it when it is first read, where the question is a point to the rules.</summary>
    /// <param name="question">A question that this knowledge base prepared.</param>
    /// <exception cref="ArgumentException">Another knowledge base prepared it.</exception>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public Answer Ask(PreparedQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Base != _compiled) throw new ArgumentException("another knowledge base prepared it", nameof(question));
        return question.IsPoint && question.LookUp() is { } verdict
            ? new Answer(question.Question, verdict, new LazyDetail(question), Identity)
            : AnswerTo(question);
    }

    private Answer AnswerTo(PreparedQuestion question) =>
        question.Asked is { } asked ? new RegionAnswer(_compiled, question.Question, Identity, asked).Make() : AnswerTo(question.Question);
}
