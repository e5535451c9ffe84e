namespace Compat.Answers;

/// <summary>
/// Collects the claims by which a substance may be judged on a part: clauses K12 to K16. A product with label claims is judged by these, and by the
/// instructions, alone.
/// </summary>
internal sealed class ClaimGathering(CompiledBase kb, Substance substance, IReadOnlyList<PartVariant> variants)
{
    private readonly ClaimAxes _axes = new(kb);

    public CompiledBase Base { get; } = kb;

    /// <summary>Why the published claims of ingredients were not looked at; null where they were.</summary>
    public KillReason? PublishedNotUsed { get; private set; }

    public IReadOnlyList<ClaimSet> Sets()
    {
        if (substance.Product is not { } product)
        {
            var asked = substance.Components[0];
            return [new ClaimSet(asked, [.. Published(asked, []), .. Instructed(asked)])];
        }

        var own = OfLabel(product).Concat(Instructed(product)).ToArray();
        var sets = new List<ClaimSet>();
        foreach (var component in substance.Components)
        {
            if (component.OnlyForbids || component.Unknown) continue;
            var published = MayUsePublished(product, component) ? Published(component, Destroyers(component)) : [];
            var claims = published.Concat(Instructed(component)).ToArray();
            if (claims.Length > 0) sets.Add(new ClaimSet(component, [.. own, .. claims]));
        }

        if (sets.Count == 0) sets.Add(new ClaimSet(null, own));
        return sets;
    }

    /// <summary>
    /// Clauses K15 and K17. A published claim counts for a product only where it is known whole. What in it binds or destroys the ingredient leaves only
    /// claims of a blend that names it.
    /// </summary>
    private bool MayUsePublished(Product product, Component component)
    {
        if (product.LabelClaims.Count > 0) return Not(new KillReason(KillReasonCode.LabelAlone, [product.Id.Value]));
        if (product.Composition != Composition.Full) return Not(new KillReason(KillReasonCode.CompositionNotFull,
            [product.Id.Value, Words.Of(product.Composition)]));
        foreach (var other in substance.Components)
        {
            if (other == component || other.OnlyForbids) continue;
            if (other.Unknown) return Not(new KillReason(KillReasonCode.UnknownIngredient, [other.Name ?? ""]));
        }

        return true;

        bool Not(KillReason reason)
        {
            PublishedNotUsed ??= reason;
            return false;
        }
    }

    private Component[] Destroyers(Component component)
    {
        var destroyers = substance.Components
            .Where(other => other != component && !other.OnlyForbids && !other.Unknown && Reach.Destroys(Base, component.Agent, other.Agent)).ToArray();
        if (destroyers.Length > 0) PublishedNotUsed ??= new KillReason(KillReasonCode.Inactivated, [component.Name ?? "", destroyers[0].Name ?? ""]);
        return destroyers;
    }

    /// <summary>What is published of the agent, or of an ingredient of a product without label claims, and holds in a machine only.</summary>
    public IEnumerable<ClaimOnAxes> InMachine() => substance.Product is { LabelClaims.Count: > 0 } ? []
        : substance.Components.Where(component => !component.OnlyForbids && !component.Unknown)
            .SelectMany(component => Published(component, [], ClaimWhere.Machine));

    private IEnumerable<ClaimOnAxes> Published(Component component, IReadOnlyList<Component> destroyers, ClaimWhere? where = null)
    {
        foreach (var claim in Reach.Claims(Base, component.Agent, where).Where(claim => Reach.IsFor(Base, claim.For, variants)))
        {
            if (!destroyers.All(by => claim.With.Any(partner => Reach.Names(Base, partner.Agent, by.Agent)))) continue;
            foreach (var dilutions in DilutionsOfPartners(claim, component)) yield return new ClaimOnAxes
            {
                Claim = new KillClaim
                {
                    Origin = ClaimOrigin.Published,
                    Id = claim.Id.Value,
                    Reaches = claim.Reaches,
                    Kills = claim.Kills,
                    DoesNotKill = claim.DoesNotKill,
                    NamesThePart = claim.For.Count > 0,
                    Needs = claim.Needs,
                    Sources = claim.Sources,
                    WellFounded = claim.Sources.Any(WasRead),
                },
                Box = _axes.Of(claim.When, claim.Agent, dilutions),
                For = claim.For,
                OfGuideline = Reach.IsOfGuideline(claim),
            };
        }
    }

