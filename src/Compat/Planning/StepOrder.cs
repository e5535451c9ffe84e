namespace Compat.Planning;

/// <summary>What a step does. The members stand in working order: no step of a later kind comes before one of an earlier kind.</summary>
public enum StepOrder
{
    /// <summary>Switch the device off, disconnect it from the mains and from the patient, and let it cool: before any liquid, and before anything that burns.</summary>
    PowerOff,

    /// <summary>Protect oneself and the room: gloves, eyes, breathing, ventilation. Holds until <see cref="Dry"/> is done.</summary>
    Protect,

    /// <summary>Take off covers and single-use items, and dismantle what comes apart, so that what lies below is reached.</summary>
    TakeOffCovers,

    /// <summary>Take gel and loose soil off with a dry cloth, so that no product is used up by it and none fixes it.</summary>
    DryWipe,

    /// <summary>Clean with a product. Where a label says that the product cleans and disinfects at once, there is only <see cref="Disinfect"/>.</summary>
    Clean,

    /// <summary>Take off what the cleaner leaves, so that it does not bind or meet the disinfectant.</summary>
    TakeCleanerOff,

    /// <summary>Disinfect with a product and keep the contact time.</summary>
    Disinfect,

    /// <summary>Take off what the disinfectant leaves, as soon as its contact time is over.</summary>
    TakeDisinfectantOff,

    /// <summary>Dry, and wait as long as it takes before power.</summary>
    Dry,

    /// <summary>Look for the damage to expect, and withdraw the part where it is found.</summary>
    Inspect,

    /// <summary>Check that what was wet still does what it is for.</summary>
    CheckFunction,

    /// <summary>Put away so that it stays clean.</summary>
    Store,

    /// <summary>Label with what was done, and what was not.</summary>
    Label,
}
