using Compat.Efficacy;
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
        Section(SectionTag.PartCare, data.Parts.Where(HasCare).OrderBy(x => x.Id), PartCare);
        Section(SectionTag.StandingFacts, data.StandingRules.Where(x => !x.SpeaksOfRules).OrderBy(x => x.Id), StandingFact);
        Section(SectionTag.Organisms, data.Organisms.OrderBy(x => x.Id), Organism);
        Section(SectionTag.Levels, data.Levels.OrderBy(x => x.Level), LevelMeaning);
        Section(SectionTag.Needs, data.Needs.OrderBy(x => x.Id), Need);
        Section(SectionTag.Claims, data.Claims.OrderBy(x => x.Id), Claim);
        Section(SectionTag.MixingHazards, data.MixingHazards.OrderBy(x => x.Id), Mixing);
        Section(SectionTag.PersonRules, data.PersonRules.OrderBy(x => x.Id), PersonRule);
        Section(SectionTag.Protections, data.Protections.OrderBy(x => x.Id), Protection);
        Section(SectionTag.InstructionWords, data.InstructionWords.OrderBy(x => x.Id), InstructionWord);
        Section(SectionTag.Occasions, data.Occasions.OrderBy(x => x.Id), Occasion);
        Section(SectionTag.Orders, data.Conventions.Where(x => Knowledge.Convention.NamesOrder(x.Key)).OrderBy(x => x.Key), Order);
        RuleRemarks(data.Rules);
    }

    private void RuleRemarks(IEnumerable<Rule> rules) =>
        Section(SectionTag.RuleRemarks, rules.Where(x => x.IsSecondSource || x.RestsOn.Count > 0).OrderBy(x => x.Id), RuleRemark);

    private void Section<T>(SectionTag tag, IEnumerable<T> records, Action<T> write)
    {
        var array = records.ToArray();
        if (array.Length == 0) return;
        var start = _bytes.Count;
        List(array, write);
        var body = _bytes.GetRange(start, _bytes.Count - start);
        _bytes.RemoveRange(start, body.Count);
        Number((int)tag);
        Number(body.Count);
        _bytes.AddRange(body);
    }

    private void WordList<TEnum>(IEnumerable<TEnum> members) where TEnum : struct, Enum => List(members, m => Text(Words.Of(m)));

    private void Word<TEnum>(TEnum? member) where TEnum : struct, Enum => Text(member is { } some ? Words.Of(some) : null);

    private static bool HasCare(PartType x) =>
        x.Soil is not null || x.WayOut is not null || x.FunctionCheck is not null || x.DryBeforePower is not null || x.WaterIngress is not null;

    private void Order(Convention x)
    {
        Word<ConventionKey>(x.Key);
        WordList(x.Consequences);
        WordList(x.Hazards);
        Text(x.Reason);
    }

    private void PartCare(PartType x)
    {
        Id(x.Id);
        Maybe(x.Soil, WordList);
        Maybe(x.WayOut, WordList);
        Text(x.FunctionCheck);
        Figure(x.DryBeforePower);
        Maybe(x.WaterIngress, ingress =>
        {
            Number(ingress.Numeral);
            Text(ingress.Means);
        });
    }

    private void RuleRemark(Rule x)
    {
        Text(x.Id.Value);
        Flag(x.IsSecondSource);
        WordList(x.RestsOn);
    }

    private void StandingFact(StandingRule x)
    {
        Standing(x);
        Word(x.NeverAbove);
        Word(x.Patient);
        Text(x.BoundBy);
        Id(x.MixingWith);
        Word(x.MixingWithSoil);
    }

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
        WordList(x.Effects);
        Texts(x.Forms);
        Word<MixingSeverity>(x.Severity);
        WordList(x.SeparatedBy);
        Text(x.How);
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
        foreach (var words in new[] { x.Eyes, x.Breathing, x.Ventilation, x.Fire, x.Oxygen, x.Energised, x.Disposal, x.FirstAid }) Text(words);
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
