using Compat.Deciding;
using Compat.Validation;

namespace Compat.Tests.Shipped;

/// <summary>The data this library ships: sound, without contradictions, every rule of use.</summary>
public class ShippedDataTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Shipped;
    private static readonly CompiledBase Compiled = new(Shipped.Data, []);

    [Fact]
    public void It_passes_its_own_validation() => Assert.Empty(KnowledgeValidation.Check(Shipped.Data));

    [Fact]
    public void It_is_large_enough_to_start_with()
    {
        Assert.InRange(Shipped.Data.Materials.Count, 35, 10_000);
        Assert.InRange(Shipped.Data.Parts.Count, 30, 10_000);
        Assert.InRange(Shipped.Data.Agents.Count, 35, 10_000);
        Assert.InRange(Shipped.Data.Rules.Count, 180, 100_000);
        Assert.InRange(Shipped.Data.Sources.Count, 40, 10_000);
    }

    [Fact]
    public void No_allowed_meets_a_not_allowed_of_its_own_voice_unless_one_is_written_below_it_or_overrides()
    {
        var found = new List<string>();
        foreach (var allowed in Compiled.Rules.Where(r => r.Allows))
        {
            foreach (var forbids in Compiled.Rules.Where(r => !r.Allows && !r.Overrides(allowed) && !allowed.Overrides(r)))
            {
                var targets = Targets(allowed.Rule.Target, forbids.Rule.Target);
                var agents = allowed.SeenWith.Any(seen => seen != forbids.Agent && Compiled.Agents.IsAtOrBelow(seen, forbids.Agent)) ? -1
                    : allowed.SeenWith.Contains(forbids.Agent) ? 0 : Related(Compiled.Agents, allowed.Agent, forbids.Agent);
                if (targets is null || agents is null || !SeenMeets(allowed, forbids)) continue;
                var isBelow = (targets > 0 || agents > 0) && targets >= 0 && agents >= 0;
                if (!isBelow && allowed.Cells.Meets(forbids.Cells)) found.Add($"{allowed.Rule.Id} meets {forbids.Rule.Id}");
            }
        }

        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    [Fact]
    public void Every_rule_decides_a_question()
    {
        var dead = Compiled.Rules.Where(rule => !Questions(rule).Any(question => Decides(question, rule.Rule.Id))).Select(rule => rule.Rule.Id.Value).ToArray();
        Assert.True(dead.Length == 0, string.Join("\n", dead));
    }

    [Fact]
    public void Every_agent_with_a_registry_number_has_a_valid_one() =>
        Assert.All(Shipped.Data.Agents.SelectMany(a => a.Cas), cas => Assert.True(CasNumber.IsValid(cas), cas));

    [Fact]
    public void Every_agent_with_an_inventory_number_has_a_valid_one() =>
        Assert.All(Shipped.Data.Agents.SelectMany(a => a.Ec), ec => Assert.True(EcNumber.IsValid(ec), ec));

    private static bool Decides(Question question, RuleId rule) =>
        Shipped.TryAsk(question, out var answer, out _) && answer!.DecidedBy.Any(r => r.Id == rule);

    private static IEnumerable<Question> Questions(CompiledRule rule)
    {
        var agents = rule.SeenWith.Length > 0 ? rule.SeenWith : [rule.Agent];
        var parts = rule.Rule.Target.Part is { } part
            ? Enumerable.Range(0, Compiled.Parts.Count).Where(p => Compiled.Parts.IsAtOrBelow(p, Compiled.Parts[part.Value])) : [-1];
        foreach (var target in parts)
        {
            foreach (var agent in agents.Concat(Enumerable.Range(0, Compiled.Agents.Count).Where(a => Compiled.Agents.IsAtOrBelow(a, rule.Agent))).Distinct())
            {
                foreach (var method in rule.Methods.Methods)
                {
                    foreach (var inside in new[] { 0, 1 })
                    {
                        yield return new Question
                        {
                            Part = target < 0 ? null : Shipped.Data.Parts[target].Id,
                            Materials = target < 0 ? [new(rule.Rule.Target.Material!)] : [],
                            Agent = Shipped.Data.Agents[agent].Id,
                            Method = method,
                            Strength = Compiled.Agent(agent).Basis is { } basis
                                ? new Strength(Point(rule.Box.Strength, 0m, 100m, inside), StrengthUnit.PercentOf(basis.Basis)) : null,
                            ExposureTime = Point(rule.Box.ExposureTime, 0m, 100_000_000m, inside),
                            Temperature = Point(rule.Box.Temperature, -40m, 200m, inside),
                            Ph = Point(rule.Box.Ph, -1m, 15m, inside),
                            Uses = (int)Math.Min(1000m, rule.Box.Uses.From is { } above ? above.Value + 1 : 1m),
                        };
                    }
                }
            }
        }
    }

    /// <summary>A point well inside a range, towards its lower or its upper end.</summary>
    private static Interval Point(Stretch range, decimal least, decimal most, int inside)
    {
        var low = range.From?.Value ?? least;
        var high = range.To?.Value ?? most;
        return Interval.Exactly(low == high ? low : inside == 0 ? low + ((high - low) / 100m) : high - ((high - low) / 100m));
    }

    /// <summary>Above 0 where the second is strictly below the first, 0 where equal, below 0 where above, null where unrelated.</summary>
    private static int? Related(Tree tree, int first, int second) =>
        first == second ? 0 : tree.IsAtOrBelow(second, first) ? 1 : tree.IsAtOrBelow(first, second) ? -1 : null;

    private static int? Targets(RuleTarget allowed, RuleTarget forbids)
    {
        if (allowed.Part is { } part && forbids.Part is { } otherPart)
            return Related(Compiled.Parts, Compiled.Parts[part.Value], Compiled.Parts[otherPart.Value]);
        if (allowed.Material is { } material && forbids.Material is { } otherMaterial)
        {
            var below = Compiled.Materials[otherMaterial.Value];
            if (below != Compiled.Materials[material.Value] && Compiled.IsDelicate(below)) return null;
            return Related(Compiled.Materials, Compiled.Materials[material.Value], below);
        }

        return allowed.Part is { } made && forbids.Material is { } of
            && Compiled.Part(Compiled.Parts[made.Value]).Materials.Any(slot => slot.OneOf
                .Any(m => Compiled.Materials.IsAtOrBelow(Compiled.Materials[m.Value], Compiled.Materials[of.Value]))) ? 0 : null;
    }

    private static bool SeenMeets(CompiledRule allowed, CompiledRule forbids) =>
        allowed.SeenWith.Length == 0 || allowed.SeenWith.Any(seen => Related(Compiled.Agents, seen, forbids.Agent) is not null);
}
