namespace Compat.Space;

/// <summary>How an agent is brought onto a part. The members up to <see cref="Immerse"/> form a ladder of wetness, each wetter than the one before.</summary>
public enum ApplicationMethod
{
    /// <summary>A dry cloth: below the ladder; it carries no agent.</summary>
    DryWipe = 0,

    /// <summary>No drop can be squeezed out of the cloth and the film on the part does not run.</summary>
    DampWipe = 1,

    /// <summary>The part is left visibly wet; nothing runs off.</summary>
    WetWipe = 2,

    /// <summary>Droplets on the part itself.</summary>
    Spray = 3,

    /// <summary>Liquid runs over the part.</summary>
    Rinse = 4,

    /// <summary>The part lies in the liquid.</summary>
    Immerse = 5,

    /// <summary>Gas, vapour, ultraviolet light or steam in a chamber: outside the ladder.</summary>
    Chamber = 6,
}

/// <summary>A set of application methods that carry an agent (<see cref="ApplicationMethod.DampWipe"/> to <see cref="ApplicationMethod.Chamber"/>).</summary>
/// <remarks>The default value is the empty set. Equal when the members are equal.</remarks>
public readonly record struct MethodSet
{
    private readonly byte _bits;

    private MethodSet(int bits) => _bits = (byte)(bits & 0x7E);

    /// <summary>No method.</summary>
    public static MethodSet None => default;

    /// <summary>The ladder of wetness: damp-wipe, wet-wipe, spray, rinse, immerse.</summary>
    public static MethodSet Ladder { get; } = new(0x3E);

    /// <summary>The ladder and the chamber.</summary>
    public static MethodSet All { get; } = new(0x7E);

    /// <summary>The set of the given methods; dry-wipe carries no agent and is left out, and so is what is no method.</summary>
    public static MethodSet Of(params ApplicationMethod[] methods)
    {
        ArgumentNullException.ThrowIfNull(methods);
        var bits = 0;
        foreach (var method in methods) bits |= BitOf(method);
        return new(bits);
    }

    /// <summary>Whether the set is empty.</summary>
    public bool IsEmpty => _bits == 0;

    /// <summary>The members, driest first, the chamber last.</summary>
    public IReadOnlyList<ApplicationMethod> Methods => ToArray();

    /// <summary>Whether a method is a member.</summary>
    public bool Contains(ApplicationMethod method) => (_bits & BitOf(method)) != 0;

    /// <summary>The methods that are members of both sets.</summary>
    public MethodSet Intersect(MethodSet other) => new(_bits & other._bits);

    /// <summary>Whether every member is one of the other.</summary>
    internal bool LiesIn(MethodSet other) => (_bits & ~other._bits) == 0;

    /// <summary>The driest member; the only one of what holds at one method.</summary>
    internal ApplicationMethod Driest
    {
        get
        {
            for (var method = ApplicationMethod.DampWipe; method <= ApplicationMethod.Chamber; method++)
                if (Contains(method)) return method;
            throw new InvalidOperationException("a set without members has no driest");
        }
    }

    internal MethodSet With(ApplicationMethod method) => new(_bits | BitOf(method));

    /// <summary>Nothing for what is no method: a shift by it would wrap round to one that is.</summary>
    private static int BitOf(ApplicationMethod method) => method is >= ApplicationMethod.DampWipe and <= ApplicationMethod.Chamber ? 1 << (int)method : 0;

    internal ApplicationMethod[] ToArray()
    {
        var count = 0;
        for (var method = ApplicationMethod.DampWipe; method <= ApplicationMethod.Chamber; method++)
            if (Contains(method)) count++;
        var members = new ApplicationMethod[count];
        count = 0;
        for (var method = ApplicationMethod.DampWipe; method <= ApplicationMethod.Chamber; method++)
            if (Contains(method)) members[count++] = method;
        return members;
    }

    /// <summary>The names of the members, joined by commas.</summary>
    public override string ToString()
    {
        var text = "";
        for (var method = ApplicationMethod.DampWipe; method <= ApplicationMethod.Chamber; method++)
            if (Contains(method)) text += (text.Length == 0 ? "" : ", ") + Words.Of(method);
        return text;
    }
}
