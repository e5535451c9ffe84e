namespace Compat.Answers;

/// <summary>What the substance and its residue mean for the patients.</summary>
public sealed record PeopleJudgement
{
    /// <summary>
    /// The verdict: within limits where a duty goes with it, where only some exposures are free of harm, or where nobody wrote what it means for a kind of
    /// patient.
    /// </summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The patients it was judged for.</summary>
    public IReadOnlyList<PatientGroup> Patients { get; init; } = [];

    /// <summary>The person rules that speak, those that forbid first.</summary>
    public IReadOnlyList<PersonRule> Rules { get; init; } = [];

    /// <summary>The rules that forbid, in all or some of the exposures; one that asks a duty which the part cannot meet is among them.</summary>
    public IReadOnlyList<PersonRuleId> Forbidding { get; init; } = [];

    /// <summary>Ingredients and patients of which no person rule speaks.</summary>
    public IReadOnlyList<SilentPatient> Silent { get; init; } = [];
}
