using Compat.Knowledge;
using Compat.People;
using Compat.Sites;

namespace Compat.Validation;

/// <summary>Refuses hidden characters, line breaks among them, in every text of every record: whoever shows a record need not look for them.</summary>
internal static class TextValidation
{
    public static void Check(Scope scope, KnowledgeData data)
    {
        Look(scope, new ProblemPlace(RecordKind.Convention, ""), [("version", data.Version)]);
        Each(data.Sources, RecordKind.Source, one => one.Id.Value, Of);
        Each(data.Materials, RecordKind.Material, one => one.Id.Value, one => [("name", one.Name), .. List("also-called", one.AlsoCalled), ("note", one.Note)]);
        Each(data.Parts, RecordKind.Part, one => one.Id.Value, one =>
        [
            ("name", one.Name), .. List("also-called", one.AlsoCalled), ("function-check", one.FunctionCheck), ("water-ingress.means", one.WaterIngress?.Means),
            .. Duties("duties", one.Duties), ("note", one.Note),
        ]);
        Each(data.Agents, RecordKind.Agent, one => one.Id.Value, one =>
        [
            ("name", one.Name), .. List("also-called", one.AlsoCalled), .. List("cas", one.Cas), .. List("ec", one.Ec), .. List("bound-by", one.BoundBy),
            .. Duties("duties", one.Duties), ("note", one.Note),
        ]);
        Each(data.Rules, RecordKind.Rule, one => one.Id.Value, Of);
        Each(data.Conventions, RecordKind.Convention, one => Words.Of(one.Key), one => [("reason", one.Reason)]);
        Each(data.StandingRules, RecordKind.StandingRule, one => one.Id.Value, one => [("bound-by", one.BoundBy), ("reason", one.Reason)]);
        Each(data.Organisms, RecordKind.Organism, one => one.Id.Value, one => [("name", one.Name), .. List("also-called", one.AlsoCalled), ("note", one.Note)]);
        Each(data.Levels, RecordKind.Level, one => Words.Of(one.Level), one => [("note", one.Note)]);
        Each(data.Needs, RecordKind.Need, one => one.Id.Value, one => [("note", one.Note)]);
        Each(data.Claims, RecordKind.Claim, one => one.Id.Value, one => [("bath.test", one.Bath?.Test), ("refuted", one.Refuted), ("why", one.Why)]);
        Each(data.MixingHazards, RecordKind.Mixing, one => one.Id.Value, one => [("only-where", one.OnlyWhere), .. List("forms", one.Forms), ("how", one.How), ("why", one.Why)]);
        Each(data.PersonRules, RecordKind.PersonRule, one => one.Id.Value, one => [("harm", one.Harm), .. Duties("duties", one.Duties), ("why", one.Why)]);
        Each(data.Protections, RecordKind.Protection, one => one.Id.Value, Of);
        Each(data.InstructionWords, RecordKind.InstructionWord, one => one.Id.Value, one => [.. List("phrases", one.Phrases), .. Duties("act.duties", one.Act?.Duties), ("reason", one.Reason)]);
        Each(data.Occasions, RecordKind.Occasion, one => one.Id.Value, one => [("name", one.Name), .. List("adds", one.Adds), ("note", one.Note)]);

        void Each<T>(IReadOnlyList<T> records, RecordKind kind, Func<T, string> id, Func<T, IReadOnlyList<(string, string?)>> texts)
        {
            foreach (var one in records) Look(scope, new ProblemPlace(kind, id(one)), texts(one));
        }
    }

