namespace Compat.Instructions;

/// <summary>Reads the words of one edition: a permission narrow, a prohibition wide.</summary>
internal sealed class EditionReader(PhraseTable table, Device device, InstructionsEdition edition)
{
    private static readonly DevicePartId?[] NoPart = [null];

    private readonly RuleDrafts _drafts = new(table, device, edition);
    private readonly List<InstructionReading> _readings = [];

    public IReadOnlyList<Rule> Rules => _drafts.Rules;

    public IReadOnlyList<InstructionReading> Readings => _readings;

    public bool HasTooLongId => _drafts.HasTooLongId;

    public void Read()
    {
        foreach (var phrase in edition.Says)
        {
            var word = table.Find(phrase.Words);
            if (IsProhibition(phrase, word)) Prohibition(phrase, word);
            else if (word is null) Note(phrase, null, ReadingOutcome.NotInTable);
            else if (word.Permits is { } permits) Permission(phrase, word, permits);
            else Note(phrase, word, word.Act is null ? ReadingOutcome.ListsNothing : ReadingOutcome.SaysHow);
        }
    }

    /// <summary>Words that the table reads as a prohibition only, such as 'do not soak', forbid even where nobody marked them.</summary>
    private static bool IsProhibition(InstructionPhrase phrase, InstructionWord? word) =>
        phrase.Forbids || word is { Permits: null, Forbids: not null, ListsNothing: false };

    private void Prohibition(InstructionPhrase phrase, InstructionWord? word)
    {
        var rules = word?.Forbids is { } forbids ? _drafts.Forbid(phrase, word, forbids) : _drafts.ForbidEverything(phrase, word);
        Note(phrase, word, word?.Forbids is null ? ReadingOutcome.ForbidsUnread : ReadingOutcome.Forbids, rules);
    }

    private void Permission(InstructionPhrase phrase, InstructionWord word, WordReading permits)
    {
        var hows = phrase.How.Select(how => (Words: how, Word: table.Find(how))).ToArray();
        var isRead = hows.All(how => how.Word?.Act is not null);
        var rules = isRead ? Permit(phrase, word, permits, [.. hows.Select(how => how.Word!.Act!)]) : [];
        Note(phrase, word, !isRead ? ReadingOutcome.HowNotRead : rules.Count > 0 ? ReadingOutcome.Permits : ReadingOutcome.NoMethodLeft, rules);
        foreach (var (words, how) in hows)
        {
            var forbidding = how?.Forbids is { } forbids ? _drafts.Forbid(phrase with { Words = words, How = [] }, how, forbids) : [];
            var outcome = how is null ? ReadingOutcome.NotInTable : how.Act is null ? ReadingOutcome.ListsNothing : ReadingOutcome.SaysHow;
            _readings.Add(Reading(phrase, words, how, outcome, forbidding) with { HowOf = phrase.Words });
        }
    }

    /// <summary>One rule an agent and a target: what the edition says of how in general may differ from part to part.</summary>
    private List<RuleId> Permit(InstructionPhrase phrase, InstructionWord word, WordReading permits, IReadOnlyList<WordAct> hows)
    {
        var general = edition.Says.Select(said => (said.Parts, Act: GeneralAct(said))).Where(said => said.Act is not null).ToArray();
        var differs = general.Any(said => said.Parts.Count > 0);
        var targets = phrase.Parts.Count > 0 ? phrase.Parts.AsEnumerable<DevicePartId?>() : differs ? device.Parts.Select(part => (DevicePartId?)part.Id)
            : NoPart;
        var made = new List<RuleId>();
        foreach (var part in targets)
        {
            var acts = general.Where(said => said.Parts.Count == 0 || said.Parts.Contains(part!)).Select(said => said.Act!);
            if (word.Act is { } own) acts = acts.Prepend(own);
            made.AddRange(_drafts.Permit(phrase, word, permits, [.. hows, .. acts], part));
        }

        return made;
    }

    /// <summary>What words that stand by themselves say of how everything is done; null where they say nothing of it.</summary>
    private WordAct? GeneralAct(InstructionPhrase said) =>
        table.Find(said.Words) is not { Act: { } act } word || word.Permits is not null || (said.Forbids && word.Forbids is null) ? null : act;

    private void Note(InstructionPhrase phrase, InstructionWord? word, ReadingOutcome outcome, IReadOnlyList<RuleId>? rules = null) =>
        _readings.Add(Reading(phrase, phrase.Words, word, outcome, rules ?? []));

    private InstructionReading Reading(
        InstructionPhrase phrase, string words, InstructionWord? word, ReadingOutcome outcome, IReadOnlyList<RuleId> rules) => new()
        {
            Device = device.Id,
            Edition = edition.Id,
            Words = words,
            Parts = phrase.Parts,
            Word = word?.Id,
            Outcome = outcome,
            Rules = rules,
            Nearest = word is null ? table.Nearest(words) : [],
        };
}
