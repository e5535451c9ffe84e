using System.Text;

namespace Compat.Snapshots;

/// <summary>The table of texts of a snapshot. Each is decoded when it is first asked for; whichever thread does so decodes the same.</summary>
/// <param name="bytes">The body of the snapshot.</param>
/// <param name="starts">Where each text begins, and where the last one ends.</param>
internal sealed class SnapshotTexts(byte[] bytes, int[] starts)
{
    private static readonly UTF8Encoding Utf8 = new(false, throwOnInvalidBytes: true);

    private readonly string?[] _texts = new string?[starts.Length - 1];
    private readonly object?[] _ids = new object?[starts.Length - 1];

    public int Count => _texts.Length;

    /// <exception cref="SnapshotException">It is not UTF-8.</exception>
    public string this[int place] => _texts[place] ??= Decode(place);

    /// <summary>An id; where one of the same kind was made of the text before, that one.</summary>
    public TId Id<TId>(int place, Func<string, TId> make) where TId : class
    {
        if (_ids[place] is TId known) return known;
        var id = make(this[place]);
        _ids[place] = id;
        return id;
    }

    private string Decode(int place)
    {
        try
        {
            return Utf8.GetString(bytes, starts[place], starts[place + 1] - starts[place]);
        }
        catch (ArgumentException)
        {
            throw new SnapshotException("a text is not UTF-8");
        }
    }
}
