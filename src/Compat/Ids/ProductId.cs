namespace Compat;

/// <summary>Names a product of a site's shelf.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record ProductId(string value) : Id(value);
