namespace Compat.Efficacy;

/// <summary>Names a claim of efficacy, for example <c>glutaraldehyde.high.45-min</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form.</param>
public sealed record ClaimId(string value) : DottedId(value);
