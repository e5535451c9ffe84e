using System.Globalization;

namespace Compat.Curation.Writing;

/// <content>Devices and their instructions.</content>
internal sealed partial class SiteYaml
{
    public void Device(RecordText to, Device one)
    {
        to.Field("id", one.Id.Value).Field("name", one.Name).Records("parts", one.Parts, Part);
        if (one.Patients is { } patients) to.Raw("patients", RecordText.Words(patients.Select(Words.Of)));
        to.Records("instructions", one.Instructions, Edition).Field("note", one.Note);
    }

    private static void Part(RecordText to, DevicePart one)
    {
        to.Field("id", one.Id.Value).Field("name", one.Name).Raw("type", one.OneOfTypes.Count == 1
            ? one.OneOfTypes[0].Value
            : "{ one-of: " + RecordText.Words(KnowledgeYaml.Ids(one.OneOfTypes)) + " }");
        KnowledgeYaml.Materials(to, one.Materials, one.MaterialsKnown);
        to.Field("wettest", KnowledgeYaml.Word(one.Wettest)).Field("wettest-from", one.WettestFrom?.Value)
            .Field("geometry", KnowledgeYaml.Word(one.Geometry)).Field("touched-by", KnowledgeYaml.Word(one.TouchedBy))
            .Field("because", one.Because);
        if (one.Soil is { } soil) to.Raw("soil", RecordText.Words(soil.Select(Words.Of)));
        to.Braces("when-dismantled", Dismantled(one.WhenDismantled));
    }

    private static (string, string?)[] Dismantled(DismantledPart? one) => one is null ? [] :
    [
        ("geometry", Words.Of(one.Geometry)),
        ("wettest", KnowledgeYaml.Word(one.Wettest)),
        ("from", one.From?.Value),
        ("how", RecordText.Quoted(one.How)),
    ];

    private void Edition(RecordText to, InstructionsEdition one) => to
        .Field("id", one.Id.Value).Field("dated", one.Dated?.ToString())
        .List("serials", one.Serials.Select(Serials)).List("replaces", KnowledgeYaml.Ids(one.Replaces))
        .Field("agents", one.OnlyListed ? "only-listed" : null).Field("source", one.Source?.Value)
        .Records("says", one.Says, Phrase).Records("reaches", one.Reaches, Reached);

    private static void Phrase(RecordText to, InstructionPhrase one) => to
        .Field("words", one.Words).Flag("forbids", one.Forbids).List("how", one.How).List("parts", KnowledgeYaml.Ids(one.Parts));

    private void Reached(RecordText to, InstructedLevel one) => to
        .List("parts", KnowledgeYaml.Ids(one.Parts)).Field("agent", one.Agent?.Value).Field("product", one.Product?.Value)
        .Braces("when", ExposureYaml.Box(one.When, one.Agent is { } agent ? bases.Of(agent.Value) : null))
        .Field("level", KnowledgeYaml.Word(one.Reaches)).List("kills", one.Kills.Select(target => target.ToString()))
        .List("needs", one.Needs.Select(Words.Of));

    private static string Serials(SerialRange range) =>
        range.First == range.Last && range.Prefix.Length == 0 ? range.First.ToString(CultureInfo.InvariantCulture) + ".." + range.Last.ToString(CultureInfo.InvariantCulture) : range.ToString();
}
