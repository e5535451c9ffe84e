namespace Compat.Planning;

/// <summary>What a product is to a part: worst first.</summary>
public enum ShelfWord
{
    /// <summary>The part or people are harmed, and the level is not shown to be reached either.</summary>
    HarmsAndIsNotShownToReach,

    /// <summary>It reaches the level, and harms the part or people, or not both at once are to be had.</summary>
    ReachesButHarms,

    /// <summary>The instructions forbid it or do not list it.</summary>
    RefusedByInstructions,

    /// <summary>Nobody knows.</summary>
    NotKnown,

    /// <summary>The part and the people stand it, and the level is not reached.</summary>
    SparesButDoesNotReach,

    /// <summary>It reaches the level and spares, with more beside it.</summary>
    DoesItWithMore,

    /// <summary>It reaches the level and spares.</summary>
    DoesIt,

    /// <summary>The part needs nothing.</summary>
    NothingNeeded,
}

/// <summary>What more it takes for a product to do it.</summary>
public enum ShelfMore
{
    /// <summary>Clean first, in a step of its own.</summary>
    CleanFirst,

    /// <summary>Wipe again, to keep it visibly wet long enough.</summary>
    WipeAgain,

    /// <summary>Time how long it stays wet: it is not on record.</summary>
    TimeIt,

    /// <summary>Take the residue off afterwards.</summary>
    TakeOff,

    /// <summary>Activate it first.</summary>
    Activate,

    /// <summary>Measure the temperature and keep to it.</summary>
    MeasureTemperature,

    /// <summary>Measure the pH and keep to it.</summary>
    MeasurePh,

    /// <summary>A gap of the part is not shown to be reached: something else for the gap.</summary>
    ReachTheGap,
}

/// <summary>One product on one part.</summary>
public sealed record ShelfCell
{
    /// <summary>The product.</summary>
    public required ProductId Product { get; init; }

    /// <summary>What it is to the part.</summary>
    public required ShelfWord Word { get; init; }

    /// <summary>What more it takes; empty but for <see cref="ShelfWord.DoesItWithMore"/>.</summary>
    public IReadOnlyList<ShelfMore> More { get; init; } = [];

    /// <summary>
    /// The whole answer it was read from; null where the part needs nothing. It was asked for the first part of this kind, so its question may name another
    /// device.
    /// </summary>
    public Answer? Answer { get; init; }

    /// <summary>Whether the product serves the part.</summary>
    public bool Serves => Word is ShelfWord.DoesIt or ShelfWord.DoesItWithMore;
}

/// <summary>One part of a device against all products.</summary>
public sealed record ShelfRow
{
    /// <summary>The device.</summary>
    public required DeviceId Device { get; init; }

    /// <summary>Its part.</summary>
    public required DevicePart Part { get; init; }

    /// <summary>What it needs.</summary>
    public required Need Need { get; init; }

    /// <summary>A cell for each product, in the order of <see cref="Shelf.Products"/>.</summary>
    public IReadOnlyList<ShelfCell> Cells { get; init; } = [];

    /// <summary>Whether the part needs nothing.</summary>
    public bool NeedsNothing => Cells.Count > 0 && Cells[0].Word == ShelfWord.NothingNeeded;

    /// <summary>Whether it needs something and no product serves it.</summary>
    public bool IsUnserved => !NeedsNothing && !Cells.Any(cell => cell.Serves);
}

/// <summary>All parts of the devices of the sites against all their products.</summary>
public sealed record Shelf
{
    /// <summary>The products, in the order of the sites.</summary>
    public IReadOnlyList<ProductId> Products { get; init; } = [];

    /// <summary>A row for each part: those that no product serves first, then those that fewest serve; those that need nothing last.</summary>
    public IReadOnlyList<ShelfRow> Rows { get; init; } = [];

    /// <summary>The identity of the data.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }

    /// <summary>Asks every product of the sites on every part of their devices; parts alike are asked once.</summary>
    /// <param name="knowledgeBase">The knowledge base with its sites.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Shelf Of(KnowledgeBase knowledgeBase, CancellationToken cancel = default) => Of(knowledgeBase, null, cancel);

