namespace Compat.Planning;

/// <summary>A part on which the two products differ.</summary>
/// <param name="Device">The device.</param>
/// <param name="Part">Its part.</param>
/// <param name="Old">The cell of the old product.</param>
/// <param name="New">The cell of the new product.</param>
public sealed record ReplacedCell(DeviceId Device, DevicePartId Part, ShelfCell Old, ShelfCell New);

/// <summary>What it means to put a new product in place of an old one on every part.</summary>
public sealed record Replacement
{
    /// <summary>The old product.</summary>
    public required ProductId Old { get; init; }

    /// <summary>The new product.</summary>
    public required ProductId New { get; init; }

    /// <summary>The highest level that the labels claim, old and new; null where a label claims none.</summary>
    public (Level? Old, Level? New) LabelLevels { get; init; }

    /// <summary>What the old label kills and the new one does not claim.</summary>
    public IReadOnlyList<OrganismTarget> GroupsLost { get; init; } = [];

    /// <summary>The parts that the old one serves and the new one does not.</summary>
    public IReadOnlyList<ReplacedCell> Lost { get; init; } = [];

    /// <summary>The parts that the new one serves and the old one does not.</summary>
    public IReadOnlyList<ReplacedCell> Gained { get; init; } = [];

    /// <summary>The parts that both serve and that must stay wet longer than before.</summary>
    public IReadOnlyList<ReplacedCell> LongerWet { get; init; } = [];

    /// <summary>The parts whose instructions do not list the new one.</summary>
    public IReadOnlyList<ReplacedCell> Refused { get; init; } = [];

    /// <summary>The parts on which a number of uses goes on counting: what the old one has used up is not given back.</summary>
    public IReadOnlyList<ReplacedCell> GoOnCounting { get; init; } = [];

    /// <summary>Duties that go with the new one on some part and with the old one on none.</summary>
    public IReadOnlyList<Duty> NewDuties { get; init; } = [];

    /// <summary>What protects staff from the new one and was not asked by the old one.</summary>
    public IReadOnlyList<Protection> NewProtection { get; init; } = [];

    /// <summary>What is on record where the two meet: on surfaces, cloths and in waste at the change.</summary>
    public required MixingAnswer AtTheChange { get; init; }

    /// <summary>Reads it off a shelf.</summary>
    /// <param name="knowledgeBase">The knowledge base that the shelf was made of.</param>
    /// <param name="shelf">The shelf; both products stand on it.</param>
    /// <param name="old">The old product.</param>
    /// <param name="new">The new product.</param>
    /// <exception cref="ArgumentException">One of them does not stand on the shelf.</exception>
    public static Replacement Of(KnowledgeBase knowledgeBase, Shelf shelf, ProductId old, ProductId @new)
    {
        ArgumentNullException.ThrowIfNull(knowledgeBase);
        ArgumentNullException.ThrowIfNull(shelf);
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        var columns = shelf.Products.ToList();
        if (!columns.Contains(old) || !columns.Contains(@new)) throw new ArgumentException($"`{old}` and `{@new}` are not both on the shelf");
        var cells = shelf.Rows.Where(row => !row.NeedsNothing)
            .Select(row => new ReplacedCell(row.Device, row.Part.Id, row.Cells[columns.IndexOf(old)], row.Cells[columns.IndexOf(@new)])).ToArray();
        var (first, second) = (ProductOf(knowledgeBase, old), ProductOf(knowledgeBase, @new));
        var known = new HashSet<string>(cells.Where(cell => cell.Old.Serves).SelectMany(cell => DutiesOf(cell.Old)).Select(Said));
        var (before, after) = (ProtectionOf(old), ProtectionOf(@new));
        Mixture.TryJudge(knowledgeBase, MixingPartner.Of(old), MixingPartner.Of(@new), out var meeting, out _);
        return new Replacement
        {
            Old = old,
            New = @new,
            LabelLevels = (LevelOf(first), LevelOf(second)),
            GroupsLost = first.LabelClaims.SelectMany(claim => claim.Kills).Except(second.LabelClaims.SelectMany(claim => claim.Kills)).ToArray(),
            Lost = cells.Where(cell => cell.Old.Serves && !cell.New.Serves).ToArray(),
            Gained = cells.Where(cell => !cell.Old.Serves && cell.New.Serves).ToArray(),
            LongerWet = cells.Where(cell => cell.Old.Serves && cell.New.Serves && ContactTime(cell.New) > ContactTime(cell.Old)).ToArray(),
            Refused = cells.Where(cell => cell.New.Word == ShelfWord.RefusedByInstructions).ToArray(),
            GoOnCounting = cells.Where(cell => IsCounted(cell.Old) && IsCounted(cell.New)).ToArray(),
            NewDuties = cells.Where(cell => cell.New.Serves).SelectMany(cell => DutiesOf(cell.New)).GroupBy(Said).Where(group => !known.Contains(group.Key))
                .Select(group => group.First()).ToArray(),
            NewProtection = knowledgeBase.Data.Protections.Where(one => after.Contains(one) && !before.Contains(one)).ToArray(),
            AtTheChange = meeting!,
        };

        HashSet<Protection> ProtectionOf(ProductId product) =>
            [.. PlanShelf.ProtectionOf(knowledgeBase.Compiled, SubstanceResolver.Resolve(knowledgeBase.Compiled, new Question { Product = product }))];
    }

    /// <summary>The shortest contact time of a cell that serves, in seconds.</summary>
    /// <param name="cell">The cell.</param>
    public static decimal ContactTime(ShelfCell cell) => (cell ?? throw new ArgumentNullException(nameof(cell))).Answer?.Window?.ShortestContactTime ?? 0m;

    private static Product ProductOf(KnowledgeBase kb, ProductId id) => kb.Sites.SelectMany(site => site.Products).First(product => product.Id == id);

    private static Level? LevelOf(Product product) => product.LabelClaims.Where(claim => claim.IsShown).Max(claim => claim.Reaches);

    private static IEnumerable<Duty> DutiesOf(ShelfCell cell) => cell.Answer?.Window?.Boxes.SelectMany(box => box.Duties) ?? cell.Answer?.Duties ?? [];

    private static string Said(Duty duty) =>
        $"{duty.Kind} {string.Join(",", duty.Ways.Select(way => $"{way.Method}{way.Act}{way.Water}"))} {string.Join(",", duty.Parts)} {duty.Note}";

    /// <summary>Whether what the part stands of it is limited in number.</summary>
    private static bool IsCounted(ShelfCell cell) =>
        cell.Answer is { } answer && answer.Boxes.Any(box => box.Uses.Upper is { } most && most != Interval.WithoutEnd);
}
