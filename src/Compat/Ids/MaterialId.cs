namespace Compat;

/// <summary>Names a material, for example <c>anodised-aluminium</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record MaterialId(string value) : Id(value);
