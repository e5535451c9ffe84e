namespace Compat;

/// <summary>Names one part of a device; unique within that device only.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record DevicePartId(string value) : Id(value);
