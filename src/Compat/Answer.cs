using Compat.Answers;
using Compat.Kill;
using Compat.Knowledge;
using Compat.People;
using Compat.Windows;

namespace Compat;

/// <summary>What the knowledge base says to a question, with everything needed to log it and to explain it.</summary>
/// <remarks>Immutable and safe to share between threads. It judges the part; whether it disinfects and whether its residue harms people only where <see cref="Question.JudgesKillAndPeople"/>.</remarks>
public sealed record Answer
{
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
    public required Reason Decisive { get; init; }

    /// <summary>All reasons found, the decisive one first.</summary>
    public IReadOnlyList<Reason> Reasons { get; init; } = [];

    /// <summary>What was taken for each axis.</summary>
    public IReadOnlyList<Assumption> Assumptions { get; init; } = [];

    /// <summary>The maximal boxes in which it is allowed, by method, residence, strength: the first 32.</summary>
    public IReadOnlyList<AllowedBox> Boxes { get; init; } = [];

    /// <summary>How many maximal boxes there are.</summary>
    public int BoxCount { get; init; }

    /// <summary>Of a 'not established': the boxes of free choices where it is not allowed, the first 32.</summary>
    public IReadOnlyList<AllowedBox> ForbiddenBoxes { get; init; } = [];

    /// <summary>What keeps an 'allowed' within limits.</summary>
    public IReadOnlyList<Limit> Limits { get; init; } = [];

    /// <summary>What must accompany a use, over all boxes.</summary>
    public IReadOnlyList<Duty> Duties { get; init; } = [];

    /// <summary>The rules that decided, by id.</summary>
    public IReadOnlyList<Rule> DecidedBy { get; init; } = [];

    /// <summary>The rules that applied and were set aside, by id.</summary>
    public IReadOnlyList<Rule> SetAside { get; init; } = [];

    /// <summary>The sources of the rules that decided, weakest first.</summary>
    public IReadOnlyList<Source> Sources { get; init; } = [];

    /// <summary>Where part of an assumed range would be allowed: the axis and that part.</summary>
    public IReadOnlyList<Assumption> WouldBeAllowed { get; init; } = [];

    /// <summary>Whether the voice of the part or device decided (else its materials'); meaningful for an 'allowed'.</summary>
    public bool JudgedByPart { get; init; }

    /// <summary>Whether it is known by instructions, a test or a publication that was read.</summary>
    public bool WellFounded { get; init; }

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
            var each = new List<Damage>();
            foreach (var rule in DecidedBy)
                if (rule.Damage is { } damage && !each.Contains(damage)) each.Add(damage);
            return each;
        }
    }
}

/// <summary>Which state of the data an answer rests on.</summary>
/// <param name="Name"><c>shipped</c>, the data folder's name or the site's id.</param>
/// <param name="Version">The version its data states.</param>
/// <param name="Hash">SHA-256 over its content in canonical form, 64 hexadecimal digits.</param>
public sealed record DataIdentity(string Name, string Version, string Hash);
