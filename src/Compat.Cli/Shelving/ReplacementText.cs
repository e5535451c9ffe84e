using Compat.Cli.Text;
using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Shelving;

/// <summary>Writes what a replacement means for people: what is lost first.</summary>
internal sealed class ReplacementText(Page page, Names names)
{
    /// <summary>Writes it.</summary>
    public void Write(Replacement change)
    {
        page.Line($"{names.Product(change.New.Value)} in place of {names.Product(change.Old.Value)}", 0, 2);
        Part("Lost: the old one serves, the new one does not", change.Lost, cell => ShelfWording.Of(cell.New));
        Part("Refused: the instructions do not list the new one", change.Refused, _ => null);
        page.Heading("On the label");
        page.Item($"highest level claimed: {Level(change.LabelLevels.Old)} before, {Level(change.LabelLevels.New)} now");
        page.Item(change.GroupsLost.Count == 0 ? "no group that the old label names is lost" : $"no longer claimed: {string.Join(", ", change.GroupsLost.Select(names.Target))}");
        Part("Must stay wet longer than before", change.LongerWet, cell => $"{FigureWording.Duration(Replacement.ContactTime(cell.New))}, before {FigureWording.Duration(Replacement.ContactTime(cell.Old))}");
        List("New duties", change.NewDuties.Select(duty => DutyWording.Of(duty, names)));
        List("Staff: new protection", change.NewProtection.Select(one => $"{names.Agent(one.Agent.Value)}: gloves of {Gloves(one)}{(one.Eyes is null ? "" : "; eyes: " + one.Eyes)}{(one.Ventilation is null ? "" : "; " + one.Ventilation)}"));
        List("At the change: what is on record where the two meet", change.AtTheChange.Hazards.Select(found => $"{found.First} and {found.Other}: {found.Hazard.Why}"));
        if (change.AtTheChange.Hazards.Count == 0) page.Item("no hazard is on record; that does not mean safe: rinse, and use fresh cloths");
        Part("Uses go on counting: what the old one used up is not given back", change.GoOnCounting, _ => null);
        Part("Gained", change.Gained, cell => ShelfWording.Of(cell.New));
        ShelfTable.Cautions(page);
    }

    private static string Level(Compat.Model.Level? level) => level is { } one ? Words.Of(one) : "none";

    private static string Gloves(Compat.Model.Protection one) => one.Gloves.Count == 0 ? "a material that its data sheet names" : string.Join(" or ", one.Gloves.Select(glove => glove.Material));

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
