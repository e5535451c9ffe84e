namespace Compat.Curation.Checking;

/// <summary>One thing that can be asked about, with one choice for every one-of: a material alone, a part type, a part of a device.</summary>
/// <param name="Name">What a reader calls it.</param>
/// <param name="Variant">The variant.</param>
/// <param name="Ask">A question about it, without agent and exposure.</param>
/// <param name="Voice">The rules of the voice of the part and device.</param>
internal sealed record Subject(string Name, PartVariant Variant, Question Ask, CompiledRule[] Voice)
{
    private readonly bool _endsFilm = Variant.EndingWays(leavesNothing: false).Count > 0;
    private readonly bool _endsNothing = Variant.EndingWays(leavesNothing: true).Count > 0;

    /// <summary>Whether no finite exposure time ends on it.</summary>
    public bool EndsNowhere(bool leavesNothing) => leavesNothing ? !_endsNothing : !_endsFilm;

    /// <summary>Whether the exposure time asked is always the one judged.</summary>
    public bool EndsAlways => _endsFilm && _endsNothing;

    /// <summary>The methods by which something can be brought onto it.</summary>
    public MethodSet Stood { get; } = MethodSet.Of(MethodSet.All.Methods.Where(Variant.Stands).ToArray());

    /// <summary>Every material alone, by id.</summary>
    public static IEnumerable<Subject> Materials(CompiledBase kb) => kb.Data.Materials.OrderBy(material => material.Id)
        .SelectMany(material => Of(kb, material.Id.Value, new Question { Materials = [new MaterialSlot(material.Id)] }));

    /// <summary>Every variant of every part type, by id.</summary>
    public static IEnumerable<Subject> Parts(CompiledBase kb) => kb.Data.Parts.OrderBy(part => part.Id)
        .SelectMany(part => Of(kb, part.Id.Value, new Question { Part = part.Id }));

    /// <summary>Every variant of every part of every device, by id.</summary>
    public static IEnumerable<Subject> DeviceParts(CompiledBase kb) => kb.Devices.Values.OrderBy(device => device.Id)
        .SelectMany(device => DeviceParts(kb, device, serial: null));

    /// <summary>Every variant of every part of one device, for one serial number or, where that is null, for every set of editions that may speak.</summary>
    public static IEnumerable<Subject> DeviceParts(CompiledBase kb, Device device, SerialNumber? serial) =>
        device.Parts.SelectMany(part => Of(kb, $"{device.Id}/{part.Id}", new Question { Device = device.Id, DevicePart = part.Id, Serial = serial }));

    private static IEnumerable<Subject> Of(CompiledBase kb, string name, Question ask)
    {
        foreach (var variant in PartResolver.Variants(kb, ask))
            yield return new Subject(name, variant, ask, Reach.PartAndDevice(kb, variant).ToArray());
    }
}

/// <summary>What is brought onto a subject: an agent, or one component of a product, over every exposure there is.</summary>
/// <param name="Substance">The agent or product.</param>
/// <param name="Component">The component that rules speak of.</param>
internal sealed record Speaker(Substance Substance, Component Component)
{
    /// <summary>Every exposure that can be asked of it.</summary>
    public Box<Stretch> Domain { get; } = Box<Stretch>.Of(MethodSet.All, axis => Stretch.Of(axis switch
    {
        Axis.Strength => Substance.Product is null ? Component.Strength : new Interval(0m, true, null, false),
        Axis.Dilution => Substance.Dilution,
        Axis.Uses => RuleCompiler.WholeNumbers(Axes.RangeOf(axis)),
        _ => Axes.RangeOf(axis),
    }));

    /// <summary>The dilutions of a box at which a component of a product has a strength of the box.</summary>
    public Stretch RealDilutions(in Box<Stretch> box) =>
        box.Dilution.Intersect(Domain.Dilution).Intersect(Dilutions.WhereSome(Component.Strength, box.Strength));

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
        var substance = SubstanceResolver.Resolve(kb,
            new Question { Product = product.Id, Dilution = concentrate ? Axes.RangeOf(Axis.Dilution) : null, Ph = Axes.RangeOf(Axis.Ph) });
        return substance.Components.Select(component => new Speaker(substance, component));
    }
}
