using System.Diagnostics.CodeAnalysis;
using Compat.Instructions;
using Compat.Snapshots;
using Compat.Validation;

namespace Compat;

/// <summary>A checked knowledge base that answers questions. Immutable and safe to share between threads.</summary>
public sealed partial class KnowledgeBase
{
    private static readonly Lazy<KnowledgeBase> LazyShipped = new(LoadShipped);

    private readonly CompiledBase _compiled;

    private KnowledgeBase(KnowledgeData data, IReadOnlyList<Site> sites, IReadOnlyList<DataIdentity> identity)
    {
        Data = data;
        Sites = sites;
        Identity = identity;
        var phrases = PhraseRules.Of(data, sites);
        InstructionReadings = phrases.Readings;
        InstructionRules = phrases.Rules;
        _compiled = new CompiledBase(data, sites, phrases.Rules);
    }

    /// <summary>The knowledge base shipped inside this library.</summary>
    public static KnowledgeBase Shipped => LazyShipped.Value;

    /// <summary>The records it was made from.</summary>
    public KnowledgeData Data { get; }

    /// <summary>The sites laid over it.</summary>
    public IReadOnlyList<Site> Sites { get; }

    /// <summary>Version and content hash of the data and of each site, as every answer carries them.</summary>
    public IReadOnlyList<DataIdentity> Identity { get; }

    /// <summary>
    /// How the words of the devices' instructions were read, in the order of sites, devices, editions and words; what could not be read is there too.
    /// </summary>
    public IReadOnlyList<InstructionReading> InstructionReadings { get; }

    /// <summary>The rules that those words became: rules of their device's instructions, beside the ones its site has written.</summary>
    public IReadOnlyList<Rule> InstructionRules { get; }

    /// <summary>The records numbered and sorted for asking.</summary>
    internal CompiledBase Compiled => _compiled;

    /// <summary>Checks records and makes a knowledge base of them.</summary>
    /// <param name="data">The records.</param>
    /// <param name="knowledgeBase">The knowledge base; null where anything is wrong.</param>
    /// <returns>All that is wrong; empty where nothing is.</returns>
    public static IReadOnlyList<Problem> TryBuild(KnowledgeData data, out KnowledgeBase? knowledgeBase)
    {
        var problems = KnowledgeValidation.Check(data);
        knowledgeBase = problems.Count > 0 ? null
            : new KnowledgeBase(data, [], [new DataIdentity("data", data.Version, Snapshot.HashOf(SnapshotWriter.Body(data)))]);
        return problems;
    }

    /// <summary>A knowledge base of records that passed validation already, for looking up what holds; it carries no identity.</summary>
    internal static KnowledgeBase OfChecked(KnowledgeData data, IReadOnlyList<Site> sites) => new(data, sites, []);

    /// <summary>Reads a snapshot that <see cref="Save"/> wrote, and checks all its records.</summary>
    /// <param name="stream">The snapshot, from where it stands to its end.</param>
    /// <exception cref="SnapshotException">It is damaged, of another format version, or none at all; or its records would not pass <see
    /// cref="TryBuild"/>.</exception>
    public static KnowledgeBase Load(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var data = Snapshot.Read(stream, ownResource: false, out var hash);
        Snapshot.ReadWhole(data);
        var problems = KnowledgeValidation.CheckRead(data);
        if (problems.Count > 0) throw new SnapshotException($"{problems.Count} problems with its records, the first: {problems[0]}");
        var kb = new KnowledgeBase(data, [], [new DataIdentity("data", data.Version, hash)]);
        return kb._compiled.Rules.Length == data.Rules.Count ? kb : throw new SnapshotException("a rule is missing");
    }

