using Compat.Cli.Wording;
using Compat.Planning;

namespace Compat.Cli.Cards;

/// <summary>Names as a card says them: those that the site uses, never an id where there is a name.</summary>
internal sealed class CardNames
{
    private readonly Names _names;
    private readonly Dictionary<DevicePartId, string> _parts;
    private readonly HashSet<DevicePartId> _wet;

    /// <summary>The names of a plan.</summary>
    public CardNames(PlanSheet sheet, Names names)
    {
        _names = names;
        Device = names.FindDevice(sheet.Question.Device.Value)!;
        _parts = Device.Parts.ToDictionary(part => part.Id, part => part.Name ?? part.Id.Value.Replace('-', ' '));
        _wet = [.. sheet.Parts.Where(part => !part.Need.KeptDry).Select(part => part.Part.Id)];
    }

    /// <summary>The device.</summary>
    public Device Device { get; }

    /// <summary>A product.</summary>
    public string Product(ProductId id) => _names.FindProduct(id.Value)?.Name ?? id.Value;

    /// <summary>Parts, joined; 'every part' where all are meant that may become wet at all.</summary>
    public string Parts(IEnumerable<DevicePartId> ids)
    {
        var all = ids.ToArray();
        return all.Length > 1 && _wet.Count == all.Length && all.All(_wet.Contains) ? EveryPart : string.Join(", ", all.Select(id => _parts[id]));
    }

    /// <summary>A part.</summary>
    public string Part(DevicePartId id) => _parts[id];

    /// <summary>What stands for all parts that may become wet.</summary>
    public const string EveryPart = "every part";
}
