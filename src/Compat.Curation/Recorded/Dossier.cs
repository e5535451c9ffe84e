using Compat.Planning;

namespace Compat.Curation.Recorded;

/// <summary>A part of a device with what it needs.</summary>
/// <param name="Part">The part.</param>
/// <param name="Need">What it needs.</param>
/// <param name="NeedsNothing">Whether it is kept dry, so that nothing is asked of it.</param>
public sealed record DossierPart(DevicePart Part, Need Need, bool NeedsNothing);

/// <summary>A plan that goes into a dossier whole.</summary>
/// <param name="File">The name of its file, without folders.</param>
/// <param name="Plan">What was read of it.</param>
/// <param name="Json">Its text.</param>
public sealed record DossierPlan(string File, RecordedFile Plan, string Json);

/// <summary>A record of what was done that goes into a dossier.</summary>
/// <param name="File">The name of its file, without folders.</param>
/// <param name="Record">What was read of it.</param>
public sealed record DossierDone(string File, DoneRecord Record);

/// <summary>The auditor's file of one device: every part with every product of the shelf, and what the answers rest on.</summary>
public sealed record Dossier
{
    /// <summary>The device.</summary>
    public required Device Device { get; init; }

    /// <summary>Its serial number; null where none was named.</summary>
    public SerialNumber? Serial { get; init; }

    /// <summary>The editions of its instructions that could speak, by id.</summary>
    public IReadOnlyList<EditionId> Speaking { get; init; } = [];

    /// <summary>The parts, in the order of the device.</summary>
    public IReadOnlyList<DossierPart> Parts { get; init; } = [];

    /// <summary>The answers, by part in the order of the device and by product.</summary>
    public IReadOnlyList<Answer> Answers { get; init; } = [];

    /// <summary>Plans written earlier.</summary>
    public IReadOnlyList<DossierPlan> Plans { get; init; } = [];

    /// <summary>Records of what was done.</summary>
    public IReadOnlyList<DossierDone> Done { get; init; } = [];

    /// <summary>The knowledge base it was made from.</summary>
    public required KnowledgeBase KnowledgeBase { get; init; }

    /// <summary>The rules that decided any answer, by id.</summary>
    public IReadOnlyList<Rule> Rules => Answers.SelectMany(answer => answer.DecidedBy).DistinctBy(rule => rule.Id).OrderBy(rule => rule.Id).ToArray();

    /// <summary>The person rules that spoke in any answer, by id.</summary>
    public IReadOnlyList<PersonRule> PersonRules => Answers.SelectMany(answer => answer.People?.Rules ?? []).DistinctBy(rule => rule.Id)
        .OrderBy(rule => rule.Id).ToArray();

    /// <summary>The claims that met the need in any answer, by id; twice where one names some parts and not others.</summary>
    public IReadOnlyList<KillClaim> Claims => Answers.SelectMany(answer => answer.Kill?.Claims ?? []).DistinctBy(claim => (claim.Id, claim.NamesThePart))
        .OrderBy(claim => claim.Id, StringComparer.Ordinal).ThenBy(claim => claim.NamesThePart).ToArray();

    /// <summary>The sources of all these and of the instructions, by id.</summary>
    public IReadOnlyList<Source> Sources
    {
        get
        {
            var cited = Rules.SelectMany(rule => rule.Sources).Concat(PersonRules.SelectMany(rule => rule.Sources))
                .Concat(Claims.SelectMany(claim => claim.Sources.Concat(claim.ShownBy.SelectMany(test => test.Sources))))
                .Concat(Device.Instructions.Select(edition => edition.Source).OfType<SourceId>()).ToHashSet();
            return KnowledgeBase.Data.Sources.Concat(KnowledgeBase.Sites.SelectMany(site => site.Sources)).Where(source => cited.Contains(source.Id))
                .DistinctBy(source => source.Id).OrderBy(source => source.Id).ToArray();
        }
    }

    /// <summary>Asks every part of a device that needs something with every product of the sites.</summary>
    /// <param name="kb">The knowledge base with its sites.</param>
    /// <param name="id">The device; it must be on record.</param>
    /// <param name="serial">Its serial number; null where none is named.</param>
    /// <exception cref="QuestionException">The device is not on record.</exception>
    /// <exception cref="TooManyBoxesException">The rules cut each other too finely to list.</exception>
    public static Dossier Of(KnowledgeBase kb, DeviceId id, SerialNumber? serial)
    {
        var device = kb.Compiled.Devices[id];
        var products = kb.Sites.SelectMany(site => site.Products).Select(product => product.Id).Order().ToArray();
        var parts = device.Parts.Select(part =>
        {
            var need = kb.NeedOf(Question(id, part.Id, serial));
            return new DossierPart(part, need, need is { KeptDry: true, SoiledWhereDry: false, Prions: false });
        }).ToArray();
        return new()
        {
            Device = device,
            Serial = serial,
            Speaking = Editions.Speaking(device, serial),
            Parts = parts,
            Answers = parts.Where(part => !part.NeedsNothing)
                .SelectMany(part => products.Select(product => kb.Ask(Question(id, part.Part.Id, serial) with { Product = product }))).ToArray(),
            KnowledgeBase = kb,
        };
    }

    private static Question Question(DeviceId device, DevicePartId part, SerialNumber? serial) => new() { Device = device, DevicePart = part, Serial = serial };
}
