namespace Compat.Instructions;

/// <summary>What the words of the instructions of all devices became.</summary>
/// <param name="Rules">The rules.</param>
/// <param name="Readings">How each was read.</param>
/// <param name="WithoutId">Editions of which a rule could not be named, its id being too long; validation refuses their site.</param>
internal sealed record PhraseRules(
    IReadOnlyList<Rule> Rules, IReadOnlyList<InstructionReading> Readings, IReadOnlyList<(DeviceId Device, EditionId Edition)> WithoutId)
{
    private static readonly PhraseRules None = new([], [], []);

    public static PhraseRules Of(KnowledgeData data, IReadOnlyList<Site> sites)
    {
        if (sites.All(site => site.Devices.All(device => device.Instructions.All(edition => edition.Says.Count == 0)))) return None;
        var table = new PhraseTable(data);
        var rules = new List<Rule>();
        var readings = new List<InstructionReading>();
        var withoutId = new List<(DeviceId, EditionId)>();
        foreach (var device in sites.SelectMany(site => site.Devices))
        {
            foreach (var edition in device.Instructions.Where(e => e.Says.Count > 0))
            {
                var reader = new EditionReader(table, device, edition);
                reader.Read();
                rules.AddRange(reader.Rules);
                readings.AddRange(reader.Readings);
                if (reader.HasTooLongId) withoutId.Add((device.Id, edition.Id));
            }
        }

        return new(rules, readings, withoutId);
    }
}
