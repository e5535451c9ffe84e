namespace Compat.Instructions;

/// <summary>Names a word of instructions, for example <c>mild-detergent</c>.</summary>
/// <param name="value">Its text; <see cref="ArgumentException"/> where it has not the form of an id.</param>
public sealed record InstructionWordId(string value) : Id(value);
