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

    /// <summary>The spans of a published claim, or of instructions on an agent.</summary>
    public Span[] Of(ClaimBox box, AgentId agent, Span dilutions)
    {
        var traits = kb.Agent(agent);
        return
        [
            Span.Of(Filled(box.ContactTime, Interval.Whole)),
            dilutions,
            traits.Basis is null ? Span.Whole : Span.Of(Filled(box.Strength, traits.Strength ?? Interval.Exactly(-1m))),
            Span.Of(Filled(box.Temperature, kb.Convention(ConventionKey.ClaimTemperature).Range)),
            Span.Of(Filled(box.Ph, traits.Ph ?? kb.Convention(ConventionKey.UnstatedPh).Range)),
        ];
    }

    /// <summary>The spans of a label's claim, or of instructions on a product: what is not named is as the product is used.</summary>
    public Span[] OfLabel(ClaimBox box, Product product) =>
    [
        Span.Of(Filled(box.ContactTime, Interval.Whole)),
        Span.Of(box.Dilution.Statement is AxisStatement.Within or AxisStatement.Any ? box.Dilution.Range : product.Dilution ?? Interval.Exactly(1m)),
        Span.Whole,
        Span.Of(box.Temperature.Statement switch
        {
            AxisStatement.Within => box.Temperature.Range,
            AxisStatement.Any => Interval.Whole,
            AxisStatement.NotNamed when product.Temperature is { } ofProduct => ofProduct,
            _ => kb.Convention(ConventionKey.ClaimTemperature).Range,
        }),
        Span.Of(box.Ph.Statement == AxisStatement.Within ? box.Ph.Range : Interval.Whole),
    ];

    private static Interval Filled(AxisLimit limit, Interval unstated) => limit.Statement switch
    {
        AxisStatement.Within => limit.Range,
        AxisStatement.Unstated => unstated,
        _ => Interval.Whole,
    };
}
