namespace Compat.Snapshots;

/// <summary>The records, each as <see cref="SnapshotWriter"/> wrote it.</summary>
internal sealed partial class SnapshotReader
{
    private AxisLimit Limit()
    {
        var statement = (AxisStatement)Member((int)LastMember.AxisStatement);
        return new AxisLimit(statement, statement == AxisStatement.Within ? Range() : Interval.Whole);
    }

    private ExposureBox Box()
    {
        var (strength, dilution, exposureTime) = (Limit(), Limit(), Limit());
        var (temperature, ph, uses) = (Limit(), Limit(), Limit());
        return new ExposureBox
        {
            Strength = strength,
            Dilution = dilution,
            ExposureTime = exposureTime,
            Temperature = temperature,
            Ph = ph,
            Uses = uses,
            Methods = new MethodLimit((AxisStatement)Member((int)LastMember.AxisStatement), Methods()),
        };
    }

    private Material Material() => new()
    {
        Id = Id(t => new MaterialId(t)),
        Under = MaybeId(t => new MaterialId(t)),
        Name = Text(),
        Delicate = (Delicacy?)MaybeMember((int)LastMember.Delicacy),
        DeclaredOnlySuffices = Flag(),
        AlsoCalled = List(Text),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private MaterialSlot Slot() => new(Ids(t => new MaterialId(t)).ToArray());

    private bool? Known() => Number() switch { 0 => null, 1 => false, 2 => true, _ => throw new SnapshotException("a flag is not known") };

    private PartType Part() => new()
    {
        Id = Id(t => new PartId(t)),
        Under = MaybeId(t => new PartId(t)),
        Name = Text(),
        AlsoCalled = List(Text),
        Materials = Maybe(() => List(Slot)),
        MaterialsKnown = Known(),
        Wettest = (ApplicationMethod?)MaybeMember((int)LastMember.ApplicationMethod),
        Never = Maybe(Acts),
        Geometry = (Geometry?)MaybeMember((int)LastMember.Geometry),
        TouchedBy = (TouchedBy?)MaybeMember((int)LastMember.TouchedBy),
        Patients = List(Word<PatientGroup>),
        Duties = List(Duty),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
        Soil = Maybe(() => List(Word<SoilKind>)),
        WayOut = Maybe(() => List(Word<WayOut>)),
        FunctionCheck = MaybeText(),
        DryBeforePower = MaybeFigure(),
        WaterIngress = Maybe(Ingress),
    };

    private WaterIngress Ingress() => new() { Numeral = (int)Math.Min(99, Number()), Means = Text() };

    private AgentClass Agent() => new()
    {
        Id = Id(t => new AgentId(t)),
        Under = MaybeId(t => new AgentId(t)),
        Name = Text(),
        AlsoCalled = List(Text),
        Cas = List(Text),
        Ec = List(Text),
        Basis = MaybeText() is not { } unit ? null : StrengthUnit.TryParse(unit, out var basis) ? basis : throw new SnapshotException("a unit is not known"),
        Density = MaybeFigure(),
        AvailableChlorine = MaybeFigure(),
        Nature = Natures(),
        Usual = new UsualRange { Strength = MaybeRange(), Ph = MaybeRange(), Temperature = MaybeRange(), Sources = Ids(t => new SourceId(t)) },
        Leaves = (Residue?)MaybeMember((int)LastMember.Residue),
        Chamber = Flag(),
        InactivatedBy = Ids(t => new AgentId(t)),
        BoundBy = List(Text),
        Hazards = Hazards(),
        Duties = List(Duty),
        Sources = Ids(t => new SourceId(t)),
        Note = MaybeText(),
    };

    private Duty Duty() => new()
    {
        Kind = (DutyKind)Member((int)LastMember.DutyKind),
        Ways = List(Way),
        Within = MaybeFigure(),
        Parts = Ids(t => new PartId(t)),
        AfterUses = MaybeCount(),
        Note = MaybeText(),
    };

    private int? MaybeCount() => Number() switch { 0 => null, <= int.MaxValue and var n => (int)n, _ => throw new SnapshotException("a number is too large") };

    private DutyWay Way() => new()
    {
        Method = (ApplicationMethod?)MaybeMember((int)LastMember.ApplicationMethod),
        Act = (Act?)MaybeMember((int)LastMember.Act),
        Water = (WaterGrade?)MaybeMember((int)LastMember.WaterGrade),
        Times = MaybeCount(),
        Seconds = MaybeFigure(),
        Litres = MaybeFigure(),
    };

    private Source Source() => new()
    {
        Id = Id(t => new SourceId(t)),
        Kind = (SourceKind)Member((int)LastMember.SourceKind),
        Title = Text(),
        Publisher = MaybeText(),
        Edition = MaybeText(),
        Section = MaybeText(),
        Address = MaybeText(),
        Recalled = Flag(),
        Trust = (Trust)Member((int)LastMember.Trust),
        Note = MaybeText(),
    };

    private Damage Damage() => new()
    {
        Mechanism = (Mechanism)Member((int)LastMember.Mechanism),
        Onset = (Onset)Member((int)LastMember.Onset),
        Lasting = Flag(),
        Consequence = (Consequence)Member((int)LastMember.Consequence),
        LookFor = MaybeText(),
        WithdrawIf = MaybeText(),
    };

    private RuleTarget Target()
    {
        var part = MaybeId(t => new PartId(t));
        var material = MaybeId(t => new MaterialId(t));
        var device = MaybeId(t => new DeviceId(t));
        var devicePart = MaybeId(t => new DevicePartId(t));
        if (part is not null) return RuleTarget.On(part);
        if (material is not null) return RuleTarget.On(material);
        if (device is null) throw new SnapshotException("a rule has no target");
        return devicePart is null ? RuleTarget.On(device) : RuleTarget.On(device, devicePart);
    }

    /// <remarks>What <see cref="Deciding.RuleHead"/> takes of it stands first.</remarks>
    public Rule Rule() => new()
    {
        Id = new RuleId(Text()),
        Target = Target(),
        Agent = MaybeId(t => new AgentId(t)),
        Product = MaybeId(t => new ProductId(t)),
        CompositionDated = MaybeDate(),
        Allows = Flag(),
        When = Box(),
        SeenWith = Ids(t => new AgentId(t)),
        WholeClass = Flag(),
        Overrides = List(() => new RuleId(Text())),
        Damage = Maybe(Damage),
        CountsTowards = (Mechanism?)MaybeMember((int)LastMember.Mechanism),
        Duties = List(Duty),
        Why = Text(),
        KnownBy = (KnownBy?)MaybeMember((int)LastMember.KnownBy),
        Tested = Maybe(() => new TestEvidence { On = (TestPiece)Member((int)LastMember.TestPiece), Strained = Flag(), Exposure = Box() }),
        Edition = MaybeId(t => new EditionId(t)),
        Sources = Ids(t => new SourceId(t)),
        Reviewed = Reviewed(),
        IsSecondSource = Flag(),
        RestsOn = List(Word<ThinGround>),
    };

    private Convention Convention() => new()
    {
        Key = (ConventionKey)Member((int)LastMember.ConventionKey),
        Range = Range(),
        Methods = Methods(),
        Consequences = List(Word<Consequence>),
        Hazards = List(Word<Hazard>),
        Reason = Text(),
    };

    private StandingRule Standing() => new()
    {
        Id = Id(t => new StandingRuleId(t)),
        Part = MaybeId(t => new PartId(t)),
        Material = MaybeId(t => new MaterialId(t)),
        Agent = Id(t => new AgentId(t)),
        When = Box(),
        AlwaysWith = (DutyKind?)MaybeMember((int)LastMember.DutyKind),
        Reason = Text(),
        Sources = Ids(t => new SourceId(t)),
        NeverAbove = MaybeWord<Level>(),
        Patient = MaybeWord<PatientGroup>(),
        BoundBy = MaybeText(),
        MixingWith = MaybeId(t => new AgentId(t)),
        MixingWithSoil = MaybeWord<SoilKind>(),
    };
}
