namespace Compat.Model;

/// <summary>The shape of a part as far as it decides whether a cloth or a liquid reaches it and can be taken off again.</summary>
public enum Geometry
{
    /// <summary>An open surface.</summary>
    Open,

    /// <summary>A seam between two parts.</summary>
    Seam,

    /// <summary>A narrow gap.</summary>
    Crevice,

    /// <summary>A joint that opens and closes.</summary>
    Hinge,

    /// <summary>A material that soaks liquid up.</summary>
    Porous,

    /// <summary>A bore.</summary>
    Lumen,
}

/// <summary>What touches a part in use.</summary>
public enum TouchedBy
{
    /// <summary>Nothing and nobody touches it.</summary>
    Nobody,

    /// <summary>It lies inside the device.</summary>
    Internal,

    /// <summary>The floor.</summary>
    Floor,

    /// <summary>The hands of staff.</summary>
    Hand,

    /// <summary>Intact skin of a patient.</summary>
    IntactSkin,

    /// <summary>Broken skin of a patient.</summary>
    BrokenSkin,

    /// <summary>Mucous membrane of a patient.</summary>
    MucousMembrane,

    /// <summary>Tissue that is sterile.</summary>
    SterileTissue,
}

/// <summary>What is done to a part beside bringing an agent onto it.</summary>
public enum Act
{
    /// <summary>A brush is used on it.</summary>
    Brush,

    /// <summary>It is dried by warm air or heat.</summary>
    HeatDrying,

    /// <summary>It is dried or cleaned by compressed air.</summary>
    CompressedAir,

    /// <summary>It is wiped dry by a soft cloth.</summary>
    SoftCloth,

    /// <summary>It is rubbed or scrubbed with pressure.</summary>
    Rub,
}

/// <summary>Why an 'allowed' does not pass down to a material.</summary>
public enum Delicacy
{
    /// <summary>It carries stress: what a coupon stands may crack it.</summary>
    Strain,

    /// <summary>A coating.</summary>
    Coating,

    /// <summary>A print.</summary>
    Print,

    /// <summary>A bond.</summary>
    Bond,

    /// <summary>A thin layer or film.</summary>
    Thin,
}
