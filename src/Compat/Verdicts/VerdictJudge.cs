using Compat.Knowledge;
using Compat.Sites;

namespace Compat.Verdicts;

/// <summary>Finds the worst verdict of one scene over a box of cells, steps 3 to 9 of a point question, without allocating.</summary>
internal ref struct VerdictJudge
{
    /// <summary>What is said where too many cells would have to be looked at.</summary>
    public const Verdict Undecided = (Verdict)(-1);

    private const int MostLeaves = 1_000;

    private readonly VerdictScene _scene;
    private readonly ApplicationMethod _method;
    private readonly byte _leftOut;
    private readonly bool _onlyForbids;
    private int _leaves;

    /// <param name="scene">The rules that can speak.</param>
    /// <param name="method">The method.</param>
    /// <param name="leftOut">The axes that the question left out, one bit each: an 'allowed' is within limits unless its rules say `any` of them.</param>
    /// <param name="onlyForbids">Whether only a live 'not allowed' counts.</param>
    public VerdictJudge(VerdictScene scene, ApplicationMethod method, byte leftOut, bool onlyForbids)
    {
        (_scene, _method, _leftOut, _onlyForbids) = (scene, method, leftOut, onlyForbids);
        _leaves = 0;
    }

    /// <summary>The worst verdict in a box; <see cref="Undecided"/> where it would have to be cut too often.</summary>
    public Verdict Worst(in CellBox box)
    {
        if (++_leaves > MostLeaves) return Undecided;
        if (_scene.ByCells)
        {
            for (var voice = -1; voice < _scene.Voices.Length; voice++)
                if (Crossing(_scene.Voice(voice).All, box) is >= 0 and var row) return Cut(_scene.Voice(voice).All[row], box);
            if (ForbidsLive(box)) return Verdict.NotAllowed;
        }
        else if (ForbidsSomewhere(box))
        {
            return Verdict.NotAllowed;
        }

        if (_onlyForbids) return Verdict.Allowed;
        if (_scene.ResidueStays) return Verdict.NotAllowed;
        var silent = false;
        var editions = _scene.Variant.Editions;
        for (var i = 0; i < editions.Count; i++)
        {
            if (Lists(editions[i], box)) continue;
            if (editions[i].OnlyListed) return Verdict.NotAllowed;
            silent = true;
        }

        return Permission(silent, box);
    }

    private Verdict Permission(bool silent, in CellBox box)
    {
        var byPart = new Permitted();
        if (Permits(0, ref byPart, silent, box) is >= 0 and var first) return Cut(_scene.Voices[0].All[first], box);
        var deciding = byPart;
        if (!byPart.Any)
        {
            if (!_scene.MaterialsCanAllow) return Verdict.NotEstablished;
            deciding = new Permitted { Any = true, WellFounded = true, Unmet = byPart.Unmet };
            for (var voice = 1; voice < _scene.Voices.Length; voice++)
            {
                var ofMaterial = new Permitted();
                if (Permits(voice, ref ofMaterial, silent: false, box) is >= 0 and var row) return Cut(_scene.Voices[voice].All[row], box);
                if (!ofMaterial.Any) return Verdict.NotEstablished;
                deciding.Join(ofMaterial);
            }
        }

        if (deciding.Unmet) return Verdict.NotEstablished;
        if (_scene.DutiesOnly.CanAllow)
        {
            var accompanying = new Permitted();
            if (Permits(-1, ref accompanying, silent: false, box) is >= 0 and var row) return Cut(_scene.DutiesOnly.All[row], box);
            if (accompanying.Unmet) return Verdict.NotEstablished;
        }

        if (_scene.Composition != Composition.Full && !CompositionSuffices(byPart.OfProduct, box)) return Verdict.NotEstablished;
        return deciding.Limited || !deciding.WellFounded ? Verdict.AllowedWithinLimits : Verdict.Allowed;
    }

    /// <summary>Reads the live 'allowed' rules of a voice; gives the first that applies in a part of the box only, or -1.</summary>
    private readonly int Permits(int voice, ref Permitted permitted, bool silent, in CellBox box)
    {
        var rows = _scene.Voice(voice).All;
        for (var i = _scene.Voice(voice).Forbidding; i < rows.Length; i++)
        {
            ref readonly var row = ref rows[i];
            if (!row.Methods.Contains(_method)) continue;
            var fit = row.In(box);
            if (fit == Fit.Nowhere) continue;
            if (fit == Fit.InPart) return i;
            if (IsSetAside(voice, i, box)) continue;
            if (row.Is(RowTraits.HasWays) && !CanMeetAll(row.Rule.Rule.Duties)) permitted.Unmet = true;
            if (silent && row.Rule.OfInstructions) continue;
            permitted.Any = true;
            permitted.WellFounded |= row.Is(RowTraits.WellFounded);
            permitted.OfProduct |= row.Is(RowTraits.OfProduct);
            permitted.Limited |= row.Is(RowTraits.Unstated) || (_leftOut & ~row.Any) != 0;
        }

        return -1;
    }

    private readonly bool CanMeetAll(IReadOnlyList<Duty> duties)
    {
        for (var i = 0; i < duties.Count; i++)
            if (!_scene.Variant.CanMeet(duties[i])) return false;
        return true;
    }

    /// <summary>Whether a rule forbids anywhere in the box. Where no rule speaks of another, somewhere is enough.</summary>
    private readonly bool ForbidsSomewhere(in CellBox box)
    {
        foreach (var voice in _scene.Forbidding)
        {
            var rows = voice.All;
            for (var i = 0; i < voice.Forbidding; i++)
                if (rows[i].Methods.Contains(_method) && rows[i].In(box) != Fit.Nowhere) return true;
        }

        return false;
    }

    private readonly bool ForbidsLive(in CellBox box)
    {
        for (var voice = 0; voice < _scene.Voices.Length; voice++)
        {
            var rows = _scene.Voices[voice];
            for (var i = 0; i < rows.Forbidding; i++)
                if (Applies(voice, i, box) && !IsSetAside(voice, i, box)) return true;
        }

        return false;
    }

    private readonly bool Applies(int voice, int row, in CellBox box)
    {
        ref readonly var rule = ref _scene.Voice(voice).All[row];
        return rule.Methods.Contains(_method) && rule.In(box) == Fit.Everywhere;
    }

    /// <summary>Whether an acting rule of the voice, or of the part and device, overrides a rule.</summary>
    private readonly bool IsSetAside(int voice, int row, in CellBox box)
    {
        if (_scene.OverridersOf(voice, row) is not { } overriders || _scene.Voice(voice).All[row].Rule.OfInstructions) return false;
        foreach (var by in overriders)
            if (Applies(by.Voice, by.Row, box) && Acts(by, box)) return true;
        return false;
    }

    /// <summary>Whether no 'not allowed' overrides a rule that applies; what speaks for instructions always acts.</summary>
    private readonly bool Acts(RowPlace place, in CellBox box)
    {
        if (_scene.OverridersOf(place.Voice, place.Row) is not { } overriders || _scene.Voices[place.Voice].All[place.Row].Rule.OfInstructions) return true;
        foreach (var by in overriders)
            if (by.Row < _scene.Voices[by.Voice].Forbidding && Applies(by.Voice, by.Row, box)) return false;
        return true;
    }

    /// <summary>Whether an 'allowed' of an edition applies.</summary>
    private readonly bool Lists(InstructionsEdition edition, in CellBox box)
    {
        var rows = _scene.Voices[0];
        for (var i = rows.Forbidding; i < rows.All.Length; i++)
            if (rows.All[i].Rule.Rule.Edition == edition.Id && Applies(0, i, box)) return true;
        return false;
    }

    /// <summary>Whether there is evidence on a product that is not fully declared, or what it leaves out does not matter.</summary>
    private readonly bool CompositionSuffices(bool partRulesOnProduct, in CellBox box)
    {
        if (partRulesOnProduct) return true;
        if (!_scene.Variant.MaterialsKnown || _scene.Suffices.Length == 0) return false;
        for (var m = 0; m < _scene.Suffices.Length; m++)
        {
            if (_scene.Composition == Composition.DeclaredHazardousOnly && _scene.Suffices[m]) continue;
            var ofMaterial = new Permitted();
            Permits(m + 1, ref ofMaterial, silent: false, box);
            if (!ofMaterial.OfProduct) return false;
        }

        return true;
    }

    private readonly int Crossing(VoiceRow[] rows, in CellBox box)
    {
        for (var i = 0; i < rows.Length; i++)
            if (rows[i].Methods.Contains(_method) && rows[i].In(box) == Fit.InPart) return i;
        return -1;
    }

    private Verdict Cut(in VoiceRow row, in CellBox box)
    {
        var (below, above) = row.Cut(box);
        var worst = Worst(below);
        if (worst == Verdict.NotAllowed || worst == Undecided) return worst;
        var other = Worst(above);
        return other < worst ? other : worst;
    }

    /// <summary>What the live 'allowed' rules of one voice come to.</summary>
    private struct Permitted
    {
        public bool Any, WellFounded, Limited, OfProduct, Unmet;

        /// <summary>Adds another voice that must allow too.</summary>
        public void Join(in Permitted voice)
        {
            WellFounded &= voice.WellFounded;
            Limited |= voice.Limited;
            Unmet |= voice.Unmet;
        }
    }
}
