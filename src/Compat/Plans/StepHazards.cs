using Compat.Mixing;

namespace Compat.Plans;

/// <summary>Finds what must not meet at a step: other products of the plan, soil, what a former product left.</summary>
internal sealed class StepHazards(Meetings meetings, Shelf shelf)
{
    public IEnumerable<StepHazard> Of(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used)
    {
        var sharing = options.SelectMany(option => option.Uses).Select(use => use.Setting.Product.Product.Id).ToArray();
        foreach (var other in used.Select(one => one.Product.Id).Where(id => id != product).OrderBy(id => id))
        {
            foreach (var found in Worst(meetings.Of(product, other)))
                yield return new(found, sharing.Contains(other) ? MeetingPlace.Part : MeetingPlace.ClothGloveOrContainer, other);
        }

        foreach (var soil in options.SelectMany(option => option.Case.Need.Soil).Distinct().OrderBy(soil => soil))
        {
            foreach (var found in Worst(meetings.Of(product, soil))) yield return new(found, MeetingPlace.Soil, null);
        }

        foreach (var former in shelf.Products.Where(one => one.Product.Id != product && !used.Contains(one)))
        {
            foreach (var found in Worst(meetings.Of(product, former.Product.Id)).Where(found => found.Hazard.Severity == MixingSeverity.Never))
                yield return new(found, MeetingPlace.FormerResidue, former.Product.Id);
        }
    }

    /// <summary>Each record once, worst first.</summary>
    private static IEnumerable<FoundHazard> Worst(IReadOnlyList<FoundHazard> found) => found.GroupBy(one => one.Hazard.Id).Select(group => group.First());
}
