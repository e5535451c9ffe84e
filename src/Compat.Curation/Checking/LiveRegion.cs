namespace Compat.Curation.Checking;

/// <summary>Where the rules of a scene with one variant are live, in boxes of cells.</summary>
/// <remarks>
/// A rule is set aside where an acting rule of its voice, or of the part and device, overrides it; that rule acts where no 'not allowed' of
/// these voices overrides it. Rules of instructions always act and are never set aside.
/// </remarks>
internal sealed class LiveRegion(Ground ground, Subject subject, Speaker speaker)
{
    private readonly CellBox _domain = ground.DomainOf(speaker);

    public Scene Scene { get; } = ground.SceneOf(subject, speaker);

    private int[][] Voices => Scene.Variants[0].Voices;

    /// <summary>Where a candidate of the scene applies; null where it does not.</summary>
    public CellBox? BoxOf(int candidate)
    {
        return CellBox.Of(Scene.Candidates[candidate].Cells).Intersect(_domain);
    }

    /// <summary>The place of a rule among the candidates of a voice, or -1.</summary>
    public int Find(CompiledRule rule, int voice)
    {
        foreach (var i in Voices[voice])
            if (Scene.Candidates[i].Rule == rule) return i;
        return -1;
    }

    /// <summary>The maximal boxes in which a rule of a voice is live by a method.</summary>
    public IReadOnlyList<CellBox> Of(int candidate, int voice, ApplicationMethod method)
    {
        if (!Scene.Candidates[candidate].Rule.Methods.Contains(method) || BoxOf(candidate) is not { } box) return [];
        return box.Without(Holes(candidate, voice, method)).Where(b => ground.IsReal(speaker, b)).ToArray();
    }

    /// <summary>The maximal boxes in which two rules, each in its voice, are live by a method.</summary>
    public IReadOnlyList<CellBox> OfBoth(int first, int voiceOfFirst, int second, int voiceOfSecond, ApplicationMethod method)
    {
        if (!Scene.Candidates[first].Rule.Methods.Contains(method) || !Scene.Candidates[second].Rule.Methods.Contains(method)) return [];
        if (BoxOf(first) is not { } a || BoxOf(second) is not { } b || a.Intersect(b) is not { } shared) return [];
        return shared.Without(Holes(first, voiceOfFirst, method).Concat(Holes(second, voiceOfSecond, method))).Where(x => ground.IsReal(speaker, x)).ToArray();
    }

    /// <summary>Where a rule is set aside.</summary>
    private IEnumerable<CellBox> Holes(int candidate, int voice, ApplicationMethod method)
    {
        if (Scene.Candidates[candidate].Rule.OfInstructions) yield break;
        foreach (var over in Scene.Overriders[candidate])
        {
            if (!Scene.Candidates[over].Rule.Methods.Contains(method)) continue;
            foreach (var home in new[] { voice, 0 }.Distinct())
            {
                if (!Voices[home].Contains(over) || BoxOf(over) is not { } box) continue;
                foreach (var acting in box.Without(Silencers(over, home, method))) yield return acting;
            }
        }
    }

    /// <summary>Where a rule that overrides does not act.</summary>
    private IEnumerable<CellBox> Silencers(int candidate, int home, ApplicationMethod method)
    {
        if (Scene.Candidates[candidate].Rule.OfInstructions) yield break;
        foreach (var over in Scene.Overriders[candidate])
        {
            var rule = Scene.Candidates[over].Rule;
            if (rule.Allows || !rule.Methods.Contains(method) || !(Voices[home].Contains(over) || Voices[0].Contains(over))) continue;
            if (BoxOf(over) is { } box) yield return box;
        }
    }
}
