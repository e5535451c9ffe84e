namespace Compat.Curation.Yaml;

/// <summary>A value in a file, with the exact place it stands at.</summary>
/// <param name="Span">Where it stands; of a block collection, from its first item or key to the end of its last value.</param>
internal abstract record YamlNode(TextSpan Span)
{
    /// <summary>What it is, in a reader's words.</summary>
    public abstract string Kind { get; }
}

/// <summary>A single value.</summary>
/// <param name="Text">Its text, quotes and escapes undone.</param>
/// <param name="IsPlain">Whether it is written without quotes.</param>
/// <param name="Span">Where it stands, quotes included.</param>
internal sealed record YamlScalar(string Text, bool IsPlain, TextSpan Span) : YamlNode(Span)
{
    /// <inheritdoc/>
    public override string Kind => "a single value";

    /// <summary>Whether nothing is written.</summary>
    public bool IsNothing => IsPlain && Text.Length == 0;
}

/// <summary>A value that was refused: its fault is reported already.</summary>
/// <param name="Span">Where it stands.</param>
internal sealed record YamlRefused(TextSpan Span) : YamlNode(Span)
{
    /// <inheritdoc/>
    public override string Kind => "a refused value";
}

/// <summary>A list.</summary>
/// <param name="Items">Its items.</param>
/// <param name="Span">Where it stands.</param>
internal sealed record YamlSequence(IReadOnlyList<YamlNode> Items, TextSpan Span) : YamlNode(Span)
{
    /// <inheritdoc/>
    public override string Kind => "a list";
}

/// <summary>One key with its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="Value">The value.</param>
internal sealed record YamlEntry(YamlScalar Key, YamlNode Value);

/// <summary>Keys with values; no key occurs twice.</summary>
internal sealed record YamlMapping : YamlNode
{
    private const int Few = 16;

    private readonly Dictionary<string, YamlEntry>? _byKey;

    /// <summary>Makes a mapping of distinct keys.</summary>
    public YamlMapping(IReadOnlyList<YamlEntry> entries, TextSpan span)
        : base(span)
    {
        Entries = entries;
        if (entries.Count > Few) _byKey = entries.ToDictionary(entry => entry.Key.Text, StringComparer.Ordinal);
    }

    /// <summary>The entries, in the order of the file.</summary>
    public IReadOnlyList<YamlEntry> Entries { get; }

    /// <inheritdoc/>
    public override string Kind => "keys with values";

    /// <summary>The entry of a key, or null.</summary>
    public YamlEntry? Find(string key)
    {
        if (_byKey is not null) return _byKey.GetValueOrDefault(key);
        foreach (var entry in Entries)
            if (entry.Key.Text == key) return entry;
        return null;
    }
}
