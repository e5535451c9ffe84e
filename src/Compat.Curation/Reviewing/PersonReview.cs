using Compat.Curation.Checking;
using Compat.Evaluation;
using Compat.Exposures;
using Compat.People;

namespace Compat.Curation.Reviewing;

/// <summary>Compares person rules as boxes: where one side forbids, or asks duties, and the other does not.</summary>
internal sealed class PersonReview(ReviewTrees trees)
{
    /// <summary>What an edit of a person rule changes.</summary>
    public IEnumerable<FactChange> Of(PersonRule? before, PersonRule? after)
    {
        if (before is not null && NotCovered(before, isBefore: true) is { } open) yield return new(ChangeKind.Loosened, open + " no longer");
        if (after is not null && NotCovered(after, isBefore: false) is { } closed) yield return new(ChangeKind.Tightened, closed + ", which was not said before");
    }

    private string? NotCovered(PersonRule rule, bool isBefore)
    {
        foreach (var patient in rule.Patients)
        {
            foreach (var method in Methods(rule.When).Methods)
            {
                var holes = trees.Of(!isBefore).PersonRules.Where(other => Covers(other, rule, patient, !isBefore) && Methods(other.When).Contains(method)).Select(other => Box(other.When));
                if (Subtraction.MaximalBoxes(Box(rule.When), holes, anchored: -1) is not [var first, ..]) continue;
                var basis = trees.Of(isBefore).Agents.FirstOrDefault(agent => agent.Id == rule.Agent)?.Basis;
                var says = rule.Verdict == PersonVerdict.NotAllowed ? "forbids" : "asks duties for";
                return $"`{rule.Id}` {says} `{rule.Agent}` for {Words.Of(patient)}{(rule.Occupied ? " in an occupied device" : "")} at {BoxLine.Of(ToBox(first), basis)}";
            }
        }

        return null;
    }

    /// <summary>Whether a rule speaks wherever another does of such a patient, and asks at least as much.</summary>
    private bool Covers(PersonRule rule, PersonRule where, PatientGroup patient, bool isBefore) =>
        trees.IsAtOrBelow(where.Agent, rule.Agent, isBefore) && rule.Patients.Contains(patient) && (!rule.Occupied || where.Occupied)
        && trees.AreCovered(where.For, rule.For, isBefore)
        && (rule.Verdict == PersonVerdict.NotAllowed || (where.Verdict == PersonVerdict.WithDuties && !DutyComparison.NotMet(where.Duties, rule.Duties).Any()));

    private static MethodSet Methods(ExposureBox box) => box.Methods.Statement == AxisStatement.Within ? box.Methods.Methods : MethodSet.All;

    /// <summary>The box as spans of every axis; what is not named is unbounded.</summary>
    internal static Span[] Box(ExposureBox box) => Enumerable.Range(0, CompiledRule.AxisCount)
        .Select(axis => box.On((Axis)axis) is { Statement: AxisStatement.Within } limit ? Span.Of(limit.Range) : Span.Whole).ToArray();

    private static ExposureBox ToBox(Span[] spans) => new()
    {
        Strength = Limit(spans[(int)Axis.Strength]),
        Dilution = Limit(spans[(int)Axis.Dilution]),
        Residence = Limit(spans[(int)Axis.Residence]),
        Temperature = Limit(spans[(int)Axis.Temperature]),
        Ph = Limit(spans[(int)Axis.Ph]),
        Uses = Limit(spans[(int)Axis.Uses]),
    };

    private static AxisLimit Limit(Span span) => span.From is null && span.To is null ? default : AxisLimit.Within(span.ToInterval());
}
