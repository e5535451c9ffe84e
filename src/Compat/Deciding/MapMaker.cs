namespace Compat.Deciding;

/// <summary>Cuts the whole space of exposures into cells and joins neighbours that say the same.</summary>
internal sealed class MapMaker(CompiledBase kb, Question question)
{
    private sealed record Cell(ApplicationMethod Method, int[] Low, int[] High, Decision Decision)
    {
        public string Signature { get; } = Decision.Verdict + "|" + Decision.Reasons[0].Code + "|" + Decision.Variant.Member + "|" + string.Join(",", Decision.Deciding.Select(r => r.Index).OrderBy(i => i));
    }

    public DecisionMap Make(IReadOnlyList<DataIdentity> identity, CancellationToken cancellation)
    {
        var asked = new Question { Part = question.Part, Materials = question.Materials, MaterialsKnown = question.MaterialsKnown, Device = question.Device, DevicePart = question.DevicePart, Serial = question.Serial, Agent = question.Agent, Acts = question.Acts };
        var substance = SubstanceResolver.Resolve(kb, asked);
        var component = substance.Components[0];
        var variants = PartResolver.Variants(kb, asked);
        var scene = new Scene(kb, variants, substance, component, exposureTimeWithoutEnd: false);
        Interval[] domain =
        [
            SubstanceResolver.WholeStrength(kb.Agent(component.Agent).Basis), Interval.Exactly(1m), Interval.Above(0m),
            Interval.Closed(-40m, 200m), Interval.Closed(-1m, 15m), RuleCompiler.WholeNumbers(Interval.AtLeast(1m)),
        ];
        var low = new int[CompiledRule.AxisCount];
        var high = new int[CompiledRule.AxisCount];
        for (var axis = 0; axis < low.Length; axis++) (low[axis], high[axis]) = kb.Tables[axis].Cells(domain[axis]);
        var cells = new List<MapCell>();
        var leaves = new Leaves(kb, scene);
        foreach (var method in MethodSet.All.ToArray())
        {
            cancellation.ThrowIfCancellationRequested();
            if (Pieces.BarrierOf(method, asked, variants) is { } barrier)
            {
                cells.Add(ToCell(new Cell(method, low, high, barrier), domain));
                continue;
            }

            var found = leaves.Of(method, low, high).Select(leaf => new Cell(method, leaf.Low, leaf.High, leaf.Decision)).ToList();
            cells.AddRange(Joined(found).Select(cell => ToCell(cell, domain)).Where(cell => !cell.Strength.IsEmpty && !cell.ExposureTime.IsEmpty && !cell.Temperature.IsEmpty && !cell.Ph.IsEmpty && !cell.Uses.IsEmpty));
        }

        return new DecisionMap
        {
            Part = question.Part,
            Agent = question.Agent!,
            Cells = cells.OrderBy(c => c.Verdict).ThenBy(c => c.Method).ToArray(),
            Identity = identity,
        };
    }

    private static List<Cell> Joined(List<Cell> cells) => CellJoin.Of(cells, cell => cell.Signature, cell => cell.Low, cell => cell.High, (last, next, axis) =>
    {
        var high = (int[])last.High.Clone();
        high[axis] = next.High[axis];
        return last with { High = high };
    });

    private MapCell ToCell(Cell cell, Interval[] domain)
    {
        var uses = On(Axis.Uses);
        return new MapCell
        {
            Verdict = cell.Decision.Verdict,
            Method = cell.Method,
            Strength = On(Axis.Strength),
            ExposureTime = On(Axis.ExposureTime),
            Temperature = On(Axis.Temperature),
            Ph = On(Axis.Ph),
            Uses = new Interval(uses.Lower is { } above ? above + 1 : 1m, true, uses.Upper, true),
            DecidedBy = cell.Decision.Deciding.Select(r => r.Rule.Id).Distinct().OrderBy(id => id).ToArray(),
            Reason = cell.Decision.Reasons[0],
        };

        Interval On(Axis axis) => kb.Tables[(int)axis].SpanOf(cell.Low[(int)axis], cell.High[(int)axis]).ToInterval().Intersect(domain[(int)axis]);
    }
}
