namespace Compat.People;

/// <summary>Names a person rule, for example <c>phenolic.newborn</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form.</param>
public sealed record PersonRuleId(string value) : DottedId(value);
