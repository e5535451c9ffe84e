namespace Compat.Deciding;

/// <summary>All rules that can speak of one component on one variant of a part, in one row: those that forbid, then those that allow by voice (0 is the part and device, then one a material).</summary>
internal sealed class VerdictScene
{
    private const int OfNoVoice = -1;

    private readonly int[] _allowFrom;
    private readonly int[]?[]? _overriders;

    /// <param name="index">The index it is made for.</param>
    /// <param name="variant">The variant of the part.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="ending">How an exposure time ends on the part.</param>
    /// <param name="inFull">Whether every rule has a row, those too that others make needless for a verdict; in the order in which they reach the voices.</param>
    public VerdictScene(VerdictIndex index, PartVariant variant, AskedComponent asked, ExposureTimeEnding ending, bool inFull)
    {
        Variant = variant;
        var voices = new VoiceRows[variant.Materials.Length + 1];
        voices[0] = VoiceRows.Of(index, Reach.PartAndDevice(index.Base, variant), asked, ending, inFull);
        for (var m = 0; m < variant.Materials.Length; m++) voices[m + 1] = index.OfMaterial(variant.Materials[m], asked, ending, inFull);
        var dutiesOnly = VoiceRows.Of(index, Reach.NotPassing(index.Base, variant), asked, ending, inFull);
        var inOrder = voices.SelectMany((voice, number) => voice.Forbidding.Select(row => (Row: row, Voice: number)));
        var forbidding = inFull ? inOrder.ToList() : VoiceRows.Needed(inOrder, one => one.Row);
        var rows = forbidding.ConvertAll(one => one.Row);
        var voiceOf = forbidding.ConvertAll(one => one.Voice);
        Forbidding = rows.Count;
        _allowFrom = new int[voices.Length + 2];
        for (var voice = 0; voice <= voices.Length; voice++)
        {
            _allowFrom[voice] = rows.Count;
            rows.AddRange((voice < voices.Length ? voices[voice] : dutiesOnly).Allowing);
            while (voiceOf.Count < rows.Count) voiceOf.Add(voice < voices.Length ? voice : OfNoVoice);
        }

        _allowFrom[voices.Length + 1] = rows.Count;
        Rows = rows.ToArray();
        DutiesOnly = dutiesOnly.Allowing.Length > 0 ? voices.Length : -1;
        MaterialsCanAllow = variant.MaterialsKnown && voices.Length > 1 && voices.Skip(1).All(voice => voice.Allowing.Length > 0);
        Composition = asked.Product?.Composition ?? Composition.Full;
        Suffices = Array.ConvertAll(variant.Materials, index.Base.DeclaredOnlySuffices);
        ResidueStays = (!asked.Component.Unknown && !index.Base.Agent(asked.Component.Agent).Duties.All(variant.CanMeet)) || !variant.Duties.All(variant.CanMeet);
        FirstAllows = Array.TrueForAll(Rows, row => !row.Rule.Allows || (row.Is(RowTraits.WellFounded) && !row.Is(RowTraits.Unstated | RowTraits.HasWays)));
        _overriders = Overriders(voiceOf);
        ByCells = _overriders is not null || variant.Editions.Count > 0 || Composition != Composition.Full;
    }

    public PartVariant Variant { get; }

    public VoiceRow[] Rows { get; }

    /// <summary>How many rows forbid: the first.</summary>
    public int Forbidding { get; }

    /// <summary>The number of the 'allowed' rules on its types whose permission does not pass to it but whose duties do, counted as a voice; -1 where there are none.</summary>
    public int DutiesOnly { get; }

    /// <summary>Whether every material is known and some rule could allow it.</summary>
    public bool MaterialsCanAllow { get; }

    /// <summary>How far the product is declared; full for an agent.</summary>
    public Composition Composition { get; }

    /// <summary>For each material whether what a product leaves undeclared does not matter to it.</summary>
    public bool[] Suffices { get; }

    /// <summary>Whether a duty of the agent or part can be met in no way: whatever only forbids does not ask for them.</summary>
    public bool ResidueStays { get; }

    /// <summary>Whether of several rules that allow each says as much as all: none is weak, silent on an axis or with a duty that a part may be unable to meet.</summary>
    public bool FirstAllows { get; }

    /// <summary>Whether a box must be cut until every rule applies in all of it or nowhere, since rules speak of one another.</summary>
    public bool ByCells { get; }

    /// <summary>The first row of a voice that allows; that of the next voice ends it.</summary>
    public int AllowFrom(int voice) => _allowFrom[voice];

    /// <summary>Whether some row is overridden by another.</summary>
    public bool HasOverrides => _overriders is not null;

    /// <summary>Whether a row applies in a whole box.</summary>
    public bool Applies(int row, ApplicationMethod method, in CellRange box) =>
        Rows[row].Methods.Contains(method) && Rows[row].In(box) == Fit.Everywhere;

    /// <summary>Whether an acting rule of the voice, or of the part and device, overrides a rule.</summary>
    public bool IsSetAside(int row, ApplicationMethod method, in CellRange box)
    {
        if (_overriders?[row] is not { } overriders || Rows[row].Rule.OfInstructions) return false;
        foreach (var by in overriders)
            if (Applies(by, method, box) && Acts(by, method, box)) return true;
        return false;
    }

    /// <summary>Whether no 'not allowed' overrides a rule that applies; what speaks for instructions always acts.</summary>
    private bool Acts(int row, ApplicationMethod method, in CellRange box)
    {
        if (_overriders![row] is not { } overriders || Rows[row].Rule.OfInstructions) return true;
        foreach (var by in overriders)
            if (by < Forbidding && Applies(by, method, box)) return false;
        return true;
    }

    /// <summary>For each row those that override it. A rule that reaches several voices has a row in each: set aside in one, it speaks in the others.</summary>
    private int[]?[]? Overriders(List<int> voiceOf)
    {
        int[]?[]? all = null;
        for (var row = 0; row < Rows.Length; row++)
        {
            if (!Rows[row].Is(RowTraits.Tied)) continue;
            var own = Math.Max(voiceOf[row], 0);
            var by = Enumerable.Range(0, Rows.Length)
                .Where(other => Rows[other].Rule.Overrides(Rows[row].Rule) && (voiceOf[other] == 0 || voiceOf[other] == own)).ToArray();
            if (by.Length > 0) (all ??= new int[]?[Rows.Length])[row] = by;
        }

        return all;
    }
}
