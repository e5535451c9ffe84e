namespace Compat.Planning;

/// <summary>One way to use a product in a step: parts that share it are done in one step.</summary>
internal sealed record Setting(int Key, ShelfProduct Product, PlanRole Role, ApplicationMethod Method, decimal Dilution, decimal ContactTime,
    decimal Temperature);

/// <summary>The use of a product on a part: a setting, and the box of the part in which it lies.</summary>
internal sealed record Use(Setting Setting, CaseBox Box);

/// <summary>
/// All settings that can be best for some part: of every box the weakest dilution, the shortest contact time and the lowest temperature, each with those of the
/// others.
/// </summary>
/// <remarks>Boxes are products of intervals, so that parts which can share a step at all can share it at one of these.</remarks>
internal sealed class Settings
{
    private readonly Dictionary<(int, PlanRole), List<Setting>> _byRole = [];
    private readonly decimal _share;
    private readonly decimal _least;

    public Settings(IEnumerable<CaseWindow> windows, decimal share, decimal least)
    {
        (_share, _least) = (share, least);
        var key = 0;
        foreach (var group in windows.Where(window => window.Boxes.Count > 0).GroupBy(window => (window.Product.Rank, window.Role)).OrderBy(group => group.Key))
        {
            var boxes = group.SelectMany(window => window.Boxes).Select(one => one.Box).ToArray();
            _byRole[group.Key] = (from method in boxes.Select(box => box.Method).Distinct().OrderBy(m => m)
                                  from dilution in boxes.Select(Weakest).Distinct().OrderBy(d => d)
                                  from wet in boxes.Select(Shortest).Distinct().OrderBy(w => w)
                                  from temperature in boxes.Select(Coolest).Distinct().OrderBy(t => t)
                                  select (method, dilution, wet, temperature)).Distinct()
                .Select(one => new Setting(key++, group.First().Product, group.Key.Role, one.method, one.dilution, one.wet, one.temperature)).ToList();
        }
    }

    /// <summary>The uses of an open window, one for each setting that lies in one of its boxes.</summary>
    public IReadOnlyList<Use> Of(CaseWindow window)
    {
        if (!_byRole.TryGetValue((window.Product.Rank, window.Role), out var settings)) return [];
        var uses = new List<Use>();
        foreach (var setting in settings)
        {
            var box = window.Boxes.Where(one => Lies(setting, one.Box)).OrderByDescending(one => one.Box.Uses.Upper ?? decimal.MaxValue)
                .ThenByDescending(one => one.Box.ExposureTime.Upper ?? decimal.MaxValue).FirstOrDefault();
            if (box is not null) uses.Add(new Use(setting, box));
        }

        return uses;
    }

    private bool Lies(Setting setting, WindowBox box) =>
        setting.Method == box.Method && box.Dilution!.Value.Contains(setting.Dilution) && box.Temperature.Contains(setting.Temperature)
        && (setting.ContactTime == 0m ? Shortest(box) == 0m : box.ContactTime.Contains(setting.ContactTime))
        && box.ExposureTime.Contains(setting.ContactTime + Math.Max(setting.ContactTime * _share, _least));

    private static decimal Shortest(WindowBox box) =>
        box.ContactTime.Lower is not { } least || least == 0m ? 0m : box.ContactTime.LowerIncluded ? least : least + 1m;

    private static decimal Weakest(WindowBox box) => Lowest(box.Dilution!.Value, 0m, 1m);

    private static decimal Coolest(WindowBox box) => Lowest(box.Temperature, -40m, 200m);

    /// <summary>The lower end, or the middle where it does not lie in the range.</summary>
    private static decimal Lowest(Interval range, decimal least, decimal most) =>
        range.LowerIncluded ? range.Lower!.Value : ((range.Lower ?? least) + (range.Upper ?? most)) / 2m;
}

/// <summary>One way to do a part.</summary>
internal sealed record PlanOption(ChoiceOption Choice, PartCase Case, Use? Cleaner, Use? Disinfectant, bool OneStep)
{
    public IEnumerable<Use> Uses => new[] { Cleaner, Disinfectant }.OfType<Use>();

    public bool Gap => Disinfectant?.Box.Gap ?? false;
}

/// <summary>Makes the options of a part of the uses that its windows leave.</summary>
internal sealed class OptionMaker(CompiledBase kb, Meetings meetings, Settings settings)
{
    private readonly Dictionary<RuleId, CompiledRule> _rules = kb.Rules.ToDictionary(rule => rule.Rule.Id);
    private readonly HarmClass _harm = new(kb);

