using System.Diagnostics.CodeAnalysis;
using Compat.Snapshots;
using Compat.Validation;

namespace Compat.Planning;

/// <summary>A bath, or an opened tub or bottle, as it stands today.</summary>
public sealed record BathQuestion
{
    /// <summary>The product of a site; exactly one of this and <see cref="Claim"/>.</summary>
    public ProductId? Product { get; init; }

    /// <summary>The published claim whose bath it is, where it is no product of a site.</summary>
    public ClaimId? Claim { get; init; }

    /// <summary>Today.</summary>
    public required CalendarDate Today { get; init; }

    /// <summary>The strength that was measured today; a range is uncertain. Null where none was.</summary>
    public Strength? Measured { get; init; }

    /// <summary>The day of the last test of its strength; null where none is on record.</summary>
    public CalendarDate? Tested { get; init; }

    /// <summary>Whether the last test passed; null where none is on record.</summary>
    public bool? TestPassed { get; init; }

    /// <summary>The day it was activated; null where it was not, or nobody knows.</summary>
    public CalendarDate? Activated { get; init; }

    /// <summary>The day it was diluted; null where it was not, or nobody knows.</summary>
    public CalendarDate? Diluted { get; init; }

    /// <summary>The day its lot was opened; null where nobody knows.</summary>
    public CalendarDate? Opened { get; init; }

    /// <summary>The last day of its lot, as printed on it; null where it was not read.</summary>
    public CalendarDate? Expires { get; init; }

    /// <summary>Whether the tub or bottle was filled again.</summary>
    public bool Refilled { get; init; }

    /// <summary>Whether it is a tub or bottle that is used up, and no bath that is used again.</summary>
    public bool Tub { get; init; }
}

/// <summary>What to do with it.</summary>
public enum BathVerdict
{
    /// <summary>Discard it.</summary>
    Discard,

    /// <summary>It is not known to be good: do not use it until what is missing is known.</summary>
    NotKnown,

    /// <summary>Nothing on record speaks against using it today.</summary>
    Use,
}

/// <summary>Why.</summary>
public enum BathReasonCode
{
    /// <summary>Weaker than the least strength on record, or perhaps so. Arguments: measured, least.</summary>
    TooWeak,

    /// <summary>The last test of its strength failed. Arguments: day.</summary>
    TestFailed,

    /// <summary>Its strength was not tested today. Arguments: how often it is tested.</summary>
    NotTestedToday,

    /// <summary>Past its reuse life. Arguments: last day.</summary>
    PastReuse,

    /// <summary>Past what it keeps after activation. Arguments: last day.</summary>
    PastActivation,

    /// <summary>Past what it keeps after dilution. Arguments: last day.</summary>
    PastDilution,

    /// <summary>Past what it keeps after opening. Arguments: last day.</summary>
    PastOpening,

    /// <summary>Past the day printed on its lot. Arguments: last day.</summary>
    PastExpiry,

    /// <summary>It was filled again, and nothing on record says that it may be. Arguments: none.</summary>
    Refilled,

    /// <summary>A day on which its life counts is not known. Arguments: which (activated, diluted, opened, expires).</summary>
    DayNotKnown,

    /// <summary>Neither a least strength nor a life is on record. Arguments: none.</summary>
    NothingOnRecord,

    /// <summary>Good until this day, if every test until then passes. Arguments: last day.</summary>
    GoodUntil,

    /// <summary>As strong as it must be. Arguments: measured, least.</summary>
    StrongEnough,
}

/// <summary>A reason with its arguments.</summary>
/// <param name="Code">Which.</param>
/// <param name="Arguments">What the code's description lists.</param>
public sealed record BathReason(BathReasonCode Code, IReadOnlyList<string> Arguments);

/// <summary>Whether a bath or an opened tub is still good.</summary>
public sealed record BathAnswer
{
    /// <summary>The question.</summary>
    public required BathQuestion Question { get; init; }

    /// <summary>What to do.</summary>
    public required BathVerdict Verdict { get; init; }

    /// <summary>Why, what decides first.</summary>
    public IReadOnlyList<BathReason> Reasons { get; init; } = [];

    /// <summary>The last day on which it may be used; null where it may not, or no life is on record.</summary>
    public CalendarDate? LastDay { get; init; }

    /// <summary>The agent whose strength is tested; null where none is on record.</summary>
    public AgentId? Agent { get; init; }

    /// <summary>The least strength; null where none is on record.</summary>
    public Strength? Least { get; init; }

    /// <summary>How often it is tested, in words; null where nothing is on record.</summary>
    public string? Test { get; init; }

    /// <summary>The sources of the figures; empty for a product's label.</summary>
    public IReadOnlyList<SourceId> Sources { get; init; } = [];

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }
}

