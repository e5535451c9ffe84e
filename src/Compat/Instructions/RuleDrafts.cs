namespace Compat.Instructions;

/// <summary>Makes rules of what words of one edition are read as. Their ids come from the device, the edition, the word, the agent and the part.</summary>
internal sealed class RuleDrafts(PhraseTable table, Device device, InstructionsEdition edition)
{
    private static readonly DevicePartId?[] NoPart = [null];

    private readonly List<Rule> _rules = [];
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);

    public IReadOnlyList<Rule> Rules => _rules;

    public bool HasTooLongId { get; private set; }

    /// <summary>A permission: every axis it is silent on stays unstated, and all that is said of how must hold at once.</summary>
    /// <returns>The rules; none where no method is left.</returns>
    public List<RuleId> Permit(InstructionPhrase phrase, InstructionWord word, WordReading permits, IReadOnlyList<WordAct> acts, DevicePartId? part)
    {
        var made = new List<RuleId>();
        var methods = Methods(permits.When.Methods, acts);
        if (methods is { Statement: AxisStatement.Within, Methods.IsEmpty: true }) return made;
        foreach (var agent in permits.Agents)
        {
            if (Name($"{word.Id}.permits.{agent}", part, again: true) is not { } id) continue;
            _rules.Add(Draft(id, part, agent, phrase, word, "narrow") with
            {
                Allows = true,
                WholeClass = table.IsClass(agent),
                When = permits.When with
                {
                    Strength = table.HasBasis(agent) ? Stated(permits.When.Strength) : default,
                    ExposureTime = ExposureTime(permits.When.ExposureTime, acts),
                    Temperature = Stated(permits.When.Temperature),
                    Ph = Stated(permits.When.Ph),
                    Uses = Stated(permits.When.Uses),
                    Methods = methods,
                },
                Duties = [.. acts.SelectMany(act => act.Duties)],
            });
            made.Add(id);
        }

        return made;
    }

    /// <summary>A prohibition: what is said beside it of how does not narrow it.</summary>
    public List<RuleId> Forbid(InstructionPhrase phrase, InstructionWord word, WordReading forbids)
    {
        var made = new List<RuleId>();
        foreach (var agent in forbids.Agents)
            Forbid(made, $"{word.Id}.forbids.{agent}", phrase, agent,
                part => (id => Draft(id, part, agent, phrase, word, "wide") with { When = forbids.When }));
        return made;
    }

    /// <summary>Words that forbid, and nobody can say what.</summary>
    public List<RuleId> ForbidEverything(InstructionPhrase phrase, InstructionWord? word)
    {
        var made = new List<RuleId>();
        var number = edition.Says.TakeWhile(said => !ReferenceEquals(said, phrase)).Count() + 1;
        Forbid(made, $"unread-{number}", phrase, AgentClass.Root, part => (id => Draft(id, part, AgentClass.Root, phrase, word, "wide") with
        {
            Why = $"The instructions forbid `{phrase.Words}`, and the table of words cannot say what that covers: until somebody reads it, everything counts "
                + $"as forbidden.",
        }));
        return made;
    }

    private void Forbid(List<RuleId> made, string tail, InstructionPhrase phrase, AgentId agent, Func<DevicePartId?, Func<RuleId, Rule>> draft)
    {
        var targets = phrase.Parts.Count > 0 ? phrase.Parts.AsEnumerable<DevicePartId?>() : NoPart;
        foreach (var part in targets)
        {
            if (Name(tail, part, again: false) is not { } id) continue;
            if (_ids.Add(id.Value)) _rules.Add(draft(part)(id));
            made.Add(id);
        }
    }

    private Rule Draft(RuleId id, DevicePartId? part, AgentId agent, InstructionPhrase phrase, InstructionWord? word, string reading) => new()
    {
        Id = id,
        Target = part is null ? RuleTarget.On(device.Id) : RuleTarget.On(device.Id, part),
        Agent = agent,
        Allows = false,
        Why = $"`{phrase.Words}`{(phrase.How.Count == 0 ? "" : " (" + string.Join(", ", phrase.How) + ")")} in the instructions is read {reading}. "
            + $"{word?.Reason}",
        KnownBy = KnownBy.Instructions,
        Edition = edition.Id,
        Sources = [.. edition.Source is { } source ? new[] { source } : [], .. word?.Sources ?? []],
        Reviewed = edition.Dated ?? table.Dated,
    };

    /// <summary>The id of a rule; a number behind it where the same words permit the same agent again, on other terms.</summary>
    private RuleId? Name(string tail, DevicePartId? part, bool again)
    {
        var text = $"{device.Id}.{edition.Id}.{tail}{(part is null ? "" : "." + part)}";
        var id = text;
        for (var number = 2; again && !_ids.Add(id); number++) id = $"{text}.{number}";
        if (DottedId.IsWellFormed(id)) return new(id);
        HasTooLongId = true;
        return null;
    }

    private static AxisLimit Stated(AxisLimit limit) => limit.Statement == AxisStatement.NotNamed ? AxisLimit.Unstated : limit;

    private static AxisLimit ExposureTime(AxisLimit read, IReadOnlyList<WordAct> acts)
    {
        var all = acts.Select(act => act.ExposureTime).Prepend(read).ToArray();
        var ranges = all.Where(limit => limit.Statement == AxisStatement.Within).Select(limit => limit.Range).ToArray();
        if (ranges.Length > 0) return AxisLimit.Within(ranges.Aggregate((a, b) => a.Intersect(b)));
        return all.Any(limit => limit.Statement == AxisStatement.Any) ? AxisLimit.Any : AxisLimit.Unstated;
    }

    private static MethodLimit Methods(MethodLimit read, IReadOnlyList<WordAct> acts)
    {
        var said = acts.Where(act => !act.Methods.IsEmpty).Select(act => act.Methods).ToArray();
        if (said.Length == 0) return read.Statement == AxisStatement.NotNamed ? MethodLimit.Unstated : read;
        var start = read.Statement == AxisStatement.Within ? read.Methods : MethodSet.All;
        return new(AxisStatement.Within, said.Aggregate(start, (left, methods) => left.Intersect(methods)));
    }
}
