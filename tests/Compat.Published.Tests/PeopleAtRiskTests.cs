namespace Compat.Published.Tests;

/// <summary>Patients and staff whom authorities and journals name for an agent or a material.</summary>
public sealed class PeopleAtRiskTests
{
    private static readonly KnowledgeData Data = KnowledgeBase.Shipped.Data;

    /// <remarks>
    /// Chlorhexidine burns premature infants (UK MHRA, Drug Safety Update 8(4), 2014). Nurses who worked with high-level disinfectants took longer to become
    /// pregnant (Scandinavian Journal of Work, Environment and Health 43(2), 2017). A guanidine breathed in from humidifiers scarred lungs (Journal of
    /// Toxicological Sciences 41(6), 2016). What is left in a blood path is tested for: formaldehyde, peracetic acid, chlorine (ANSI/AAMI RD47, 2008; ISO
    /// 23500-3, 2019).
    /// </remarks>
    [Theory]
    [InlineData("chlorhexidine", PatientGroup.Newborn)]
    [InlineData("polyhexanide", PatientGroup.Newborn)]
    [InlineData("glutaraldehyde", PatientGroup.Newborn)]
    [InlineData("ortho-phthalaldehyde", PatientGroup.Newborn)]
    [InlineData("hydrogen-peroxide", PatientGroup.Newborn)]
    [InlineData("peracetic-acid", PatientGroup.Newborn)]
    [InlineData("potassium-peroxymonosulfate", PatientGroup.Newborn)]
    [InlineData("alkylamine", PatientGroup.Newborn)]
    [InlineData("neutral-detergent", PatientGroup.Newborn)]
    [InlineData("glutaraldehyde", PatientGroup.Pregnancy)]
    [InlineData("ortho-phthalaldehyde", PatientGroup.Pregnancy)]
    [InlineData("polyhexanide", PatientGroup.Eye)]
    [InlineData("polyhexanide", PatientGroup.Airway)]
    [InlineData("sodium-hypochlorite", PatientGroup.Blood)]
    [InlineData("chloramine-t", PatientGroup.Blood)]
    [InlineData("peracetic-acid", PatientGroup.Blood)]
    [InlineData("formaldehyde", PatientGroup.Blood)]
    public void Patient_WhoIsNamedForAnAgent_IsMetOnlyWithCare(string agent, PatientGroup patient)
    {
        var people = KnowledgeBase.Shipped.Ask(
            new Question { Part = new("trolley-frame"), Agent = new(agent), Method = ApplicationMethod.DampWipe, Patients = [patient] }).People!;
        Assert.DoesNotContain(people.Silent, silent => silent.Patient == patient);
        Assert.Contains(people.Rules, rule => rule.Patients.Contains(patient) && (rule.Verdict == PersonVerdict.NotAllowed || rule.Duties.Count > 0));
        Assert.True(people.Verdict <= Verdict.AllowedWithinLimits, people.Verdict.ToString());
    }

    /// <summary>
    /// Guanidine disinfectants in humidifiers (Journal of Toxicological Sciences 41(6), 2016): nothing that puts water into the breath carries the biguanide.
    /// </summary>
    [Theory]
    [InlineData("humidifier-chamber")]
    [InlineData("nebuliser-cup")]
    public void Polyhexanide_WhereWaterIsBreathed_IsForbidden(string part) =>
        Assert.Equal(
            Verdict.NotAllowed,
            KnowledgeBase.Shipped.Ask(new Question { Part = new(part), Agent = new("polyhexanide"), Patients = [PatientGroup.Airway] }).People!.Verdict);

    public static TheoryData<string> PartsOfNaturalRubber =>
        [.. Data.Parts.Where(part => (part.Materials ?? []).SelectMany(slot => slot.OneOf).Any(IsNaturalRubber)).Select(part => part.Id.Value)];

    /// <summary>Products made of natural rubber latex, dry rubber too, are kept from who is allergic (US NIOSH 97-135, 1997, recommendations).</summary>
    [Theory]
    [MemberData(nameof(PartsOfNaturalRubber))]
    public void PartThatMayBeOfNaturalRubber_MeetsALatexAllergy_IsForbidden(string part)
    {
        var answer = KnowledgeBase.Shipped.Ask(new Question { Part = new(part), Agent = new("neutral-detergent"), Patients = [PatientGroup.LatexAllergy] });
        Assert.Equal(Verdict.NotAllowed, answer.People!.Verdict);
    }

    /// <summary>Whoever names latex gloves says who must not wear them (US NIOSH 97-135, 1997, warning).</summary>
    [Fact]
    public void ProtectionByLatexGloves_NamesTheAllergy() =>
        Assert.All(
            Data.Protections.Where(one => one.Gloves.Any(glove => glove.Material.Contains("latex", StringComparison.OrdinalIgnoreCase))),
            one => Assert.Contains("latex allergy", one.NotFor ?? "", StringComparison.Ordinal));

    /// <summary>
    /// Protective equipment and limits are made for healthy adults, not for the unborn (American Journal of Obstetrics and Gynecology 214(5), 2016); directive
    /// 92/85/EEC.
    /// </summary>
    [Theory]
    [InlineData("ethylene-oxide")]
    [InlineData("formaldehyde")]
    [InlineData("formaldehyde-steam")]
    [InlineData("glutaraldehyde")]
    [InlineData("ortho-phthalaldehyde")]
    public void PregnantStaff_AreKeptOff(string agent) =>
        Assert.Contains(
            Data.Protections.Where(one => one.Agent.Value == agent), one =>
                one.NotFor?.Contains("Pregnant or breast-feeding", StringComparison.Ordinal) == true);

    private static bool IsNaturalRubber(MaterialId id)
    {
        for (MaterialId? at = id; at is not null; at = Data.Materials.Single(material => material.Id == at).Under)
            if (at.Value == "natural-rubber") return true;
        return false;
    }
}
