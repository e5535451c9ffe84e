using Compat.Efficacy;
using Compat.Evaluation;
using Compat.Instructions;
using Compat.Knowledge;
using Compat.Mixing;
using Compat.Occasions;
using Compat.People;

namespace Compat.Snapshots;

/// <content>The sections: each a number, its length in bytes and its records, left out where it has none.</content>
internal sealed partial class SnapshotWriter
{
    private void Sections(KnowledgeData data)
    {
        Section(SectionTag.Materials, data.Materials.OrderBy(x => x.Id), Material);
        Section(SectionTag.Parts, data.Parts.OrderBy(x => x.Id), Part);
        Section(SectionTag.Agents, data.Agents.OrderBy(x => x.Id), Agent);
        Section(SectionTag.Sources, data.Sources.OrderBy(x => x.Id), Source);
        Section(SectionTag.Rules, data.Rules.OrderBy(x => x.Id), Rule, () => Cuts(data));
        Section(SectionTag.Conventions, data.Conventions.OrderBy(x => x.Key), Convention);
        Section(SectionTag.StandingRules, data.StandingRules.OrderBy(x => x.Id), Standing);
        Section(SectionTag.Organisms, data.Organisms.OrderBy(x => x.Id), Organism);
        Section(SectionTag.Levels, data.Levels.OrderBy(x => x.Level), LevelMeaning);
        Section(SectionTag.Needs, data.Needs.OrderBy(x => x.Id), Need);
        Section(SectionTag.Claims, data.Claims.OrderBy(x => x.Id), Claim);
        Section(SectionTag.MixingHazards, data.MixingHazards.OrderBy(x => x.Id), Mixing);
        Section(SectionTag.PersonRules, data.PersonRules.OrderBy(x => x.Id), PersonRule);
        Section(SectionTag.Protections, data.Protections.OrderBy(x => x.Id), Protection);
        Section(SectionTag.InstructionWords, data.InstructionWords.OrderBy(x => x.Id), InstructionWord);
        Section(SectionTag.Occasions, data.Occasions.OrderBy(x => x.Id), Occasion);
        Section(SectionTag.HarmlessMeetings, data.HarmlessMeetings.OrderBy(x => x.Id), Harmless);
        Section(SectionTag.TestStandards, data.TestStandards.OrderBy(x => x.Code), TestStandard);
    }

    /// <summary>The boundaries of all rules, axis by axis: with them a reader numbers the cells of an axis before it reads a rule.</summary>
    private void Cuts(KnowledgeData data)
    {
        var agentsOnly = new CompiledBase(data with { Materials = [], Parts = [], Rules = [] }, []);
        var boxes = data.Rules.Select(rule => RuleCompiler.BoxOf(rule, agentsOnly)).ToArray();
        for (var axis = 0; axis < CompiledRule.AxisCount; axis++)
        {
            List(new CutTable([], boxes, axis).Cuts, cut =>
            {
                Figure(cut.Numerator);
                Flag(cut.After);
            });
        }
    }

    private void Section<T>(SectionTag tag, IEnumerable<T> records, Action<T> write, Action? before = null)
    {
        var array = records.ToArray();
        if (array.Length == 0) return;
        var body = Taken(() =>
        {
            before?.Invoke();
            Pieces(array.Select(record => Taken(() => write(record))).ToArray());
        });
        Number((int)tag);
        Number(body.Length);
        _bytes.AddRange(body);
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

    private void WordList<TEnum>(IEnumerable<TEnum> members) where TEnum : struct, Enum => List(members, m => Text(Words.Of(m)));

    private void Word<TEnum>(TEnum? member) where TEnum : struct, Enum => Text(member is { } some ? Words.Of(some) : null);

    private void Organism(Organism x)
    {
        Id(x.Id);
        Text(x.Name);
        Texts(x.AlsoCalled);
        Word<OrganismGroup>(x.Group);
        Flag(x.OwnClaim);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void LevelMeaning(LevelMeaning x)
    {
        Word<Level>(x.Level);
        WordList(x.Includes);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void TestStandard(TestStandard x)
    {
        Text(x.Code.Value);
        Text(x.Name);
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
        Id(x.Id);
        WordList(x.TouchedBy);
        WordList(x.Soil);
        Word(x.Level);
        Flag(x.CleanFirst);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Occasion(Occasion x)
    {
        Id(x.Id);
        Text(x.Name);
        WordList(x.Parts);
        Word(x.AtLeast);
        Flag(x.NeedsAgainst);
        Flag(x.Hold);
        Texts(x.Adds);
        WordList(x.Papers);
        Ids(x.Sources);
        Text(x.Note);
    }

    private void Targets(IReadOnlyList<OrganismTarget> targets) => List(targets, x =>
    {
        Word(x.Group);
        Id(x.Organism);
    });

    private void Methods(MethodLimit limit)
    {
        Number((int)limit.Statement);
        Methods(limit.Methods);
    }

    private void Claim(Claim x)
    {
        Text(x.Id.Value);
        Id(x.Agent);
        List(x.With, partner =>
        {
            Id(partner.Agent);
            Limit(partner.Strength);
        });
        Limit(x.When.Strength);
        Limit(x.When.WetTime);
        Limit(x.When.Temperature);
        Limit(x.When.Ph);
        Methods(x.When.Methods);
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
        Text(x.Why);
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
        Text(x.Id.Value);
        Id(x.Agent);
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
        Text(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void Harmless(HarmlessMeeting x)
    {
        Text(x.Id.Value);
        Id(x.Agent);
        Id(x.WithAgent);
        Word(x.WithSoil);
        Id(x.WithMaterial);
        Text(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void PersonRule(PersonRule x)
    {
        Text(x.Id.Value);
        Id(x.Agent);
        WordList(x.Patients);
        Flag(x.Occupied);
        Box(x.When);
        Word<PersonVerdict>(x.Verdict);
        List(x.Duties, Duty);
        Ids(x.For);
        Text(x.Harm);
        Text(x.Why);
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void Protection(Protection x)
    {
        Id(x.Id);
        Id(x.Agent);
        Box(x.When);
        List(x.Gloves, glove =>
        {
            Text(glove.Material);
            Figure(glove.Holds);
        });
        Texts(x.GlovesFail);
        foreach (var words in new[] { x.Eyes, x.Breathing, x.Ventilation, x.Fire, x.Oxygen, x.Energised, x.Disposal, x.FirstAid, x.NotFor }) Text(words);
        Figure(x.FlashPoint);
        List(x.Limits, limit =>
        {
            Word<LimitKind>(limit.Kind);
            Figure(limit.Value.Value);
            Text(limit.Value.Unit);
            Text(limit.By);
            Id(limit.Source);
        });
        Ids(x.Sources);
        Date(x.Reviewed);
    }

    private void Reading(WordReading x)
    {
        Ids(x.Agents);
        Box(x.When);
    }

    private void InstructionWord(InstructionWord x)
    {
        Id(x.Id);
        Texts(x.Phrases);
        Maybe(x.Permits, Reading);
        Maybe(x.Forbids, Reading);
        Maybe(x.Act, act =>
        {
            Methods(act.Methods);
            Limit(act.Residence);
            List(act.Duties, Duty);
        });
        Flag(x.ListsNothing);
        Text(x.Reason);
        Ids(x.Sources);
    }
}