    public IReadOnlyList<PlanOption> Of(PartCase one, IReadOnlyList<CaseWindow> windows)
    {
        var cleaners = windows.Where(window => window.Role == PlanRole.Clean).SelectMany(settings.Of).ToArray();
        var disinfectants = windows.Where(window => window.Role == PlanRole.Disinfect).SelectMany(settings.Of).ToArray();
        var damage = windows.ToLookup(window => window.Product.Rank,
            window => window.Boxes.SelectMany(box => Deciding(box)).Select(rule => rule.Rule.Damage).OfType<Damage>().ToArray());
        var options = new List<PlanOption>();
        if (one.Need.NothingToKill)
        {
            foreach (var cleaner in cleaners) Add(cleaner, null, false);
            return options;
        }

        foreach (var disinfectant in disinfectants)
        {
            if (!one.NeedsCleaning && !disinfectant.Box.CleanFirst) Add(null, disinfectant, false);
            else if (InOneStep(one, disinfectant)) Add(null, disinfectant, true);
            else
            {
                foreach (var cleaner in cleaners) Add(cleaner, disinfectant, false);
            }
        }

        return options;

        void Add(Use? cleaner, Use? disinfectant, bool oneStep)
        {
            var uses = new[] { cleaner, disinfectant }.OfType<Use>().ToArray();
            var choice = new ChoiceOption
            {
                Ordinal = options.Count,
                Products = uses.GroupBy(use => use.Setting.Product.Rank)
                    .Select(group => new UsedProduct(group.Key, group.Max(use => Harm(use, damage[group.Key].SelectMany(some => some))))).ToArray(),
                Shares = Limits(uses).GroupBy(limit => limit.Mechanism)
                    .ToDictionary(group => group.Key, group => group.Aggregate(default(Fraction), (sum, limit) => sum + new Fraction(1, limit.Limit.Uses))),
                Steps = uses.Select(use => use.Setting.Key).ToArray(),
                ContactTime = uses.Sum(use => use.Setting.ContactTime),
            };
            options.Add(new PlanOption(choice, one, cleaner, disinfectant, oneStep));
        }
    }

    /// <summary>
    /// The limits of use that the rules set which permit the uses, by the mechanism they count towards; of rules of one use and mechanism the strictest.
    /// </summary>
    public IReadOnlyList<(Mechanism Mechanism, UseLimit Limit)> Limits(IEnumerable<Use> uses) =>
        (from use in uses
         from rule in Deciding(use.Box)
         where rule.Allows && rule.Box.Uses.To is not null
         let mechanism = rule.Rule.CountsTowards ?? rule.Rule.Damage?.Mechanism
         where mechanism is not null
         group rule.Box.Uses.To!.Value by (use, mechanism.Value) into same
         select (same.Key.Value,
         new UseLimit(same.Key.use.Setting.Product.Product.Id, Math.Max(1L, (long)Math.Floor(Math.Min(same.Min(), long.MaxValue / 2)))))).ToArray();

    /// <summary>The damage that the rules name which decide at a use: what an 'allowed' costs over time, what an accepted 'not allowed' does.</summary>
    public IEnumerable<Damage> DamageOf(Use use) => Deciding(use.Box).Select(rule => rule.Rule.Damage).OfType<Damage>().Distinct();

    /// <summary>The damage of those that forbid and were accepted.</summary>
    public IEnumerable<Damage> AcceptedAt(Use use) =>
        Deciding(use.Box).Where(rule => !rule.Allows).Select(rule => rule.Rule.Damage).OfType<Damage>().Distinct();

    private IEnumerable<CompiledRule> Deciding(CaseBox box) => box.Box.DecidedBy.Where(_rules.ContainsKey).Select(id => _rules[id]);

    /// <remarks>The damage is that of the product on the part, by whatever method: a rule on another method that names none makes it no milder.</remarks>
    private int Harm(Use use, IEnumerable<Damage> damage) => _harm.Of(damage, use.Setting.Product.PeopleHazard, use.Box.Gap);

    /// <summary>
    /// Whether the label says that it cleans and disinfects at once, its claims were shown in this soil, and nothing asks a cleaning of its own.
    /// </summary>
    private bool InOneStep(PartCase one, Use use)
    {
        var product = use.Setting.Product.Product;
        if (!product.OneStep || product.Removes.Count == 0 || one.Need.CleanFirst || use.Box.CleanFirst || one.Need.Soil.Except(product.Removes).Any())
            return false;
        if (one.Need.Soil.Any(soil => meetings.Of(product.Id, soil)
            .Any(found => found.Hazard.Severity != MixingSeverity.LosesActivity || found.Hazard.Effects.Contains(MixingEffect.FixesSoil)))) return false;
        return use.Box.Box.Claims.Where(claim => claim.Origin == Answers.ClaimOrigin.Label).Select(claim => Label(product, claim.Id))
            .All(label => label is not null && !one.Need.Soil.Except(label.StandsSoil).Any())
            && use.Box.Box.Claims.Any(claim => claim.Origin == Answers.ClaimOrigin.Label);
    }

    private static LabelClaim? Label(Product product, string id) => product.LabelClaims.FirstOrDefault(claim => product.Id.Value + ": " + claim.Id.Value == id);
}