    /// <summary>The same, saying how far it is.</summary>
    /// <param name="knowledgeBase">The knowledge base with its sites.</param>
    /// <param name="progress">Takes after each question how many are answered, and how many there are; from several threads at once. Null where nobody
    /// looks.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Shelf Of(KnowledgeBase knowledgeBase, Action<int, int>? progress, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(knowledgeBase);
        var products = knowledgeBase.Sites.SelectMany(site => site.Products).ToArray();
        var rows = new ShelfMaker(knowledgeBase, products).Rows(progress, cancel);
        return new Shelf
        {
            Products = products.Select(product => product.Id).ToArray(),
            Rows = rows.OrderBy(row => row.NeedsNothing).ThenBy(row => row.Cells.Count(cell => cell.Serves))
                .ThenBy(row => row.Cells.Count == 0 ? 0 : (int)row.Cells.Max(cell => cell.Word)).ToArray(),
            Identity = knowledgeBase.Identity,
        };
    }
}

/// <summary>
/// Fills the cells of a shelf. Parts of one type, materials, shape, contact and patients are alike unless their device has instructions, rules or decisions of
/// its own.
/// </summary>
internal sealed class ShelfMaker(KnowledgeBase kb, Product[] products)
{
    private readonly HashSet<DeviceId> _ofTheirOwn =
    [
        .. kb.Sites.SelectMany(site => site.Devices).Where(device => device.Instructions.Count > 0).Select(device => device.Id),
        .. kb.Sites.SelectMany(site => site.Rules).Select(rule => rule.Target.Device).OfType<DeviceId>(),
        .. kb.Sites.SelectMany(site => site.Levels).Select(decision => decision.Device),
    ];

    /// <summary>A row for each part of each device, in the order of the sites.</summary>
    public IReadOnlyList<ShelfRow> Rows(Action<int, int>? progress, CancellationToken cancel)
    {
        var rows = kb.Sites.SelectMany(site => site.Devices).SelectMany(device => device.Parts.Select(part => RowOf(device, part))).ToArray();
        var kinds = rows.Select(row => row.Key).Distinct().Select((key, i) => (key, i)).ToDictionary(pair => pair.key, pair => pair.i);
        var cells = kinds.Select(_ => new ShelfCell[products.Length]).ToArray();
        var first = rows.GroupBy(row => row.Key).Select(group => group.First().Row).ToArray();
        var done = 0;
        var options = new ParallelOptions { CancellationToken = cancel };
        Parallel.For(0, first.Length * products.Length, options, i =>
        {
            var (kind, product) = (i / products.Length, i % products.Length);
            cells[kind][product] = CellOf(first[kind], products[product]);
            progress?.Invoke(Interlocked.Increment(ref done), first.Length * products.Length);
        });
        return rows.Select(row => row.Row with { Cells = cells[kinds[row.Key]] }).ToArray();
    }

    private (ShelfRow Row, string Key) RowOf(Device device, DevicePart part)
    {
        var row = new ShelfRow
        {
            Device = device.Id,
            Part = part,
            Need = kb.NeedOf(new Question { Device = device.Id, DevicePart = part.Id, Agent = AgentClass.Root })
        };
        if (_ofTheirOwn.Contains(device.Id)) return (row, device.Id.Value + "/" + part.Id.Value);
        var materials = part.Materials is { } slots ? string.Join(";", slots.Select(slot => string.Join("|", slot.OneOf))) : "as the type";
        var soil = string.Join(",", row.Need.Soil);
        var patients = string.Join(",", row.Need.Patients);
        return (
            row,
            $"{string.Join("|", part.OneOfTypes)} {materials} {part.MaterialsKnown} {part.Wettest} {part.Geometry} {part.TouchedBy} "
            + $"{soil} {part.WhenDismantled} {patients}");
    }

