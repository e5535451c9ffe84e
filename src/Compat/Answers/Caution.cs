namespace Compat.Answers;

/// <summary>What is said beside every answer, whatever it is.</summary>
public enum Caution
{
    /// <summary>The device's own instructions for use, the product's label and its safety data sheet come first.</summary>
    InstructionsAndLabelFirst,

    /// <summary>Local infection-prevention policy and licensed practice decide.</summary>
    PolicyAndPracticeDecide,

    /// <summary>A test on an inconspicuous spot is not proof.</summary>
    SpotTestIsNoProof,

    /// <summary>Agents are never mixed.</summary>
    NeverMix,

    /// <summary>The protective equipment is worn.</summary>
    WearProtection,

    /// <summary>What is not established is not permitted.</summary>
    NotEstablishedIsNoPermission,
}
