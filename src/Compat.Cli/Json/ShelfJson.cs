using System.Text.Json;

namespace Compat.Cli.Json;

/// <summary>Writes a shelf and a replacement as <c>schemas/shelf.schema.json</c> describes.</summary>
internal sealed class ShelfJson(Utf8JsonWriter json, Names names)
{
    /// <summary>The shelf, and what a replacement means where one was asked.</summary>
    public void Write(Shelf shelf, Replacement? change)
    {
        json.WriteStartObject();
        json.WriteStringList("products", shelf.Products.Select(product => product.Value));
        json.WriteList("rows", shelf.Rows, row =>
        {
            json.WriteStartObject();
            json.WriteString("device", row.Device.Value);
            json.WriteString("part", row.Part.Id.Value);
            json.WriteStringList("types", row.Part.OneOfTypes.Select(type => type.Value));
            if (row.Need.Level is { } level) json.WriteString("level", Words.Of(level));
            json.WriteBoolean("keptDry", row.Need.KeptDry);
            json.WriteBoolean("unserved", row.IsUnserved);
            json.WriteList("cells", row.Cells, Write);
            json.WriteEndObject();
        });
        if (change is not null) Write(change);
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(shelf.Identity);
        json.WriteEndObject();
    }

    private void Write(ShelfCell cell)
    {
        json.WriteStartObject();
        json.WriteString("product", cell.Product.Value);
        json.WriteString("word", Words.Of(cell.Word));
        json.WriteStringList("more", cell.More.Select(more => Words.Of(more)));
        if (cell.Answer?.Window?.ShortestContactTime is { } wet) json.WriteNumber("contactTimeSeconds", JsonWriting.Short(wet));
        json.WriteEndObject();
    }

    private void Write(Replacement change)
    {
        json.WriteStartObject("replacement");
        json.WriteString("old", change.Old.Value);
        json.WriteString("new", change.New.Value);
        if (change.LabelLevels.Old is { } before) json.WriteString("levelBefore", Words.Of(before));
        if (change.LabelLevels.New is { } now) json.WriteString("levelNow", Words.Of(now));
        json.WriteStringList("groupsLost", change.GroupsLost.Select(target => target.ToString()));
        Places("lost", change.Lost);
        Places("gained", change.Gained);
        Places("longerWet", change.LongerWet);
        Places("refused", change.Refused);
        Places("goOnCounting", change.GoOnCounting);
        json.WriteStringList("newDuties", change.NewDuties.Select(duty => DutyWording.Of(duty, names).Replace('\u00a0', ' ')));
        json.WriteStringList("newProtection", change.NewProtection.Select(one => one.Id.Value));
        json.WriteStringList("hazards", change.AtTheChange.Hazards.Select(found => found.Hazard.Id.Value).Distinct());
        json.WriteEndObject();
    }

    private void Places(string name, IReadOnlyList<ReplacedCell> cells) => json.WriteStringList(name, cells.Select(cell => $"{cell.Device}/{cell.Part}"));
}
