using System.Runtime.CompilerServices;
using Compat.Validation;

namespace Compat.Snapshots;

/// <content>The sections: each a number, its length in bytes and its records, left out where it has none.</content>
internal sealed partial class SnapshotWriter
{
    private void Sections(KnowledgeData data)
    {
        Section(SectionTag.Materials, data.Materials, x => x.Id, Material);
        Section(SectionTag.Parts, data.Parts, x => x.Id, Part);
        Section(SectionTag.Agents, data.Agents, x => x.Id, Agent);
        Section(SectionTag.Sources, data.Sources, x => x.Id, Source);
        Section(SectionTag.Rules, data.Rules, x => x.Id, Rule, () => Cuts(data));
        Section(SectionTag.Conventions, data.Conventions, x => x.Key, Convention);
        Section(SectionTag.StandingRules, data.StandingRules, x => x.Id, Standing);
        Section(SectionTag.Organisms, data.Organisms, x => x.Id, Organism);
        Section(SectionTag.Levels, data.Levels, x => x.Level, LevelMeaning);
        Section(SectionTag.Needs, data.Needs, x => x.Id, Need);
        Section(SectionTag.Claims, data.Claims, x => x.Id, Claim);
        Section(SectionTag.MixingHazards, data.MixingHazards, x => x.Id, Mixing);
        Section(SectionTag.PersonRules, data.PersonRules, x => x.Id, PersonRule);
        Section(SectionTag.Protections, data.Protections, x => x.Id, Protection);
        Section(SectionTag.InstructionWords, data.InstructionWords, x => x.Id, InstructionWord);
        Section(SectionTag.Occasions, data.Occasions, x => x.Id, Occasion);
        Section(SectionTag.HarmlessMeetings, data.HarmlessMeetings, x => x.Id, Harmless);
        Section(SectionTag.TestStandards, data.TestStandards, x => x.Code, TestStandard);
    }

