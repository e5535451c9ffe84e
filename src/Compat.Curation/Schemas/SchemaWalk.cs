using System.Globalization;
using System.Text.RegularExpressions;
using Compat.Curation.Diagnostics;
using Compat.Curation.Yaml;
using Compat.Validation;

namespace Compat.Curation.Schemas;

/// <summary>Holds a file against its schema in our own words.</summary>
internal sealed class SchemaWalk(DiagnosticList faults)
{
    private const string Code = "schema";

    /// <summary>Whether all conditions held of which this walk has no words: on keys together, and that no two records of a list are equal.</summary>
    public bool ConditionsHold { get; private set; } = true;

    /// <summary>Checks a value.</summary>
    public void Walk(YamlNode node, SchemaShape shape, string name)
    {
        shape = shape.For(node);
        foreach (var condition in shape.Conditions) ConditionsHold = ConditionsHold && condition.HoldsFor(node);
        switch (node)
        {
            case YamlMapping mapping:
                if (shape.Type is not (null or "object")) Unexpected(node, shape, name);
                Mapping(mapping, shape, name);
                break;
            case YamlSequence sequence:
                if (shape.Type is not (null or "array")) Unexpected(node, shape, name);
                Sequence(sequence, shape, name);
                break;
            case YamlScalar scalar:
                Scalar(scalar, shape, name);
                break;
        }
    }

    private void Mapping(YamlMapping mapping, SchemaShape shape, string name)
    {
        var isKnown = shape.Type == "object";
        var missing = shape.Required.Where(key => isKnown && mapping.Find(key) is null).ToList();
        foreach (var entry in mapping.Entries)
        {
            var key = entry.Key.Text;
            if (shape.Properties.TryGetValue(key, out var property))
            {
                Walk(entry.Value, property, key);
                continue;
            }

            Walk(entry.Value, SchemaShape.Nothing, key);
            if (!isKnown) continue;
            var free = shape.Properties.Keys.Where(known => mapping.Find(known) is null);
            if (RenamedWords.OfKey(key, free) is { } now)
            {
                missing.Remove(now);
                faults.Add(entry.Key.Span, "renamed", $"the key `{key}` is not known here, it is called `{now}` now", RenamedWords.Help);
                continue;
            }

            var near = NearestNames.Of(key, free);
            missing.RemoveAll(near.Contains);
            faults.Add(
                entry.Key.Span,
                "unknown-key",
                $"the key `{key}` is not known here",
                near.Count > 0 ? NearestNames.Help(key, near) : SiteOnly(key) ?? "known here: " + Listed(shape.Properties.Keys));
        }

        if (missing.Count > 0)
        {
            var at = mapping.Entries.Count > 0 ? mapping.Entries[0].Key.Span : new TextSpan(mapping.Span.Start, Math.Min(1, mapping.Span.Length));
            faults.Add(at, "missing-key", $"{Listed(missing)} {(missing.Count == 1 ? "is" : "are")} missing{(name.Length == 0 ? "" : $" in `{name}`")}");
        }

        if (isKnown && missing.Count == 0 && mapping.Entries.Count < shape.MinProperties)
            faults.Add(mapping.Span, Code, $"`{name}` needs one of {Listed(shape.Properties.Keys.Except(shape.Required))}");
    }

    private static string? SiteOnly(string key) =>
        key is "device" or "device-part" or "product" or "composition-dated" or "edition" ? "rules on devices and products stand in a site's own file" : null;

    private void Sequence(YamlSequence sequence, SchemaShape shape, string name)
    {
        var items = shape.Items ?? SchemaShape.Nothing;
        if (shape.Distinct && sequence.Items.Any(item => item is not YamlScalar) && sequence.Items.DistinctBy(Written).Count() < sequence.Items.Count)
            ConditionsHold = false;
        var seen = new Dictionary<string, TextSpan>(StringComparer.Ordinal);
        foreach (var item in sequence.Items)
        {
            Walk(item, items, name);
            if (!shape.Distinct || item is not YamlScalar scalar) continue;
            if (seen.TryAdd(scalar.Text, scalar.Span)) continue;
            faults.Add(
                scalar.Span, Code, $"`{scalar.Text}` is listed twice in `{name}`", "keep one of the two",
                faults.Related("first listed here", seen[scalar.Text]));
        }

        if (sequence.Items.Count < shape.MinItems)
        {
            var enough = shape.MinItems == 1 ? "one item" : string.Create(CultureInfo.InvariantCulture, $"{shape.MinItems} items");
            faults.Add(sequence.Span, Code, $"`{name}` needs at least {enough}");
        }
    }

    /// <summary>A value in one line: equal values have equal lines.</summary>
    private static string Written(YamlNode node) => node switch
    {
        YamlMapping mapping => $"{{{string.Join(", ", mapping.Entries.Select(entry => $"{entry.Key.Text}: {Written(entry.Value)}"))}}}",
        YamlSequence sequence => $"[{string.Join(", ", sequence.Items.Select(Written))}]",
        _ => (node as YamlScalar)?.Text ?? "",
    };

    private void Scalar(YamlScalar scalar, SchemaShape shape, string name)
    {
        switch (shape.Type)
        {
            case null:
                break;
            case "boolean":
                if (ScalarText.TruthOf(scalar) is not { } truth) Unexpected(scalar, shape, name);
                else if (shape.Words is { } words && !words.Contains(truth ? "true" : "false"))
                    faults.Add(scalar.Span, Code, $"only `true` is written here, read `{scalar.Text}`", $"leave `{name}` out");
                break;
            case "integer" or "number":
                Number(scalar, shape, name);
                break;
            case "string":
                Text(scalar, shape, name);
                break;
            default:
                Unexpected(scalar, shape, name);
                break;
        }
    }

