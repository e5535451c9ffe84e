using Compat.Curation.Diagnostics;
using Compat.Curation.Imports;
using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>
/// Compares the site files of two states: every product on every part of the devices, where a site says something else of the product or the device.
/// </summary>
internal static class SiteReview
{
    /// <summary>The sites that differ.</summary>
    public static IReadOnlyList<RecordEdit> Edits(IReadOnlyList<Site> before, IReadOnlyList<Site> after)
    {
        var (was, now) = (before.ToDictionary(site => site.Id), after.ToDictionary(site => site.Id));
        return was.Keys.Union(now.Keys).Order().Select(id => Edit(id, was.GetValueOrDefault(id), now.GetValueOrDefault(id))).OfType<RecordEdit>().ToArray();
    }

    /// <summary>What the edits of sites do to the products on their devices.</summary>
    public static IEnumerable<(RecordEdit? Cause, FactChange Change)> Of(IReadOnlyList<RecordEdit> edits, CompiledBase before, CompiledBase after)
    {
        if (edits.Count == 0) yield break;
        var (was, now) = (KnowledgeBase.OfChecked(before.Data, before.Sites), KnowledgeBase.OfChecked(after.Data, after.Sites));
        foreach (var edit in edits)
        {
            var (one, other) = (edit.Before as Site, edit.After as Site);
            if (one is not null && other is not null)
            {
                foreach (var field in RecordDifference.FieldsBut(one, other, nameof(Site.Sources), nameof(Site.Products), nameof(Site.Devices),
                    nameof(Site.Rules)))
                    yield return (edit, new FactChange(ChangeKind.Loosened,
                        $"what site `{other.Id}` says under {field} is another: plans and needs may follow it"));
            }

            foreach (var change in other is null ? [] : Products(one, other, before, was, now)) yield return (edit, change);
        }
    }

    private static IEnumerable<FactChange> Products(Site? one, Site other, CompiledBase before, KnowledgeBase was, KnowledgeBase now)
    {
        var found = new Dictionary<(ChangeKind Kind, string Text), List<FactPlace>>();
        foreach (var product in other.Products)
        {
            var isNew = one?.Products.FirstOrDefault(two => two.Id == product.Id) is not { } former;
            var isOther = isNew || !RecordDifference.AreSame(one!.Products.First(two => two.Id == product.Id), product);
            foreach (var device in now.Sites.SelectMany(site => site.Devices))
            {
                var there = before.Devices.TryGetValue(device.Id, out var earlier);
                if (!isOther && there && RecordDifference.AreSame(earlier, device)) continue;
                foreach (var part in device.Parts)
                {
                    var question = new Question { Device = device.Id, DevicePart = part.Id, Product = product.Id };
                    var after = now.Ask(question).Verdict;
                    var hadPart = there && earlier!.Parts.Any(two => two.Id == part.Id);
                    var verdict = !hadPart || isNew || !was.Sites.Any(site => site.Products.Any(two => two.Id == product.Id)) ? (Verdict?)null
                        : was.Ask(question).Verdict;
                    if (verdict == after || (verdict is null && after < Verdict.AllowedWithinLimits)) continue;
                    var kind = verdict is null || after > verdict ? ChangeKind.Loosened : ChangeKind.Tightened;
                    var text = $"{(verdict is { } known ? Words(known) : "not on record")} -> {Words(after)}";
                    if (!found.TryGetValue((kind, text), out var places)) found[(kind, text)] = places = [];
                    places.Add(new FactPlace(product.Id.Value, null, $"{device.Id}/{part.Id}"));
                }
            }
        }

        foreach (var ((kind, text), places) in found
            .OrderBy(pair => pair.Key.Kind)) yield return new FactChange(kind, $"{text}: {FactPlace.Line(places)}")
            {
                About = RecordKind.Product,
                Reaches = places
            };
        foreach (var gone in one?.Products.Where(product => other.Products.All(two => two.Id != product.Id))
            ?? []) yield return new FactChange(ChangeKind.Tightened, $"product `{gone.Id}` is gone");
        foreach (var gone in one?.Devices.Where(device => other.Devices.All(two => two.Id != device.Id))
            ?? []) yield return new FactChange(ChangeKind.Loosened, $"device `{gone.Id}` is gone: nobody plans it");
        foreach (var device in one?.Devices ?? [])
            foreach (var part in other.Devices.FirstOrDefault(two => two.Id == device.Id) is { } still
                ? device.Parts.Where(part => still.Parts.All(two => two.Id != part.Id)) : [])
                yield return new FactChange(ChangeKind.Loosened, $"part `{device.Id}/{part.Id}` is gone: nobody plans its cleaning");
    }

