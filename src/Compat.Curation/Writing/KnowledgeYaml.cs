using Compat.Curation.Reading;

namespace Compat.Curation.Writing;

/// <summary>Writes the records of a knowledge base.</summary>
internal sealed partial class KnowledgeYaml(AgentBases bases)
{
    public static void Source(RecordText to, Source one) => to
        .Field("id", one.Id.Value).Field("kind", Words.Of(one.Kind)).Field("title", one.Title).Field("publisher", one.Publisher)
        .Field("edition", one.Edition).Field("section", one.Section).Field("address", one.Address)
        .Field("basis", one.Recalled ? "recalled" : "read").Field("trust", Words.Of(one.Trust)).Field("note", one.Note);

    public static void Material(RecordText to, Material one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).Field("under", one.Under?.Value).Field("delicate", Word(one.Delicate))
        .Flag("declared-only-suffices", one.DeclaredOnlySuffices).List("also-called", one.AlsoCalled)
        .List("sources", Ids(one.Sources)).Field("note", one.Note);

    public static void Part(RecordText to, PartType one)
    {
        to.Field("id", one.Id.Value).Field("name", one.Name).Field("under", one.Under?.Value).List("also-called", one.AlsoCalled);
        Materials(to, one.Materials, one.MaterialsKnown);
        to.Field("wettest", Word(one.Wettest));
        if (one.Never is { } never) to.Raw("never", RecordText.Words(never.Select(Words.Of)));
        to.Field("geometry", Word(one.Geometry)).Field("touched-by", Word(one.TouchedBy)).List("patients", one.Patients.Select(Words.Of));
        if (one.Soil is { } soil) to.Raw("soil", RecordText.Words(soil.Select(Words.Of)));
        if (one.WayOut is { } ways) to.Raw("way-out", RecordText.Words(ways.Select(Words.Of)));
        to.Field("function-check", one.FunctionCheck).Raw("dry-before-power", ExposureYaml.Figure(one.DryBeforePower, "s"))
            .Braces("water-ingress", [("code", one.WaterIngress?.Code), ("means", one.WaterIngress is { } ingress ? RecordText.Quoted(ingress.Means) : null)])
            .Lines("duties", one.Duties.Select(ExposureYaml.DutyText)).List("sources", Ids(one.Sources)).Field("note", one.Note);
    }

    public static void Materials(RecordText to, IReadOnlyList<MaterialSlot>? slots, bool? known)
    {
        if (slots is { Count: > 0 })
        {
            to.Raw("materials", "[" + string.Join(", ", slots.Select(slot => slot.OneOf.Count == 1
                ? slot.OneOf[0].Value
                : "{ one-of: " + RecordText.Words(Ids(slot.OneOf)) + " }")) + "]");
        }

        to.Field("materials-known", known switch { true => "fully", false => "partly", _ => null });
    }

    public void Agent(RecordText to, AgentClass one) => to
        .Field("id", one.Id.Value).Field("name", one.Name).Field("under", one.Under?.Value).List("also-called", one.AlsoCalled)
        .List("cas", one.Cas).List("ec", one.Ec).Field("basis", one.Basis?.Text)
        .Raw("density", ExposureYaml.Figure(one.Density, "kg/L"))
        .Raw("available-chlorine", ExposureYaml.Number(one.AvailableChlorine))
        .List("nature", one.Nature.Select(Words.Of))
        .Braces("usual", Usual(one))
        .Field("leaves", Word(one.Leaves)).Flag("chamber", one.Chamber).List("inactivated-by", Ids(one.InactivatedBy))
        .List("bound-by", one.BoundBy).List("hazards", one.Hazards.Select(Words.Of))
        .Lines("duties", one.Duties.Select(ExposureYaml.DutyText)).List("sources", Ids(one.Sources)).Field("note", one.Note);

    public void Rule(RecordText to, Rule one) => to
        .Field("id", one.Id.Value).Field("part", one.Target.Part?.Value).Field("material", one.Target.Material?.Value)
        .Field("device", one.Target.Device?.Value).Field("device-part", one.Target.DevicePart?.Value)
        .Field("agent", one.Agent?.Value).Field("product", one.Product?.Value).Field("composition-dated", one.CompositionDated?.ToString())
        .Braces("when", ExposureYaml.Box(one.When, BasisOf(one.Agent)))
        .Field("verdict", one.Allows ? "allowed" : "not-allowed").List("seen-with", Ids(one.SeenWith)).Flag("whole-class", one.WholeClass)
        .List("overrides", one.Overrides.Select(id => id.Value))
        .Field("keep", one.IsSecondSource ? "second-source" : null).List("rests-on", one.RestsOn.Select(Words.Of)).Braces("damage", Damage(one.Damage))
        .Field("counts-towards", Word(one.CountsTowards)).Lines("duties", one.Duties.Select(ExposureYaml.DutyText))
        .Field("why", one.Why).Field("known-by", Word(one.KnownBy)).Braces("tested", Tested(one.Tested, BasisOf(one.Agent)))
        .Field("edition", one.Edition?.Value).List("sources", Ids(one.Sources)).Field("reviewed", one.Reviewed.ToString());

