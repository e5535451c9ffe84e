namespace Compat;

/// <summary>Names a part type, for example <c>display-coated</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record PartId(string value) : Id(value);
