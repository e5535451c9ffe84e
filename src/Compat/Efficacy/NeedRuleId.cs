namespace Compat.Efficacy;

/// <summary>Names what a contact asks for, for example <c>broken-skin</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record NeedRuleId(string value) : Id(value);
