using Compat.Snapshots;
using Compat.Tests.Evaluation;
using Compat.Tests.Validation;

namespace Compat.Tests.Snapshots;

/// <summary>The sections of a snapshot: read back whole, skipped where unknown, refused where damaged.</summary>
public class SectionTests
{
    private static readonly byte[] Bytes = Snapshot.Write(EveryKind.Data);

    [Fact]
    public void Every_kind_of_record_comes_back()
    {
        var back = Read(Bytes);
        Assert.Equal(Bytes, Snapshot.Write(back));
        Assert.Empty(Compat.Validation.KnowledgeValidation.Check(back));
        Assert.Equivalent(EveryKind.Claim, Assert.Single(back.Claims));
        Assert.Equivalent(EveryKind.Hazard, back.MixingHazards.Single(h => h.Id == EveryKind.Hazard.Id));
        Assert.Equivalent(EveryKind.Harmless, Assert.Single(back.HarmlessMeetings));
        Assert.Equivalent(EveryKind.Protection, Assert.Single(back.Protections));
        Assert.Equivalent(EveryKind.Word, back.InstructionWords.Single(w => w.Id.Value == "mild-soap"));
        Assert.Equivalent(EveryKind.WithDuties, back.PersonRules.Single(r => r.Id.Value == "soap.eye"));
        Assert.Equivalent(EveryKind.Data.Occasions, back.Occasions);
        Assert.Equivalent(EveryKind.Data.TestStandards, back.TestStandards);
        Assert.Equivalent(EveryKind.Occupied, back.PersonRules.Single(r => r.Id.Value == "alcohol.occupied"));
        var window = back.Parts.Single(p => p.Id.Value == "window");
        Assert.Equal((1800m, "look through it", "IPX4"), (window.DryBeforePower, window.FunctionCheck, window.WaterIngress!.Code));
        Assert.Empty(window.WayOut!);
        Assert.Null(back.Parts.Single(p => p.Id.Value == "pad").WayOut);
    }

    [Fact]
    public void A_record_of_any_kind_changes_the_content_hash()
    {
        KnowledgeData[] less =
        [
            EveryKind.Data with { Organisms = [] }, EveryKind.Data with { Levels = [] }, EveryKind.Data with { TestStandards = [] }, EveryKind.Data with
            {
                Needs = [],
            },
            EveryKind.Data with { Claims = [] }, EveryKind.Data with { MixingHazards = [] }, EveryKind.Data with { HarmlessMeetings = [] }, EveryKind.Data with
            {
                PersonRules = [],
            },
            EveryKind.Data with { Protections = [] }, EveryKind.Data with { InstructionWords = [] }, EveryKind.Data with { Occasions = [] },
            EveryKind.Data with { StandingRules = EyeWorkshop.Data.StandingRules }, EveryKind.Data with { Parts = EyeWorkshop.Data.Parts },
        ];
        var hashes = less.Append(EveryKind.Data).Select(data => Snapshot.HashOf(SnapshotWriter.Body(data))).ToArray();
        Assert.Equal(hashes.Length, hashes.Distinct().Count());
    }

    [Fact]
    public void The_order_of_records_changes_no_byte()
    {
        var turned = EveryKind.Data with
        {
            Levels = EveryKind.Data.Levels.Reverse().ToArray(),
            TestStandards = EveryKind.Data.TestStandards.Reverse().ToArray(),
            Needs = EveryKind.Data.Needs.Reverse().ToArray(),
            MixingHazards = EveryKind.Data.MixingHazards.Reverse().ToArray(),
            StandingRules = EveryKind.Data.StandingRules.Reverse().ToArray(),
        };
        Assert.Equal(Bytes, Snapshot.Write(turned));
    }

    [Fact]
    public void A_section_of_an_unknown_number_is_skipped()
    {
        var later = ForgedSnapshot.Seal([.. Bytes, 99, 3, 1, 2, 3]);
        Assert.Equal(Bytes, Snapshot.Write(Read(later)));
    }

    [Theory]
    [InlineData(new byte[] { 99, 4, 1, 2, 3 })]
    [InlineData(new byte[] { 3, 2, 0, 0 })]
    [InlineData(new byte[] { 99 })]
    public void A_section_that_lies_about_its_length_is_refused(byte[] section) =>
        Assert.Throws<SnapshotException>(() => Read(ForgedSnapshot.Seal([.. Bytes, .. section])));

    private static KnowledgeData Read(byte[] bytes) => Snapshot.Read(new MemoryStream(bytes), ownResource: false, out _);
}
