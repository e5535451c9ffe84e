namespace Compat.Validation;

/// <summary>
/// Asks of a site's records what the schemas ask of its file, so that one made in code passes no sooner: no text is empty, nothing is listed twice, an address
/// is one.
/// </summary>
internal static class FormValidation
{
    public static void Check(Scope scope, Site site)
    {
        var place = new ProblemPlace(RecordKind.Site, site.Id.Value);
        Text(scope, place, "site.name", site.Name);
        Once(scope, place, "here.water", site.Here.Water);
        for (var i = 0; i < site.Levels.Count; i++) Once(scope, place, $"levels.{i}.sources", site.Levels[i].Sources);
        foreach (var source in site.Sources) Check(scope, source);
        foreach (var product in site.Products) Check(scope, product);
        foreach (var device in site.Devices) Check(scope, device);
        foreach (var rule in site.Rules) Check(scope, rule);
    }

    private static void Check(Scope scope, Source source)
    {
        var place = new ProblemPlace(RecordKind.Source, source.Id.Value);
        Text(scope, place, "title", source.Title);
        Text(scope, place, "publisher", source.Publisher);
        Text(scope, place, "edition", source.Edition);
        Text(scope, place, "section", source.Section);
        Text(scope, place, "note", source.Note);
        if (source.Address is { } address
            && !(Uri.TryCreate(address, UriKind.Absolute, out var uri) && (uri.Scheme == Uri.UriSchemeHttp || uri.Scheme == Uri.UriSchemeHttps)))
            scope.Add("no-address", place with { Field = "address" }, $"`{address}` is no address", "write one that starts with `https://`, or leave it out");
    }

    private static void Check(Scope scope, Product product)
    {
        var place = new ProblemPlace(RecordKind.Product, product.Id.Value);
        Text(scope, place, "name", product.Name);
        Text(scope, place, "note", product.Note);
        Once(scope, place, "ph", product.Ph);
        Once(scope, place, "removes", product.Removes);
        for (var i = 0; i < product.LabelClaims.Count; i++)
        {
            var claim = product.LabelClaims[i];
            Once(scope, place, $"label-claims.{i}.for", claim.For);
            Once(scope, place, $"label-claims.{i}.needs", claim.Needs);
            Once(scope, place, $"label-claims.{i}.stands-soil", claim.StandsSoil);
        }

        Text(scope, place, "bath.test", product.Bath?.Use.Test);
        if (product.Bath?.Use is { Minimum: null, Reuse: null, Test: null })
            scope.Add("bath-says-nothing", place with { Field = "bath" }, "nothing is said of the bath", "say its `minimum`, its `reuse` or its `test`");
    }

    private static void Check(Scope scope, Device device)
    {
        var place = new ProblemPlace(RecordKind.Device, device.Id.Value);
        Text(scope, place, "name", device.Name);
        Text(scope, place, "note", device.Note);
        Once(scope, place, "patients", device.Patients);
        for (var i = 0; i < device.Parts.Count; i++)
        {
            var part = device.Parts[i];
            Text(scope, place, $"parts.{i}.name", part.Name);
            Once(scope, place, $"parts.{i}.type.one-of", part.OneOfTypes);
            Once(scope, place, $"parts.{i}.soil", part.Soil);
        }

        for (var i = 0; i < device.Instructions.Count; i++)
        {
            var (edition, field) = (device.Instructions[i], $"instructions.{i}");
            Once(scope, place, field + ".serials", edition.Serials);
            Once(scope, place, field + ".replaces", edition.Replaces);
            Once(scope, place, field + ".says", edition.Says);
            Once(scope, place, field + ".reaches", edition.Reaches);
            for (var s = 0; s < edition.Says.Count; s++) Once(scope, place, $"{field}.says.{s}.parts", edition.Says[s].Parts);
            for (var r = 0; r < edition.Reaches.Count; r++)
            {
                Once(scope, place, $"{field}.reaches.{r}.parts", edition.Reaches[r].Parts);
                Once(scope, place, $"{field}.reaches.{r}.needs", edition.Reaches[r].Needs);
            }
        }
    }

    private static void Check(Scope scope, Rule rule)
    {
        var place = new ProblemPlace(RecordKind.Rule, rule.Id.Value);
        Once(scope, place, "seen-with", rule.SeenWith);
        Once(scope, place, "overrides", rule.Overrides);
        Once(scope, place, "rests-on", rule.RestsOn);
        Once(scope, place, "sources", rule.Sources);
        Text(scope, place, "damage.look-for", rule.Damage?.LookFor);
        Text(scope, place, "damage.withdraw-if", rule.Damage?.WithdrawIf);
        for (var i = 0; i < rule.Duties.Count; i++)
        {
            Once(scope, place, $"duties.{i}.{Words.Of(rule.Duties[i].Kind)}", rule.Duties[i].Ways);
            Once(scope, place, $"duties.{i}.keep-off", rule.Duties[i].Parts);
        }
    }

    private static void Text(Scope scope, ProblemPlace place, string field, string? text)
    {
        if (text is not null && text.Trim().Length == 0) scope.Add("empty-text", place with { Field = field }, "the text is empty");
    }

    private static void Once<T>(Scope scope, ProblemPlace place, string field, IReadOnlyList<T>? items) where T : notnull
    {
        if (items is not { Count: > 1 }) return;
        var seen = new HashSet<T>();
        for (var i = 0; i < items.Count; i++)
            if (!seen.Add(items[i]))
                scope.Add("listed-twice", place with { Field = $"{field}.{i}" }, items[i] is Id or ValueType ? $"`{Said(items[i])}` is listed twice"
                : "it is listed twice");
    }

    private static string Said(object item) => item is Enum word ? Words.InKebabCase(word.ToString()) : item.ToString()!;
}
