namespace Compat.Serialization;

/// <summary>The texts of an answer in the reader's language: the library words nothing, it gives codes with arguments.</summary>
/// <remarks>An implementation that is used from several threads must be safe for that.</remarks>
public abstract class AnswerTexts
{
    /// <summary>A reason of the part's judgement.</summary>
    public abstract string Of(Reason reason, Question question);

    /// <summary>A limit of an answer.</summary>
    public abstract string Of(Limit limit, Answer answer);

    /// <summary>A duty.</summary>
    public abstract string Of(Duty duty);

    /// <summary>A reason of the judgement on kill, or of why its window is closed.</summary>
    public abstract string Of(KillReason reason, Answer answer);

    /// <summary>What the answer means for people.</summary>
    public abstract string Of(PeopleJudgement people);

    /// <summary>Why the window of an answer is closed.</summary>
    public abstract string Of(WindowClosure closure, Answer answer);

    /// <summary>A caution.</summary>
    public abstract string Of(Caution caution);

    /// <summary>What would establish an answer that is not established, one text for each; empty for the other verdicts.</summary>
    public abstract IReadOnlyList<string> WouldEstablish(Answer answer);
}