    /// <summary>The boundaries of all rules, axis by axis: with them a reader numbers the cells of an axis before it reads a rule.</summary>
    private void Cuts(KnowledgeData data)
    {
        var agentsOnly = new CompiledBase(data with { Materials = [], Parts = [], Rules = [] }, []);
        var boxes = data.Rules.Select(rule => RuleCompiler.BoxOf(rule, agentsOnly)).ToArray();
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            List(new CutTable([], boxes.Select(box => box[axis])).Cuts, cut =>
            {
                Figure(cut.Numerator);
                Flag(cut.After);
            });
        }
    }

    private void Section<T, TKey>(SectionTag tag, IReadOnlyList<T> records, Func<T, TKey> key, Action<T> write, Action? before = null, [CallerArgumentExpression(nameof(records))] string what = "")
        where T : class
    {
        var array = Sorted(records, key, what);
        if (array.Length == 0) return;
        var body = Taken(() =>
        {
            if (_faults is null) before?.Invoke();
            Pieces(array.Select(record => Taken(() => write(record))).ToArray());
        });
        Number((int)tag);
        Number(body.Length);
        _bytes.AddRange(body);
    }

    private void Records<T, TKey>(IReadOnlyList<T> records, Func<T, TKey> key, Action<T> write, [CallerArgumentExpression(nameof(records))] string what = "") where T : class =>
        List(Sorted(records, key, what), write, what);

    /// <summary>Records in the order of their keys, so that the order of files changes nothing.</summary>
    private T[] Sorted<T, TKey>(IReadOnlyList<T> records, Func<T, TKey> key, [CallerArgumentExpression(nameof(records))] string what = "") where T : class
    {
        if (_faults is not null && (records is null || records.Contains(null!))) Missing(what);
        return records is null ? [] : [.. records.Where(record => record is not null).OrderBy(key)];
    }

    /// <summary>What something writes, taken off again.</summary>
    private byte[] Taken(Action write)
    {
        var start = _bytes.Count;
        write();
        var taken = _bytes.GetRange(start, _bytes.Count - start).ToArray();
        _bytes.RemoveRange(start, taken.Length);
        return taken;
    }

    private void Organism(Organism x)
    {
        Begin(RecordKind.Organism, x.Id);
        Must(x.Name);
        Texts(x.AlsoCalled);
        Word<OrganismGroup>(x.Group);
        Flag(x.OwnClaim);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void LevelMeaning(LevelMeaning x)
    {
        At(RecordKind.Level, Words.Of(x.Level));
        Word<Level>(x.Level);
        WordList(x.Includes);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void TestStandard(TestStandard x)
    {
        At(RecordKind.TestStandard, x.Code?.Value ?? "");
        Must(x.Code?.Value);
        Must(x.Name);
        Word<TestField>(x.Field);
        Word<TestStep>(x.Step);
        WordList(x.On);
        Flag(x.Wiping);
        Targets(x.Shows);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Need(NeedRule x)
    {
        Begin(RecordKind.Need, x.Id);
        WordList(x.TouchedBy);
        WordList(x.Soil);
        Word(x.Level);
        Flag(x.CleanFirst);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Occasion(Occasion x)
    {
        Begin(RecordKind.Occasion, x.Id);
        Must(x.Name);
        WordList(x.Parts);
        Word(x.AtLeast);
        Flag(x.NeedsAgainst);
        Flag(x.Hold);
        Texts(x.Adds);
        WordList(x.Papers);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Targets(IReadOnlyList<OrganismTarget> targets, [CallerArgumentExpression(nameof(targets))] string what = "") => List(targets, x =>
    {
        Word(x.Group);
        Id(x.Organism);
    }, what);

    private void Claim(Claim x)
    {
        Begin(RecordKind.Claim, x.Id);
        Must(x.Agent);
        List(x.With, partner =>
        {
            Must(partner.Agent);
            Limit(partner.Strength);
        });
        In(x.When, box =>
        {
            // A published claim has no dilution, and no place for one: validation refuses it.
            if (_faults is not null) Limit(box.Dilution);
            Limit(box.Strength);
            Limit(box.ContactTime);
            Limit(box.Temperature);
            Limit(box.Ph);
            Methods(box.Methods);
        });
        Word(x.Reaches);
        Targets(x.Kills);
        Ids(x.For);
        Word(x.Where);
        Targets(x.DoesNotKill);
        WordList(x.Needs);
        WordList(x.StandsSoil);
        Maybe(x.Bath, BathUse);
        Text(x.Refuted);
        Word<ClaimKind>(x.Kind);
        Must(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void BathUse(BathUse x)
    {
        MaybeRange(x.Minimum);
        Figure(x.Reuse);
        Text(x.Test);
    }

    private void Mixing(MixingHazard x)
    {
        Begin(RecordKind.Mixing, x.Id);
        Must(x.Agent);
        Id(x.WithAgent);
        Word(x.WithSoil);
        Id(x.WithMaterial);
        Text(x.OnlyWhere);
        MaybeRange(x.Strength);
        MaybeRange(x.WithStrength);
        Word(x.AgentRestsOn);
        Word(x.WithAgentRestsOn);
        WordList(x.Effects);
        Texts(x.Forms);
        Word<MixingSeverity>(x.Severity);
        WordList(x.SeparatedBy);
        Text(x.How);
        Must(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void Harmless(HarmlessMeeting x)
    {
        Begin(RecordKind.HarmlessMeeting, x.Id);
        Must(x.Agent);
        Id(x.WithAgent);
        Word(x.WithSoil);
        Id(x.WithMaterial);
        Must(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void PersonRule(PersonRule x)
    {
        Begin(RecordKind.PersonRule, x.Id);
        Must(x.Agent);
        WordList(x.Patients);
        Flag(x.Occupied);
        In(x.When, Box);
        Word<PersonVerdict>(x.Verdict);
        List(x.Duties, Duty);
        Ids(x.For);
        Must(x.Harm);
        Must(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void Protection(Protection x)
    {
        Begin(RecordKind.Protection, x.Id);
        Must(x.Agent);
        In(x.When, Box);
        List(x.Gloves, glove =>
        {
            Must(glove.Material);
            Figure(glove.Holds);
        });
        Texts(x.GlovesFail);
        Text(x.Eyes);
        Text(x.Breathing);
        Text(x.Ventilation);
        Text(x.Fire);
        Text(x.Oxygen);
        Text(x.Energised);
        Text(x.Disposal);
        Text(x.FirstAid);
        Text(x.NotFor);
        Figure(x.FlashPoint);
        List(x.Limits, limit =>
        {
            Word<LimitKind>(limit.Kind);
            Figure(limit.Value.Value);
            Must(limit.Value.Unit);
            Must(limit.By);
            Must(limit.Source);
        });
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void Reading(WordReading x)
    {
        Ids(x.Agents);
        In(x.When, Box);
    }

    private void InstructionWord(InstructionWord x)
    {
        Begin(RecordKind.InstructionWord, x.Id);
        Texts(x.Phrases);
        Maybe(x.Permits, Reading);
        Maybe(x.Forbids, Reading);
        Maybe(x.Act, act =>
        {
            Methods(act.Methods);
            Limit(act.ExposureTime);
            List(act.Duties, Duty);
        });
        Flag(x.ListsNothing);
        Must(x.Reason);
        Ids(x.Sources);
    }
}
