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
            case SectionTag.Materials: return data with { Materials = Stored(static reader => reader.ReadMaterial()) };
            case SectionTag.Parts: return data with { Parts = Stored(static reader => reader.ReadPartType()) };
            case SectionTag.Agents: return data with { Agents = Stored(static reader => reader.ReadAgentClass()) };
            case SectionTag.Sources: return data with { Sources = Stored(static reader => reader.ReadSource()) };
            case SectionTag.Conventions: return data with { Conventions = Stored(static reader => reader.ReadConvention()) };
            case SectionTag.StandingRules: return data with { StandingRules = Stored(static reader => reader.ReadStandingRule()) };
            case SectionTag.Organisms: return data with { Organisms = Stored(static reader => reader.ReadOrganism()) };
            case SectionTag.Levels: return data with { Levels = Stored(static reader => reader.ReadLevelMeaning()) };
            case SectionTag.Needs: return data with { Needs = Stored(static reader => reader.ReadNeedRule()) };
            case SectionTag.Claims: return data with { Claims = Stored(static reader => reader.ReadClaim()) };
            case SectionTag.MixingHazards: return data with { MixingHazards = Stored(static reader => reader.ReadMixingHazard()) };
            case SectionTag.PersonRules: return data with { PersonRules = Stored(static reader => reader.ReadPersonRule()) };
            case SectionTag.Protections: return data with { Protections = Stored(static reader => reader.ReadProtection()) };
            case SectionTag.InstructionWords: return data with { InstructionWords = Stored(static reader => reader.ReadInstructionWord()) };
            case SectionTag.Occasions: return data with { Occasions = Stored(static reader => reader.ReadOccasion()) };
            case SectionTag.HarmlessMeetings: return data with { HarmlessMeetings = Stored(static reader => reader.ReadHarmlessMeeting()) };
            case SectionTag.TestStandards: return data with { TestStandards = Stored(static reader => reader.ReadTestStandard()) };
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

    private MaterialSlot ReadMaterialSlot() => new(List(() => Id(static text => new MaterialId(text))).ToArray());

    private OrganismTarget ReadOrganismTarget()
    {
        var group = MaybeWord<OrganismGroup>();
        var organism = MaybeId(static text => new OrganismId(text));
        if (group is { } known) return OrganismTarget.Of(known);
        return OrganismTarget.Of(organism ?? throw new SnapshotException("an organism is missing"));
    }

    private RuleTarget ReadRuleTarget()
    {
        var part = MaybeId(static text => new PartId(text));
        var material = MaybeId(static text => new MaterialId(text));
        var device = MaybeId(static text => new DeviceId(text));
        var devicePart = MaybeId(static text => new DevicePartId(text));
        if (part is not null) return RuleTarget.On(part);
        if (material is not null) return RuleTarget.On(material);
        if (device is null) throw new SnapshotException("a rule has no target");
        return devicePart is null ? RuleTarget.On(device) : RuleTarget.On(device, devicePart);
    }

    private ClaimBox ReadClaimBox() => new() { Strength = Limit(), ContactTime = Limit(), Temperature = Limit(), Ph = Limit(), Methods = MethodLimit() };
}
