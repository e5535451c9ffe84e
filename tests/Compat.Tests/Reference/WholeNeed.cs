using Compat.Tests.RandomCases;

namespace Compat.Tests.Reference;

/// <summary>One target: the level, or a group or organism.</summary>
internal sealed record KillTarget(Level? Level, OrganismTarget? Against);
/// <summary>What is needed, clauses N1 to N8, read point by point.</summary>
internal sealed record NeedTruth(bool Known, bool Dry, bool Soiled, bool Prions, Level? Level, KillTarget[] Targets, PatientGroup[] Patients);
/// <summary>One exposure with its contact time. A pH only where it is kept to: of an agent.</summary>
internal sealed record WholePoint(
    ApplicationMethod Method, decimal Dilution, Interval ExposureTime, Interval Temperature, Interval? Ph, int Uses, decimal ContactTime);

/// <summary>A direct reading of need, kill, people and window: slow, obvious, and sharing nothing with the engine but the records.</summary>
internal sealed partial class ReferenceWhole
{
    private readonly KnowledgeData _data;
    private readonly IReadOnlyList<Site> _sites;
    private readonly Question _question;
    private readonly ReferenceEvaluator _part;
    private readonly ReferenceTrees _trees;
    private readonly Product? _product;
    private readonly Device? _device;
    private readonly DevicePart? _devicePart;
    private readonly Variant[] _variants;
    private readonly Component[] _ingredients;
    public ReferenceWhole(KnowledgeData data, IReadOnlyList<Site> sites, Question question)
    {
        (_data, _sites, _question, _part) = (data, sites, question, new(data, sites, question));
        _trees = _part.Trees;
        _product = sites.SelectMany(s => s.Products).SingleOrDefault(p => p.Id == question.Product);
        _device = sites.SelectMany(s => s.Devices).SingleOrDefault(d => d.Id == question.Device);
        _devicePart = _device?.Parts.Single(p => p.Id == question.DevicePart);
        (_variants, _ingredients) = (_part.Variants().ToArray(), _part.Ingredients.ToArray());
        Samples = new(_trees, _product, _part.Components, BoxesOf);
        Need = MakeNeed();
    }
    /// <summary>The boundaries of rules, claims and person rules.</summary>
    public Samples Samples { get; }
    public NeedTruth Need { get; }
    private NeedTruth MakeNeed()
    {
        PartId[] types = _question.Part is { } asked ? [asked] : _devicePart is null ? [] : [.. _devicePart.OneOfTypes];
        var soil = _question.Soil ?? _devicePart?.Soil ?? types.SelectMany(t => ReferenceTrees.Nearest(_trees.Line(t), p => p.Soil) ?? []).ToArray();
        var contacts = (_question.TouchedBy ?? _devicePart?.TouchedBy) is { } said ? [said]
            : types.Select(t => ReferenceTrees.Nearest(_trees.Line(t), p => p.TouchedBy)).ToArray();
        var contactKnown = contacts.Length > 0 && contacts.All(c => c is not null);
        var byContact = contactKnown ? contacts.Max(c => Asks(c!.Value)) : null;
        var decisions = _sites.SelectMany(s => s.Levels).Where(l => l.Device == _question.Device).ToArray();
        var ofPart = decisions.Where(l => l.Part is not null && l.Part == _question.DevicePart).Max(l => (Level?)l.Level);
        var dry = contactKnown && byContact is null && ofPart is null;
        var decided = ofPart ?? (dry ? null : decisions.Where(l => l.Part is null).Max(l => (Level?)l.Level));
        Level?[] all = [decided ?? byContact, _question.Level];
        var level = all.Max();
        var groups = level > Level.Cleaned ? [new KillTarget(level, null)] : Array.Empty<KillTarget>();
        var prions = _question.Against.Any(t => GroupOf(t) == OrganismGroup.Prions);
        return new(dry || level is not null, dry, dry
            && soil.Count > 0, prions, level, [.. groups, .. _question.Against.Select(t => new KillTarget(null, t))],
            Patients(contacts));
        Level? Asks(TouchedBy contact) => _data.Needs
            .Where(n => n.TouchedBy.Contains(contact) && (n.Soil.Count == 0 || n.Soil.Any(soil.Contains))).Max(n => n.Level);
        PatientGroup[] Patients(IEnumerable<TouchedBy?> touching)
        {
            IEnumerable<PatientGroup> Of(IEnumerable<PartId> all) => all.SelectMany(t => _trees.Line(t)).SelectMany(p => p.Patients);
            var kinds = Of(_device is null ? [] : _device.Parts.SelectMany(p => p.OneOfTypes))
                .Where(g => g is PatientGroup.Newborn or PatientGroup.Pregnancy or PatientGroup.Sensitised or PatientGroup.LatexAllergy);
            var stated = _question.Patients.Count > 0 ? _question.Patients : _device?.Patients ?? [.. Of(types), .. kinds];
            return [.. stated.Concat(touching.SelectMany(c => (PatientGroup[])(c switch
            {
                TouchedBy.IntactSkin => [PatientGroup.Skin],
                TouchedBy.BrokenSkin => [PatientGroup.Wound],
                TouchedBy.MucousMembrane => [PatientGroup.MucousMembrane],
                _ => [],
            }))).Distinct()];
        }
    }
    private OrganismGroup GroupOf(OrganismTarget target) => target.Group ?? Record(target).Group;
    private Organism Record(OrganismTarget target) => _data.Organisms.Single(o => o.Id == target.Organism);

