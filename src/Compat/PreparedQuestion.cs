namespace Compat;

/// <summary>A question checked and turned into numbers for one knowledge base: made once by <see cref="KnowledgeBase.Prepare"/>, asked as often as wanted.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class PreparedQuestion
{
    private object? _ground;

    internal PreparedQuestion(Question question, CompiledBase kb)
    {
        Question = question;
        Base = kb;
    }

    /// <summary>The question as it was asked.</summary>
    public Question Question { get; }

    /// <summary>Whether its verdict is looked up without allocating: method, exposure time and uses are stated (and a concentrate's dilution, one value), and kill and people are not judged. Else the whole answer is made for it.</summary>
    /// <remarks>Where more than 1,000 cells would have to be looked at, the whole answer is made too.</remarks>
    public bool IsLookedUp => Components is not null;

    internal CompiledBase Base { get; }

    /// <summary>What is brought onto the part, variant by variant; null where it is not looked up.</summary>
    internal PreparedComponent[]? Components { get; init; }

    /// <summary>The cells of all axes but strength.</summary>
    internal CellRange Exposure { get; init; }

    internal ApplicationMethod Method { get; init; }

    /// <summary>The axes that were left out, one bit each.</summary>
    internal byte LeftOut { get; init; }

    /// <summary>Whether the part stands neither the method nor an act.</summary>
    internal bool Barred { get; init; }

    /// <summary>Whether an 'allowed' is within limits whatever the rules say.</summary>
    internal bool WithinLimits { get; init; }

    /// <summary>What its whole answer is worked out from when it is read; null where it is made at once.</summary>
    /// <remarks>Made when first asked for; whichever thread makes it makes the same.</remarks>
    internal PointGround? GroundIn(VerdictIndex index) => (_ground ??= (object?)PointGround.Of(index, this) ?? this) as PointGround;

    /// <summary>The verdict; <see cref="VerdictJudge.Undecided"/> where it cannot be looked up.</summary>
    internal Verdict LookUp()
    {
        if (Components is null) return VerdictJudge.Undecided;
        if (Barred) return Verdict.NotAllowed;
        var worst = WithinLimits ? Verdict.AllowedWithinLimits : Verdict.Allowed;
        var box = Exposure;
        for (var i = 0; i < Components.Length; i++)
        {
            ref readonly var component = ref Components[i];
            box.StrengthLow = component.StrengthLow;
            box.StrengthHigh = component.StrengthHigh;
            var verdict = new VerdictJudge(component.Scene, Method, LeftOut, component.OnlyForbids, worst <= Verdict.NotEstablished).Worst(box);
            if (verdict <= Verdict.NotAllowed) return verdict;
            if (verdict < worst) worst = verdict;
        }

        return worst;
    }
}
