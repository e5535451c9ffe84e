namespace Compat.Cli.Wording;

/// <summary>Says the damage to expect, a rule and a source.</summary>
public static class EvidenceWording
{
    /// <summary>The damage as a sentence without a final stop.</summary>
    public static string Of(Damage damage)
    {
        var text = Plain(Words.Of(damage.Mechanism))
            + (damage.Onset == Onset.FirstUse ? ": the first use can do it" : ": cumulative, it adds up over uses")
            + (damage.Lasting ? ", and it lasts" : ", and it does not last")
            + ". It concerns " + Plain(Words.Of(damage.Consequence));
        if (damage.LookFor is { } look) text += ". Look for: " + look;
        if (damage.WithdrawIf is { } withdraw) text += ". Withdraw the part if " + withdraw;
        return text;
    }

    /// <summary>A rule: what it says, how it is known, when it was last looked at, and why.</summary>
    public static string Of(Rule rule)
    {
        var known = rule.KnownBy is { } by ? ", known by " + Known(by) : "";
        var tested = rule.Tested is { } test ? $" of a {Words.Of(test.On)}{(test.Strained ? " under strain" : "")}" : "";
        return $"`{rule.Id}`: {(rule.Allows ? "allowed" : "not allowed")}{known}{tested}, reviewed {rule.Reviewed}. {rule.Why}";
    }

    /// <summary>A source: its kind, title, edition, place, and whether it was read.</summary>
    public static string Of(Source source)
    {
        var parts = new[] { source.Title, source.Publisher, source.Edition, source.Section, source.Address };
        return $"{Plain(Words.Of(source.Kind))}: {string.Join(", ", parts.Where(part => part is not null))}"
            + (source.Kind == SourceKind.CommonPractice ? "" : source.Recalled ? " (recalled, not read)" : " (read)");
    }

    /// <summary>A state of the data.</summary>
    public static string Of(DataIdentity identity) => $"{identity.Name}, version {identity.Version}, content {identity.Hash[..Math.Min(16, identity.Hash.Length)]}";

    private static string Known(KnownBy by) => by switch
    {
        KnownBy.Test => "a test",
        KnownBy.Instructions => "the device's instructions",
        KnownBy.Published => "a publication",
        _ => "practice",
    };

    private static string Plain(string word) => word.Replace('-', ' ');
}