    private static RecordEdit? Edit(SiteId id, Site? before, Site? after)
    {
        if (before is not null && after is not null && RecordDifference.AreSame(before, after)) return null;
        return new(RecordKind.Site, id.Value, before is null ? EditAction.Added : after is null ? EditAction.Removed : EditAction.Changed)
        {
            Before = before,
            After = after,
            Fields = before is null || after is null ? [] : RecordDifference.Fields(before, after).Select(field => field.Split('.')[0]).Distinct().ToArray(),
        };
    }

    private static string Words(Verdict verdict) => Space.Words.Of(verdict).Replace('-', ' ');
}

/// <summary>Compares the patterns by which devices are imported: a part that one no longer has, nobody will plan.</summary>
internal static class PatternReview
{
    /// <summary>What differs between the patterns of two states.</summary>
    /// <param name="before">The files of BASE beside its records, by their path in the folder.</param>
    /// <param name="after">The files of HEAD.</param>
    /// <param name="faults">What is wrong with the files of HEAD.</param>
    public static IEnumerable<(RecordEdit? Cause, FactChange Change)> Of(IReadOnlyDictionary<string, byte[]> before, IReadOnlyDictionary<string, byte[]> after,
        List<Diagnostic> faults)
    {
        var (was, now) = (Read(before, []), Read(after, faults));
        foreach (var id in was.Keys.Union(now.Keys).Order(StringComparer.Ordinal))
        {
            var (one, other) = (was.GetValueOrDefault(id), now.GetValueOrDefault(id));
            if (RecordDifference.AreSame(one, other)) continue;
            var edit = new RecordEdit(RecordKind.Device, id, one is null ? EditAction.Added : other is null ? EditAction.Removed
                : EditAction.Changed)
            { CalledAs = "pattern", Before = one, After = other };
            foreach (var change in Of(one, other)) yield return (edit, change);
        }
    }

    private static IEnumerable<FactChange> Of(DevicePattern? one, DevicePattern? other)
    {
        if (other is null) yield return new(ChangeKind.Loosened, "no device is imported by it any more");
        if (one is null) yield return new(ChangeKind.Tightened, $"devices are imported by it: {string.Join(", ", other!.Words.Select(word => $"`{word}`"))}");
        if (one is null || other is null) yield break;
        foreach (var part in one.Parts
            .Where(part => other.Parts.All(two => two.Id != part.Id))) yield return new(ChangeKind.Loosened,
            $"an imported device has no `{part.Id}` ({Types(part)}) any more: nobody plans its cleaning");
        foreach (var part in other.Parts)
        {
            if (one.Parts.FirstOrDefault(two => two.Id == part.Id) is not { } former) yield return new(ChangeKind.Tightened,
                $"an imported device has a `{part.Id}` ({Types(part)})");
            else if (!RecordDifference.AreSame(former.OneOfTypes, part.OneOfTypes)) yield return new(ChangeKind.Loosened,
                $"the `{part.Id}` of an imported device is {Types(part)}, before {Types(former)}");
            else if (former.TouchedBy != part.TouchedBy) yield return new(ChangeKind.Loosened,
                $"the `{part.Id}` of an imported device is touched by {Contact(part.TouchedBy)}, before by {Contact(former.TouchedBy)}");
            else if (string.Join(", ", RecordDifference.FieldsBut(former, part)) is { Length: > 0 } fields) yield return new(ChangeKind.Loosened,
                $"the `{part.Id}` of an imported device is another: {fields}");
        }

        var gone = one.Words.Except(other.Words).ToArray();
        if (gone.Length > 0) yield return new(ChangeKind.Tightened,
            $"an asset list is no longer read so: {string.Join(", ", gone.Select(word => $"`{word}`"))}");
        var came = other.Words.Except(one.Words).ToArray();
        if (came.Length > 0) yield return new(ChangeKind.Loosened, $"an asset list is read so: {string.Join(", ", came.Select(word => $"`{word}`"))}");
    }

    private static Dictionary<string, DevicePattern> Read(IReadOnlyDictionary<string, byte[]> files, List<Diagnostic> faults) =>
        files.Where(file => file.Key.StartsWith("patterns/", StringComparison.Ordinal)).OrderBy(file => file.Key, StringComparer.Ordinal)
            .SelectMany(file => DevicePattern.Read(file.Value, file.Key, faults)).GroupBy(pattern => pattern.Id.Value)
                .ToDictionary(group => group.Key, group => group.First());

    private static string Types(Model.DevicePart part) => string.Join(" or ", part.OneOfTypes.Select(type => $"`{type}`"));

    private static string Contact(Model.TouchedBy? contact) => contact is { } known ? Words.Of(known) : "what its type says";
}
