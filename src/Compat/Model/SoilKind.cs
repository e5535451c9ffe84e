namespace Compat.Model;

/// <summary>What is on a part before it is cleaned.</summary>
public enum SoilKind
{
    /// <summary>Dust.</summary>
    Dust,

    /// <summary>Grease, oil or skin fat.</summary>
    Grease,

    /// <summary>Coupling or electrode gel.</summary>
    Gel,

    /// <summary>Blood.</summary>
    Blood,

    /// <summary>Mucus or saliva.</summary>
    Mucus,

    /// <summary>Urine.</summary>
    Urine,

    /// <summary>Scale of hard water.</summary>
    Scale,

    /// <summary>Residue of a detergent or disinfectant.</summary>
    Residue,
}
