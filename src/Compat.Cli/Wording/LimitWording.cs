namespace Compat.Cli.Wording;

/// <summary>Says what keeps an 'allowed' within limits.</summary>
public static class LimitWording
{
    /// <summary>The limit as a sentence without a final stop.</summary>
    public static string Of(Limit limit, Answer answer, Names names)
    {
        string Argument(int index) => index < limit.Arguments.Count ? limit.Arguments[index] : "";
        return limit.Code switch
        {
            LimitCode.InstructionsNotSeen => $"the instructions of {names.Device(Argument(0))} were not seen",
            LimitCode.SealsNotJudged => "asked on materials alone: the part's seals and construction are not judged",
            LimitCode.AxisLeftOut => Taken(Argument(0), answer, names),
            LimitCode.SourceDoesNotSay => $"the source does not say the {Axis(Argument(0))} (rule `{Argument(2)}`): {Argument(1)}{(Argument(0) == "strength" ? " %" : "")} is taken, a convention",
            _ => "it rests on practice or on recalled sources alone",
        };
    }

    private static string Axis(string word) => word == "ph" ? "pH" : word;

    private static string Taken(string axis, Answer answer, Names names)
    {
        var taken = answer.Assumptions.FirstOrDefault(assumption => !assumption.Stated && Word(assumption) == axis);
        var text = taken is null ? null : ExposureWording.Of(taken, ExposureWording.Unit(answer.Question, names));
        return text ?? $"{Axis(axis)}: left out";
    }

    private static string Word(Assumption assumption) => assumption.Axis is { } axis ? Words.Of(axis) : "method";
}
