namespace Compat;

/// <summary>Names one edition of a device's instructions; unique within that device only.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record EditionId(string value) : Id(value);
