namespace Compat.Answers;

/// <summary>Fills the axes of a claim: what its source does not say is read from the conventions, narrow.</summary>
internal sealed class ClaimAxes(CompiledBase kb)
{
    public MethodSet Methods(MethodLimit limit, Product? product = null) => limit.Statement switch
    {
        AxisStatement.Within => limit.Methods,
        AxisStatement.Any => MethodSet.All,
        AxisStatement.NotNamed when product is { Methods.IsEmpty: false } => product.Methods,
        _ => kb.Convention(ConventionKey.ClaimMethods).Methods,
    };

    /// <summary>The box of a published claim, or of instructions on an agent.</summary>
    public Box<Stretch> Of(ClaimBox box, AgentId agent, Stretch dilutions)
    {
        var traits = kb.Agent(agent);
        return Box<Stretch>.Whole with
        {
            Methods = Methods(box.Methods),
            ContactTime = Stretch.Of(Filled(box.ContactTime, Interval.Whole)),
            Dilution = dilutions,
            Strength = traits.Basis is null ? Stretch.Whole : Stretch.Of(Filled(box.Strength, traits.Strength ?? Interval.Exactly(-1m))),
            Temperature = Stretch.Of(Filled(box.Temperature, kb.Convention(ConventionKey.ClaimTemperature).Range)),
            Ph = Stretch.Of(Filled(box.Ph, traits.Ph ?? kb.Convention(ConventionKey.UnstatedPh).Range)),
        };
    }

    /// <summary>The box of a label's claim, or of instructions on a product: what is not named is as the product is used.</summary>
    public Box<Stretch> OfLabel(ClaimBox box, Product product) => Box<Stretch>.Whole with
    {
        Methods = Methods(box.Methods, product),
        ContactTime = Stretch.Of(Filled(box.ContactTime, Interval.Whole)),
        Dilution = Stretch.Of(box.Dilution.Statement is AxisStatement.Within or AxisStatement.Any ? box.Dilution.Range
            : product.Dilution ?? Interval.Exactly(1m)),
        Temperature = Stretch.Of(box.Temperature.Statement switch
        {
            AxisStatement.Within => box.Temperature.Range,
            AxisStatement.Any => Interval.Whole,
            AxisStatement.NotNamed when product.Temperature is { } ofProduct => ofProduct,
            _ => kb.Convention(ConventionKey.ClaimTemperature).Range,
        }),
        Ph = Stretch.Of(box.Ph),
    };

    private static Interval Filled(AxisLimit limit, Interval unstated) => limit.Statement switch
    {
        AxisStatement.Within => limit.Range,
        AxisStatement.Unstated => unstated,
        _ => Interval.Whole,
    };
}
