namespace Compat.Occasions;

/// <summary>Names an occasion, for example <c>between-patients</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form.</param>
public sealed record OccasionId(string value) : Id(value);
