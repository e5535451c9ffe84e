using System.Runtime.ExceptionServices;

namespace Compat.Planning;

/// <summary>Makes a plan, clauses L1 to L13: what each part needs, what of the shelf serves it, the best choice, the steps. The question passed
/// validation.</summary>
internal sealed class PlanMaker
{
    private readonly KnowledgeBase _knowledge;
    private readonly CompiledBase _kb;
    private readonly PlanQuestion _question;
    private readonly Occasion? _occasion;
    private readonly PlanShelf _shelf;
    private readonly Meetings _meetings;
    private readonly WindowFinder _finder;
    private readonly CancellationToken _cancel;

    public PlanMaker(KnowledgeBase knowledge, CompiledBase kb, PlanQuestion question, CancellationToken cancel = default)
    {
        _cancel = cancel;
        (_knowledge, _kb, _question) = (knowledge, kb, question);
        _occasion = question.Occasion is { } id ? kb.Data.Occasions.First(one => one.Id == id) : null;
        _shelf = new PlanShelf(kb, question);
        _meetings = new Meetings(knowledge);
        _finder = new WindowFinder(kb, _shelf, _meetings, knowledge.Identity);
    }

    public PlanSheet Make()
    {
        var max = MaxProducts(_kb, _question);
        var papers = _occasion?.Papers ?? [Paper.StepSheet];
        var sheet = new PlanSheet { Question = _question, Occasion = _occasion, MaxProducts = max, Papers = papers, Identity = _knowledge.Identity };
        if (_occasion is { Hold: true }) return sheet with { Hold = true };
        var cases = PartCase.All(_kb, _question, _occasion);
        if (cases.Any(one => one.Need.Prions)) return sheet with { Prions = true };

        var (windows, accepted, maker, options) = Choosing(cases);
        var (choice, fewer) = ChoiceSolver.SolveBoth(Task(options, max), _cancel);
        var chosen = choice.Served.ToDictionary(served => served.Part.Ordinal,
            served => options[cases[served.Part.Ordinal]].First(option => option.Choice == served.Option));

        var planned = new PartPlanner(_kb, _finder, _shelf, maker, accepted.Keys.ToArray(), choice.Products.Count < max);
        var parts = cases.Select(one => planned.Of(
            one, windows.TryGetValue(one, out var found) ? found : [], options.TryGetValue(one, out var all) ? all : [],
            chosen.TryGetValue(one.Ordinal, out var option) ? option : null)).ToArray();
        return sheet with
        {
            Products = choice.Products.Select(rank => _shelf.Products[rank].Product.Id).ToArray(),
            Parts = parts.OrderBy(part => part.Heading).ToArray(),
            Steps = new StepMaker(_knowledge, _kb, _shelf, _meetings, maker)
                .Of(cases, cases.Where(one => chosen.ContainsKey(one.Ordinal)).Select(one => chosen[one.Ordinal]).ToArray()),
            Fewer = fewer is null ? null : Fewer(fewer, cases),
        };
    }

    /// <summary>How many products a plan uses at most: as it is asked, else by the convention.</summary>
    internal static int MaxProducts(CompiledBase kb, PlanQuestion question) =>
        question.MaxProducts ?? (int)(kb.Convention(ConventionKey.MostProducts).Range.Upper ?? 1m);

    /// <summary>What is chosen from, of at most so many products: for the tests, which ask another solver.</summary>
    internal ChoiceTask TaskOf(int maxProducts) => Task(Choosing(PartCase.All(_kb, _question, _occasion)).Options, maxProducts);

    private (Dictionary<PartCase, IReadOnlyList<CaseWindow>> Windows, Dictionary<PartCase, IReadOnlyList<CaseWindow>> Accepted, OptionMaker Maker,
        Dictionary<PartCase, IReadOnlyList<PlanOption>> Options) Choosing(IReadOnlyList<PartCase> cases)
    {
        var open = cases.Where(one => one.Settled is null).ToArray();
        var found = Windows(open);
        var windows = open.Select((one, place) => (one, place)).ToDictionary(pair => pair.one, pair => found[pair.place]);
        var accepted = _question.Accept.Count == 0 ? [] : Accepting(windows);
        foreach (var pair in accepted) windows[pair.Key] = pair.Value;
        var settings = new Settings(
            windows.Values.SelectMany(list => list),
            _kb.Convention(ConventionKey.WindowShare).Range.Upper ?? 0m, _kb.Convention(ConventionKey.WindowLeast).Range.Upper ?? 0m);
        var maker = new OptionMaker(_kb, _meetings, settings);
        return (windows, accepted, maker, open.ToDictionary(one => one, one => Stood(maker.Of(one, windows[one]))));
    }

