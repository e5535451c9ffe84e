using Compat.Deciding;

namespace Compat.Tests.Shipped;

/// <summary>What the shipped data must hold for whole kinds of parts and people, however many are added.</summary>
public class CarefulDataTests
{
    private static readonly KnowledgeBase Shipped = KnowledgeBase.Shipped;
    private static readonly CompiledBase Compiled = new(Shipped.Data, []);

    public static TheoryData<string> PoweredParts =>
        [.. Shipped.Data.Parts.Select(part => part.Id.Value).Where(id => Compiled.Part(Compiled.Parts[id]).DryBeforePower is not null)];

    /// <summary>What is let dry before power holds electronics: its materials are no permission for a vacuum, steam or a hot oven.</summary>
    [Theory]
    [MemberData(nameof(PoweredParts))]
    public void PoweredPart_InASteriliser_IsAllowedByNoMaterial(string part)
    {
        foreach (var agent in new[] { "moist-heat", "dry-heat", "hydrogen-peroxide-plasma", "formaldehyde-steam" })
        {
            var answer = Shipped.Ask(new Question { Part = new(part), Agent = new(agent), Method = ApplicationMethod.Chamber, OnlyPart = true });
            var line = Compiled.Parts.Upward(Compiled.Parts[part]).Select(node => Shipped.Data.Parts[node].Id).ToArray();
            Assert.True(
                answer.Verdict <= Verdict.NotEstablished
                || answer.DecidedBy.Any(rule => rule.Target.Part is { } on && line.Contains(on)), $"{part} in {agent}: {answer.Verdict}");
        }
    }

    /// <summary>What a newborn must not be near while it is wiped is taken off before one lies there.</summary>
    [Fact]
    public void AgentKeptFromANewbornInUse_HasARuleForAfterwards()
    {
        var after = Shipped.Data.PersonRules.Where(rule => !rule.Occupied && rule.Patients.Contains(PatientGroup.Newborn))
            .Select(rule => Compiled.Agents[rule.Agent.Value]).ToArray();
        var missing = from rule in Shipped.Data.PersonRules
                      where rule.Occupied && rule.Agent != AgentClass.Root && (rule.Patients.Count == 0 || rule.Patients.Contains(PatientGroup.Newborn))
                      from node in Enumerable.Range(0, Compiled.Agents.Count)
                      where Compiled.Agents.IsAtOrBelow(node, Compiled.Agents[rule.Agent.Value]) && IsLeaf(node)
                      where !after.Any(above => Compiled.Agents.IsAtOrBelow(node, above))
                      select Shipped.Data.Agents[node].Id.Value;
        Assert.Empty(missing);
    }

    private static bool IsLeaf(int node) => Enumerable.Range(0, Compiled.Agents.Count).All(other => Compiled.Agents.Parent(other) != node);
}