    public static void Convention(RecordText to, Convention one) => to
        .Field("id", Words.Of(one.Key)).Raw("value", Value(one)).Field("reason", one.Reason);

    public void Standing(RecordText to, StandingRule one) => to
        .Field("id", one.Id.Value).Field("part", one.Part?.Value).Field("material", one.Material?.Value).Field("agent", one.Agent.Value)
        .Braces("when", ExposureYaml.Box(one.When, BasisOf(one.Agent)))
        .Field("patient", Word(one.Patient))
        .Flag("never-allowed", one.Demand is StandingDemand.NeverAllowed or StandingDemand.NeverForPatient).Field("always-with", Word(one.AlwaysWith))
        .Field("never-above", Word(one.NeverAbove)).Field("bound-by", one.BoundBy)
        .Field("mixing-with", one.MixingWith?.Value).Field("mixing-with-soil", Word(one.MixingWithSoil))
        .Field("reason", one.Reason).List("sources", Ids(one.Sources));

    public static IEnumerable<string> Ids(IEnumerable<Id> ids) => ids.Select(id => id.Value);

    public static string? Word<TWord>(TWord? word) where TWord : struct, Enum => word is { } some ? Words.Of(some) : null;

    private StrengthUnit? BasisOf(AgentId? agent) => agent is null ? null : bases.Of(agent.Value);

    private (string, string?)[] Usual(AgentClass one) =>
    [
        ("strength", ExposureYaml.Range(one.Usual.Strength, (bases.Of(one.Id.Value) is { } basis ? StrengthUnit.PercentOf(basis.Basis) : StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume)).Text)),
        ("ph", ExposureYaml.Range(one.Usual.Ph, "")),
        ("temperature", ExposureYaml.Range(one.Usual.Temperature, "°C")),
        ("sources", one.Usual.Sources.Count == 0 ? null : RecordText.Words(Ids(one.Usual.Sources))),
    ];

    private static (string, string?)[] Damage(Damage? damage) => damage is null ? [] :
    [
        ("mechanism", Words.Of(damage.Mechanism)),
        ("onset", Words.Of(damage.Onset)),
        ("lasting", damage.Lasting ? "true" : "false"),
        ("consequence", Words.Of(damage.Consequence)),
        ("look-for", damage.LookFor is null ? null : RecordText.Quoted(damage.LookFor)),
        ("withdraw-if", damage.WithdrawIf is null ? null : RecordText.Quoted(damage.WithdrawIf)),
    ];

    private static (string, string?)[] Tested(TestEvidence? tested, StrengthUnit? basis)
    {
        if (tested is null) return [];
        var exposure = RecordText.Inline(ExposureYaml.Box(tested.Exposure, basis));
        return [("on", Words.Of(tested.On)), ("strained", tested.Strained ? "true" : null), ("exposure", exposure == "{}" ? null : exposure)];
    }

    private static string Value(Convention one) => one.Key switch
    {
        ConventionKey.UnstatedMethods or ConventionKey.ClaimMethods => ExposureYaml.Methods(one.Methods),
        ConventionKey.DamageOrder => RecordText.Words(one.Consequences.Select(Words.Of)),
        ConventionKey.HazardOrder => RecordText.Words(one.Hazards.Select(Words.Of)),
        ConventionKey.UnstatedExposureTime or ConventionKey.DryingTime or ConventionKey.WindowLeast => ExposureYaml.Range(one.Range, "s")!,
        ConventionKey.UnstatedTemperature or ConventionKey.AssumedTemperature or ConventionKey.ClaimTemperature => ExposureYaml.Range(one.Range, "°C")!,
        ConventionKey.UnstatedDilution => ExposureYaml.Range(one.Range, "% v/v", 100)!,
        ConventionKey.WindowShare => ExposureYaml.Range(one.Range, "%", 100)!,
        ConventionKey.SolutionDensity => ExposureYaml.Range(one.Range, "kg/L")!,
        _ => ExposureYaml.Range(one.Range, "")!,
    };
}
