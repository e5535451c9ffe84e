namespace Compat.Curation.Checking;

/// <summary>One change of one rule that removes a finding.</summary>
public sealed record Mend
{
    /// <summary>The rule to change.</summary>
    public required RuleId Rule { get; init; }

    /// <summary>The change in words: lower case, no final stop.</summary>
    public required string Text { get; init; }

    /// <summary>The rule it is to override; null where the box is to be narrowed.</summary>
    public RuleId? Overrides { get; init; }

    /// <summary>The box it is to have; null where that stays.</summary>
    public ExposureBox? When { get; init; }

    /// <summary>The rule as it would be.</summary>
    public Rule ApplyTo(Rule rule) => rule with
    {
        Overrides = Overrides is null ? rule.Overrides : [.. rule.Overrides, Overrides],
        When = When ?? rule.When,
    };
}