    public static void Check(Scope scope, Site site)
    {
        Look(scope, new ProblemPlace(RecordKind.Site, site.Id.Value),
        [
            ("site.name", site.Name), .. List("here.cloths", site.Here.Cloths), .. List("here.gloves", site.Here.Gloves),
            .. site.Levels.SelectMany((one, i) => new[] { ($"levels.{i}.decided-by", (string?)one.DecidedBy), ($"levels.{i}.because", one.Because) }),
        ]);
        foreach (var source in site.Sources) Look(scope, new ProblemPlace(RecordKind.Source, source.Id.Value), Of(source));
        foreach (var product in site.Products) Look(scope, new ProblemPlace(RecordKind.Product, product.Id.Value), Of(product));
        foreach (var device in site.Devices) Look(scope, new ProblemPlace(RecordKind.Device, device.Id.Value), Of(device));
        foreach (var rule in site.Rules) Look(scope, new ProblemPlace(RecordKind.Rule, rule.Id.Value), Of(rule));
    }

    private static (string, string?)[] Of(Source source) =>
    [
        ("title", source.Title), ("publisher", source.Publisher), ("edition", source.Edition), ("section", source.Section), ("address", source.Address), ("note", source.Note),
    ];

    private static (string, string?)[] Of(Rule rule) =>
        [("damage.look-for", rule.Damage?.LookFor), ("damage.withdraw-if", rule.Damage?.WithdrawIf), .. Duties("duties", rule.Duties), ("why", rule.Why)];

    private static (string, string?)[] Of(Protection one) =>
    [
        .. (one.Gloves ?? []).Select((glove, i) => ($"gloves.{i}.material", (string?)glove.Material)), .. List("gloves-fail", one.GlovesFail),
        ("eyes", one.Eyes), ("breathing", one.Breathing), ("ventilation", one.Ventilation),
        .. (one.Limits ?? []).SelectMany((limit, i) => new[] { ($"limits.{i}.by", (string?)limit.By), ($"limits.{i}.value", limit.Value.Unit) }),
        ("fire", one.Fire), ("oxygen", one.Oxygen), ("energised", one.Energised), ("disposal", one.Disposal), ("first-aid", one.FirstAid),
    ];

    private static (string, string?)[] Of(Product product) =>
    [
        ("name", product.Name), .. product.Ingredients.Select((one, i) => ($"ingredients.{i}.unknown", one.Unknown)),
        .. product.LabelClaims.Select((one, i) => ($"label-claims.{i}.shown-by", one.ShownBy)), ("bath.test", product.Bath?.Use.Test),
        .. List("bound-by-cloths", product.BoundByCloths), ("note", product.Note),
    ];

    private static (string, string?)[] Of(Device device) =>
    [
        ("name", device.Name),
        .. device.Parts.SelectMany((one, i) => new[] { ($"parts.{i}.name", one.Name), ($"parts.{i}.because", one.Because), ($"parts.{i}.when-dismantled.how", one.WhenDismantled?.How) }),
        .. device.Instructions.SelectMany((edition, i) => Said(edition, $"instructions.{i}")),
        ("note", device.Note),
    ];

    private static IEnumerable<(string, string?)> Said(InstructionsEdition edition, string field) =>
        edition.Serials.Select((one, i) => ($"{field}.serials.{i}", (string?)one.Prefix))
            .Concat(edition.Says.SelectMany((one, i) => List($"{field}.says.{i}.how", one.How).Prepend(($"{field}.says.{i}.words", one.Words))));

    private static IEnumerable<(string, string?)> List(string field, IReadOnlyList<string>? texts) => (texts ?? []).Select((text, i) => ($"{field}.{i}", (string?)text));

    private static IEnumerable<(string, string?)> Duties(string field, IReadOnlyList<Duty>? duties) => (duties ?? []).Select((duty, i) => ($"{field}.{i}.note", duty.Note));

    private static void Look(Scope scope, ProblemPlace place, IReadOnlyList<(string Field, string? Text)> texts)
    {
        foreach (var (field, text) in texts)
        {
            if (text is null || HiddenText.Find(text, out _) is var at && at < 0) continue;
            scope.Add("character", place with { Field = field }, $"the text holds {HiddenText.NameAt(text, at)}, a character that cannot be seen", "leave it out; a text stands on one line");
        }
    }
}
