namespace Compat.Mixing;

/// <summary>Names a hazard of mixing, for example <c>chlorine.acid</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form.</param>
public sealed record MixingHazardId(string value) : DottedId(value);
