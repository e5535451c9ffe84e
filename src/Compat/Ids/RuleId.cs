namespace Compat;

/// <summary>Names a rule, for example <c>display-coated.alcohol</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form.</param>
public sealed record RuleId(string value) : DottedId(value);
