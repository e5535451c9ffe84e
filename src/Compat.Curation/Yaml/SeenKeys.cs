namespace Compat.Curation.Yaml;

/// <summary>Finds keys that are written twice; most mappings are small, so a table is made only for large ones.</summary>
internal sealed class SeenKeys
{
    private const int Few = 16;

    private readonly List<YamlScalar> _few = new(4);
    private Dictionary<string, YamlScalar>? _many;

    /// <summary>Takes up a key; returns the one before it of the same text, or null.</summary>
    public YamlScalar? Add(YamlScalar key)
    {
        if (_many is not null) return _many.TryAdd(key.Text, key) ? null : _many[key.Text];
        foreach (var one in _few)
            if (one.Text == key.Text) return one;
        _few.Add(key);
        if (_few.Count > Few) _many = _few.ToDictionary(one => one.Text, StringComparer.Ordinal);
        return null;
    }
}
