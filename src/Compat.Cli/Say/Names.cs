namespace Compat.Cli.Say;

/// <summary>The names and units of a knowledge base and of the sites laid over it, looked up by id where they are said.</summary>
internal sealed class Names(KnowledgeBase kb)
{
    private readonly Scope _records = kb.Compiled.Records;

    public Product? FindProduct(string id) => _records.Products.Find(id);
    public Device? FindDevice(string id) => _records.Devices.Find(id);
    public Rule? FindRule(string id) => _records.Rules.Find(id) ?? kb.InstructionRules.FirstOrDefault(rule => rule.Id.Value == id);
    public Source? FindSource(SourceId id) => _records.Sources.Find(id.Value);
    public Claim? FindClaim(string id) => kb.Data.Claims.FirstOrDefault(claim => claim.Id.Value == id);
    public TestStandard? FindTest(string code) => kb.Data.TestStandards.FirstOrDefault(test => test.Code.Value == code);
    public StandingRule? FindStandingRule(string id) => kb.Data.StandingRules.FirstOrDefault(rule => rule.Id.Value == id);

    public string Target(OrganismTarget target) => target.Group is { } group ? NeedWording.Group(group) : Target(target.Organism!.Value);

    /// <summary>A level, a group or an organism by its word or id, as it is to be reached or killed.</summary>
    public string Target(string word) =>
        Words.TryParse<Level>(word, out _) ? word + " level"
        : kb.Data.Organisms.FirstOrDefault(one => one.Id.Value == word) is { } organism ? organism.Name
        : Words.TryParse<OrganismGroup>(word, out var group) ? NeedWording.Group(group)
        : word.Spaced();

    public string Agent(string id) => Both(id, _records.Agents.Find(id)?.Name);

    public string Part(PartId id) => Both(id.Value, _records.Parts.Find(id.Value)?.Name);

    /// <summary>A part type by its name alone, for readers who have no use for ids.</summary>
    public string PartName(PartId id) => _records.Parts.Find(id.Value)?.Name ?? id.Value.Spaced();

    public string Material(string id) => Both(id, _records.Materials.Find(id)?.Name);

    public string Product(string id) => Both(id, _records.Products.Find(id)?.Name);

    public string Device(string id) => Both(id, _records.Devices.Find(id)?.Name);

    /// <summary>What an id names, whichever kind of record has it; the id itself where none has.</summary>
    public string Anything(string id) => Both(
        id,
        _records.Materials.Find(id)?.Name ?? _records.Parts.Find(id)?.Name ?? _records.Agents.Find(id)?.Name
        ?? _records.Products.Find(id)?.Name ?? _records.Devices.Find(id)?.Name);

    /// <summary>The unit an agent's strength is shown in: its own, else its nearest ancestor's; null where it has none.</summary>
    public StrengthUnit? Unit(AgentId? agent)
    {
        for (var id = agent; id is not null && _records.Agents.Find(id.Value) is { } record; id = record.Under)
            if (record.Basis is not null) return record.Basis;
        return null;
    }

    public bool IsAtOrBelow(AgentId? agent, string ancestor) => IsAtOrBelow(agent?.Value, ancestor, id => _records.Agents.Find(id)?.Under?.Value);

    /// <summary>Whether a material or a part type lies at or below another one of its kind.</summary>
    public bool IsAtOrBelow(string id, string ancestor) =>
        IsAtOrBelow(id, ancestor, one => _records.Materials.Find(one)?.Under?.Value ?? _records.Parts.Find(one)?.Under?.Value);

    public bool IsPart(string id) => _records.Parts.Find(id) is not null;

    private static bool IsAtOrBelow(string? id, string ancestor, Func<string, string?> under)
    {
        for (var one = id; one is not null; one = under(one))
            if (one == ancestor) return true;
        return false;
    }

    private static string Both(string id, string? name) =>
        name is null || string.Equals(name.Replace(' ', '-'), id, StringComparison.OrdinalIgnoreCase) ? id : $"{name} ({id})";
}

/// <summary>Words what is asked about.</summary>
internal static class SubjectWording
{
    /// <summary>A part with what was named of its materials and how that was taken; the materials where no part is asked.</summary>
    /// <param name="target">The part or device; null where materials alone are asked.</param>
    public static string Of(string? target, Question question, Names names)
    {
        var materials = string.Join(", ", question.Materials.Select(slot => string.Join(" or ", slot.OneOf.Select(id => names.Material(id.Value)))));
        var others = question.MaterialsKnown == false ? ", others not known" : "";
        if (target is null) return materials + others;
        if (materials.Length == 0) return target;
        return question.MaterialsKnown == true ? $"{target} made of {materials} and of nothing else" : $"{target} with {materials} among its materials{others}";
    }
}

/// <summary>The texts of the command, for JSON: without the blanks that only keep words on one line.</summary>
internal sealed class EnglishTexts(Names names) : AnswerTexts
{
    public override string Of(Reason reason, Question question) => ReasonWording.Of(reason, question, names).Unjoined();
    public override string Of(Limit limit, Answer answer) => LimitWording.Of(limit, answer, names).Unjoined();
    public override string Of(Duty duty) => DutyWording.Of(duty, names).Unjoined();
    public override string Of(KillReason reason, Answer answer) => KillWording.Of(reason, answer.Window, answer.Question, names).Unjoined();
    public override string Of(PeopleJudgement people) => PeopleWording.Of(people, names).Unjoined();
    public override string Of(WindowClosure closure, Answer answer) => WindowWording.Of(closure, answer.Window!, answer.Question, names).Unjoined();
    public override string Of(Caution caution) => VerdictWording.Of(caution);
    public override IReadOnlyList<string> WouldEstablish(Answer answer) => EstablishWording.Of(answer, names).Select(English.Unjoined).ToArray();
}
