namespace Compat.Curation.Checking;

/// <summary>What is brought onto a subject: an agent, or one component of a product, over every exposure there is.</summary>
/// <param name="Substance">The agent or product.</param>
/// <param name="Component">The component that rules speak of.</param>
internal sealed record Speaker(Substance Substance, Component Component)
{
    private static readonly Interval Share = new(0m, false, 1m, true);

    /// <summary>The agent, or -1 for a component of a product.</summary>
    public int Agent => Substance.Product is null ? Component.Agent : -1;

    /// <summary>The name of the agent or product.</summary>
    public string Name(CompiledBase kb) => Substance.Product?.Id.Value ?? kb.Data.Agents[Component.Agent].Id.Value;

    /// <summary>An agent at every strength.</summary>
    public static Speaker Of(CompiledBase kb, int agent)
    {
        var substance = SubstanceResolver.Resolve(kb, new Question { Agent = kb.Data.Agents[agent].Id });
        var component = substance.Components[0] with { Strength = SubstanceResolver.WholeStrength(kb.Agent(agent).Basis) };
        return new Speaker(substance with { Components = [component] }, component);
    }

    /// <summary>The components of a product, at every dilution that can be asked.</summary>
    public static IEnumerable<Speaker> OfProduct(CompiledBase kb, Model.Product product)
    {
        var concentrate = product.StrengthOf == Model.StrengthOf.Concentrate;
        var substance = SubstanceResolver.Resolve(kb, new Question { Product = product.Id, Dilution = concentrate ? Share : null, Ph = Domain.Ph });
        return substance.Components.Select(component => new Speaker(substance, component));
    }
}
