namespace Compat.Curation.Text;

/// <summary>One end of a range as written: a figure and the unit behind it (empty where none is written).</summary>
internal sealed record RangeEnd(decimal Number, string Unit);

/// <summary>A range as written, before its units are understood.</summary>
internal sealed record RangeText(RangeEnd? Low, bool LowIncluded, RangeEnd? High, bool HighIncluded)
{
    /// <summary>How many characters a range may have; no other kind of text is held to so few by a schema.</summary>
    public const int MaximumLength = 200;

    private static readonly string[] Signs = ["<=", ">=", "<", ">", "="];

    /// <summary>Reads <c>&lt;= 5 u</c>, <c>&gt; 5 and &lt; 10 u</c>, <c>5..10 u</c>, <c>= 5 u</c>, and a bare <c>5 u</c> where that is taken.</summary>
    public static TextFault? TryRead(string text, bool takesBare, out RangeText range)
    {
        range = null!;
        text = text.Trim();
        if (text.Length == 0) return new("nothing is written");
        if (text.Length > MaximumLength) return new($"the text has more than {MaximumLength} characters");
        var and = text.IndexOf(" and ", StringComparison.Ordinal);
        if (and >= 0) return Pair(text[..and], text[(and + 5)..], out range);
        var sign = Signs.FirstOrDefault(one => text.StartsWith(one, StringComparison.Ordinal));
        if (sign is not null) return Single(sign, text[sign.Length..], out range);
        if (text[0] is '≤' or '≥') return new($"`{text[0]}` is not taken", text[0] == '≤' ? "write `<=`" : "write `>=`");
        var dots = text.IndexOf("..", StringComparison.Ordinal);
        if (dots >= 0) return Closed(text[..dots], text[(dots + 2)..], out range);
        if (Figure.TrySplit(text, out var number, out var unit) is { } fault) return fault;
        if (unit.Length > 0 && unit[0] is ('-' or '–' or '—')) return new($"`{text}` is no range", "write both ends with `..` between them: `5..10`");
        if (!takesBare)
            return new($"`{text}` does not say whether it is a limit or the value itself",
            $"write `<= {text}`, `>= {text}` or `= {text}`{(unit.Length == 0 ? ", with its unit where it has one" : "")}");
        var end = new RangeEnd(number, unit);
        range = new(end, true, end, true);
        return null;
    }

    private static TextFault? Single(string sign, string rest, out RangeText range)
    {
        range = null!;
        if (End(rest, out var end) is { } fault) return fault;
        range = sign switch
        {
            "<=" => new(null, false, end, true),
            "<" => new(null, false, end, false),
            ">=" => new(end, true, null, false),
            ">" => new(end, false, null, false),
            _ => new(end, true, end, true),
        };
        return null;
    }

    private static TextFault? Pair(string first, string second, out RangeText range)
    {
        range = null!;
        first = first.Trim();
        second = second.Trim();
        var firstSign = Signs.FirstOrDefault(one => first.StartsWith(one, StringComparison.Ordinal));
        var secondSign = Signs.FirstOrDefault(one => second.StartsWith(one, StringComparison.Ordinal));
        if (firstSign is null || secondSign is null || firstSign[0] != '>' || secondSign[0] != '<')
            return new($"`{first} and {second}` is no range", "write the lower end first: `> 5 and < 10`");
        if (Figure.TrySplit(first[firstSign.Length..].Trim(), out var low, out var lowUnit) is { } lowFault) return lowFault;
        if (End(second[secondSign.Length..], out var high) is { } highFault) return highFault;
        range = new(new(low, lowUnit.Length == 0 ? high!.Unit : lowUnit), firstSign == ">=", high, secondSign == "<=");
        return null;
    }

    private static TextFault? Closed(string first, string second, out RangeText range)
    {
        range = null!;
        if (Figure.TrySplit(first.Trim(), out var low, out var lowUnit) is { } lowFault) return lowFault;
        if (End(second, out var high) is { } highFault) return highFault;
        range = new(new(low, lowUnit.Length == 0 ? high!.Unit : lowUnit), true, high, true);
        return null;
    }

    private static TextFault? End(string text, out RangeEnd? end)
    {
        end = null;
        if (Figure.TrySplit(text.Trim(), out var number, out var unit) is { } fault) return fault;
        end = new(number, unit);
        return null;
    }
}
