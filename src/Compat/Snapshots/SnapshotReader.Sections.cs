namespace Compat.Snapshots;

/// <content>The sections. One with an unknown number is skipped by its length; one that does not fill its length, or stands twice, is refused.</content>
internal sealed partial class SnapshotReader
{
    private KnowledgeData Sections()
    {
        var data = new KnowledgeData { Version = Text() };
        var seen = new HashSet<SectionTag>();
        while (_at < _end)
        {
            var tag = (SectionTag)Math.Min(int.MaxValue, Number());
            var length = Count();
            var end = _at + length;
            if (!seen.Add(tag)) throw new SnapshotException("a section stands twice");
            data = new SnapshotReader(_texts, _bytes, _at, end).Section(data, tag);
            _at = end;
        }

        return data;
    }

    private KnowledgeData Section(KnowledgeData data, SectionTag tag)
    {
        switch (tag)
        {
            case SectionTag.Rules: return data with { Rules = StoredRules() };
            case SectionTag.Materials: return data with { Materials = Stored(static reader => reader.Material()) };
            case SectionTag.Parts: return data with { Parts = Stored(static reader => reader.Part()) };
            case SectionTag.Agents: return data with { Agents = Stored(static reader => reader.Agent()) };
            case SectionTag.Sources: return data with { Sources = Stored(static reader => reader.Source()) };
            case SectionTag.Conventions: return data with { Conventions = Stored(static reader => reader.Convention()) };
            case SectionTag.StandingRules: return data with { StandingRules = Stored(static reader => reader.Standing()) };
            case SectionTag.Organisms: return data with { Organisms = Stored(static reader => reader.Organism()) };
            case SectionTag.Levels: return data with { Levels = Stored(static reader => reader.LevelMeaning()) };
            case SectionTag.Needs: return data with { Needs = Stored(static reader => reader.Need()) };
            case SectionTag.Claims: return data with { Claims = Stored(static reader => reader.Claim()) };
            case SectionTag.MixingHazards: return data with { MixingHazards = Stored(static reader => reader.Mixing()) };
            case SectionTag.PersonRules: return data with { PersonRules = Stored(static reader => reader.PersonRule()) };
            case SectionTag.Protections: return data with { Protections = Stored(static reader => reader.Protection()) };
            case SectionTag.InstructionWords: return data with { InstructionWords = Stored(static reader => reader.InstructionWord()) };
            case SectionTag.Occasions: return data with { Occasions = Stored(static reader => reader.Occasion()) };
            case SectionTag.HarmlessMeetings: return data with { HarmlessMeetings = Stored(static reader => reader.Harmless()) };
            case SectionTag.TestStandards: return data with { TestStandards = Stored(static reader => reader.TestStandard()) };
            default: return data;
        }
    }

    private StoredRecords<T> Stored<T>(Func<SnapshotReader, T> read) where T : class => new(_texts, _bytes, Pieces(), read);

    private StoredRules StoredRules()
    {
        var cuts = new Cut[(int)Axis.Uses + 1][];
        for (var axis = 0; axis < cuts.Length; axis++) cuts[axis] = Cuts();
        return new StoredRules(_texts, _bytes, Pieces(), cuts);
    }

    private Cut[] Cuts()
    {
        var cuts = List(() => new Cut(MaybeFigure() ?? throw new SnapshotException("a figure is missing"), 1m, Flag()));
        for (var i = 1; i < cuts.Count; i++)
            if (cuts[i - 1].CompareTo(cuts[i]) >= 0) throw new SnapshotException("boundaries are not in order");
        return cuts.ToArray();
    }

    /// <summary>Pieces that fill what is left of the section.</summary>
    private int[] Pieces()
    {
        var starts = Starts();
        return starts[starts.Length - 1] == _end ? starts : throw new SnapshotException("a section does not fill its length");
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
        public static readonly IReadOnlyList<string> Words = Space.Words.All<TEnum>();
    }

    private CalendarDate Reviewed() => MaybeDate() ?? throw new SnapshotException("a review date is missing");

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

    private LevelMeaning LevelMeaning() => new()
    {
        Level = Word<Level>(),
        Includes = List(Word<OrganismGroup>),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private TestStandard TestStandard() => new()
    {
        Code = TestCode.TryParse(Text(), out var code) ? code : throw new SnapshotException("a code of a test is malformed"),
        Name = Text(),
        Field = Word<TestField>(),
        Step = Word<TestStep>(),
        On = List(Word<TestedOn>),
        Wiping = Flag(),
        Shows = Targets(),
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
        When = new ClaimBox { Strength = Limit(), ContactTime = Limit(), Temperature = Limit(), Ph = Limit(), Methods = MethodsOf() },
        Reaches = MaybeWord<Level>(),
        Kills = Targets(),
        For = Ids(t => new PartId(t)),
        Where = MaybeWord<ClaimWhere>(),
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
        Strength = MaybeRange(),
        WithStrength = MaybeRange(),
        AgentRestsOn = MaybeWord<MemberGround>(),
        WithAgentRestsOn = MaybeWord<MemberGround>(),
        Effects = List(Word<MixingEffect>),
        Forms = List(Text),
        Severity = Word<MixingSeverity>(),
        SeparatedBy = List(Word<Separation>),
        How = MaybeText(),
        Why = Text(),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = Reviewed(),
    };

    private HarmlessMeeting Harmless() => new()
    {
        Id = new MixingHazardId(Text()),
        Agent = Id(t => new AgentId(t)),
        WithAgent = MaybeId(t => new AgentId(t)),
        WithSoil = MaybeWord<SoilKind>(),
        WithMaterial = MaybeId(t => new MaterialId(t)),
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
        NotFor = MaybeText(),
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
        Act = Maybe(() => new WordAct { Methods = Methods(), ExposureTime = Limit(), Duties = List(Duty) }),
        ListsNothing = Flag(),
        Reason = Text(),
        Sources = Ids(t => new SourceId(t)),
    };
}
