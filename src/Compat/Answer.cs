namespace Compat;

/// <summary>What the knowledge base says to a question, with everything needed to log it and to explain it.</summary>
/// <remarks>Immutable and safe to share between threads. Of a prepared question what explains the verdict is worked out when it is first read. Two answers are
/// equal where all their members are, lists only where they are the same list: answers worked out apart are not equal, so compare the members that matter. It
/// judges the part; whether it disinfects and whether its residue harms people only where <see cref="Question.JudgesKillAndPeople"/>.</remarks>
public sealed record Answer
{
    private readonly object _detail;

    /// <summary>Makes an answer of its members.</summary>
    public Answer() => _detail = AnswerDetail.Empty;

    /// <summary>An answer of which all but the verdict is made when it is read.</summary>
    [System.Diagnostics.CodeAnalysis.SetsRequiredMembers]
#pragma warning disable CS8618 // the decisive reason is in the detail
    internal Answer(Question question, Verdict verdict, LazyDetail detail, IReadOnlyList<DataIdentity> identity)
    {
        (Question, Verdict, PartVerdict, Identity) = (question, verdict, verdict, identity);
        _detail = detail;
    }
#pragma warning restore CS8618

    /// <summary>The question.</summary>
    public required Question Question { get; init; }

    /// <summary>The verdict: the worst of what was judged.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>What the part stands, by itself.</summary>
    public required Verdict PartVerdict { get; init; }

    /// <summary>Whether what is needed is killed; null where it was not judged.</summary>
    public KillJudgement? Kill { get; init; }

    /// <summary>What it means for people; null where it was not judged.</summary>
    public PeopleJudgement? People { get; init; }

    /// <summary>The exposures that kill what is needed and that part and people stand; null where kill was not judged or needs none.</summary>
    public Window? Window { get; init; }

    /// <summary>The one reason that decides.</summary>
    public required Reason Decisive { get => Detail.Decisive!; init => _detail = Detail with { Decisive = value }; }

    /// <summary>All reasons found, the decisive one first.</summary>
    public IReadOnlyList<Reason> Reasons { get => Detail.Reasons; init => _detail = Detail with { Reasons = value }; }

    /// <summary>What was taken for each axis.</summary>
    public IReadOnlyList<Assumption> Assumptions { get => Detail.Assumptions; init => _detail = Detail with { Assumptions = value }; }

    /// <summary>The maximal boxes in which it is allowed, by method, exposure time, strength: the first 32.</summary>
    public IReadOnlyList<AllowedBox> Boxes { get => Detail.Boxes; init => _detail = Detail with { Boxes = value }; }

    /// <summary>How many maximal boxes there are.</summary>
    public int BoxCount { get => Detail.BoxCount; init => _detail = Detail with { BoxCount = value }; }

    /// <summary>Of a 'not established': the boxes of free choices where it is not allowed, the first 32.</summary>
    public IReadOnlyList<AllowedBox> ForbiddenBoxes { get => Detail.ForbiddenBoxes; init => _detail = Detail with { ForbiddenBoxes = value }; }

    /// <summary>What keeps an 'allowed' within limits.</summary>
    public IReadOnlyList<Limit> Limits { get => Detail.Limits; init => _detail = Detail with { Limits = value }; }

    /// <summary>What must accompany a use, over all boxes.</summary>
    public IReadOnlyList<Duty> Duties { get => Detail.Duties; init => _detail = Detail with { Duties = value }; }

    /// <summary>The rules that decided, by id.</summary>
    public IReadOnlyList<Rule> DecidedBy { get => Detail.DecidedBy; init => _detail = Detail with { DecidedBy = value }; }

    /// <summary>The rules that applied and were set aside, by id.</summary>
    public IReadOnlyList<Rule> SetAside { get => Detail.SetAside; init => _detail = Detail with { SetAside = value }; }

    /// <summary>The sources of the rules that decided, weakest first.</summary>
    public IReadOnlyList<Source> Sources { get => Detail.Sources; init => _detail = Detail with { Sources = value }; }

    /// <summary>Where part of an assumed range would be allowed: the axis and that part.</summary>
    public IReadOnlyList<Assumption> WouldBeAllowed { get => Detail.WouldBeAllowed; init => _detail = Detail with { WouldBeAllowed = value }; }

    /// <summary>Whether the voice of the part or device decided (else its materials'); meaningful for an 'allowed'.</summary>
    public bool JudgedByPart { get => Detail.JudgedByPart; init => _detail = Detail with { JudgedByPart = value }; }

    /// <summary>Whether it is known by instructions, a test or a publication that was read.</summary>
    public bool WellFounded { get => Detail.WellFounded; init => _detail = Detail with { WellFounded = value }; }

    /// <summary>The identity of the knowledge base and of each site laid over it.</summary>
    public required IReadOnlyList<DataIdentity> Identity { get; init; }

    /// <summary>True only for what is allowed as asked: plain allowed, only the part asked or everything judged, and well founded.</summary>
    public bool MayUse => Verdict == Verdict.Allowed && WellFounded && (Question.OnlyPart || (Kill is { WellFounded: true } && People is not null));

    /// <summary>True where the part stands it exactly as asked.</summary>
    public bool PartStandsIt => PartVerdict == Verdict.Allowed;

    /// <summary>The damage to expect: of the rules that decided.</summary>
    public IEnumerable<Damage> Damage
    {
        get
        {
            List<Damage>? each = null;
            var rules = DecidedBy;
            for (var i = 0; i < rules.Count; i++)
                if (rules[i].Damage is { } damage && each?.Contains(damage) != true) (each ??= []).Add(damage);
            return each is null ? [] : each;
        }
    }

    internal AnswerDetail Detail => _detail as AnswerDetail ?? ((LazyDetail)_detail).Value;

    /// <summary>Whether all members are equal.</summary>
    public bool Equals(Answer? other) =>
        ReferenceEquals(this, other)
        || (other is not null && Verdict == other.Verdict && PartVerdict == other.PartVerdict && Question.Equals(other.Question) && Equals(Kill, other.Kill)
            && Equals(People, other.People) && Equals(Window, other.Window) && Identity.Equals(other.Identity)
                && (_detail == other._detail || Detail.Equals(other.Detail)));

    /// <summary>A hash of the question and the verdicts.</summary>
    public override int GetHashCode() => (Question.GetHashCode() * 397) ^ ((int)Verdict * 31) ^ (int)PartVerdict;
}

/// <summary>Which state of the data an answer rests on.</summary>
/// <param name="Name"><c>shipped</c>, the data folder's name or the site's id.</param>
/// <param name="Version">The version its data states.</param>
/// <param name="Hash">SHA-256 over its content in canonical form, 64 hexadecimal digits.</param>
public sealed record DataIdentity(string Name, string Version, string Hash);
