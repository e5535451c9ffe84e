namespace Compat;

/// <summary>Names a standing rule: what the knowledge base must keep for ever.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record StandingRuleId(string value) : Id(value);
