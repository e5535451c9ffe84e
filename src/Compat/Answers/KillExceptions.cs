namespace Compat.Answers;

/// <summary>Reads off claims which organisms they kill, and which of a group that is needed they leave out: clauses K3 and K5.</summary>
internal static class KillExceptions
{
    /// <summary>Whether a claim kills a group or an organism: by name, or, where the organism needs no claim of its own, as one of its group; never what it
    /// says it does not kill, nor, of a label's claim, what its tests do not show.</summary>
    public static bool Kills(CompiledBase kb, KillClaim claim, OrganismTarget target, ApplicationMethod method) =>
        Says(kb, claim, target) && LabelTests.Show(kb, claim, target, method);

    /// <summary>Whether a claim says so, whether its tests show it or not.</summary>
    public static bool Says(CompiledBase kb, KillClaim claim, OrganismTarget target)
    {
        if (claim.DoesNotKill.Contains(target)) return false;
        if (claim.Kills.Contains(target)) return true;
        var organism = target.Organism is { } id ? kb.Data.Organisms.FirstOrDefault(o => o.Id == id) : null;
        if (organism is { OwnClaim: true }) return false;
        var group = organism?.Group ?? target.Group!.Value;
        return !claim.DoesNotKill.Contains(OrganismTarget.Of(group))
            && (claim.Kills.Contains(OrganismTarget.Of(group))
                || kb.Data.Levels.Any(meaning => meaning.Level == claim.Reaches && meaning.Includes.Contains(group)));
    }

    /// <summary>What is left out of the groups that are needed, by the claims that are used together. What is asked by name is met or not, and never left
    /// out.</summary>
    public static IReadOnlyList<NotCovered> Of(CompiledBase kb, Need need, IReadOnlyList<KillClaim> claims, ApplicationMethod method)
    {
        var groups = need.Groups.Concat(need.Against.Select(target => target.Group).OfType<OrganismGroup>()).ToArray();
        return
        [
            .. from claim in claims
               from target in claim.DoesNotKill
               where target.Organism is not null && !need.Against.Contains(target)
               where kb.Data.Organisms.Any(organism => organism.Id == target.Organism && groups.Contains(organism.Group))
               where !claims.Any(other => Kills(kb, other, target, method))
               select new NotCovered(target.Organism!, claim.Id),
        ];
    }
}
