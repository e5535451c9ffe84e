using Compat.Serialization;

namespace Compat.Cli.Wording;

/// <summary>The texts of the command, for JSON: without the blanks that only keep words on one line.</summary>
public sealed class EnglishTexts(Names names) : AnswerTexts
{
    /// <inheritdoc/>
    public override string Of(Reason reason, Question question) => Plain(ReasonWording.Of(reason, question, names));

    /// <inheritdoc/>
    public override string Of(Limit limit, Answer answer) => Plain(LimitWording.Of(limit, answer, names));

    /// <inheritdoc/>
    public override string Of(Duty duty) => Plain(DutyWording.Of(duty, names));

    /// <inheritdoc/>
    public override string Of(KillReason reason, Answer answer) => Plain(KillWording.Of(reason, answer.Window, answer.Question, names));

    /// <inheritdoc/>
    public override string Of(PeopleJudgement people) => Plain(PeopleWording.Of(people, names));

    /// <inheritdoc/>
    public override string Of(WindowClosure closure, Answer answer) => Plain(WindowWording.Of(closure, answer.Window!, answer.Question, names));

    /// <inheritdoc/>
    public override string Of(Caution caution) => VerdictWording.Of(caution);

    /// <inheritdoc/>
    public override IReadOnlyList<string> WouldEstablish(Answer answer) => EstablishWording.Of(answer, names).Select(Plain).ToArray();

    private static string Plain(string text) => text.Replace('\u00a0', ' ');
}
