using System.Globalization;
using Compat.Curation.Reading;
using Compat.Curation.Text;

namespace Compat.Curation.Writing;

/// <summary>Writes the records of a file.</summary>
/// <remarks>How each is written follows from its declaration (Compat.Generators); here stand the few forms of their own.</remarks>
/// <param name="bases">In which basis the strength of each agent is written.</param>
internal sealed partial class RecordWriter(AgentBases bases)
{
    /// <summary>Writes a convention.</summary>
    public static void WriteConvention(RecordText to, Convention x, AgentId? _ = null)
    {
        to.Field("id", Words.Of(x.Key));
        to.Raw("value", x.Key switch
        {
            ConventionKey.UnstatedMethods or ConventionKey.ClaimMethods => RecordText.Words(x.Methods.Methods.Select(Words.Of)),
            ConventionKey.DamageOrder => RecordText.Words(x.Consequences.Select(Words.Of)),
            ConventionKey.HazardOrder => RecordText.Words(x.Hazards.Select(Words.Of)),
            _ => ExposureYaml.Range(x.Range, Measure.Of(x.Key)),
        });
        to.Field("reason", x.Reason);
    }

    private static void WriteRuleTarget(RecordText to, Rule x, AgentId? _)
    {
        to.Field("part", x.Target.Part?.Value);
        to.Field("material", x.Target.Material?.Value);
        to.Field("device", x.Target.Device?.Value);
        to.Field("device-part", x.Target.DevicePart?.Value);
    }

    private static void WriteNeedRuleLevel(RecordText to, NeedRule x, AgentId? _)
    {
        to.Field("level", Word(x.Level));
        to.Flag("dry", x.Level is null);
    }

    private static void WriteStandingRuleAlwaysWith(RecordText to, StandingRule x, AgentId? _)
    {
        to.Flag("never-allowed", x.Demand is StandingDemand.NeverAllowed or StandingDemand.NeverForPatient);
        to.Field("always-with", Word(x.AlwaysWith));
    }

    // A list that says 'none' is written.
    private static void WriteLevelMeaningIncludes(RecordText to, LevelMeaning x, AgentId? _) => to.MaybeList("includes", x.Includes.Select(Words.Of));

    private static void WriteTestStandardShows(RecordText to, TestStandard x, AgentId? _) => to.MaybeList("shows", x.Shows.Select(one => one.ToString()));

    private static void WriteWaterIngressNumeral(RecordText to, WaterIngress x, AgentId? _) => to.Field("code", x.Code);

    private static void WriteDevicePartOneOfTypes(RecordText to, DevicePart x, AgentId? _) => to.Raw("type", OneOf(x.OneOfTypes));

    private void WriteProductBathUse(RecordText to, ProductBath x, AgentId? agent) => WriteBathUse(to, x.Use, agent);

    private void WriteWordReadingWhen(RecordText to, WordReading x, AgentId? _) =>
        WriteExposureBox(to, "when", x.When, x.Agents.Count == 0 ? null : x.Agents[0]);

    private void WriteClaimPartnerStrength(RecordText to, ClaimPartner x, AgentId? agent) =>
        to.Raw("strength", ExposureYaml.Limit(x.Strength, PercentOf(agent)));

    private static void WriteWordActExposureTime(RecordText to, WordAct x, AgentId? _) => to.Raw("exposure-time", ExposureYaml.Limit(x.ExposureTime, "s"));

    private void WriteExposureBox(RecordText to, string key, ExposureBox x, AgentId? agent) => to.Braces(key, ExposureYaml.Box(x, PercentOf(agent)));

    private void WriteClaimBox(RecordText to, string key, ClaimBox x, AgentId? agent) => to.Braces(key, ExposureYaml.Box(x, PercentOf(agent)));

    private static void WriteMethodSet(RecordText to, string key, MethodSet x, AgentId? _) => to.List(key, x.Methods.Select(Words.Of));

    private static void WriteDutys(RecordText to, string key, IReadOnlyList<Duty> x, AgentId? _) => to.Lines(key, x.Select(ExposureYaml.DutyText));

    private static void WriteOrganismTargets(RecordText to, string key, IReadOnlyList<OrganismTarget> x, AgentId? _) =>
        to.List(key, x.Select(one => one.ToString()));

    /// <summary>No materials are not written: a file has no list without items for them.</summary>
    private static void WriteMaterialSlots(RecordText to, string key, IReadOnlyList<MaterialSlot>? x, AgentId? _) =>
        to.Raw(key, x is not { Count: > 0 } ? null : $"[{string.Join(", ", x.Select(slot => OneOf(slot.OneOf)))}]");

    private static void WriteSerialRanges(RecordText to, string key, IReadOnlyList<SerialRange> x, AgentId? _) => to.List(key, x.Select(range =>
        range.First == range.Last
            && range.Prefix.Length == 0 ? string.Create(CultureInfo.InvariantCulture, $"{range.First}..{range.Last}") : range.ToString()));

    private static string OneOf(IReadOnlyList<Id> ids) =>
        ids.Count == 1 ? ids[0].Value : "{ one-of: " + RecordText.Words(ids.Select(id => id.Value)) + " }";

    private static string? Word<TWord>(TWord? word) where TWord : struct, Enum => word is { } some ? Words.Of(some) : null;

    /// <summary>The percent of an agent's basis, as it is written.</summary>
    private string PercentOf(AgentId? agent) =>
        StrengthUnit.PercentOf((agent is null ? null : bases.Of(agent.Value))?.Basis ?? StrengthBasis.VolumePerVolume).Text;
}