    private ShelfCell CellOf(ShelfRow row, Product product)
    {
        if (row.Need is { KeptDry: true, SoiledWhereDry: false, Prions: false }) return new() { Product = product.Id, Word = ShelfWord.NothingNeeded };
        if (kb.AskWhereListable(new Question { Device = row.Device, DevicePart = row.Part.Id, Product = product.Id }) is not { } answer)
            return new() { Product = product.Id, Word = ShelfWord.NotKnown };
        var (word, more) = Read(answer, row.Need, product);
        return new() { Product = product.Id, Word = word, More = more, Answer = answer };
    }

    private static (ShelfWord Word, IReadOnlyList<ShelfMore> More) Read(Answer answer, Need need, Product product)
    {
        if (answer.PartVerdict == Verdict.NotAllowed && IsRefused(answer)) return (ShelfWord.RefusedByInstructions, []);
        var harms = answer.PartVerdict == Verdict.NotAllowed || answer.People?.Verdict == Verdict.NotAllowed;
        if (answer.Window is not { } window) return (OfCleaning(answer, harms, product), []);
        if (window.IsOpen && answer.Verdict >= Verdict.AllowedWithinLimits) return With(window, need, product);
        var reaches = window.IsOpen || window.Closure!.Code != ClosureCode.DoesNotKill;
        if (harms) return (reaches ? ShelfWord.ReachesButHarms : ShelfWord.HarmsAndIsNotShownToReach, []);
        if (answer.PartVerdict == Verdict.NotEstablished || answer.Kill?.Verdict == Verdict.NotEstablished) return (ShelfWord.NotKnown, []);
        return (reaches ? ShelfWord.ReachesButHarms : ShelfWord.SparesButDoesNotReach, []);
    }

    /// <summary>Where nothing need be killed, what takes soil off does it; a label that does not say so leaves it open.</summary>
    private static ShelfWord OfCleaning(Answer answer, bool harms, Product product) =>
        harms ? product.Removes.Count > 0 ? ShelfWord.ReachesButHarms : ShelfWord.HarmsAndIsNotShownToReach
        : answer.Kill?.Verdict == Verdict.NotAllowed ? ShelfWord.SparesButDoesNotReach
        : answer.Verdict < Verdict.AllowedWithinLimits || product.Removes.Count == 0 ? ShelfWord.NotKnown
        : ShelfWord.DoesIt;

    /// <summary>Whether the instructions forbid it or do not list it.</summary>
    internal static bool IsRefused(Answer answer) =>
        answer.Reasons.Any(reason => reason.Code == ReasonCode.NotListed)
        || answer.DecidedBy.Any(rule => !rule.Allows && (rule.Edition is not null || rule.KnownBy == KnownBy.Instructions));

    /// <summary>What more it takes, in the box that takes least.</summary>
    private static (ShelfWord, IReadOnlyList<ShelfMore>) With(Window window, Need need, Product product)
    {
        var least = window.Boxes.Select(box => More(box, window, need, product)).OrderBy(more => more.Count).First();
        return (least.Count == 0 ? ShelfWord.DoesIt : ShelfWord.DoesItWithMore, least);
    }

    private static List<ShelfMore> More(WindowBox box, Window window, Need need, Product product)
    {
        var more = new List<ShelfMore>();
        var asksCleaning = need.CleanFirst || box.Claims.Any(claim => claim.Needs.Contains(ClaimNeed.CleanFirst));
        if (asksCleaning || (box.Duties.Any(duty => duty.Kind == DutyKind.CleanFirst) && !product.OneStep)) more.Add(ShelfMore.CleanFirst);
        if (product.NeedsActivation || box.Claims.Any(claim => claim.Needs.Contains(ClaimNeed.Activation))) more.Add(ShelfMore.Activate);
        if (box.Reached == ContactTimeReached.WipeAgain) more.Add(ShelfMore.WipeAgain);
        if (box.Reached == ContactTimeReached.TimeIt) more.Add(ShelfMore.TimeIt);
        if (box.MeasureTemperature) more.Add(ShelfMore.MeasureTemperature);
        if (box.MeasurePh) more.Add(ShelfMore.MeasurePh);
        if (box.Duties.Any(duty => duty.Kind == DutyKind.TakeOff)) more.Add(ShelfMore.TakeOff);
        if (window.GapNotShown) more.Add(ShelfMore.ReachTheGap);
        return more;
    }
}
