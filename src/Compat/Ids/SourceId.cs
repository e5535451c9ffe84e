namespace Compat;

/// <summary>Names a source, for example a guideline's table.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record SourceId(string value) : Id(value);
