namespace Compat;

/// <summary>Names a device of a site.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record DeviceId(string value) : Id(value);
