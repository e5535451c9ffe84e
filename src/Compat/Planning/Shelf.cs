namespace Compat.Planning;

/// <summary>One part of a device against all products.</summary>
public sealed record ShelfRow
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>Its part.</summary>
    public required DevicePart Part { get; init; }

    /// <summary>What it needs.</summary>
    public required Need Need { get; init; }

    /// <summary>A cell for each product, in the order of <see cref="Shelf.Products"/>.</summary>
    public IReadOnlyList<ShelfCell> Cells { get; init; } = [];

    /// <summary>Whether the part needs nothing.</summary>
    public bool NeedsNothing => Cells.Count > 0 && Cells[0].Word == ShelfWord.NothingNeeded;

    /// <summary>Whether it needs something and no product serves it.</summary>
    public bool IsUnserved => !NeedsNothing && !Cells.Any(cell => cell.Serves);
}

/// <summary>All parts of the devices of the sites against all their products.</summary>
public sealed record Shelf
{
    /// <summary>The products, in the order of the sites.</summary>
    public IReadOnlyList<ProductId> Products { get; init; } = [];

    /// <summary>A row for each part: those that no product serves first, then those that fewest serve; those that need nothing last.</summary>
    public IReadOnlyList<ShelfRow> Rows { get; init; } = [];

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }

    /// <summary>Asks every product of the sites on every part of their devices; parts alike are asked once.</summary>
    /// <param name="knowledgeBase">The knowledge base with its sites.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Shelf Of(KnowledgeBase knowledgeBase, CancellationToken cancel = default) => Of(knowledgeBase, null, cancel);

    /// <summary>The same, saying how far it is.</summary>
    /// <param name="knowledgeBase">The knowledge base with its sites.</param>
    /// <param name="progress">Takes after each question how many are answered, and how many there are; from several threads at once. Null where nobody looks.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Shelf Of(KnowledgeBase knowledgeBase, Action<int, int>? progress, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(knowledgeBase);
        var products = knowledgeBase.Sites.SelectMany(site => site.Products).ToArray();
        var rows = new ShelfMaker(knowledgeBase, products).Rows(progress, cancel);
        return new Shelf
        {
            Products = products.Select(product => product.Id).ToArray(),
            Rows = rows.OrderBy(row => row.NeedsNothing).ThenBy(row => row.Cells.Count(cell => cell.Serves)).ThenBy(row => row.Cells.Count == 0 ? 0 : (int)row.Cells.Max(cell => cell.Word)).ToArray(),
            Identity = knowledgeBase.Identity,
        };
    }
}