/// <summary>Says whether a bath, an opened tub or a bottle is still good, from its strength, its days and its tests.</summary>
public static class Bath
{
    private const decimal Day = 86_400m;

    /// <summary>What is on record of a bath: whose strength counts, how little will do, how long it keeps.</summary>
    private sealed record Keeping(AgentId? Agent, BathUse? Use, ProductLife Life, bool NeedsActivation, IReadOnlyList<SourceId> Sources,
        Interval? Claimed = null);

    /// <summary>Judges a bath.</summary>
    /// <param name="knowledgeBase">The knowledge base, with the site of the product.</param>
    /// <param name="question">The bath as it stands.</param>
    /// <param name="answer">What to do with it, or null.</param>
    /// <param name="problems">All that is wrong with the question; empty where nothing is.</param>
    /// <returns>Whether there is an answer.</returns>
    /// <remarks>
    /// A life in days ends with the day that many days after the first: counted from 1 March, 14 days end with 15 March; a life of a day or less ends with the
    /// same day. What is not known is never taken as good.
    /// </remarks>
    public static bool TryJudge(KnowledgeBase knowledgeBase, BathQuestion question, [NotNullWhen(true)] out BathAnswer? answer,
        out IReadOnlyList<Problem> problems)
    {
        answer = null;
        problems = [.. Given.Check((nameof(knowledgeBase), knowledgeBase)), .. SnapshotWriter.FaultsOf(question)];
        if (problems.Count > 0) return false;
        var scope = new Scope(knowledgeBase.Data, knowledgeBase.Sites);
        var at = new Field(scope, RecordKind.Question, "");
        var keeping = KeepingOf(scope, question, at);
        Days(question, at);
        var least = InBasis(scope, keeping, keeping?.Use?.Minimum);
        var measured = Measured(knowledgeBase, scope, question, keeping, at["measured"]);
        problems = scope.Problems;
        if (problems.Count > 0 || keeping is null) return false;

        var discard = new List<BathReason>();
        var unknown = new List<BathReason>();
        var good = new List<BathReason>();
        Strengths(question, keeping, least, InBasis(scope, keeping, keeping.Claimed), measured, discard, unknown, good);
        var last = Days(question, keeping, discard, unknown, out var counted);
        if (question.Refilled && !keeping.Life.MayBeRefilled) discard.Add(new(BathReasonCode.Refilled, []));
        var onRecord = least is not null || counted || (question.Tub && last is not null);
        if (!onRecord && discard.Count == 0 && unknown.Count == 0) unknown.Add(new(BathReasonCode.NothingOnRecord, []));
        var verdict = discard.Count > 0 ? BathVerdict.Discard : unknown.Count > 0 ? BathVerdict.NotKnown : BathVerdict.Use;
        if (verdict == BathVerdict.Use && last is { } until) good.Add(new(BathReasonCode.GoodUntil, [until.ToString()]));
        answer = new()
        {
            Question = question,
            Verdict = verdict,
            Reasons = verdict == BathVerdict.Use ? good : [.. discard, .. unknown],
            LastDay = verdict == BathVerdict.Discard ? null : last,
            Agent = keeping.Agent,
            Least = least,
            Test = keeping.Use?.Test,
            Sources = keeping.Sources,
            Identity = knowledgeBase.Identity,
        };
        return true;
    }

    private static Strength? InBasis(Scope scope, Keeping? keeping, Interval? percent) =>
        keeping?.Agent is { } agent && percent is { } range && scope.Basis(agent) is { } basis ? new Strength(range, StrengthUnit.PercentOf(basis.Basis))
            : null;

    private static Keeping? KeepingOf(Scope scope, BathQuestion question, Field at)
    {
        if (question.Product is null == question.Claim is null)
        {
            at["product"].Wrong("one-bath", question.Product is null ? "no product or claim is named" : "a product and a claim exclude each other");
            return null;
        }

        if (question.Product is { } id)
        {
            if (!at["product"].Knows(scope.Products, id, "product")) return null;
            var product = scope.Products[id];
            return new(product.Bath?.Agent, product.Bath?.Use, product.Life, product.NeedsActivation, []);
        }

        var claim = scope.Data.Claims.FirstOrDefault(c => c.Id == question.Claim);
        if (claim is not null) return new(claim.Agent, claim.Bath, new ProductLife(), claim.Needs.Contains(ClaimNeed.Activation), claim.Sources,
            claim.When.Strength is { Statement: AxisStatement.Within, Range: var shown } ? shown : null);
        at["claim"].Wrong("unknown-claim", $"there is no claim `{question.Claim}`",
            NearestNames.Help(question.Claim!.Value, scope.Data.Claims.Select(c => c.Id.Value)));
        return null;
    }