    /// <summary>Clauses W2 and W3. Whether the contact time is held, the part is allowed there, nobody is harmed, and every target is
    /// met.</summary>
    public bool InWindow(WholePoint at)
    {
        if (!Need.Known || Need.Prions || Need.Soiled) return false;
        decimal Figure(ConventionKey key) => _trees.Convention(key).Range.Upper!.Value;
        var least = Need.Targets.Length == 0 ? 0 : at.ContactTime
            + Math.Max(at.ContactTime * Figure(ConventionKey.WindowShare), Figure(ConventionKey.WindowLeast));
        if ((Need.Targets.Length > 0 && !at.ExposureTime.LiesIn(Interval.AtLeast(at.ContactTime))) || !PartAllows(at) || Harms(at)
            || !Kills(at)) return false;
        if (_question.ExposureTime is not null) return true;
        return Samples.On(Axis.ExposureTime, Interval.AtLeast(Math.Max(least, 1))).Append(Math.Max(least, 0.001m))
            .Select(longer => at with { ExposureTime = Interval.Exactly(longer) }).Any(longer => PartAllows(longer) && !Harms(longer));
    }

    /// <summary>Clause W4. The whole verdict of a question that states every axis: the worst of the three; an 'allowed' with or without
    /// limits.</summary>
    public Verdict AtStatedPoint(WholePoint at)
    {
        var part = _part.Region() == Verdict.AllowedWithinLimits ? Verdict.Allowed : _part.Region();
        var contactTimes = ContactTimes().Select(w => at with { ContactTime = w }).ToArray();
        var kill = KillVerdict(at, contactTimes);
        if (part == Verdict.Allowed && kill == Verdict.Allowed && Need.Targets.Length > 0 && !Harms(at)
            && !contactTimes.Any(InWindow)) kill = Verdict.NotAllowed;
        return Harms(at) ? Verdict.NotAllowed : part < kill ? part : kill;
    }

    /// <summary>What is at hand where the question does not say.</summary>
    public Interval TemperaturesAtHand => Here?.Here.Temperature ?? _product?.Temperature ?? _part.Usual(u => u.Temperature)
        ?? _trees.Convention(ConventionKey.AssumedTemperature).Range;
    public Interval DilutionsAtHand => _part.DilutionIsFree ? _product!.Dilution ?? Interval.Whole : Interval.Exactly(1);
    public Interval? PhAtHand => _product is null ? _part.Usual(u => u.Ph) : null;
    public ApplicationMethod[] Methods => [.. _part.Choices().Select(c => c.Method).Distinct()];
    private Site? Here => _sites.FirstOrDefault(s => s.Here.Temperature is not null);

    private bool PartAllows(WholePoint at)
    {
        var evaluator = new ReferenceEvaluator(_data, _sites, _question with { Temperature = at.Temperature, Ph = at.Ph ?? _question.Ph });
        var all = evaluator.AllAt(new(at.Method, at.ExposureTime, Interval.Exactly(at.Dilution)), Interval.Closed(1, at.Uses));
        return all.All(p => p.Verdict == Verdict.Allowed && (!(Need.Level >= Level.High) || p.Step != "7 by its materials"));
    }
}
