using Compat.Tests.Reference;

namespace Compat.Tests.RandomCases;

/// <summary>The values of an axis at which an answer can change, and those between and beyond: what a region is sampled at.</summary>
internal sealed class Samples(ReferenceTrees trees, Product? product, IReadOnlyList<Component> components, Func<Axis, IEnumerable<Interval>>? more = null)
{
    private readonly Dictionary<Axis, decimal[]> _boundaries = [];

    /// <summary>Of a range: all boundaries in it, a value between each two neighbours, one beyond the last, and without end.</summary>
    public List<decimal> On(Axis axis, Interval asked)
    {
        var range = asked.Intersect(axis switch
        {
            Axis.Strength => Interval.AtLeast(0),
            Axis.Dilution => new(0, false, 1, true),
            Axis.ExposureTime => Interval.Above(0),
            Axis.Temperature => Interval.Closed(-40, 200),
            Axis.Ph => Interval.Closed(-1, 15),
            _ => Interval.AtLeast(1),
        });
        if (range.IsEmpty) return [];
        if (range.IsPoint) return [range.Lower!.Value];
        var ends = Boundaries(axis).Concat(Ends(range)).Where(v => v != Interval.WithoutEnd).Distinct().Order().ToArray();
        var between = axis == Axis.Uses ? ends.SelectMany(v => new[] { v - 1, v + 1 }) : ends.Zip(ends.Skip(1), (a, b) => (a + b) / 2);
        return ends.Concat(between).Append(ends[^1] + 1).Append(Interval.WithoutEnd)
            .Where(v => range.Contains(v) && (v != Interval.WithoutEnd || axis == Axis.ExposureTime)).Distinct().Order().ToList();
    }

    /// <summary>A serial number before, at and behind each end of the ranges of a device's editions, and one outside of all.</summary>
    public static IEnumerable<SerialNumber> Serials(Device? device) =>
        from range in (device?.Instructions ?? []).SelectMany(e => e.Serials).Append(new("NO-SUCH-PREFIX-", 1, 1))
        from n in new[] { range.First - 1, range.First, range.Last, range.Last == long.MaxValue ? range.Last : range.Last + 1 }
        where n >= 0
        select new SerialNumber(range.Prefix, n);

    private decimal[] Boundaries(Axis axis)
    {
        if (_boundaries.TryGetValue(axis, out var known)) return known;
        var all = trees.Rules.Where(r => r.Product is null || r.Product == product?.Id).SelectMany(r => Ends(trees.Filled(r, axis, product)));
        if (more is not null) all = all.Concat(more(axis).SelectMany(Ends));
        if (axis == Axis.ExposureTime) all = all.Concat(Ends(trees.Convention(ConventionKey.DryingTime).Range));
        if (axis == Axis.Dilution)
        {
            // Where the strength of a component meets a boundary, and where the pH on record changes.
            var meets = components.SelectMany(c => Ends(c.Strength)).Where(s => s > 0).Distinct().SelectMany(s => Boundaries(Axis.Strength).Select(b => b / s));
            all = all.Concat(meets).Append(0.01m).Concat(Ends(product?.Dilution ?? Interval.Whole));
        }

        return _boundaries[axis] = all.Distinct().ToArray();
    }

    private static IEnumerable<decimal> Ends(Interval i) => new[] { i.Lower, i.Upper }.OfType<decimal>();
}
