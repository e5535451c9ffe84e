using Compat.Efficacy;
using Compat.Instructions;
using Compat.Knowledge;
using Compat.Mixing;
using Compat.Occasions;
using Compat.People;

namespace Compat.Snapshots;

/// <content>The sections. One with an unknown number is skipped by its length; one that does not fill its length is refused.</content>
internal sealed partial class SnapshotReader
{
    private KnowledgeData WithSections(KnowledgeData data)
    {
        while (_at < _bytes.Length)
        {
            var tag = (SectionTag)Math.Min(int.MaxValue, Number());
            var length = Count();
            var end = _at + length;
            data = Section(data, tag, end);
            if (_at != end) throw new SnapshotException("a section does not fill its length");
        }

        return data;
    }

    private KnowledgeData Section(KnowledgeData data, SectionTag tag, int end)
    {
        switch (tag)
        {
            case SectionTag.PartCare: return data with { Parts = WithCare(data.Parts) };
            case SectionTag.StandingFacts: return data with { StandingRules = [.. data.StandingRules, .. List(StandingFact)] };
            case SectionTag.Organisms: return data with { Organisms = List(Organism) };
            case SectionTag.Levels: return data with { Levels = List(LevelMeaning) };
            case SectionTag.Needs: return data with { Needs = List(Need) };
            case SectionTag.Claims: return data with { Claims = List(Claim) };
            case SectionTag.MixingHazards: return data with { MixingHazards = List(Mixing) };
            case SectionTag.PersonRules: return data with { PersonRules = List(PersonRule) };
            case SectionTag.Protections: return data with { Protections = List(Protection) };
            case SectionTag.InstructionWords: return data with { InstructionWords = List(InstructionWord) };
            case SectionTag.Occasions: return data with { Occasions = List(Occasion) };
            case SectionTag.Orders: return data with { Conventions = [.. data.Conventions, .. List(Order)] };
            case SectionTag.RuleRemarks: return data with { Rules = WithRemarks(data.Rules) };
            default:
                _at = end;
                return data;
        }
    }

    /// <remarks>Members count from 0 without gaps. No table over the enumeration itself: the runtime would compile one for each kind at every start.</remarks>
    private TEnum? MaybeWord<TEnum>() where TEnum : struct, Enum
    {
        if (MaybeText() is not { } text) return null;
        for (var i = 0; i < WordTable<TEnum>.Words.Count; i++)
            if (WordTable<TEnum>.Words[i] == text) return (TEnum)Enum.ToObject(typeof(TEnum), i);
        throw new SnapshotException("a word is not known");
    }

    private TEnum Word<TEnum>() where TEnum : struct, Enum => MaybeWord<TEnum>() ?? throw new SnapshotException("a word is missing");

    /// <summary>The words of an enumeration in the order of its members, spelt once.</summary>
    private static class WordTable<TEnum> where TEnum : struct, Enum
    {
        public static readonly IReadOnlyList<string> Words = Exposures.Words.All<TEnum>();
    }

    /// <summary>What a section says of the care of one part type.</summary>
    private sealed record PartCare(PartId Id, IReadOnlyList<SoilKind>? Soil, IReadOnlyList<WayOut>? WayOut, string? FunctionCheck, decimal? DryBeforePower, WaterIngress? WaterIngress);

    private CalendarDate Reviewed() => MaybeDate() ?? throw new SnapshotException("a review date is missing");

    private PartType[] WithCare(IReadOnlyList<PartType> parts)
    {
        var care = List(() => new PartCare(Id(t => new PartId(t)), Maybe(() => List(Word<SoilKind>)), Maybe(() => List(Word<WayOut>)), MaybeText(), MaybeFigure(), Maybe(Ingress)));
        var byId = new Dictionary<PartId, int>();
        var all = parts.ToArray();
        for (var i = 0; i < all.Length; i++) byId[all[i].Id] = i;
        foreach (var one in care)
        {
            if (!byId.TryGetValue(one.Id, out var at)) throw new SnapshotException("a part is missing");
            all[at] = all[at] with { Soil = one.Soil, WayOut = one.WayOut, FunctionCheck = one.FunctionCheck, DryBeforePower = one.DryBeforePower, WaterIngress = one.WaterIngress };
        }

        return all;
    }

    private Rule[] WithRemarks(IReadOnlyList<Rule> rules)
    {
        var all = rules.ToArray();
        foreach (var (id, isSecond, restsOn) in List(() => (new RuleId(Text()), Flag(), List(Word<ThinGround>))))
        {
            var at = Array.FindIndex(all, rule => rule.Id == id);
            if (at < 0) throw new SnapshotException("a rule is missing");
            all[at] = all[at] with { IsSecondSource = isSecond, RestsOn = restsOn };
        }

        return all;
    }

    private WaterIngress Ingress() => new() { Numeral = (int)Math.Min(99, Number()), Means = Text() };

    private StandingRule StandingFact() => Standing() with
    {
        NeverAbove = MaybeWord<Level>(),
        Patient = MaybeWord<PatientGroup>(),
        BoundBy = MaybeText(),
        MixingWith = MaybeId(t => new AgentId(t)),
        MixingWithSoil = MaybeWord<SoilKind>(),
    };

