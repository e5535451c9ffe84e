namespace Compat.Curation.Checking;

/// <summary>Where the rules of a scene with one variant are live, in boxes of cells.</summary>
/// <remarks>
/// A rule is set aside where an acting rule of its voice, or of the part and device, overrides it; that rule acts where no 'not allowed' of
/// these voices overrides it. Rules of instructions always act and are never set aside.
/// </remarks>
internal sealed class LiveRegion(Ground ground, Subject subject, Speaker speaker)
{
    private readonly Box<Run> _domain = ground.DomainOf(speaker);

    public Scene Scene { get; } = ground.SceneOf(subject, speaker);

    private int[][] Voices => Scene.Variants[0].Voices;

    /// <summary>Where a candidate of the scene applies by a method; empty where it does not.</summary>
    public Box<Run> BoxOf(int candidate, ApplicationMethod method) =>
        Scene.Candidates[candidate].Cells.Intersect(_domain with { Methods = MethodSet.Of(method) });

    /// <summary>The place of a rule among the candidates of a voice, or -1.</summary>
    public int Find(CompiledRule rule, int voice)
    {
        foreach (var i in Voices[voice])
            if (Scene.Candidates[i].Rule == rule) return i;
        return -1;
    }

    /// <summary>The maximal boxes in which two rules, each in its voice, are live by a method.</summary>
    public IReadOnlyList<Box<Run>> OfBoth(int first, int voiceOfFirst, int second, int voiceOfSecond, ApplicationMethod method)
    {
        var shared = BoxOf(first, method).Intersect(BoxOf(second, method));
        if (shared.IsEmpty) return [];
        return Subtraction.MaximalBoxes(shared, Holes(first, voiceOfFirst, method).Concat(Holes(second, voiceOfSecond, method)))
            .Where(box => ground.IsReal(speaker, box)).ToArray();
    }

    /// <summary>Where a rule is set aside.</summary>
    private IEnumerable<Box<Run>> Holes(int candidate, int voice, ApplicationMethod method)
    {
        if (Scene.Candidates[candidate].Rule.OfInstructions) yield break;
        foreach (var over in Scene.Overriders[candidate])
        {
            foreach (var home in new[] { voice, 0 }.Distinct().Where(home => Voices[home].Contains(over)))
                foreach (var acting in Subtraction.MaximalBoxes(BoxOf(over, method), Silencers(over, home, method))) yield return acting;
        }
    }

    /// <summary>Where a rule that overrides does not act.</summary>
    private IEnumerable<Box<Run>> Silencers(int candidate, int home, ApplicationMethod method) => Scene.Candidates[candidate].Rule.OfInstructions ? []
        : Scene.Overriders[candidate].Where(over => !Scene.Candidates[over].Rule.Allows && (Voices[home].Contains(over) || Voices[0].Contains(over)))
            .Select(over => BoxOf(over, method)).Where(box => !box.IsEmpty);
}
