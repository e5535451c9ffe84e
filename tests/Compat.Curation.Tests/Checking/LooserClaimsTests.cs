using Compat.Curation.Checking;
using Compat.Tests.RandomCases;

namespace Compat.Curation.Tests.Checking;

/// <summary>Claims that promise more than another one lets stand, against a walk over every grid point.</summary>
public sealed class LooserClaimsTests
{
    [Fact]
    public void LooserClaim_IsFound_IfAndOnlyIfAPointShowsIt()
    {
        var (found, clean) = (0, 0);
        for (var seed = 1; found < RandomSize.Checks(80) || clean < RandomSize.Checks(8); seed++)
        {
            var data = CaseMaker.Make(seed, Shape.Whole).Data;
            if (KnowledgeBase.TryBuild(data, out _).Count > 0) continue;
            var shown = new NaiveClaims(data).Found().Distinct().Order().ToArray();
            var findings = DataCheck.Run(data, [], new CheckOptions { Today = new CalendarDate(2026, 11, 25) }, out _)!.Findings.Where(
                one => one.Kind == FindingKind.LooserClaim).ToArray();
            var pairs = findings.SelectMany(one => one.Involved.Skip(1).Select(against => (one.Involved[0].Place.Id, against.Place.Id))).Distinct().Order();
            Assert.True(
                shown.Select(one => (one.Claim, one.Other)).Distinct().Order()
                .SequenceEqual(pairs), $"seed {seed}: {string.Join(", ", shown)}\n{KnowledgeText.Write(data)}");
            found += shown.Length;
            if (shown.Length == 0) clean++;
        }
    }
}
