namespace Compat.Answers;

/// <summary>An organism of a group that is met, of which a claim that was used says that it is not killed, and no claim that was used kills it.</summary>
/// <param name="Organism">The organism.</param>
/// <param name="Claim">The claim that says so.</param>
public sealed record NotCovered(OrganismId Organism, string Claim);
