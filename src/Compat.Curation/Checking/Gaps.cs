using Compat.Validation;

namespace Compat.Curation.Checking;

/// <summary>Counts the pairs of part type and narrowest agent of which nothing is known at any exposure.</summary>
internal sealed class Gaps(Ground ground)
{
    public IReadOnlyList<PartGaps> Find()
    {
        var parents = Enumerable.Range(0, ground.Kb.Agents.Count).Select(ground.Kb.Agents.Parent).ToHashSet();
        var narrowest = Enumerable.Range(0, ground.Kb.Agents.Count).Where(agent => !parents.Contains(agent)).OrderBy(agent => ground.Kb.Data.Agents[agent].Id)
            .ToArray();
        var groups = ground.Parts.GroupBy(subject => subject.Name).Select(group => group.ToArray()).ToArray();
        var found = new PartGaps[groups.Length];
        var permissions = new Permissions(ground);
        Parallel.For(0, groups.Length, i =>
        {
            var marks = new Marks(ground, permissions, groups[i]);
            var without = narrowest.Where(agent => !marks.Forbids(agent) && (!marks.CanAllow(agent) ? !OwnDuties(groups[i], agent) : IsGap(groups[i], agent)));
            found[i] = new PartGaps(new PartId(groups[i][0].Name), without.Select(agent => ground.Kb.Data.Agents[agent].Id).ToArray(), narrowest.Length);
        });
        return found.Where(part => part.Agents.Count > 0).OrderByDescending(part => part.Agents.Count).ThenBy(part => part.Part).ToArray();
    }

    /// <summary>The fault that there are more than agreed.</summary>
    public static Finding TooMany(IReadOnlyList<PartGaps> gaps, int count, int most) => new()
    {
        Kind = FindingKind.TooManyGaps,
        IsFault = true,
        Message = $"{count} pairs of part and agent have no evidence, agreed were at most {most}",
        Involved = [new(new ProblemPlace(RecordKind.Part, gaps[0].Part.Value), "has most of them")],
        Help = "find evidence for the worst parts first, or agree on another number",
    };

    /// <summary>Whether duties that go with the agent or part cannot be met, which settles the pair.</summary>
    private bool OwnDuties(Subject[] variants, int agent) =>
        variants.Any(subject => ground.SpeakerOf(agent).Component.Duties.Concat(subject.Variant.Duties).Any(duty => !subject.Variant.CanMeet(duty)));

    private bool IsGap(Subject[] variants, int agent)
    {
        var speaker = ground.SpeakerOf(agent);
        var parts = variants.Select(subject => subject.Variant).ToArray();
        var scene = new Scene(ground.Kb, parts, speaker.Substance, speaker.Component, exposureTimeWithoutEnd: false);
        var decider = new Decider(scene);
        return !MethodSet.All.Methods.Where(method => variants.All(subject => subject.Stood.Contains(method))).Any(method =>
            CellSearch.Find(scene, ground.DomainOf(speaker) with { Methods = MethodSet.Of(method) }, null,
                (applies, _) => decider.Worst(applies).Verdict != Verdict.NotEstablished) is not null);
    }

    /// <summary>For one part, the agents of which some rule surely forbids and those of which some rules may allow.</summary>
    private sealed class Marks
    {
        private readonly bool[] _forbids;
        private readonly bool[] _mayAllow;

        public Marks(Ground ground, Permissions permissions, Subject[] variants)
        {
            _forbids = new bool[ground.Kb.Agents.Count];
            _mayAllow = permissions.Of(variants);
            foreach (var subject in variants)
            {
                var voices = subject.Variant.Materials.Select(ground.OfMaterial).ToArray();
                foreach (var rule in voices.SelectMany(voice => voice).Concat(subject.Voice))
                {
                    if (rule.Allows || ground.Overriders[rule.Index].Length > 0 || rule.Methods.Intersect(subject.Stood).IsEmpty) continue;
                    foreach (var agent in ground.Reached(rule))
                    {
                        var leaves = ground.SpeakerOf(agent).Substance.LeavesNothing;
                        _forbids[agent] |= Reach.ExposureTimes(ground.Kb, rule, subject.EndsNowhere(leaves), leaves) is not null;
                    }
                }
            }
        }

        public bool Forbids(int agent) => _forbids[agent];

        public bool CanAllow(int agent) => _mayAllow[agent];
    }
}

/// <summary>The agents of which some 'allowed' speaks, material by material and subject by subject: without one nothing can be allowed.</summary>
internal sealed class Permissions(Ground ground)
{
    private readonly bool[]?[] _byMaterial = new bool[ground.Kb.Materials.Count][];

    /// <summary>For each agent whether every variant has an 'allowed' that speaks of it, of its part or of each of its materials.</summary>
    public bool[] Of(IEnumerable<Subject> variants)
    {
        var may = new bool[ground.Kb.Agents.Count];
        Array.Fill(may, true);
        foreach (var subject in variants)
        {
            var byPart = Marks(subject.Voice);
            var all = subject.Variant.Materials.Select(OfMaterial).ToArray();
            for (var agent = 0; agent < may.Length; agent++) may[agent] &= byPart[agent] || (all.Length > 0 && all.All(one => one[agent]));
        }

        return may;
    }

    private bool[] OfMaterial(int material) => _byMaterial[material] ??= Marks(ground.OfMaterial(material));

    private bool[] Marks(CompiledRule[] voice)
    {
        var marks = new bool[ground.Kb.Agents.Count];
        foreach (var rule in voice)
        {
            if (!rule.Allows) continue;
            if (rule.Agent < 0) Array.Fill(marks, true);
            else foreach (var agent in ground.Reached(rule)) marks[agent] = true;
        }

        return marks;
    }
}
