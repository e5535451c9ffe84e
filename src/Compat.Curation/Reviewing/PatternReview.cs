using Compat.Curation.Diagnostics;
using Compat.Curation.Imports;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Compares the patterns by which devices are imported: a part that one no longer has, nobody will plan.</summary>
internal static class PatternReview
{
    /// <summary>What differs between the patterns of two states.</summary>
    /// <param name="before">The files of BASE beside its records, by their path in the folder.</param>
    /// <param name="after">The files of HEAD.</param>
    /// <param name="faults">What is wrong with the files of HEAD.</param>
    public static IEnumerable<(RecordEdit? Cause, FactChange Change)> Of(IReadOnlyDictionary<string, byte[]> before, IReadOnlyDictionary<string, byte[]> after, List<Diagnostic> faults)
    {
        var (was, now) = (Read(before, []), Read(after, faults));
        foreach (var id in was.Keys.Union(now.Keys).Order(StringComparer.Ordinal))
        {
            var (one, other) = (was.GetValueOrDefault(id), now.GetValueOrDefault(id));
            if (RecordDifference.AreSame(one, other)) continue;
            var edit = new RecordEdit(RecordKind.Device, id, one is null ? EditAction.Added : other is null ? EditAction.Removed : EditAction.Changed) { CalledAs = "pattern", Before = one, After = other };
            foreach (var change in Of(one, other)) yield return (edit, change);
        }
    }

    private static IEnumerable<FactChange> Of(DevicePattern? one, DevicePattern? other)
    {
        if (other is null) yield return new(ChangeKind.Loosened, "no device is imported by it any more");
        if (one is null) yield return new(ChangeKind.Tightened, $"devices are imported by it: {string.Join(", ", other!.Words.Select(word => $"`{word}`"))}");
        if (one is null || other is null) yield break;
        foreach (var part in one.Parts.Where(part => other.Parts.All(two => two.Id != part.Id))) yield return new(ChangeKind.Loosened, $"an imported device has no `{part.Id}` ({Types(part)}) any more: nobody plans its cleaning");
        foreach (var part in other.Parts)
        {
            if (one.Parts.FirstOrDefault(two => two.Id == part.Id) is not { } former) yield return new(ChangeKind.Tightened, $"an imported device has a `{part.Id}` ({Types(part)})");
            else if (!RecordDifference.AreSame(former.OneOfTypes, part.OneOfTypes)) yield return new(ChangeKind.Loosened, $"the `{part.Id}` of an imported device is {Types(part)}, before {Types(former)}");
            else if (former.TouchedBy != part.TouchedBy) yield return new(ChangeKind.Loosened, $"the `{part.Id}` of an imported device is touched by {Contact(part.TouchedBy)}, before by {Contact(former.TouchedBy)}");
            else if (!RecordDifference.AreSame(former, part)) yield return new(ChangeKind.Loosened, $"the `{part.Id}` of an imported device is another: {string.Join(", ", RecordDifference.FieldsBut(former, part))}");
        }

        var gone = one.Words.Except(other.Words).ToArray();
        if (gone.Length > 0) yield return new(ChangeKind.Tightened, $"an asset list is no longer read so: {string.Join(", ", gone.Select(word => $"`{word}`"))}");
        var came = other.Words.Except(one.Words).ToArray();
        if (came.Length > 0) yield return new(ChangeKind.Loosened, $"an asset list is read so: {string.Join(", ", came.Select(word => $"`{word}`"))}");
    }

    private static Dictionary<string, DevicePattern> Read(IReadOnlyDictionary<string, byte[]> files, List<Diagnostic> faults) =>
        files.Where(file => file.Key.StartsWith("patterns/", StringComparison.Ordinal)).OrderBy(file => file.Key, StringComparer.Ordinal)
            .SelectMany(file => DevicePattern.Read(file.Value, file.Key, faults)).GroupBy(pattern => pattern.Id.Value).ToDictionary(group => group.Key, group => group.First());

    private static string Types(Model.DevicePart part) => string.Join(" or ", part.OneOfTypes.Select(type => $"`{type}`"));

    private static string Contact(Model.TouchedBy? contact) => contact is { } known ? Words.Of(known) : "what its type says";
}
