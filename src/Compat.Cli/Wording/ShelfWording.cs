using Compat.Planning;

namespace Compat.Cli.Wording;

/// <summary>Words for the cells of a shelf.</summary>
public static class ShelfWording
{
    /// <summary>A cell in words: what the product is to the part, and what more it takes.</summary>
    public static string Of(ShelfCell cell) => cell.More.Count == 0 ? Of(cell.Word) : $"{Of(cell.Word)}: {string.Join(", ", cell.More.Select(Of))}";

    /// <summary>What a product is to a part.</summary>
    public static string Of(ShelfWord word) => word switch
    {
        ShelfWord.DoesItWithMore => "does it with more",
        ShelfWord.SparesButDoesNotReach => "spares but does not reach the level",
        ShelfWord.ReachesButHarms => "reaches but harms",
        ShelfWord.HarmsAndIsNotShownToReach => "harms, and is not shown to reach the level",
        _ => Words.Of(word).Replace('-', ' '),
    };

    /// <summary>What more it takes.</summary>
    public static string Of(ShelfMore more) => more switch
    {
        ShelfMore.TakeOff => "take the residue off",
        ShelfMore.TimeIt => "time how long it stays wet",
        ShelfMore.WipeAgain => "wipe again to keep it wet",
        ShelfMore.MeasureTemperature => "measure the temperature",
        ShelfMore.MeasurePh => "measure the pH",
        ShelfMore.ReachTheGap => "something else for its gap",
        ShelfMore.Activate => "activate first",
        _ => "clean first",
    };

    /// <summary>What a part needs, in a few words.</summary>
    public static string Need(Answers.Need need) => need.KeptDry ? "kept dry" : need.Level is { } level ? Words.Of(level) : "not known";
}