    private void Number(YamlScalar scalar, SchemaShape shape, string name)
    {
        if (ScalarText.NumberOf(scalar, shape.Type == "integer") is not { } number) Unexpected(scalar, shape, name);
        else if (number < shape.Minimum || number > shape.Maximum)
        {
            faults.Add(scalar.Span, Code, string.Create(CultureInfo.InvariantCulture,
                $"`{name}` is a number from {shape.Minimum} to {shape.Maximum}, read `{scalar.Text}`"));
        }
    }

    private void Text(YamlScalar scalar, SchemaShape shape, string name)
    {
        var text = scalar.Text;
        if (scalar.IsPlain && shape.IsFreeText && CommentBehind(scalar) is { } comment)
            faults.Add(
                comment, "comment-in-text", $"a comment cuts the text of `{name}` off",
                "put the text in quotes if `#` is part of it, else the comment on its own line");
        if (scalar.IsNothing)
        {
            faults.Add(scalar.Span, Code, $"nothing is written for `{name}`", "write its value");
        }
        else if (
            scalar.IsPlain && !(shape.Words?.Contains(text) ?? false) && ScalarText.MistakenFor(text) is { } other && (shape.IsWord || other != "a number"))
        {
            var expected = shape.IsWord ? "a word" : "a text";
            faults.Add(scalar.Span, Code, $"{expected} is expected for `{name}`, read `{text}`", shape.Words is { } words
                ? "known here: " + Listed(words)
                : $"other readers take `{text}` for {other}: write it in quotes if it is meant");
        }
        else if (shape.Words is { } words && !words.Contains(text))
        {
            var now = RenamedWords.OfValue(text, words);
            if (now is not null)
                faults.Add(scalar.Span, "renamed", $"`{text}` is not one of the words for `{name}`, it is called `{now}` now", RenamedWords.Help);
            else faults.Add(
                scalar.Span, "unknown-word", $"`{text}` is not one of the words for `{name}`", NearestNames.Help(text, words)
                ?? "known here: " + Listed(words));
        }
        else if (shape.Pattern is { } pattern && !Matches(pattern, text))
        {
            faults.Add(
                scalar.Span, shape.IsId ? "id" : Code, $"`{text}` has not the form of `{name}`", shape.Description is { } form
                ? "expected: " + char.ToLowerInvariant(form[0]) + form[1..].TrimEnd('.') : null);
        }
        else if (text.Length < shape.MinLength)
        {
            faults.Add(scalar.Span, Code, $"the text of `{name}` is empty");
        }
        else if (text.Length > shape.MaxLength)
        {
            faults.Add(scalar.Span, Code, string.Create(CultureInfo.InvariantCulture, $"`{name}` has {text.Length} characters: at most {shape.MaxLength}"));
        }
    }

    /// <summary>Where a comment stands behind a value on its line; null where none does.</summary>
    private TextSpan? CommentBehind(YamlScalar scalar)
    {
        var text = faults.Source.Text;
        var at = scalar.Span.End;
        while (at < text.Length && text[at] == ' ') at++;
        return at > scalar.Span.End && at < text.Length && text[at] == '#' ? new TextSpan(at, 1) : null;
    }

    private static bool Matches(Regex pattern, string text) => text.Length <= 2000 && !text.EndsWith('\n') && pattern.IsMatch(text);

    private void Unexpected(YamlNode node, SchemaShape shape, string name)
    {
        var expected = shape.Type switch
        {
            "object" => "keys with values are",
            "array" => "a list is",
            "boolean" => "`true` or `false` is",
            "integer" => "a whole number is",
            "number" => "a plain number is",
            _ => shape.IsWord ? "a word is" : "a text is",
        };
        var read = node is YamlScalar scalar ? scalar.IsNothing ? "nothing" : $"`{Shown(scalar.Text)}`" : node.Kind;
        var help = (shape.Type, node) switch
        {
            ("array", YamlScalar { IsNothing: false } one) when shape.Items?.Pattern is { } form
                && PiecesOf(one.Text).Where(piece => Matches(form, piece)).ToArray() is { Length: > 0 } pieces => $"write `[{string.Join(", ", pieces)}]`",
            ("array", YamlScalar { IsNothing: false } one) when one.Text.Length <= 60 => $"write `[{one.Text}]`",
            ("integer" or "number", YamlScalar) => "write digits only, without quotes, exponent, leading zero or sign",
            ("boolean", YamlScalar) => "without quotes",
            _ => null,
        };
        var span = node is YamlScalar ? node.Span : new TextSpan(node.Span.Start, Math.Min(1, node.Span.Length));
        faults.Add(span, Code, name.Length == 0 ? $"{expected} expected, read {read}" : $"{expected} expected for `{name}`, read {read}", help);
    }

    /// <summary>What may be meant by several names written in one text: what stands between commas and 'and', remarks in brackets aside.</summary>
    public static string[] PiecesOf(string text) =>
        Regex.Replace(text, @"\([^)]*\)", "").Split([",", ";", " and ", " & "], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static string Shown(string text) => text.Length <= 80 ? text : text[..80] + "…";

    private static string Listed(IEnumerable<string> names) => string.Join(", ", names.Select(one => $"`{one}`"));
}
