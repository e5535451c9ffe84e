using System.Collections.Concurrent;

namespace Compat.Deciding;

/// <summary>What a scene is made for: questions that agree in it share it.</summary>
/// <param name="Agent">The agent.</param>
/// <param name="Unknown">Whether no class covers the component.</param>
/// <param name="Product">The product, where rules speak of it or it is not fully declared.</param>
/// <param name="Ending">How an exposure time ends on the part.</param>
/// <param name="InFull">Whether every rule has a row.</param>
internal readonly record struct SceneKey(int Agent, bool Unknown, ProductId? Product, ExposureTimeEnding Ending, bool InFull);

/// <summary>A part as it is asked about, with the scenes that were needed so far.</summary>
internal sealed class VerdictSubject(IReadOnlyList<PartVariant> variants)
{
    public IReadOnlyList<PartVariant> Variants { get; } = variants;

    public ConcurrentDictionary<(int Variant, SceneKey Key), VerdictScene> Scenes { get; } = new();
}

/// <summary>The rules of a base by voice and component. Filled by the questions that are prepared; what is found in it never changes.</summary>
internal sealed class VerdictIndex
{
    private readonly ConcurrentDictionary<(int Material, SceneKey Key), VoiceRows> _materials = new();
    private readonly VerdictSubject?[] _parts;
    private readonly RowTraits[] _traits;
    private readonly HashSet<ProductId> _spokenOf = [];
    private readonly Source[]?[] _sources;
    private int[]? _room;

    public VerdictIndex(CompiledBase kb)
    {
        Base = kb;
        _parts = new VerdictSubject?[kb.Parts.Count];
        _traits = new RowTraits[kb.Rules.Length];
        _sources = new Source[]?[kb.Rules.Length];
        foreach (var rule in kb.Rules)
        {
            _traits[rule.Index] |= Own(rule);
            foreach (var overridden in rule.Overridden) _traits[overridden] |= RowTraits.Tied;
            if (rule.Rule.Product is { } product) _spokenOf.Add(product);
        }
    }

    public CompiledBase Base { get; }

    public RowTraits TraitsOf(CompiledRule rule) => _traits[rule.Index];

    /// <summary>Room to gather the rules of an answer in: what the last answer gave back, or new room where another thread has it.</summary>
    public int[] TakeRoom() => Interlocked.Exchange(ref _room, null) ?? new int[64];

    public void GiveRoom(int[] room) => Volatile.Write(ref _room, room);

    /// <summary>The sources of some rules, each once, weakest first: those of one of them as they are kept, where that is all.</summary>
    public IReadOnlyList<Source> SourcesOf(int[] rules)
    {
        if (rules.Length == 0) return [];
        var first = SourcesOf(rules[0]);
        List<Source>? joined = null;
        foreach (var rule in rules)
        {
            foreach (var source in SourcesOf(rule))
            {
                if (joined is null ? Array.IndexOf(first, source) >= 0 : joined.Contains(source)) continue;
                (joined ??= [.. first]).Add(source);
            }
        }

        joined?.Sort(WeakestFirst.Instance);
        return joined is null ? first : joined;
    }

    /// <remarks>Made when first asked for; whichever thread makes it makes the same.</remarks>
    private Source[] SourcesOf(int rule) =>
        _sources[rule] ??= WeakestFirst.Of(Base, Base.Rules[rule].Rule.Sources);

    /// <summary>The part of a question; a part type as it is on record is kept.</summary>
    public VerdictSubject SubjectOf(Question question)
    {
        if (question.Part is not { } part || question.Materials.Count > 0) return new VerdictSubject(PartResolver.Variants(Base, question));
        return _parts[Base.Parts[part.Value]] ??= new VerdictSubject(PartResolver.Variants(Base, new Question { Part = part }));
    }

    /// <summary>The scene of a component on a variant.</summary>
    public VerdictScene SceneOf(VerdictSubject subject, int variant, AskedComponent asked, ExposureTimeEnding ending, bool inFull)
    {
        var key = KeyOf(asked, ending, inFull);
        if (subject.Scenes.TryGetValue((variant, key), out var known)) return known;
        return subject.Scenes.GetOrAdd((variant, key), new VerdictScene(this, subject.Variants[variant], asked, ending, inFull));
    }

    /// <summary>The rules of a material's voice.</summary>
    public VoiceRows OfMaterial(int material, AskedComponent asked, ExposureTimeEnding ending, bool inFull)
    {
        var key = KeyOf(asked, ending, inFull);
        if (_materials.TryGetValue((material, key), out var known)) return known;
        return _materials.GetOrAdd((material, key), VoiceRows.Of(this, Reach.OfMaterial(Base, material), asked, ending, inFull));
    }

    private SceneKey KeyOf(AskedComponent asked, ExposureTimeEnding ending, bool inFull)
    {
        var matters = asked.Product is { } product && (product.Composition != Composition.Full || _spokenOf.Contains(product.Id));
        return new SceneKey(asked.Component.Agent, asked.Component.Unknown, matters ? asked.Product!.Id : null, ending, inFull);
    }

    private RowTraits Own(CompiledRule rule)
    {
        var traits = RowTraits.None;
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            if (axis is not (Axis.Strength or Axis.ExposureTime) && !Base.Grid[axis].All.LiesIn(rule.Cells[axis])) traits |= RowTraits.BoundsOthers;
        }

        if (rule.Rule.When.IsSilent) traits |= RowTraits.Unstated;
        if (Decider.IsWellFounded(Base, rule)) traits |= RowTraits.WellFounded;
        if (rule.Rule.Duties.Count > 0) traits |= RowTraits.HasDuties;
        if (rule.Rule.Duties.Any(duty => duty.Ways.Count > 0)) traits |= RowTraits.HasWays;
        if (rule.Agent < 0) traits |= RowTraits.OfProduct;
        if (rule.Overridden.Length > 0 || rule.OfInstructions) traits |= RowTraits.Tied;
        return traits;
    }
}