    private Organism Organism() => new()
    {
        Id = Id(t => new OrganismId(t)),
        Name = Text(),
        AlsoCalled = List(Text),
        Group = Word<OrganismGroup>(),
        OwnClaim = Flag(),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private Convention Order() => new() { Key = Word<ConventionKey>(), Range = Interval.Whole, Consequences = List(Word<Consequence>), Hazards = List(Word<Hazard>), Reason = Text() };

    private LevelMeaning LevelMeaning() => new()
    {
        Level = Word<Level>(),
        Includes = List(Word<OrganismGroup>),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private NeedRule Need() => new()
    {
        Id = Id(t => new NeedRuleId(t)),
        TouchedBy = List(Word<TouchedBy>),
        Soil = List(Word<SoilKind>),
        Level = MaybeWord<Level>(),
        CleanFirst = Flag(),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private Occasion Occasion() => new()
    {
        Id = Id(t => new OccasionId(t)),
        Name = Text(),
        Parts = List(Word<TouchedBy>),
        AtLeast = MaybeWord<Level>(),
        NeedsAgainst = Flag(),
        Hold = Flag(),
        Adds = List(Text),
        Papers = List(Word<Paper>),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private List<OrganismTarget> Targets() => List(() =>
    {
        var group = MaybeWord<OrganismGroup>();
        var organism = MaybeId(t => new OrganismId(t));
        if (group is { } known) return OrganismTarget.Of(known);
        return OrganismTarget.Of(organism ?? throw new SnapshotException("an organism is missing"));
    });

    private MethodLimit MethodsOf() => new((AxisStatement)Member((int)LastMember.AxisStatement), Methods());

    private Claim Claim() => new()
    {
        Id = new ClaimId(Text()),
        Agent = Id(t => new AgentId(t)),
        With = List(() => new ClaimPartner(Id(t => new AgentId(t)), Limit())),
        When = new ClaimBox { Strength = Limit(), WetTime = Limit(), Temperature = Limit(), Ph = Limit(), Methods = MethodsOf() },
        Reaches = MaybeWord<Level>(),
        Kills = Targets(),
        For = Ids(t => new PartId(t)),
        DoesNotKill = Targets(),
        Needs = List(Word<ClaimNeed>),
        StandsSoil = List(Word<SoilKind>),
        Bath = Maybe(() => new BathUse { Minimum = MaybeRange(), Reuse = MaybeFigure(), Test = MaybeText() }),
        Refuted = MaybeText(),
        Kind = Word<ClaimKind>(),
        Why = Text(),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = Reviewed(),
    };

    private MixingHazard Mixing() => new()
    {
        Id = new MixingHazardId(Text()),
        Agent = Id(t => new AgentId(t)),
        WithAgent = MaybeId(t => new AgentId(t)),
        WithSoil = MaybeWord<SoilKind>(),
        WithMaterial = MaybeId(t => new MaterialId(t)),
        OnlyWhere = MaybeText(),
        Effects = List(Word<MixingEffect>),
        Forms = List(Text),
        Severity = Word<MixingSeverity>(),
        SeparatedBy = List(Word<Separation>),
        How = MaybeText(),
        Why = Text(),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = Reviewed(),
    };

    private PersonRule PersonRule() => new()
    {
        Id = new PersonRuleId(Text()),
        Agent = Id(t => new AgentId(t)),
        Patients = List(Word<PatientGroup>),
        Occupied = Flag(),
        When = Box(),
        Verdict = Word<PersonVerdict>(),
        Duties = List(Duty),
        For = Ids(t => new PartId(t)),
        Harm = Text(),
        Why = Text(),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = Reviewed(),
    };

    private Protection Protection() => new()
    {
        Id = Id(t => new ProtectionId(t)),
        Agent = Id(t => new AgentId(t)),
        When = Box(),
        Gloves = List(() => new GloveMaterial { Material = Text(), Holds = MaybeFigure() }),
        GlovesFail = List(Text),
        Eyes = MaybeText(),
        Breathing = MaybeText(),
        Ventilation = MaybeText(),
        Fire = MaybeText(),
        Oxygen = MaybeText(),
        Energised = MaybeText(),
        Disposal = MaybeText(),
        FirstAid = MaybeText(),
        FlashPoint = MaybeFigure(),
        Limits = List(Limited),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = Reviewed(),
    };

    private ExposureLimit Limited() => new()
    {
        Kind = Word<LimitKind>(),
        Value = new AirConcentration(MaybeFigure() ?? throw new SnapshotException("a figure is missing"), Text()),
        By = Text(),
        Source = Id(t => new SourceId(t)),
    };

    private WordReading Reading() => new() { Agents = Ids(t => new AgentId(t)), When = Box() };

    private InstructionWord InstructionWord() => new()
    {
        Id = Id(t => new InstructionWordId(t)),
        Phrases = List(Text),
        Permits = Maybe(Reading),
        Forbids = Maybe(Reading),
        Act = Maybe(() => new WordAct { Methods = Methods(), Residence = Limit(), Duties = List(Duty) }),
        ListsNothing = Flag(),
        Reason = Text(),
        Sources = Ids(t => new SourceId(t)),
    };
}