    /// <summary>For each part the windows of all products; they know nothing of each other.</summary>
    private IReadOnlyList<CaseWindow>[] Windows(PartCase[] open)
    {
        var windows = new IReadOnlyList<CaseWindow>[open.Length];
        try
        {
            Parallel.For(0, open.Length, new ParallelOptions { CancellationToken = _cancel }, place => windows[place] = Windows(open[place]));
        }
        catch (AggregateException all)
        {
            ExceptionDispatchInfo.Capture(all.InnerExceptions[0]).Throw();
        }

        return windows;
    }

    private IReadOnlyList<CaseWindow> Windows(PartCase one)
    {
        var windows = new List<CaseWindow>();
        foreach (var product in _shelf.Products)
        {
            _cancel.ThrowIfCancellationRequested();
            if (_finder.Cleaning(one, product) is { } cleaning) windows.Add(cleaning);
            if (!one.Need.NothingToKill) windows.Add(_finder.Disinfecting(one, product));
        }

        return windows;
    }

    /// <summary>Of the parts that nothing serves without harm those that something serves with harm that is accepted.</summary>
    private Dictionary<PartCase, IReadOnlyList<CaseWindow>> Accepting(Dictionary<PartCase, IReadOnlyList<CaseWindow>> windows)
    {
        var found = new Dictionary<PartCase, IReadOnlyList<CaseWindow>>();
        foreach (var pair in windows)
        {
            _cancel.ThrowIfCancellationRequested();
            if (pair.Key.Need.NothingToKill || pair.Value.Any(window => window.Role == PlanRole.Disinfect && window.Boxes.Count > 0)) continue;
            var harming = _shelf.Products.Select(product => _finder.Disinfecting(pair.Key, product, accept: _question.Accept))
                .Where(window => window.Boxes.Count > 0).ToArray();
            if (harming.Length > 0)
                found[pair.Key] = [.. pair.Value.Where(window => window.Role == PlanRole.Clean || harming.All(harm => harm.Product != window.Product)),
                    .. harming];
        }

        return found;
    }

    /// <summary>The options whose shares keep to what the shares of one mechanism may add up to.</summary>
    private IReadOnlyList<PlanOption> Stood(IReadOnlyList<PlanOption> options)
    {
        var most = UsesShare(_kb);
        return options.Where(
            option => option.Choice.Shares.Values.All(share => share <= new Fraction(new System.Numerics.BigInteger(most * 1_000_000m), 1_000_000))).ToArray();
    }

    internal static decimal UsesShare(CompiledBase kb) => kb.Convention(ConventionKey.UsesShare).Range.Upper ?? 1m;

    private ChoiceTask Task(Dictionary<PartCase, IReadOnlyList<PlanOption>> options, int max)
    {
        var used = new HashSet<int>(options.Values.SelectMany(all => all).SelectMany(option => option.Choice.Products).Select(one => one.Product));
        var products = _shelf.Products.Where(one => used.Contains(one.Rank)).ToArray();
        var pairs = (from one in products from other in products where one.Rank < other.Rank select (one, other)).ToArray();
        return new ChoiceTask
        {
            MaxProducts = max,
            Parts = options.Select(pair => new ChoicePart { Ordinal = pair.Key.Ordinal, Options = pair.Value.Select(option => option.Choice).ToArray() })
                .ToArray(),
            NeverInOnePlan = pairs.Where(pair => _meetings.NeverInOnePlan(pair.one.Product.Id, pair.other.Product.Id))
                .Select(pair => new ProductPair(pair.one.Rank, pair.other.Rank)).ToArray(),
            NeverOnOnePart = pairs.Where(pair => _meetings.NeverOnOnePart(pair.one.Product.Id, pair.other.Product.Id))
                .Select(pair => new ProductPair(pair.one.Rank, pair.other.Rank)).ToArray(),
        };
    }

    private OneFewer Fewer(OneProductFewer fewer, IReadOnlyList<PartCase> cases)
    {
        return new()
        {
            Products = fewer.Without.Products.Select(rank => _shelf.Products[rank].Product.Id).ToArray(),
            Lost = Ids(fewer.Lost),
            Gained = Ids(fewer.Gained),
            Harsher = Ids(fewer.Worse.Select(one => one.Part)),
            MoreSteps = fewer.MoreSteps,
            MoreContactTime = fewer.MoreContactTime,
        };

        DevicePartId[] Ids(IEnumerable<ChoicePart> parts) => parts.Select(part => cases[part.Ordinal].Part.Id).ToArray();
    }
}
