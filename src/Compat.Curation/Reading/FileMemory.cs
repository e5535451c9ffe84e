using System.Collections.Concurrent;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation.Reading;

/// <summary>Remembers the trees of files that fit their schema, by kind and text: most files of two states of a folder are the same.</summary>
/// <remarks>Safe to share between threads.</remarks>
internal sealed class FileMemory
{
    private readonly ConcurrentDictionary<(FileKind Kind, string Text), YamlNode> _trees = [];

    /// <summary>The tree of a text; null where it was not kept.</summary>
    public YamlNode? Find(FileKind kind, string text) => _trees.GetValueOrDefault((kind, text));

    /// <summary>Keeps a tree.</summary>
    public void Keep(FileKind kind, string text, YamlNode root) => _trees[(kind, text)] = root;
}
