namespace Compat;

/// <summary>Names an agent class, for example <c>isopropanol</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record AgentId(string value) : Id(value);
