namespace Compat.People;

/// <summary>Names a record of protection.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record ProtectionId(string value) : Id(value);
