namespace Compat.Deciding;

/// <summary>Cuts the whole space of exposures into cells and joins neighbours that say the same.</summary>
internal sealed class MapMaker(CompiledBase kb, Question question)
{
    private sealed record Cell(Box<Run> Cells, Decision Decision)
    {
        public string Signature { get; } = Decision.Verdict + "|" + Decision.Reasons[0].Code + "|" + Decision.Variant.Member + "|"
            + string.Join(",", Decision.Deciding.Select(r => r.Index).OrderBy(i => i));
    }

    public DecisionMap Make(IReadOnlyList<DataIdentity> identity, CancellationToken cancellation)
    {
        var asked = new Question
        {
            Part = question.Part,
            Materials = question.Materials,
            MaterialsKnown = question.MaterialsKnown,
            Device = question.Device,
            DevicePart = question.DevicePart,
            Serial = question.Serial,
            Agent = question.Agent,
            Acts = question.Acts,
        };
        var substance = SubstanceResolver.Resolve(kb, asked);
        var component = substance.Components[0];
        var variants = PartResolver.Variants(kb, asked);
        var scene = new Scene(kb, variants, substance, component, exposureTimeWithoutEnd: false);
        var domain = new Box<Stretch>
        {
            Methods = MethodSet.All,
            Strength = Stretch.Of(SubstanceResolver.WholeStrength(kb.Agent(component.Agent).Basis)),
            Dilution = Stretch.Of(Interval.Exactly(1m)),
            ExposureTime = Stretch.Positive,
            Temperature = Stretch.Of(Axes.RangeOf(Axis.Temperature)),
            Ph = Stretch.Of(Axes.RangeOf(Axis.Ph)),
            Uses = Stretch.Of(RuleCompiler.WholeNumbers(Interval.AtLeast(1m))),
            ContactTime = Stretch.Whole,
        };
        var all = kb.Grid.CellsOf(domain);
        var cells = new List<MapCell>();
        var leaves = new Leaves(scene);
        foreach (var method in MethodSet.All.ToArray())
        {
            cancellation.ThrowIfCancellationRequested();
            if (Pieces.BarrierOf(method, asked, variants) is { } barrier)
            {
                cells.Add(ToCell(method, new Cell(all, barrier), domain));
                continue;
            }

            var found = leaves.Of(method, all).Select(leaf => new Cell(leaf.Cells, leaf.Decision)).ToList();
            cells.AddRange(Joining.Of(found, cell => cell.Signature, cell => cell.Cells, (last, _, joined) => last with { Cells = joined })
                .Where(cell => !ValuesOf(cell, domain).IsEmpty).Select(cell => ToCell(method, cell, domain)));
        }

        return new DecisionMap
        {
            Part = question.Part,
            Agent = question.Agent!,
            Cells = cells.OrderBy(c => c.Verdict).ThenBy(c => c.Method).ToArray(),
            Identity = identity,
        };
    }

    private MapCell ToCell(ApplicationMethod method, Cell cell, in Box<Stretch> domain)
    {
        var values = ValuesOf(cell, domain);
        var uses = values.Uses.ToInterval();
        return new MapCell
        {
            Verdict = cell.Decision.Verdict,
            Method = method,
            Strength = values.Strength.ToInterval(),
            ExposureTime = values.ExposureTime.ToInterval(),
            Temperature = values.Temperature.ToInterval(),
            Ph = values.Ph.ToInterval(),
            Uses = new Interval(uses.Lower is { } above ? above + 1 : 1m, true, uses.Upper, true),
            DecidedBy = cell.Decision.Deciding.Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray(),
            Reason = cell.Decision.Reasons[0],
        };
    }

    private Box<Stretch> ValuesOf(Cell cell, in Box<Stretch> domain) => kb.Grid.ValuesOf(cell.Cells).Intersect(domain);
}