    /// <summary>
    /// Reads a snapshot of known content, much faster: its records passed <see cref="TryBuild"/> before it was written, and each is read when it is first asked
    /// for.
    /// </summary>
    /// <param name="stream">The snapshot, from where it stands to its end.</param>
    /// <param name="hash">The content hash that <see cref="Identity"/> had, or <c>compat pack</c> printed, when it was written. Keep it where the file cannot
    /// be changed with it.</param>
    /// <exception cref="SnapshotException">It is damaged, of another format version, none at all, or of other content.</exception>
    public static KnowledgeBase Load(Stream stream, string hash)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(hash);
        var data = Snapshot.Read(stream, ownResource: false, out var found);
        return found == hash ? new KnowledgeBase(data, [], [new DataIdentity("data", data.Version, hash)])
            : throw new SnapshotException($"its content is {found}, expected {hash}");
    }

    /// <summary>Writes the data, without sites, as a snapshot: the same records give the same bytes.</summary>
    /// <param name="stream">Where to.</param>
    public void Save(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var bytes = Snapshot.Write(Data);
        stream.Write(bytes, 0, bytes.Length);
    }

    /// <summary>Checks a site against this knowledge base and lays it over it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="knowledgeBase">The knowledge base with the site; null where anything is wrong.</param>
    /// <returns>All that is wrong; empty where nothing is.</returns>
    public IReadOnlyList<Problem> TryWith(Site site, out KnowledgeBase? knowledgeBase)
    {
        knowledgeBase = null;
        var problems = SiteValidation.Check(Data, Sites, site);
        if (problems.Count > 0) return problems;
        var identity = new DataIdentity(site.Id.Value, site.Name, Snapshot.HashOf(SnapshotWriter.Body(site)));
        var candidate = new KnowledgeBase(Data, [.. Sites, site], [.. Identity, identity]);
        problems = StandingValidation.Check(candidate, site);
        if (problems.Count == 0) knowledgeBase = candidate;
        return problems;
    }

    /// <summary>The knowledge base with a site laid over it.</summary>
    /// <param name="site">The site.</param>
    /// <exception cref="ArgumentException">Something is wrong with the site; <see cref="TryWith"/> lists it without exception.</exception>
    public KnowledgeBase With(Site site)
    {
        ArgumentNullException.ThrowIfNull(site);
        var problems = TryWith(site, out var result);
        return result ?? throw new ArgumentException(string.Join("; ", problems.Select(p => p.ToString())), nameof(site));
    }

    /// <summary>Answers a question.</summary>
    /// <param name="question">The question.</param>
    /// <exception cref="QuestionException">It cannot be asked; <see cref="TryAsk"/> lists why without exception.</exception>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public Answer Ask(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return TryAsk(question, out var answer, out var problems) ? answer : throw new QuestionException(problems);
    }

    /// <summary>Answers whether an agent may be used on a part at a strength by a method, everything else left out.</summary>
    /// <param name="part">The part type.</param>
    /// <param name="agent">The agent class.</param>
    /// <param name="strength">The strength; null to leave it out.</param>
    /// <param name="method">The method; null to leave it out.</param>
    /// <exception cref="QuestionException">It cannot be asked.</exception>
    public Answer Ask(PartId part, AgentId agent, Strength? strength, ApplicationMethod? method) =>
        Ask(new Question { Part = part, Agent = agent, Strength = strength, Method = method });

    /// <summary>Answers a question, or says why it cannot be asked.</summary>
    /// <param name="question">The question.</param>
    /// <param name="answer">The answer, or null.</param>
    /// <param name="problems">All that is wrong with the question; empty where nothing is.</param>
    /// <returns>Whether there is an answer.</returns>
    public bool TryAsk(Question question, [NotNullWhen(true)] out Answer? answer, out IReadOnlyList<Problem> problems)
    {
        problems = QuestionValidation.Check(_compiled, question);
        answer = problems.Count > 0 ? null : AnswerTo(question);
        return answer is not null;
    }

    /// <summary>Answers one question of many; null where the rules cut each other too finely to list, which permits nothing either.</summary>
    /// <exception cref="QuestionException">It cannot be asked.</exception>
    internal Answer? AskWhereListable(Question question)
    {
        try
        {
            return Ask(question);
        }
        catch (TooManyBoxesException)
        {
            return null;
        }
    }

    /// <summary>Answers a question that passed validation.</summary>
    private Answer AnswerTo(Question question)
    {
        var region = new RegionAnswer(_compiled, question, Identity);
        var answer = region.Make();
        return question.JudgesKillAndPeople ? new WholeJudgement(_compiled, question, Identity, region.Asked).Of(answer) : answer;
    }

    /// <summary>What a part needs: its level, groups and organisms, and for whom.</summary>
    /// <param name="question">A question that names a part, or a device with its part; its agent is not looked at.</param>
    /// <exception cref="QuestionException">It cannot be asked.</exception>
    public Need NeedOf(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var problems = QuestionValidation.Check(_compiled, question with { Agent = question.Product is null ? question.Agent ?? AgentClass.Root : null });
        return problems.Count > 0 ? throw new QuestionException(problems) : NeedMaker.Of(_compiled, question);
    }

    /// <summary>
    /// The exposures at which an agent or product kills what a part needs and that part and people stand: temperature and an agent's pH are taken as measured
    /// and kept to.
    /// </summary>
    /// <param name="question">The question; an axis it states is held to that.</param>
    /// <exception cref="QuestionException">It cannot be asked.</exception>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public Window WindowOf(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var problems = QuestionValidation.Check(_compiled, question);
        if (problems.Count > 0) throw new QuestionException(problems);
        var need = NeedMaker.Of(_compiled, question);
        if (WholeJudgement.WithoutWindow(need) is { Verdict: not Verdict.Allowed } refused)
            return new Window { Need = need, Closure = new WindowClosure { Code = ClosureCode.DoesNotKill, Kill = refused.Reasons }, Identity = Identity };
        return new WindowMaker(_compiled, question, new WindowGround(_compiled, question, need, measured: true)).Make(Identity);
    }

    /// <summary>Plans how a device is made safe with what is on the shelf: steps, what cannot be done and why, every way out.</summary>
    /// <param name="question">What is asked.</param>
    /// <exception cref="QuestionException">It cannot be asked; <see cref="TryPlan"/> lists why without exception.</exception>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public Planning.PlanSheet PlanOf(Planning.PlanQuestion question) =>
        PlanOf(question, CancellationToken.None);

    /// <summary>The same, given up where that is asked.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="cancellation">Asked between two steps of the work.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public Planning.PlanSheet PlanOf(Planning.PlanQuestion question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Plan(question, cancellation, out var problems) ?? throw new QuestionException(problems);
    }

    /// <summary>Plans how a device is made safe, or says why that cannot be asked.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="sheet">The plan, or null.</param>
    /// <param name="problems">All that is wrong with the question; empty where nothing is.</param>
    /// <returns>Whether there is a plan.</returns>
    public bool TryPlan(Planning.PlanQuestion question, out Planning.PlanSheet? sheet, out IReadOnlyList<Problem> problems)
    {
        sheet = Plan(question, CancellationToken.None, out problems);
        return sheet is not null;
    }

    private Planning.PlanSheet? Plan(Planning.PlanQuestion question, CancellationToken cancellation, out IReadOnlyList<Problem> problems)
    {
        problems = Planning.PlanValidation.Check(_compiled, question);
        return problems.Count > 0 ? null : new Planning.PlanMaker(this, _compiled, question, cancellation).Make();
    }

    /// <summary>
    /// What serves where the agent or product asked does not: the products of the sites first, else agents at some strength in their usual range; by the same
    /// method.
    /// </summary>
    /// <param name="question">The question whose agent or product does not serve.</param>
    public (IReadOnlyList<ProductId> Products, IReadOnlyList<AgentId> Agents) Serving(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var products = ServingProducts(question);
        return products.Count > 0 ? (products, []) : ([], question.JudgesKillAndPeople ? AgentsWithWindow(Plain(question)) : Alternatives(question));
    }

    /// <summary>The products of the sites that serve where the agent or product asked does not, by the same method.</summary>
    /// <param name="question">The question whose agent or product does not serve.</param>
    public IReadOnlyList<ProductId> ServingProducts(Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Sites.SelectMany(site => site.Products).Select(product => product.Id).Where(id => id != question.Product)
            .Where(id => TryAsk(Plain(question) with { Product = id }, out var answer, out _) && answer.Verdict >= Verdict.AllowedWithinLimits)
                .OrderBy(id => id).ToArray();
    }

    /// <summary>A question without what it says of its agent or product.</summary>
    private static Question Plain(Question question) =>
        question with { Agent = null, Product = null, Strength = null, Dilution = null, Ph = null, ExposureTime = null, Temperature = null, Uses = null };

    /// <summary>Answers a question for every part of its device: worst first, those that need nothing last.</summary>
    /// <param name="question">A question with <see cref="Question.Device"/> and without a part.</param>
    /// <exception cref="QuestionException">It cannot be asked.</exception>
    public IReadOnlyList<DevicePartAnswer> AskDevice(Question question) => AskDevice(question, CancellationToken.None);

    /// <summary>The same, given up where that is asked.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cancellation">Asked between two steps of the work.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public IReadOnlyList<DevicePartAnswer> AskDevice(Question question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        if (question.Device is null)
            throw new QuestionException(
                [.. QuestionValidation.Check(_compiled, question),
                new Problem("no-device", new(RecordKind.Question, "", "device"), "no device is named",
                "all parts of one device are asked here; ask a part type by `Ask`")]);
        if (!_compiled.Devices.TryGetValue(question.Device, out var device))
            throw new QuestionException(QuestionValidation.Check(_compiled, question));
        var problems = QuestionValidation.Check(_compiled, question with { DevicePart = device.Parts[0].Id });
        if (problems.Count > 0) throw new QuestionException(problems);
        var answers = new List<DevicePartAnswer>();
        foreach (var part in device.Parts)
        {
            cancellation.ThrowIfCancellationRequested();
            var traits = _compiled.Part(_compiled.Parts[part.OneOfTypes[0].Value]);
            var asked = question with { DevicePart = part.Id };
            var needsNothing = question.OnlyPart ? (part.TouchedBy ?? traits.TouchedBy) is TouchedBy.Nobody or TouchedBy.Internal
                : NeedMaker.Of(_compiled, asked) is { KeptDry: true, SoiledWhereDry: false, Prions: false };
            answers.Add(new DevicePartAnswer(part, traits.Part, needsNothing, needsNothing ? null : Ask(asked)));
        }

        return answers.OrderBy(a => a.NeedsNothing).ThenBy(a => a.Answer?.Verdict).ToArray();
    }

    /// <summary>The whole decision map of a part (or materials) and an agent; the axes of the question are not looked at.</summary>
    /// <param name="question">The part and agent.</param>
    /// <exception cref="QuestionException">It cannot be asked; a product has no map.</exception>
    /// <exception cref="TooManyBoxesException">More than 100,000 cells.</exception>
    public DecisionMap Map(Question question) => Map(question, CancellationToken.None);

    /// <summary>The same, given up where that is asked.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cancellation">Asked between two steps of the work.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public DecisionMap Map(Question question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        var problems = QuestionValidation.Check(_compiled, question);
        if (problems.Count > 0) throw new QuestionException(problems);
        if (question.Agent is null)
            throw new QuestionException(
                [new Problem("map-needs-agent", new(RecordKind.Question, "", "agent"), "a map is drawn of an agent, not of a product")]);
        return new MapMaker(_compiled, question).Make(Identity, cancellation);
    }

    /// <summary>Other agents that the part stands, at least within limits, by the same method; those well founded first.</summary>
    /// <param name="question">The question whose agent or product does not serve.</param>
    public IReadOnlyList<AgentId> Alternatives(Question question) => Alternatives(question, CancellationToken.None);

    /// <summary>The same, given up where that is asked.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cancellation">Asked between two steps of the work.</param>
    /// <exception cref="OperationCanceledException">It was given up.</exception>
    public IReadOnlyList<AgentId> Alternatives(Question question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        var plain = question with { Product = null, Strength = null, Dilution = null, Ph = null, ExposureTime = null, Temperature = null, Uses = null };
        if (QuestionValidation.Check(_compiled, plain with { Agent = AgentClass.Root }).Count > 0) return [];
        var spokenFor = SpokenFor(PartResolver.Variants(_compiled, plain));
        List<AgentId> wellFounded = [], others = [];
        foreach (var agent in Data.Agents.Where(a => a.Id != question.Agent && !Data.Agents.Any(child => child.Under == a.Id)))
        {
            if (!IsSpokenFor(agent.Id, spokenFor)) continue;
            cancellation.ThrowIfCancellationRequested();
            if (TryAsk(plain with { Agent = agent.Id }, out var answer, out _) && answer.Verdict >= Verdict.AllowedWithinLimits)
                (answer.WellFounded ? wellFounded : others).Add(agent.Id);
        }

        wellFounded.Sort((a, b) => a.CompareTo(b));
        others.Sort((a, b) => a.CompareTo(b));
        return [.. wellFounded, .. others];
    }

    /// <summary>The agents that do it all at some exposure, their strength chosen.</summary>
    private AgentId[] AgentsWithWindow(Question plain)
    {
        if (QuestionValidation.Check(_compiled, plain with { Agent = AgentClass.Root }).Count > 0) return [];
        var need = NeedMaker.Of(_compiled, plain);
        if (WholeJudgement.WithoutWindow(need) is { } judged) return judged.Verdict == Verdict.Allowed ? [.. Alternatives(plain)] : [];
        var spokenFor = SpokenFor(PartResolver.Variants(_compiled, plain));
        return Data.Agents.Where(agent => !Data.Agents.Any(child => child.Under == agent.Id) && IsSpokenFor(agent.Id, spokenFor))
            .Select(agent => plain with { Product = null, Agent = agent.Id })
            .Where(asked => new WindowMaker(_compiled, asked, new WindowGround(_compiled, asked, need, measured: true, freeStrength: true))
                .Make(Identity).IsOpen)
            .Select(asked => asked.Agent!).OrderBy(id => id).ToArray();
    }

    /// <summary>The agents of every 'allowed' that can reach one of the variants: others need not be asked.</summary>
    private bool[] SpokenFor(IReadOnlyList<PartVariant> variants)
    {
        var agents = new bool[_compiled.Agents.Count];
        foreach (var rule in _compiled.Heads)
            if (rule.Allows && rule.Agent >= 0 && !agents[rule.Agent] && variants.Any(variant => CanReach(rule, variant))) agents[rule.Agent] = true;
        return agents;
    }

    private bool IsSpokenFor(AgentId agent, bool[] spokenFor)
    {
        for (var node = _compiled.Agents[agent.Value]; node >= 0; node = _compiled.Agents.Parent(node))
            if (spokenFor[node]) return true;
        return false;
    }

    private bool CanReach(RuleHead rule, PartVariant variant) =>
        rule.Part >= 0 ? variant.Part >= 0 && _compiled.Parts.IsAtOrBelow(variant.Part, rule.Part)
        : rule.Material < 0 || IsMadeOf(variant, rule.Material);

    private bool IsMadeOf(PartVariant variant, int material)
    {
        foreach (var own in variant.Materials)
            if (_compiled.Materials.IsAtOrBelow(own, material)) return true;
        return false;
    }

    private static KnowledgeBase LoadShipped()
    {
        using var stream = typeof(KnowledgeBase).Assembly.GetManifestResourceStream("Compat.shipped.bin")
            ?? throw new SnapshotException("it is missing from the library");
        var data = Snapshot.Read(stream, ownResource: true, out var hash);
        return new KnowledgeBase(data, [], [new DataIdentity("shipped", data.Version, hash)]);
    }
}
