namespace Compat.Planning;

/// <summary>What a dilution is asked for: a stock, the strength wanted, and how much of it.</summary>
public sealed record DilutionQuestion
{
    /// <summary>The agent class whose strength is meant.</summary>
    public required AgentId Agent { get; init; }

    /// <summary>The strength of the stock; a range where its label gives one.</summary>
    public required Strength Stock { get; init; }

    /// <summary>The strength wanted; a range where any within it will do.</summary>
    public required Strength Wanted { get; init; }

    /// <summary>How much finished liquid, in litres; null where <see cref="Kilograms"/> is given.</summary>
    public decimal? Litres { get; init; }

    /// <summary>How much finished liquid, in kilograms: for strengths by mass whose density nobody knows.</summary>
    public decimal? Kilograms { get; init; }

    /// <summary>Whether the stock is a powder or tablet; its strength is a share of its mass then.</summary>
    public bool IsPowder { get; init; }

    /// <summary>The density of a liquid stock in kg/L, where its strength is by mass and the wanted one by volume.</summary>
    public decimal? StockDensity { get; init; }

    /// <summary>The temperature at which volumes are measured, in °C; matters to ethanol.</summary>
    public decimal Temperature { get; init; } = 20m;
}