    /// <summary>
    /// The dilutions at which everything else that a blend's claim names is there at its strength, for each way to find it among the other ingredients.
    /// </summary>
    private IEnumerable<Stretch> DilutionsOfPartners(Claim claim, Component component)
    {
        IEnumerable<Stretch> ways = [Stretch.Whole];
        foreach (var partner in claim.With)
        {
            var there = substance.Components.Where(c => c != component && !c.OnlyForbids && !c.Unknown && Reach.Names(Base, partner.Agent, c.Agent))
                .Select(c => partner.Strength.Statement == AxisStatement.Within ? Dilutions.WhereAll(c.Strength, Stretch.Of(partner.Strength.Range))
                    : Stretch.Whole).ToArray();
            ways = ways.SelectMany(way => there.Select(way.Intersect)).ToArray();
        }

        return ways.Where(way => !way.IsEmpty);
    }

    private IEnumerable<ClaimOnAxes> OfLabel(Product product) =>
        from claim in product.LabelClaims
        where claim.IsShown && HardnessSuits(product)
        select new ClaimOnAxes
        {
            Claim = new KillClaim
            {
                Origin = ClaimOrigin.Label,
                Id = product.Id.Value + ": " + claim.Id.Value,
                Reaches = claim.Reaches,
                Kills = claim.Kills,
                DoesNotKill = claim.DoesNotKill,
                NamesThePart = claim.For.Count > 0,
                Needs = claim.Needs,
                ShownBy = claim.ShownBy.Select(code => Base.Data.TestStandards.First(test => test.Code == code)).ToArray(),
                Registration = claim.Registration,
                WellFounded = true,
            },
            Box = _axes.OfLabel(claim.When, product),
            For = claim.For,
        };

    /// <summary>
    /// Whether the water at hand is soft enough for what the label lets the product be diluted with; what is not stated does not speak against it.
    /// </summary>
    private bool HardnessSuits(Product product) =>
        product.StrengthOf != StrengthOf.Concentrate || product.MostHardness is not { } most
        || Base.Sites.All(site => site.Here.Hardness is not { } here || (here.Upper is { } hardest && hardest <= most));

    private IEnumerable<ClaimOnAxes> Instructed(Product product) => Reach.Instructed(variants).Where(one => one.Level.Product == product.Id)
        .Select(one => OfInstructions(one.Device, one.Edition, one.Level, _axes.OfLabel(one.Level.When, product)));

    private IEnumerable<ClaimOnAxes> Instructed(Component component) =>
        Reach.Instructed(variants).Where(one => one.Level.Agent is { } agent && Reach.Names(Base, agent, component.Agent))
            .Select(one => OfInstructions(one.Device, one.Edition, one.Level, _axes.Of(one.Level.When, one.Level.Agent!, Stretch.Whole)));

    private static ClaimOnAxes OfInstructions(Device device, InstructionsEdition edition, InstructedLevel level, Box<Stretch> box) => new()
    {
        Claim = new KillClaim
        {
            Origin = ClaimOrigin.Instructions,
            Id = device.Id.Value + ": " + edition.Id.Value,
            Reaches = level.Reaches,
            Kills = level.Kills,
            NamesThePart = true,
            Needs = level.Needs,
            Sources = edition.Source is { } source ? [source] : [],
            WellFounded = true,
        },
        Box = box,
        Edition = edition.Id,
    };

    private bool WasRead(SourceId id) => Base.SourcesById.TryGetValue(id, out var source) && source.IsWellFounded;
}
