using Compat.Validation;

namespace Compat.Tests.RandomCases;

/// <summary>A knowledge base, perhaps a site, and a question.</summary>
internal sealed record Case(int Seed, KnowledgeData Data, Site? Site, Question Question)
{
    private KnowledgeBase? _built;

    private Case(Case like) => (Seed, Data, Site, Question, _built) = (like.Seed, like.Data, like.Site, like.Question, null);

    public IReadOnlyList<Site> Sites => Site is null ? [] : [Site];

    /// <summary>Builds the knowledge base; null with the problems where it is refused.</summary>
    public KnowledgeBase? Build(out IReadOnlyList<Problem> problems)
    {
        problems = [];
        if (_built is not null) return _built;
        problems = KnowledgeBase.TryBuild(Data, out var built);
        if (built is null || Site is null) return _built = built;
        problems = built.TryWith(Site, out var with);
        return _built = with;
    }

    /// <summary>The knowledge base of a case known to be valid.</summary>
    public KnowledgeBase Build() => Build(out var problems) ?? throw new InvalidOperationException(string.Join("\n", problems));

    /// <summary>The case as it can be pasted.</summary>
    public override string ToString() => CaseText.Write(this);
}
