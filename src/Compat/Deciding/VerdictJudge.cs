namespace Compat.Deciding;

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
    private readonly bool _oneIsEnough;
    private readonly bool _unestablished;
    private int _leaves;

    /// <param name="scene">The rules that can speak.</param>
    /// <param name="method">The method.</param>
    /// <param name="leftOut">The axes that the question left out, one bit each: an 'allowed' is within limits unless its rules say `any` of them.</param>
    /// <param name="onlyForbids">Whether only a live 'not allowed' counts.</param>
    /// <param name="unestablished">Whether another component is not established already: what permits this one need not be known.</param>
    public VerdictJudge(VerdictScene scene, ApplicationMethod method, byte leftOut, bool onlyForbids, bool unestablished)
    {
        (_scene, _method, _leftOut, _onlyForbids, _unestablished) = (scene, method, leftOut, onlyForbids, unestablished);
        _oneIsEnough = scene.FirstAllows && leftOut == 0 && !scene.ByCells;
        _leaves = 0;
    }

    /// <summary>The worst verdict in a box; <see cref="Undecided"/> where it would have to be cut too often.</summary>
    public Verdict Worst(in CellRange box)
    {
        if (++_leaves > MostLeaves) return Undecided;
        if (_scene.ByCells)
        {
            if (Crossing(box) is >= 0 and var row) return Cut(row, box);
            if (ForbidsLive(box)) return Verdict.NotAllowed;
        }
        else if (ForbidsSomewhere(box))
        {
            return Verdict.NotAllowed;
        }

        if (_onlyForbids) return Verdict.Allowed;
        if (_scene.ResidueStays) return Verdict.NotAllowed;
        if (!_scene.ByCells) return _unestablished ? Verdict.NotEstablished : Permission(silent: false, box);
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

    private Verdict Permission(bool silent, in CellRange box)
    {
        var byPart = new Permitted();
        if (Permits(0, ref byPart, silent, box) is >= 0 and var first) return Cut(first, box);
        var deciding = byPart;
        if (!byPart.Any)
        {
            if (!_scene.MaterialsCanAllow) return Verdict.NotEstablished;
            deciding = new Permitted { Any = true, WellFounded = true, Unmet = byPart.Unmet };
            for (var voice = 1; voice <= _scene.Suffices.Length; voice++)
            {
                var ofMaterial = new Permitted();
                if (Permits(voice, ref ofMaterial, silent: false, box) is >= 0 and var row) return Cut(row, box);
                if (!ofMaterial.Any) return Verdict.NotEstablished;
                deciding.Join(ofMaterial);
            }
        }

        if (deciding.Unmet) return Verdict.NotEstablished;
        if (_scene.DutiesOnly >= 0)
        {
            var accompanying = new Permitted();
            if (Permits(_scene.DutiesOnly, ref accompanying, silent: false, box) is >= 0 and var row) return Cut(row, box);
            if (accompanying.Unmet) return Verdict.NotEstablished;
        }

        if (_scene.Composition != Composition.Full && !CompositionSuffices(byPart.OfProduct, box)) return Verdict.NotEstablished;
        return deciding.Limited || !deciding.WellFounded ? Verdict.AllowedWithinLimits : Verdict.Allowed;
    }

    /// <summary>Reads the live 'allowed' rules of a voice; gives the first along which the box must be cut, or -1.</summary>
    private readonly int Permits(int voice, ref Permitted permitted, bool silent, in CellRange box)
    {
        var rows = _scene.Rows;
        var end = _scene.AllowFrom(voice + 1);
        var inPart = -1;
        for (var i = _scene.AllowFrom(voice); i < end; i++)
        {
            ref readonly var row = ref rows[i];
            if (!row.Methods.Contains(_method)) continue;
            var fit = row.In(box);
            if (fit == Fit.Nowhere) continue;
            if (fit == Fit.InPart)
            {
                if (!_oneIsEnough) return i;
                if (inPart < 0) inPart = i;
                continue;
            }

            if (IsSetAside(i, box)) continue;
            if (row.Is(RowTraits.HasWays) && !CanMeetAll(row.Rule.Rule.Duties)) permitted.Unmet = true;
            if (silent && row.Rule.OfInstructions) continue;
            permitted.Any = true;
            permitted.WellFounded |= row.Is(RowTraits.WellFounded);
            permitted.OfProduct |= row.Is(RowTraits.OfProduct);
            permitted.Limited |= row.Is(RowTraits.Unstated) || (_leftOut & ~row.Any) != 0;
            if (_oneIsEnough) return -1;
        }

        return inPart;
    }

    private readonly bool CanMeetAll(IReadOnlyList<Duty> duties)
    {
        for (var i = 0; i < duties.Count; i++)
            if (!_scene.Variant.CanMeet(duties[i])) return false;
        return true;
    }

    /// <summary>Whether a rule forbids anywhere in the box. Where no rule speaks of another, somewhere is enough.</summary>
    private readonly bool ForbidsSomewhere(in CellRange box)
    {
        var rows = _scene.Rows;
        for (var i = 0; i < _scene.Forbidding; i++)
            if (rows[i].Methods.Contains(_method) && rows[i].In(box) != Fit.Nowhere) return true;
        return false;
    }

    private readonly bool ForbidsLive(in CellRange box)
    {
        for (var i = 0; i < _scene.Forbidding; i++)
            if (Applies(i, box) && !IsSetAside(i, box)) return true;
        return false;
    }

    private readonly bool Applies(int row, in CellRange box) => _scene.Applies(row, _method, box);

    private readonly bool IsSetAside(int row, in CellRange box) => _scene.IsSetAside(row, _method, box);

    /// <summary>Whether an 'allowed' of an edition applies.</summary>
    private readonly bool Lists(InstructionsEdition edition, in CellRange box)
    {
        for (var i = _scene.AllowFrom(0); i < _scene.AllowFrom(1); i++)
            if (_scene.Rows[i].Rule.Rule.Edition == edition.Id && Applies(i, box)) return true;
        return false;
    }

    /// <summary>Whether there is evidence on a product that is not fully declared, or what it leaves out does not matter.</summary>
    private readonly bool CompositionSuffices(bool partRulesOnProduct, in CellRange box)
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

    private readonly int Crossing(in CellRange box)
    {
        var rows = _scene.Rows;
        for (var i = 0; i < rows.Length; i++)
            if (rows[i].Methods.Contains(_method) && rows[i].In(box) == Fit.InPart) return i;
        return -1;
    }

    private Verdict Cut(int row, in CellRange box)
    {
        var (below, above) = _scene.Rows[row].Cut(box);
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
