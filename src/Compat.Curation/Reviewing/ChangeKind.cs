namespace Compat.Curation.Reviewing;

/// <summary>What a change of answers is, the most dangerous first.</summary>
public enum ChangeKind
{
    /// <summary>More is permitted than before.</summary>
    Loosened,

    /// <summary>A level or group of organisms is reached with less than before.</summary>
    EfficacyLoosened,

    /// <summary>A use is permitted with less care than before.</summary>
    DutiesDropped,

    /// <summary>What is not allowed still is, but what it prevents is said to be milder: a plan may accept it.</summary>
    PreventsLess,

    /// <summary>The same is answered on less.</summary>
    EvidenceWeakened,

    /// <summary>Less is permitted than before, or with more care.</summary>
    Tightened,

    /// <summary>The same is answered on more.</summary>
    EvidenceStrengthened,
}
