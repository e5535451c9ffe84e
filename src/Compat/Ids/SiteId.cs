namespace Compat;

/// <summary>Names a site: a place with a shelf of products and devices of its own.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record SiteId(string value) : Id(value);
