namespace Compat.Snapshots;

/// <summary>Records whose ids can be told without reading them.</summary>
internal interface IStoredIds
{
    int Count { get; }

    string IdAt(int index);
}
