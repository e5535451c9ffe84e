namespace Compat.Cli.Tests.Documents;

internal static class EmbeddingSample
{
    public static string Ask()
    {
        // begin
        var kb = KnowledgeBase.Shipped;
        var percent = StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume);
        var answer = kb.Ask(
            new PartId("display-coated"),
            new AgentId("isopropanol"),
            new Strength(Interval.Exactly(70), percent),
            ApplicationMethod.DampWipe);
        if (answer.MayUse) return "may be used as asked";
        var why = answer.Decisive;   // a code and its arguments, to be worded by you
        return $"{answer.Verdict}: {why.Code} {string.Join(", ", why.Arguments)}; {answer.Identity[0]}";
        // end
    }
}
