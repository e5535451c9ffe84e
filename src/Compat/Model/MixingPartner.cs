namespace Compat.Model;

/// <summary>One of two that meet: an agent class, a product of a site, a soil or a material.</summary>
public sealed record MixingPartner
{
    private MixingPartner() { }

    /// <summary>The agent class, or null.</summary>
    public AgentId? Agent { get; private init; }

    /// <summary>How strong the agent is; null where it is not known, so that it may be any strength. Of a product its ingredients say it.</summary>
    public Strength? Strength { get; private init; }

    /// <summary>The product, or null.</summary>
    public ProductId? Product { get; private init; }

    /// <summary>The soil, or null.</summary>
    public SoilKind? Soil { get; private init; }

    /// <summary>The material, or null.</summary>
    public MaterialId? Material { get; private init; }

    /// <summary>An agent class.</summary>
    public static MixingPartner Of(AgentId agent) => new() { Agent = agent ?? throw new ArgumentNullException(nameof(agent)) };

    /// <summary>An agent class of a strength.</summary>
    public static MixingPartner Of(AgentId agent, Strength strength) => new() { Agent = agent, Strength = strength };

    /// <summary>A product of a site.</summary>
    public static MixingPartner Of(ProductId product) => new() { Product = product ?? throw new ArgumentNullException(nameof(product)) };

    /// <summary>A soil.</summary>
    public static MixingPartner Of(SoilKind soil) => new() { Soil = Enum.IsDefined(soil) ? soil : throw new ArgumentOutOfRangeException(nameof(soil)) };

    /// <summary>A material.</summary>
    public static MixingPartner Of(MaterialId material) => new() { Material = material ?? throw new ArgumentNullException(nameof(material)) };

    /// <summary>The id or word, as a reader names it.</summary>
    public override string ToString() => Agent?.Value ?? Product?.Value ?? Material?.Value ?? Words.Of(Soil!.Value);
}
