namespace Compat.Benchmarks.Asking;

/// <summary>The workload as records of a knowledge base and questions to it.</summary>
internal static class WorkloadBase
{
    private static readonly CalendarDate Day = new(2026, 11, 25);
    private static readonly StrengthUnit Percent = StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume);
    private static readonly Damage Harm = new()
    {
        Mechanism = Mechanism.StressCracking,
        Onset = Onset.FirstUse,
        Lasting = true,
        Consequence = Consequence.Wear,
        LookFor = "cracks",
        WithdrawIf = "it cracks",
    };

    /// <summary>
    /// The records of the rules. With more than the peers can say: a third of the 'allowed' with a duty, and each an exception to a prohibition on the same
    /// pair that it meets.
    /// </summary>
    public static KnowledgeData Data(Workload work, bool rich) => new()
    {
        Version = "made for measuring",
        Sources = [new Source { Id = new SourceId("made"), Kind = SourceKind.Handbook, Title = "made for measuring" }],
        Conventions = KnowledgeBase.Shipped.Data.Conventions,
        Materials = [
            new Material { Id = Material.Root, Name = "root" }, .. Enumerable.Range(0, Workload.Materials)
            .Select(i =>
                new Material { Id = MaterialOf(i), Name = "material",
                    Under = Under(Workload.ParentOfTarget(Workload.Parts + i), at => MaterialOf(at - Workload.Parts)) ?? Material.Root })],
        Parts = [new PartType { Id = PartType.Root, Name = "root" }, .. Enumerable.Range(0, Workload.Parts).Select(i => new PartType
        {
            Id = PartOf(i),
            Name = "part",
            Under = Under(Workload.ParentOfTarget(i), PartOf) ?? PartType.Root,
            Wettest = ApplicationMethod.Immerse,
            Materials = work.MaterialsOf[i].Select(m => new MaterialSlot([MaterialOf(m)])).ToArray(),
        })],
        Agents = [new AgentClass { Id = AgentClass.Root, Name = "root" }, .. Enumerable.Range(0, Workload.Agents).Select(i => new AgentClass
        {
            Id = AgentOf(i),
            Name = "agent",
            Under = Under(Workload.ParentOfAgent(i), AgentOf) ?? AgentClass.Root,
            Basis = i < Workload.Tops ? Percent : null,
            Leaves = Residue.Nothing,
        })],
        Rules = Rules(work, rich),
    };

    /// <summary>The mixtures of the questions, as products of one site.</summary>
    public static Site Site(Workload work, Func<Asked, (int Agent, int Strength)[]>? ingredients = null) => new()
    {
        Id = new SiteId("measured"),
        Name = "made for measuring",
        Products = work.Questions.Select((asked, i) => new Product
        {
            Id = ProductOf(i),
            Name = "product",
            Composition = Composition.Full,
            StrengthOf = StrengthOf.Liquid,
            Ingredients = (ingredients is null ? asked.Ingredients : ingredients(asked))
                .Select(one => new Ingredient { Agent = AgentOf(one.Agent), Strength = new Strength(Interval.Exactly(one.Strength / 10m), Percent) }).ToArray(),
        }).ToArray(),
    };

    public static Question Question(Workload work, int i)
    {
        var asked = work.Questions[i];
        return new Question
        {
            Part = PartOf(asked.Part),
            Product = ProductOf(i),
            Method = (ApplicationMethod)asked.Method,
            ExposureTime = Interval.Exactly(asked.ExposureTime),
            Temperature = Interval.Exactly(20),
            Ph = Interval.Exactly(7),
            Uses = 1,
            OnlyPart = true,
        };
    }

    private static Rule[] Rules(Workload work, bool rich)
    {
        var forbidding = rich ? Enumerable.Range(0, work.Rules.Length).Where(i => !work.Rules[i].Allows)
            .ToLookup(i => (work.Rules[i].Target, work.Rules[i].Agent)) : null;
        return work.Rules.Select((rule, i) => new Rule
        {
            Id = RuleOf(i),
            Target = rule.Target < Workload.Parts ? RuleTarget.On(PartOf(rule.Target)) : RuleTarget.On(MaterialOf(rule.Target - Workload.Parts)),
            Agent = AgentOf(rule.Agent),
            Allows = rule.Allows,
            WholeClass = rule.Allows && rule.Agent < 20,
            When = new ExposureBox
            {
                Strength = AxisLimit.Within(Interval.Closed(rule.StrengthLow / 10m, rule.StrengthHigh / 10m)),
                ExposureTime = AxisLimit.Within(rule.Allows ? Interval.AtMost(rule.ExposureTime) : Interval.AtLeast(rule.ExposureTime)),
                Temperature = rule.Allows ? AxisLimit.Any : default,
                Ph = rule.Allows ? AxisLimit.Any : default,
                Uses = rule.Allows ? AxisLimit.Any : default,
                Methods = MethodLimit.Within(Enumerable.Range(1, 5).Where(m => (rule.Methods & (1 << m)) != 0).Select(m => (ApplicationMethod)m).ToArray()),
            },
            Damage = rule.Allows ? null : Harm,
            KnownBy = rule.Allows ? KnownBy.Published : null,
            Duties = rich && rule.Allows
                && i % 3 == 0 ? [new Duty { Kind = DutyKind.TakeOff, Ways = [DutyWay.By(ApplicationMethod.DampWipe)], Within = 600 }] : [],
            Overrides = forbidding is null
                || !rule.Allows ? [] : forbidding[(rule.Target, rule.Agent)].Where(other => Meet(rule, work.Rules[other])).Take(1).Select(RuleOf).ToArray(),
            Why = "made for measuring",
            Sources = [new SourceId("made")],
            Reviewed = Day,
        }).ToArray();
    }

    private static bool Meet(BoxRule allows, BoxRule forbids) =>
        allows.StrengthLow <= forbids.StrengthHigh && allows.StrengthHigh >= forbids.StrengthLow && allows.ExposureTime >= forbids.ExposureTime
            && (allows.Methods & forbids.Methods) != 0;

    private static TId? Under<TId>(int parent, Func<int, TId> id) where TId : Id => parent < 0 ? null : id(parent);

    private static MaterialId MaterialOf(int i) => new($"material-{i}");

    private static PartId PartOf(int i) => new($"part-{i}");

    private static AgentId AgentOf(int i) => new($"agent-{i}");

    private static ProductId ProductOf(int i) => new($"product-{i}");

    private static RuleId RuleOf(int i) => new($"rule-{i}");
}
