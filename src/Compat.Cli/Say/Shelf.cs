namespace Compat.Cli.Say;

/// <summary>Writes a shelf for people: text, markdown, or CSV that a spreadsheet opens without running anything.</summary>
internal static class ShelfTable
{
    /// <summary>Text: each part with its products by what they are to it.</summary>
    public static void Text(Page page, Shelf shelf)
    {
        foreach (var row in shelf.Rows)
        {
            page.Line($"{row.Device}/{row.Part.Id} ({string.Join(" or ", row.Part.OneOfTypes)}; needs "
                + $"{ShelfWording.Need(row.Need)}){(row.IsUnserved ? ": no product serves it" : "")}", 0, 2);
            if (row.NeedsNothing) page.Line(ShelfWording.Of(ShelfWord.NothingNeeded), 2, 4);
            else foreach (var group in row.Cells.GroupBy(ShelfWording.Of).OrderByDescending(group => group.First().Word)) page.Line(
                $"{group.Key}: {string.Join(", ", group.Select(cell => cell.Product))}", 2, 4);
        }

        page.Blank();
        page.Line(Sum(shelf), 0, 2);
        page.Cautions();
    }

    public static void Markdown(TextWriter output, Shelf shelf)
    {
        Say.Markdown.Table(output, Headings(shelf).Select(Say.Markdown.Plain), Rows(shelf).Select(cells => cells.Select(Say.Markdown.Plain)));
        output.Write("\n" + Sum(shelf) + "\n\n");
        foreach (var caution in VerdictWording.Cautions) output.Write("- " + caution + "\n");
    }

    /// <summary>CSV: every cell in quotes; what a spreadsheet would take for a formula starts with a tab.</summary>
    public static void Csv(TextWriter output, Shelf shelf)
    {
        foreach (var cells in Rows(shelf).Prepend(Headings(shelf))) output.Write(string.Join(",", cells.Select(Quoted)) + "\r\n");
    }

    public static string Quoted(string text)
    {
        var safe = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' ? "\t" + text : text;
        return "\"" + Printable.Of(safe.TrimStart('\t')).Insert(0, safe.StartsWith('\t') ? "\t" : "").Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
    }

    public static void Cautions(Page page)
    {
        page.Cautions();
    }

    private static string[] Headings(Shelf shelf) => ["device", "part", "needs", .. shelf.Products.Select(product => product.Value)];

    private static IEnumerable<string[]> Rows(Shelf shelf) =>
        shelf.Rows.Select(row => (string[])[row.Device.Value, row.Part.Id.Value, ShelfWording.Need(row.Need), .. row.Cells.Select(ShelfWording.Of)]);

    private static string Sum(Shelf shelf) =>
        $"{shelf.Rows.Count} parts, {shelf.Products.Count} products; no product serves {shelf.Rows.Count(row => row.IsUnserved)} "
            + $"of the parts; {shelf.Rows.Count(row => row.NeedsNothing)} need nothing.";
}

/// <summary>Writes what a replacement means for people: what is lost first.</summary>
internal sealed class ReplacementText(Page page, Names names)
{
    public void Write(Replacement change)
    {
        page.Line($"{names.Product(change.New.Value)} in place of {names.Product(change.Old.Value)}", 0, 2);
        Part("Lost: the old one serves, the new one does not", change.Lost, cell => ShelfWording.Of(cell.New));
        Part("Refused: the instructions do not list the new one", change.Refused, _ => null);
        page.Heading("On the label");
        page.Item($"highest level claimed: {Level(change.LabelLevels.Old)} before, {Level(change.LabelLevels.New)} now");
        page.Item(change.GroupsLost.Count == 0 ? "no group that the old label names is lost"
            : $"no longer claimed: {string.Join(", ", change.GroupsLost.Select(names.Target))}");
        Part("Must stay wet longer than before", change.LongerWet, cell =>
            $"{FigureWording.Duration(Replacement.ContactTime(cell.New))}, before {FigureWording.Duration(Replacement.ContactTime(cell.Old))}");
        List("New duties", change.NewDuties.Select(duty => DutyWording.Of(duty, names)));
        List("Staff: new protection", change.NewProtection.Select(one => $"{names.Agent(one.Agent.Value)}: gloves of "
            + $"{Gloves(one)}{(one.Eyes is null ? "" : "; eyes: " + one.Eyes)}{(one.Ventilation is null ? "" : "; " + one.Ventilation)}"));
        List("At the change: what is on record where the two meet", change.AtTheChange.Hazards.Select(
            found => $"{found.First} and {found.Other}: {found.Hazard.Why}"));
        if (change.AtTheChange.Hazards.Count == 0) page.Item("no hazard is on record; that does not mean safe: rinse, and use fresh cloths");
        Part("Uses go on counting: what the old one used up is not given back", change.GoOnCounting, _ => null);
        Part("Gained", change.Gained, cell => ShelfWording.Of(cell.New));
        page.Cautions();
    }

    private static string Level(Compat.Model.Level? level) => level is { } one ? Words.Of(one) : "none";

    private static string Gloves(Compat.Model.Protection one) => one.Gloves.Count == 0 ? "a material that its data sheet names"
        : string.Join(" or ", one.Gloves.Select(glove => glove.Material));

    private void Part(string heading, IReadOnlyList<ReplacedCell> cells, Func<ReplacedCell, string?> also) =>
        List(heading, cells.Select(cell => $"{cell.Device}/{cell.Part}{(also(cell) is { } text ? ": " + text : "")}"));

    private void List(string heading, IEnumerable<string> lines)
    {
        page.Heading(heading);
        var any = false;
        foreach (var line in lines)
        {
            page.Item(line);
            any = true;
        }

        if (!any && !heading.StartsWith("At the change", StringComparison.Ordinal)) page.Item("none");
    }
}

/// <summary>Words for the cells of a shelf.</summary>
internal static class ShelfWording
{
    /// <summary>A cell in words: what the product is to the part, and what more it takes.</summary>
    public static string Of(ShelfCell cell) => cell.More.Count == 0 ? Of(cell.Word) : $"{Of(cell.Word)}: {string.Join(", ", cell.More.Select(Of))}";

    public static string Of(ShelfWord word) => word switch
    {
        ShelfWord.DoesItWithMore => "does it with more",
        ShelfWord.SparesButDoesNotReach => "spares but does not reach the level",
        ShelfWord.ReachesButHarms => "reaches but harms",
        ShelfWord.HarmsAndIsNotShownToReach => "harms, and is not shown to reach the level",
        _ => Words.Of(word).Spaced(),
    };

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

    public static string Need(Answers.Need need) => need.KeptDry ? "kept dry" : need.Level is { } level ? Words.Of(level) : "not known";
}
