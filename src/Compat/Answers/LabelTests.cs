namespace Compat.Answers;

/// <summary>How far a label's claim reaches by the tests it names: clauses K9 to K11. Every other claim, and one that names a registration, is not held
/// against tests.</summary>
internal static class LabelTests
{
    /// <summary>Whether a group or an organism is shown to be killed by a method.</summary>
    public static bool Show(CompiledBase kb, KillClaim claim, OrganismTarget target, ApplicationMethod method) =>
        !IsHeld(claim) || claim.ShownBy.Any(test => test.SpeaksOf(method) && test.CanShow(kb.Data, target));

    /// <summary>Whether a level is shown to be reached by a method: some test speaks of it, and each group of the level is shown. Of a level without groups
    /// nothing else follows.</summary>
    public static bool Show(CompiledBase kb, KillClaim claim, Level level, ApplicationMethod method) =>
        !IsHeld(claim) || (claim.ShownBy.Any(test => test.SpeaksOf(method)) && NotShown(kb, claim, level, method).Count == 0);

    /// <summary>The groups of a level that are not shown to be killed by a method.</summary>
    public static IReadOnlyList<OrganismGroup> NotShown(CompiledBase kb, KillClaim claim, Level level, ApplicationMethod method) => !IsHeld(claim) ? [] :
    [
        .. kb.Data.Levels.Where(meaning => meaning.Level == level).SelectMany(meaning => meaning.Includes).Distinct()
            .Where(group => !Show(kb, claim, OrganismTarget.Of(group), method)),
    ];

    /// <summary>The claims of a set that say a target is met and whose tests do not show it, as a reason of the one whose tests show most; null where none says
    /// so.</summary>
    public static KillReason? Short(CompiledBase kb, Product product, ClaimSet set, KillTarget target) => set.Claims
        .Where(claim => IsHeld(claim.Claim)
            && (target.Level is { } level ? claim.Claim.Reaches >= level : KillExceptions.Says(kb, claim.Claim, target.Against!)))
        .Select(claim => (claim.Claim, Missing: Fewest(claim, method =>
            target.Level is { } asked ? NotShown(kb, claim.Claim, asked, method).Select(Words.Of).ToArray() : [target.ToString()])))
        .Where(pair => pair.Missing.Length > 0)
        .OrderBy(pair => pair.Missing.Length)
        .Select(pair => new KillReason(KillReasonCode.TestsShowLess,
        [
            product.Id.Value, target.ToString(), pair.Claim.Id, string.Join(", ", pair.Missing),
            .. pair.Claim.ShownBy.Where(test => !Enum.GetValues<ApplicationMethod>().Any(test.SpeaksOf)).Select(test => test.Code.Value),
        ]))
        .FirstOrDefault();

    /// <summary>Whether a claim is weak by a method, and why; null where it is not.</summary>
    public static KillReason? Weak(KillClaim claim, ApplicationMethod method)
    {
        if (claim.Registration is { } registration)
            return new KillReason(KillReasonCode.RegisteredOnly, [claim.Id, registration.Authority, registration.Number]);
        return IsHeld(claim) && method <= ApplicationMethod.WetWipe
            && !claim.ShownBy.Any(test => test.Step == TestStep.Practical && test.On.Contains(TestedOn.Surfaces) && test.SpeaksOf(method))
            ? new KillReason(KillReasonCode.SuspensionOnly, [claim.Id])
            : null;
    }

    /// <summary>A set of claims without those that are weak, by the methods by which they are.</summary>
    public static ClaimSet WithoutWeak(ClaimSet set) => set with
    {
        Claims = set.Claims
            .Select(claim => claim with
            {
                Box = claim.Box with { Methods = MethodSet.Of(claim.Methods.Methods.Where(method => Weak(claim.Claim, method) is null).ToArray()) },
            })
            .Where(claim => !claim.Methods.IsEmpty).ToArray(),
    };

    private static bool IsHeld(KillClaim claim) => claim is { Origin: ClaimOrigin.Label, Registration: null };

    private static string[] Fewest(ClaimOnAxes claim, Func<ApplicationMethod, string[]> missing) =>
        claim.Methods.Methods.Select(missing).OrderBy(some => some.Length).FirstOrDefault() ?? [];
}
