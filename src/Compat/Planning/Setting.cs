namespace Compat.Planning;

/// <summary>One way to use a product in a step: parts that share it are done in one step.</summary>
internal sealed record Setting(int Key, ShelfProduct Product, PlanRole Role, ApplicationMethod Method, decimal Dilution, decimal ContactTime, decimal Temperature);

/// <summary>The use of a product on a part: a setting, and the box of the part in which it lies.</summary>
internal sealed record Use(Setting Setting, CaseBox Box);

/// <summary>Clause L6. All settings that can be best for some part: of every box the weakest dilution, the shortest contact time and the lowest temperature,
/// each with those of the others.</summary>
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
            var box = window.Boxes.Where(one => Lies(setting, one.Box)).OrderByDescending(one => one.Box.Uses.Upper ?? decimal.MaxValue).ThenByDescending(one => one.Box.ExposureTime.Upper ?? decimal.MaxValue).FirstOrDefault();
            if (box is not null) uses.Add(new Use(setting, box));
        }

        return uses;
    }

    private bool Lies(Setting setting, WindowBox box) =>
        setting.Method == box.Method && box.Dilution!.Value.Contains(setting.Dilution) && box.Temperature.Contains(setting.Temperature)
        && (setting.ContactTime == 0m ? Shortest(box) == 0m : box.ContactTime.Contains(setting.ContactTime))
        && box.ExposureTime.Contains(setting.ContactTime + Math.Max(setting.ContactTime * _share, _least));

    private static decimal Shortest(WindowBox box) => box.ContactTime.Lower is not { } least || least == 0m ? 0m : box.ContactTime.LowerIncluded ? least : least + 1m;

    private static decimal Weakest(WindowBox box) => Lowest(box.Dilution!.Value, 0m, 1m);

    private static decimal Coolest(WindowBox box) => Lowest(box.Temperature, -40m, 200m);

    /// <summary>The lower end, or the middle where it does not lie in the range.</summary>
    private static decimal Lowest(Interval range, decimal least, decimal most) =>
        range.LowerIncluded ? range.Lower!.Value : ((range.Lower ?? least) + (range.Upper ?? most)) / 2m;
}
