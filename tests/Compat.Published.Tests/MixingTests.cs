namespace Compat.Published.Tests;

/// <summary>Published pairs that must not meet are on record, at least as bad as their source says, whichever is named first.</summary>
public sealed class MixingTests
{
    public static TheoryData<string> Pairs => RowTable.Lines("mixing");

    [Theory]
    [MemberData(nameof(Pairs))]
    public void A_published_pair_is_on_record_in_either_order(string row)
    {
        var cells = RowTable.Cells(row);
        var (first, other) = (MixingPartner.Of(new AgentId(cells[0])), Partner(cells[1]));
        Assert.True(Words.TryParse<MixingSeverity>(cells[2], out var expected));
        foreach (var (one, two) in new[] { (first, other), (other, first) })
        {
            Assert.True(Mixture.TryJudge(KnowledgeBase.Shipped, one, two, out var answer, out var problems), string.Join("\n", problems));
            Assert.NotNull(answer!.Worst);
            Assert.True(answer.Worst <= expected, $"{answer.Worst} for {row}");
            Assert.All(answer.Hazards, found => Assert.NotEmpty(found.Hazard.Sources));
        }
    }

    /// <summary>Pairs that are sold in one formulated product, so that no hazard between them may be called deadly whatever the strength.</summary>
    [Theory]
    [InlineData("ethanol", "quaternary-ammonium")] // Surface disinfectants that hold both: a review of hospital disinfection, 2018.
    [InlineData("isopropanol", "quaternary-ammonium")] // The same.
    [InlineData("benzalkonium-chloride", "benzalkonium-chloride")] // 21 CFR 172.165, quaternary ammonium chloride combination.
    [InlineData("hydrogen-peroxide", "peracetic-acid")] // US guideline on disinfection and sterilization, 2008, Table 4.
    public void Partners_of_one_formulation_are_not_called_deadly(string one, string other)
    {
        Assert.True(Mixture.TryJudge(KnowledgeBase.Shipped, MixingPartner.Of(new AgentId(one)), MixingPartner.Of(new AgentId(other)), out var answer, out _));
        Assert.DoesNotContain(
            answer!.Hazards, found => found.Hazard is { Severity: MixingSeverity.Never, OnlyWhere: null, Strength: null, WithStrength: null });
    }

    /// <summary>A hazard of strong solutions is on record as such: it holds at the strength of the source and is not told of a weaker one.</summary>
    [Theory]
    [InlineData("hydrogen-peroxide", "% w/w", 8, 0.5, "isopropanol")] // UN Recommendations on the transport of dangerous goods, UN 2984: oxidising from 8 %.
    [InlineData("hydrogen-peroxide", "% w/w", 8, 0.125, "glycerol")] // WHO hand rub formulations, 2010: 0.125 % with ethanol and glycerol is stable.
    [InlineData("hydrogen-peroxide", "% w/w", 8, 3, "acetone")] // UN 2984, as above.
    [InlineData("peracetic-acid", "% w/w", 6, 0.2, "ethanol")] // UN 3149: up to 5 % no organic peroxide.
    public void A_hazard_of_strong_solutions_is_told_of_these_alone(string agent, string unit, double strong, double weak, string other)
    {
        Assert.Contains(Judge(strong).Hazards, found => found.Hazard.Effects.Contains(MixingEffect.Explosion));
        Assert.DoesNotContain(Judge(weak).Hazards, found => found.Hazard.Effects.Contains(MixingEffect.Explosion));
        Assert.Contains(Judge(weak).AtOtherStrengths, found => found.Hazard.Effects.Contains(MixingEffect.Explosion));

        MixingAnswer Judge(double percent)
        {
            Assert.True(StrengthUnit.TryParse(unit, out var read));
            var strength = new Strength(Interval.Exactly((decimal)percent), read!);
            Assert.True(
                Mixture.TryJudge(
                    KnowledgeBase.Shipped, MixingPartner.Of(new AgentId(agent), strength), MixingPartner.Of(new AgentId(other)), out var answer, out _));
            return answer!;
        }
    }

    /// <summary>Pairs that published formulations hold together are on record as harmless, not as unknown.</summary>
    [Theory]
    [InlineData("isopropanol", "quaternary-ammonium")] // Alcohols as surface disinfectants in healthcare settings (ICHE), 2018.
    [InlineData("n-propanol", "chlorhexidine")] // Alcohols for skin antisepsis at clinically relevant skin sites (AAC 53:4778), 2009.
    [InlineData("hydrogen-peroxide", "peracetic-acid")] // US guideline on disinfection and sterilization, 2008, Table 4.
    public void Partners_of_a_published_formulation_are_on_record_as_harmless(string one, string other)
    {
        Assert.True(Mixture.TryJudge(KnowledgeBase.Shipped, MixingPartner.Of(new AgentId(one)), MixingPartner.Of(new AgentId(other)), out var answer, out _));
        Assert.Equal(MixingOutcome.Harmless, answer!.Outcome);
        Assert.All(answer.Harmless, meeting => Assert.NotEmpty(meeting.Sources));
    }

    /// <summary>A wider class is asked at the worst of its members, and says so.</summary>
    [Fact]
    public void A_class_is_judged_by_its_worst_member()
    {
        Assert.True(
            Mixture.TryJudge(
                KnowledgeBase.Shipped, MixingPartner.Of(new AgentId("chlorine-releasing")), MixingPartner.Of(new AgentId("organic-acid")), out var answer,
                out _));
        Assert.Equal(MixingSeverity.Never, answer!.Worst);
        Assert.Contains(answer.Hazards, found => found.OnlySome);
    }

    private static MixingPartner Partner(string text) =>
        KnowledgeBase.Shipped.Data.Agents.Any(agent => agent.Id.Value == text) ? MixingPartner.Of(new AgentId(text))
        : Words.TryParse<SoilKind>(text, out var soil) ? MixingPartner.Of(soil)
        : MixingPartner.Of(new MaterialId(text));
}
