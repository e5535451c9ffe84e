namespace Compat.Curation.Checking;

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
