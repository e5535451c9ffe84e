namespace Compat.Cli.Say;

/// <summary>Writes for people whether a bath or tub is still good.</summary>
internal sealed class BathText(Page page, Names names)
{
    public void Write(BathAnswer answer)
    {
        page.Line($"{BathWording.Heading(answer.Verdict)}: {Subject(answer.Question)}", 0, 2);
        foreach (var reason in answer.Reasons) page.Item(BathWording.Of(reason));
        if (answer.Least is { } least)
        {
            page.Heading("What it must still have");
            page.Item($"{names.Agent(answer.Agent!.Value)}: "
                + $"{FigureWording.Strength(least.Percent, least.Unit)}{(answer.Test is null ? "" : $"; tested {answer.Test}")}");
        }

        page.Section("Sources", answer.Sources.Select(source => source.Value));

        page.Cautions();
        page.Item("A bath that looks cloudy, smells otherwise or holds soil is discarded, whatever its strength and days.");
        page.Data(answer.Identity);
    }

    private string Subject(BathQuestion question) =>
        (question.Product is { } product ? names.Product(product.Value) : $"the bath of {question.Claim}") + $", on {question.Today}";
}

/// <summary>Words for what is said of a bath.</summary>
internal static class BathWording
{
    public static string Heading(BathVerdict verdict) => verdict switch
    {
        BathVerdict.Use => "USE",
        BathVerdict.Discard => "DISCARD",
        _ => "NOT KNOWN TO BE GOOD, DO NOT USE",
    };

    public static string Of(BathReason reason)
    {
        var first = reason.Arguments.Count > 0 ? reason.Arguments[0] : "";
        return reason.Code switch
        {
            BathReasonCode.TooWeak => $"Measured {first}; it must have {reason.Arguments[1]}.",
            BathReasonCode.StrongEnough => $"Measured {first}; it must have {reason.Arguments[1]}.",
            BathReasonCode.TestFailed => $"The test of {first} failed.",
            BathReasonCode.NotTestedToday => "Its strength was not tested today" + (first.Length == 0 ? "." : $"; it is tested {first}."),
            BathReasonCode.PastReuse => $"Its reuse life ended on {first}.",
            BathReasonCode.PastActivation => $"What it keeps once activated ended on {first}.",
            BathReasonCode.PastDilution => $"What it keeps once diluted ended on {first}.",
            BathReasonCode.PastOpening => $"What it keeps once opened ended on {first}.",
            BathReasonCode.PastExpiry => $"The day printed on its lot, {first}, is past.",
            BathReasonCode.Refilled => "It was filled again, and nothing on record says that it may be: what grows in a topped-up tub is not killed by it.",
            BathReasonCode.DayNotKnown => first == "expires" ? "The day printed on its lot was not said."
                : $"The day it was {first} was not said, so its life cannot be counted.",
            BathReasonCode.NothingOnRecord => "Neither a least strength nor a life is on record: the label says them.",
            _ => $"Its last day is {first}, if every test until then passes.",
        };
    }
}
