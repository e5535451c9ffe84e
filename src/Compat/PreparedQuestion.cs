namespace Compat;

/// <summary>A question checked and turned into numbers for one knowledge base: made once by <see cref="KnowledgeBase.Prepare"/>, asked as often as
/// wanted.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class PreparedQuestion
{
    private object? _isPoint;

    internal PreparedQuestion(Question question, CompiledBase kb)
    {
        Question = question;
        Base = kb;
    }

    /// <summary>The question as it was asked.</summary>
    public Question Question { get; }

    /// <summary>Whether its verdict is looked up without allocating: method, exposure time and uses are stated (and a concentrate's dilution, one value), and
    /// kill and people are not judged. Else the whole answer is made for it.</summary>
    /// <remarks>Where more than 1,000 cells would have to be looked at, the whole answer is made too.</remarks>
    public bool IsLookedUp => Asked is not null;

    internal CompiledBase Base { get; }

    /// <summary>What is brought onto the part and the rules that can speak of it; null where it is not looked up.</summary>
    internal Asked? Asked { get; init; }

    /// <summary>For each component the cells that are asked.</summary>
    internal Box<Run>[] Boxes { get; init; } = [];

    /// <summary>The axes that were left out and may keep an 'allowed' within limits.</summary>
    internal Axis[] LeftOut { get; init; } = [];

    /// <summary>Whether the part stands neither the method nor an act.</summary>
    internal bool IsBarred { get; init; }

    /// <summary>Whether an 'allowed' is within limits whatever the rules say.</summary>
    internal bool IsNeverPlain { get; init; }

    /// <summary>Whether every rule applies in all of what is asked or nowhere in it, so that explaining it is little work.</summary>
    /// <remarks>Worked out when first asked for; whichever thread does finds the same.</remarks>
    internal bool IsPoint => (_isPoint ??= Asked is not null && !CrossesAny()) is true;

    /// <summary>The verdict; null where it cannot be looked up.</summary>
    internal Verdict? LookUp()
    {
        if (Asked is null) return null;
        if (IsBarred) return Verdict.NotAllowed;
        var worst = IsNeverPlain ? Verdict.AllowedWithinLimits : Verdict.Allowed;
        for (var i = 0; i < Boxes.Length; i++)
        {
            var search = new WorstVerdict(Asked.Scenes![i], LeftOut);
            Cutter.Cut(ref search, Boxes[i], false);
            if (search.Found is not > Verdict.NotAllowed) return search.Found;
            if (search.Found < worst) worst = search.Found.Value;
        }

        return worst;
    }

    private bool CrossesAny()
    {
        for (var i = 0; i < Boxes.Length; i++)
        {
            var box = Boxes[i];
            if (Array.Exists(Asked!.Scenes![i].Candidates, one => one.Cells.Meets(box) && !box.LiesIn(one.Cells))) return true;
        }

        return false;
    }
}
