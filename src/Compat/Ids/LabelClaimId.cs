namespace Compat;

/// <summary>Names one claim of a product's label, unique within the product.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form.</param>
public sealed record LabelClaimId(string value) : Id(value);
