namespace Compat.Planning;

/// <summary>How to make a dilution. Figures are rounded to six digits.</summary>
public sealed record DilutionRecipe
{
    /// <summary>The question.</summary>
    public required DilutionQuestion Question { get; init; }

    /// <summary>How much stock, in litres; a range where any within it will do. Null where it is weighed.</summary>
    public Interval? StockLitres { get; init; }

    /// <summary>How much stock, in grams, where it is weighed: a powder, or strengths by mass.</summary>
    public Interval? StockGrams { get; init; }

    /// <summary>How much water to add to the least stock, in litres. Null where only making up to the volume is sure.</summary>
    public decimal? WaterLitres { get; init; }

    /// <summary>How much water to add, in grams, where the recipe goes by mass.</summary>
    public decimal? WaterGrams { get; init; }

    /// <summary>By how much the mixture is less than its two volumes, in litres; 0 where it was not asked of a formula.</summary>
    public decimal ContractionLitres { get; init; }

    /// <summary>The strength reached with the least stock, in the unit wanted, over the whole range of the label.</summary>
    public required Strength Reached { get; init; }

    /// <summary>The identity of the knowledge base whose figures were used.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }
}
