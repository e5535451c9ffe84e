using Compat.Evaluation;
using Compat.Sites;

namespace Compat.Verdicts;

/// <summary>A row of a scene: which voice, which place there.</summary>
internal readonly record struct RowPlace(int Voice, int Row);

/// <summary>All rules that can speak of one component on one variant of a part, by voice: 0 is the part and device, then one a material.</summary>
internal sealed class VerdictScene
{
    private readonly RowPlace[]?[][]? _overriders;

    public VerdictScene(VerdictIndex index, PartVariant variant, AskedComponent asked, ResidenceEnding ending)
    {
        Variant = variant;
        Voices = new VoiceRows[variant.Materials.Length + 1];
        Voices[0] = VoiceRows.Of(index, Reach.PartAndDevice(index.Base, variant), asked, ending);
        for (var m = 0; m < variant.Materials.Length; m++) Voices[m + 1] = index.OfMaterial(variant.Materials[m], asked, ending);
        DutiesOnly = VoiceRows.Of(index, Reach.NotPassing(index.Base, variant), asked, ending);
        Forbidding = Array.FindAll(Voices, voice => voice.Forbidding > 0);
        MaterialsCanAllow = variant.MaterialsKnown && variant.Materials.Length > 0 && Array.TrueForAll(Voices, voice => voice == Voices[0] || voice.CanAllow);
        Composition = asked.Product?.Composition ?? Composition.Full;
        Suffices = Array.ConvertAll(variant.Materials, index.Base.DeclaredOnlySuffices);
        ResidueStays = (!asked.Component.Unknown && !index.Base.Agent(asked.Component.Agent).Duties.All(variant.CanMeet)) || !variant.Duties.All(variant.CanMeet);
        _overriders = Overriders();
        ByCells = _overriders is not null || variant.Editions.Count > 0 || Composition != Composition.Full;
    }

    public PartVariant Variant { get; }

    public VoiceRows[] Voices { get; }

    /// <summary>The 'allowed' rules on its types whose permission does not pass to it, but whose duties do.</summary>
    public VoiceRows DutiesOnly { get; }

    /// <summary>The voices in which some rule forbids.</summary>
    public VoiceRows[] Forbidding { get; }

    /// <summary>Whether every material is known and some rule could allow it.</summary>
    public bool MaterialsCanAllow { get; }

    /// <summary>How far the product is declared; full for an agent.</summary>
    public Composition Composition { get; }

    /// <summary>For each material whether what a product leaves undeclared does not matter to it.</summary>
    public bool[] Suffices { get; }

    /// <summary>Whether a duty of the agent or part can be met in no way: whatever only forbids does not ask for them.</summary>
    public bool ResidueStays { get; }

    /// <summary>Whether a box must be cut until every rule applies in all of it or nowhere, since rules speak of one another.</summary>
    public bool ByCells { get; }

    /// <summary>The rules of a voice; -1 is <see cref="DutiesOnly"/>.</summary>
    public VoiceRows Voice(int voice) => voice < 0 ? DutiesOnly : Voices[voice];

    /// <summary>The rules of its own voice, or of the part and device, that override a rule; null where none does.</summary>
    public RowPlace[]? OverridersOf(int voice, int row) => _overriders?[voice + 1][row];

    private RowPlace[]?[][]? Overriders()
    {
        var any = false;
        var all = new RowPlace[]?[Voices.Length + 1][];
        for (var voice = -1; voice < Voices.Length; voice++)
        {
            var rows = Voice(voice).All;
            all[voice + 1] = new RowPlace[]?[rows.Length];
            for (var row = 0; row < rows.Length; row++)
            {
                if (!rows[row].Is(RowTraits.Tied)) continue;
                var by = new List<RowPlace>();
                Gather(by, 0, rows[row].Rule);
                if (voice > 0) Gather(by, voice, rows[row].Rule);
                if (by.Count == 0) continue;
                all[voice + 1][row] = by.ToArray();
                any = true;
            }
        }

        return any ? all : null;
    }

    private void Gather(List<RowPlace> by, int voice, CompiledRule overridden)
    {
        var rows = Voices[voice].All;
        for (var row = 0; row < rows.Length; row++)
            if (rows[row].Rule.Overridden.Contains(overridden)) by.Add(new RowPlace(voice, row));
    }
}
