using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>What was done to a record.</summary>
public enum EditAction
{
    /// <summary>It is there in HEAD only.</summary>
    Added,

    /// <summary>It is there in BASE only.</summary>
    Removed,

    /// <summary>It says something else.</summary>
    Changed,

    /// <summary>It has another id.</summary>
    Renamed,
}

/// <summary>One record that differs between two knowledge bases.</summary>
/// <param name="Kind">The kind of record.</param>
/// <param name="Id">Its id; in HEAD, where it is there.</param>
/// <param name="Action">What was done.</param>
public sealed record RecordEdit(RecordKind Kind, string Id, EditAction Action)
{
    /// <summary>Its id in BASE, where it was renamed.</summary>
    public string? FormerId { get; init; }

    /// <summary>The fields that differ, as a file spells them; empty where it was added, removed or only renamed.</summary>
    public IReadOnlyList<string> Fields { get; init; } = [];

    /// <summary>Whether nothing but wording, names and dates differ, or its id: no answer can change by it.</summary>
    public bool IsWording { get; init; }

    /// <summary>Whether its id in BASE is kept among its names.</summary>
    public bool KeepsFormerId => FormerId is { } former && RenameSearch.IsCalled(After, former);

    /// <summary>What it is called where its kind does not say it; null where it does.</summary>
    public string? CalledAs { get; init; }

    /// <summary>The record in BASE; null where it is not there.</summary>
    internal object? Before { get; init; }

    /// <summary>The record in HEAD; null where it is not there.</summary>
    internal object? After { get; init; }
}
