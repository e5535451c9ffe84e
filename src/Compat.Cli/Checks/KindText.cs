using Compat.Curation.Checking;

namespace Compat.Cli.Checks;

/// <summary>What each kind of finding is, why it matters, and what to do instead.</summary>
internal static class KindText
{
    /// <summary>Whether findings of the kind are faults as a rule.</summary>
    public static bool IsFault(FindingKind kind) =>
        kind is not (FindingKind.Refinement or FindingKind.RedundantRule or FindingKind.InstructionsDepart or FindingKind.ThinEvidence or FindingKind.ClosedWindow or FindingKind.Stale);

    public static string What(FindingKind kind) => Of(kind).What;

    public static string Why(FindingKind kind) => Of(kind).Why;

    public static string Instead(FindingKind kind) => Of(kind).Instead;

    private static (string What, string Why, string Instead) Of(FindingKind kind) => kind switch
    {
        FindingKind.Contradiction => ("One rule allows what another does not allow.",
            "In one voice, or between a part and what it is made of, an 'allowed' and a 'not allowed' are live at one exposure. The answer is 'not allowed', and whoever wrote the 'allowed' does not know it.",
            "Narrow one of the two, or write the exception with 'overrides'."),
        FindingKind.Refinement => ("A narrower 'not allowed' takes a piece out of an 'allowed'.",
            "It is written strictly below: for a narrower part, material, agent or product. That is how exceptions to a permission are meant to be written.",
            "Nothing: it is listed so that a reviewer sees it."),
        FindingKind.OverrideMisses => ("An override that no use meets.",
            "The two rules never apply to one use, so the exception does nothing.",
            "Remove it, or correct what either rule speaks of."),
        FindingKind.OverrideCycle => ("Rules override each other.", "Neither is the exception.", "Keep the override of the one that is the exception."),
        FindingKind.OverrideReach => ("A rule overrides one that it does not lie below.",
            "An exception speaks at or below what it is an exception to.",
            "Write it on the narrower part, material, agent or product."),
        FindingKind.OverrideIdle => ("An override that changes nothing.", "Both rules have the same verdict and the same duties.", "Remove the override."),
        FindingKind.OverridesInstructions => ("A rule set against a device's instructions.",
            "Nothing overrides the instructions; only a newer edition replaces them.",
            "Remove the override, or cite the newer edition."),
        FindingKind.SupersededEdition => ("A rule cites instructions that no longer speak.",
            "Another edition replaces the one cited for every serial number.",
            "Read the newer edition and cite it, or remove the rule."),
        FindingKind.DeadRule => ("A rule that decides no question.",
            "It is set aside everywhere, or lies outside what its part can take: it gives a false sense of cover.",
            "Remove it, or correct its target, methods or box."),
        FindingKind.RedundantRule => ("A rule without which every answer is the same.",
            "Other rules say as much, on sources as strong.",
            "Remove it, or write 'keep: second-source'."),
        FindingKind.BrokenStandingRule => ("An answer breaks a standing rule.",
            "Standing rules are what every state of the data must keep.",
            "Narrow or remove the rule that allows it."),
        FindingKind.LooserClaim => ("A claim of efficacy promises more than another one lets stand.",
            "What one source says is not killed, a level or a group of another must not silently include.",
            "Narrow either box, name the organism under 'does-not-kill', or refute the claim."),
        FindingKind.InstructionsDepart => ("A device's own instructions depart from a standing rule.",
            "They may; it is never passed over in silence.",
            "Check that the edition was read rightly."),
        FindingKind.ImpossibleAnswer => ("An 'allowed' that cannot be done.",
            "A part it covers has no way to meet its duties or to end its exposure time, two of its duties exclude each other, or what acts in a chamber is brought on by a cloth.",
            "Narrow it to the parts that stand it, or name a way they stand."),
        FindingKind.ClaimBeyondTests => ("A label claim says more than its tests show.",
            "A level takes a test for each group it includes, and what is said to be killed takes a test of it; tests of another field of use show nothing on a device.",
            "Name the tests that the label names for it, or write the claim no wider than they are."),
        FindingKind.TooManyGaps => ("More pairs of part and agent without evidence than agreed.",
            "Each is answered 'not established'.",
            "Find evidence for the worst parts first."),
        FindingKind.MissingMixing => ("An agent binds or destroys another, and nothing is on record where they meet.",
            "Who asks what happens where the two meet would be told that nothing is on record.",
            "Write the hazard, or a record that says why it is harmless."),
        FindingKind.HazardOfOneMember => ("A hazard of mixing stands on one member of a class.",
            "Members that share its chemistry would be passed over.",
            "Move it to the class, or say on what it rests."),
        FindingKind.HarmlessBesideHazard => ("A pair is on record as harmless and as a hazard.",
            "The hazard holds; the other statement is wrong for some pair.",
            "Narrow or remove one of the two."),
        FindingKind.ThinEvidence => ("An 'allowed' that rests on less than it says.",
            "It goes beyond what was tested or seen.",
            "Look for evidence on what it says, or narrow it."),
        FindingKind.ClosedWindow => ("An agent that cannot do on a part what the part usually needs.",
            "It kills only after longer, by a wetter method or at another strength than the part stands.",
            "Look for evidence of a longer exposure time, or for a claim of a shorter contact time."),
        FindingKind.LaterThanToday => ("A date that has not come.",
            "What lies behind the day of the check was mistyped, and a review dated so would never grow old.",
            "Write the day on which it was."),
        FindingKind.NumberTwice => ("A number of a register that two agents have.",
            "It names one substance: a product that states it would be taken for either.",
            "Leave it at the agent that it names."),
        FindingKind.NameTwice => ("A name that two records of one kind have.", "Nobody could tell which of them is meant.", "Give one of them another name."),
        _ => ("A rule that may be out of date.", "It was not looked at for long, or better evidence just beside it puts it in doubt.", "Look at its sources again."),
    };
}
