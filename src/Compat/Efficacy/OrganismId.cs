namespace Compat.Efficacy;

/// <summary>Names an organism, for example <c>mycobacterium-tuberculosis</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record OrganismId(string value) : Id(value);