    private static void Days(BathQuestion question, Field at)
    {
        foreach (var (field, day) in new[] { ("activated", question.Activated), ("diluted", question.Diluted), ("opened", question.Opened),
            ("tested", question.Tested) })
            if (day is { } on && on > question.Today) at[field].Wrong("day-to-come", $"`{on}` lies after today, `{question.Today}`");
        if (question is { Opened: { } opened, Activated: { } activated } && activated < opened)
            at["activated"].Wrong("days-out-of-order", $"it was activated on `{activated}`, before its lot was opened on `{opened}`");
    }

    private static Interval? Measured(KnowledgeBase kb, Scope scope, BathQuestion question, Keeping? keeping, Field at)
    {
        if (question.Measured is not { } measured || keeping is null) return null;
        if (keeping.Agent is null || scope.Basis(keeping.Agent) is not { } basis)
        {
            at.Wrong("nothing-to-measure", "no strength of it is on record, so a measured one says nothing");
            return null;
        }

        at.Strength(measured.Percent, measured.Unit);
        var compiled = kb.Compiled;
        if (StrengthConversion.Convert(measured, compiled.Agent(keeping.Agent), Density(scope, question),
            compiled.Convention(ConventionKey.SolutionDensity).Range) is { } percent) return percent;
        at.Wrong("no-conversion", $"`{measured.Unit}` cannot be turned into `{basis}` for `{keeping.Agent}`",
            "its density or its share of available chlorine is not on record");
        return null;
    }

    private static decimal? Density(Scope scope, BathQuestion question) =>
        question.Product is { } id && scope.Products.TryGetValue(id, out var product) && product.StrengthOf != StrengthOf.Concentrate ? product.Density : null;

    private static void Strengths(BathQuestion question, Keeping keeping, Strength? least, Strength? claimed, Interval? measured, List<BathReason> discard,
        List<BathReason> unknown, List<BathReason> good)
    {
        if (question.TestPassed == false) discard.Add(new(BathReasonCode.TestFailed, [(question.Tested ?? question.Today).ToString()]));
        if (least is not { } floor)
        {
            // No minimum on record: what is weaker than the claim was shown at is not what the claim speaks of.
            if (measured is { Lower: var weakest } && claimed is { Percent.Lower: { } shown } box && (weakest is not { } low || low < shown))
                discard.Add(new(BathReasonCode.TooWeak, [question.Measured!.Value.ToString(), box.ToString()]));
            return;
        }

        if (measured is { } now)
        {
            var figures = new[] { question.Measured!.Value.ToString(), floor.ToString() };
            if (now.LiesIn(floor.Percent)) good.Add(new(BathReasonCode.StrongEnough, figures));
            else discard.Add(new(BathReasonCode.TooWeak, figures));
        }
        else if (!(question.TestPassed == true && question.Tested == question.Today) && question.TestPassed != false)
        {
            unknown.Add(new(BathReasonCode.NotTestedToday, [keeping.Use?.Test ?? ""]));
        }
    }

    /// <summary>The last day on which it may be used, by the shortest life that is on record; what cannot be counted is noted.</summary>
    /// <remarks>
    /// <paramref name="counted"/> says whether any life of the liquid is on record. The day printed on a lot is none: it speaks of the closed bottle, not of a
    /// bath.
    /// </remarks>
    private static CalendarDate? Days(BathQuestion question, Keeping keeping, List<BathReason> discard, List<BathReason> unknown, out bool counted)
    {
        CalendarDate? last = null;
        var lives = 0;
        var started = question.Activated ?? question.Diluted ?? question.Opened;
        if (!question.Tub) Count(keeping.Use?.Reuse, started, BathReasonCode.PastReuse, keeping.NeedsActivation ? "activated" : "opened");
        if (!question.Tub || question.Activated is not null) Count(keeping.Life.Activated, question.Activated, BathReasonCode.PastActivation, "activated");
        if (!question.Tub || question.Diluted is not null) Count(keeping.Life.Diluted, question.Diluted, BathReasonCode.PastDilution, "diluted");
        if (question.Tub || question.Opened is not null) Count(keeping.Life.Opened, question.Opened, BathReasonCode.PastOpening, "opened");
        if (question.Expires is { } printed) Until(printed, BathReasonCode.PastExpiry);
        else unknown.Add(new(BathReasonCode.DayNotKnown, ["expires"]));
        counted = lives > 0;
        return last;

        void Count(decimal? seconds, CalendarDate? from, BathReasonCode past, string day)
        {
            if (seconds is not { } life) return;
            lives++;
            if (from is not { } first) unknown.Add(new(BathReasonCode.DayNotKnown, [day]));
            else Until(first.Later(life <= Day ? 0m : life / Day), past);
        }

        void Until(CalendarDate day, BathReasonCode past)
        {
            if (question.Today > day) discard.Add(new(past, [day.ToString()]));
            if (last is not { } soonest || day < soonest) last = day;
        }
    }
}
