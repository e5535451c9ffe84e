using Compat.Validation;

namespace Compat.Curation.Imports;

/// <summary>A row that could not be placed, with the reason.</summary>
/// <param name="Row">The row.</param>
/// <param name="Why">Why not.</param>
public sealed record UnplacedRow(CsvRow Row, string Why);

/// <summary>A device that rows were placed on.</summary>
/// <param name="Device">The device.</param>
/// <param name="Rows">How many rows.</param>
/// <param name="IsNew">Whether the site did not have it yet.</param>
public sealed record PlacedDevice(Device Device, int Rows, bool IsNew);

/// <summary>Makes devices of the rows of an asset list: one for each kind and model, however many the site has. No row is lost.</summary>
public sealed record DeviceImport
{
    private const int LongestId = 90;

    /// <summary>The devices that rows were placed on, in the order of the list.</summary>
    public required IReadOnlyList<PlacedDevice> Placed { get; init; }

    /// <summary>The rows that were placed on none.</summary>
    public required IReadOnlyList<UnplacedRow> Unplaced { get; init; }

    /// <summary>Places the rows of a list.</summary>
    /// <param name="rows">The rows, without headings.</param>
    /// <param name="device">The number of the column that names the kind of device, from 0.</param>
    /// <param name="model">The number of the column that names the model; null where there is none.</param>
    /// <param name="patterns">The patterns.</param>
    /// <param name="existing">The devices the site has already.</param>
    public static DeviceImport Of(IEnumerable<CsvRow> rows, int device, int? model, IReadOnlyList<DevicePattern> patterns, IReadOnlyList<Device> existing)
    {
        var phrases = patterns.SelectMany(pattern => pattern.Words.Append(pattern.Name).Select(words => (Phrase: Plain(words), Pattern: pattern)))
            .Distinct().OrderByDescending(pair => pair.Phrase.Length).ToArray();
        var known = existing.ToDictionary(one => one.Id.Value);
        var counts = new Dictionary<string, PlacedDevice>();
        var order = new List<string>();
        var unplaced = new List<UnplacedRow>();
        var seen = new Dictionary<string, (DevicePattern? Pattern, string Why)>();
        foreach (var row in rows)
        {
            var text = device < row.Cells.Count ? row.Cells[device] : "";
            var named = model is { } column && column < row.Cells.Count ? row.Cells[column] : "";
            var both = text + named;
            if (HiddenText.Find(both, out _) is var at and >= 0)
            {
                unplaced.Add(new(row, $"it holds {HiddenText.NameAt(both, at)}, a character that cannot be seen"));
                continue;
            }

            if (!seen.TryGetValue(text, out var found)) seen[text] = found = PatternOf(Plain(text), phrases);
            if (found.Pattern is not { } pattern)
            {
                unplaced.Add(new(row, found.Why));
                continue;
            }

            var id = IdOf(pattern, named);
            if (!counts.TryGetValue(id, out var placed))
            {
                order.Add(id);
                placed = known.TryGetValue(id, out var there) ? new(there, 0, false) : new(New(id, pattern, named), 0, true);
            }

            counts[id] = placed with { Rows = placed.Rows + 1 };
        }

        return new() { Placed = order.Select(id => counts[id]).ToArray(), Unplaced = unplaced };
    }

    private static (DevicePattern? Pattern, string Why) PatternOf(string text, (string Phrase, DevicePattern Pattern)[] phrases)
    {
        if (text.Length == 2) return (null, "it names no kind of device");
        var matching = phrases.Where(pair => text.Contains(pair.Phrase, StringComparison.Ordinal)).ToArray();
        if (matching.Length == 0) return (null, "no pattern has its words");
        var longest = matching.Where(pair => pair.Phrase.Length == matching[0].Phrase.Length).Select(pair => pair.Pattern).Distinct().ToArray();
        return longest.Length == 1 ? (longest[0], "") : (null, $"it may be {string.Join(" or ", longest.Select(pattern => pattern.Name))}");
    }

    private static Device New(string id, DevicePattern pattern, string model) => new()
    {
        Id = new DeviceId(id),
        Name = model.Length == 0 ? pattern.Name : $"{pattern.Name} {model}",
        Parts = pattern.Parts,
        Note = $"Parts as usual for this kind of device ({pattern.Name}): look at the device and put right what differs. Its instructions were not seen.",
    };

    private static string IdOf(DevicePattern pattern, string model)
    {
        var words = string.Concat(model.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' '))
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0) return pattern.Id.Value;
        var id = $"{pattern.Id.Value}-{string.Join('-', words)}";
        return (id.Length <= LongestId ? id : id[..LongestId]).TrimEnd('-');
    }

    /// <summary>Words in lower case between single spaces, a space at either end, plurals taken off.</summary>
    private static string Plain(string text)
    {
        var words = string.Concat(text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return " " + string.Join(' ', words.Select(word => word.Length > 3 && word[^1] == 's' && word[^2] != 's' ? word[..^1] : word)) + " ";
    }
}
