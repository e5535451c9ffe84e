namespace Compat;

/// <summary>The answer for one part of a device.</summary>
/// <param name="Part">The part.</param>
/// <param name="Type">Its part type, the first candidate where it is not known which.</param>
/// <param name="NeedsNothing">Whether it is kept dry because nothing touches it, and nothing is on it: not judged.</param>
/// <param name="Answer">The answer; null where it needs nothing.</param>
public sealed record DevicePartAnswer(DevicePart Part, PartType Type, bool NeedsNothing, Answer? Answer);
