namespace Compat.Planning;

/// <summary>Finds what must not meet at a step: other products of the plan, soil, what a former product left.</summary>
internal sealed class StepHazards(Meetings meetings, PlanShelf shelf)
{
    public IEnumerable<StepHazard> Of(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used)
    {
        foreach (var hazard in WithUsed(product, options, used, meetings.Of)) yield return hazard;

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

    /// <summary>What is on record between the products of the plan at other strengths than theirs: told at the step, kept from nowhere.</summary>
    public IEnumerable<StepHazard> AtOtherStrengths(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used) =>
        WithUsed(product, options, used, meetings.AtOtherStrengths);

    private static IEnumerable<StepHazard> WithUsed(ProductId product, IReadOnlyList<PlanOption> options, IReadOnlyList<ShelfProduct> used, Func<ProductId, ProductId, IReadOnlyList<FoundHazard>> between)
    {
        var sharing = options.SelectMany(option => option.Uses).Select(use => use.Setting.Product.Product.Id).ToArray();
        return used.Select(one => one.Product.Id).Where(id => id != product).OrderBy(id => id).SelectMany(other => Worst(between(product, other))
            .Select(found => new StepHazard(found, sharing.Contains(other) ? MeetingPlace.Part : MeetingPlace.ClothGloveOrContainer, other)));
    }

    /// <summary>Each record once, worst first.</summary>
    private static IEnumerable<FoundHazard> Worst(IReadOnlyList<FoundHazard> found) => found.GroupBy(one => one.Hazard.Id).Select(group => group.First());
}
