using System.Collections.Concurrent;

namespace Compat.Deciding;

/// <summary>Turns questions that passed validation into numbers, and keeps the scenes that they share. What is kept never changes.</summary>
internal sealed class QuestionPreparer(CompiledBase kb)
{
    private readonly Part?[] _parts = new Part?[kb.Parts.Count];
    private readonly HashSet<ProductId> _spokenOf =
        [.. Enumerable.Range(0, kb.Heads.Count).Where(i => kb.Heads[i].Agent < 0).Select(i => kb.RuleAt(i).Rule.Product).OfType<ProductId>()];

    public PreparedQuestion Prepare(Question question)
    {
        if (question.JudgesKillAndPeople || question.Method is not { } method || question.ExposureTime is not { } exposureTime
            || !Stretch.Of(exposureTime).Meets(Stretch.Positive) || question.Uses is not >= 1) return new PreparedQuestion(question, kb);
        var substance = SubstanceResolver.Resolve(kb, question);
        if (substance.DilutionTreatment != AxisTreatment.Exactly || substance.Ph.Length != 1 || substance.IsNothing) return new PreparedQuestion(question, kb);

        var part = PartOf(question);
        var asked = Pieces.AskedOf(question, substance);
        var isWithoutEnd = exposureTime.Equals(Interval.Exactly(Interval.WithoutEnd));
        return new PreparedQuestion(question, kb)
        {
            Asked = new(substance, part.Variants)
            {
                Scenes = substance.Components.Select(component => SceneOf(part, substance, component, isWithoutEnd)).ToArray(),
            },
            Boxes = substance.Components.Select(component =>
                kb.Grid.CellsOf(asked with { Methods = MethodSet.Of(method), Strength = Stretch.Of(StrengthOf(component, substance)) })).ToArray(),
            LeftOut = LeftOut(question, substance),
            IsBarred = Pieces.BarrierOf(method, question, part.Variants) is not null,
            IsNeverPlain = Limits.OfPart(part.Variants).Any(),
        };
    }

    /// <remarks>A part type as it is on record is kept; whichever thread makes it makes the same.</remarks>
    private Part PartOf(Question question) =>
        question.Part is not { } part || question.Materials.Count > 0 ? new Part(PartResolver.Variants(kb, question))
        : _parts[kb.Parts[part.Value]] ??= new Part(PartResolver.Variants(kb, new Question { Part = part }));

    private Scene SceneOf(Part part, Substance substance, Component component, bool isWithoutEnd)
    {
        var matters = substance.Product is { } product && (product.Composition != Composition.Full || _spokenOf.Contains(product.Id));
        var key = new SceneKey(component.Agent, component.Name, component.Unknown, component.OnlyForbids, matters ? substance.Product!.Id
            : null, substance.LeavesNothing, isWithoutEnd);
        if (part.Scenes.TryGetValue(key, out var known)) return known;
        return part.Scenes.GetOrAdd(key, new Scene(kb, part.Variants, substance, component, isWithoutEnd));
    }

    /// <summary>The strength in the finished liquid; that of a product's ingredient is never below 0.</summary>
    private static Interval StrengthOf(Component component, Substance substance)
    {
        if (substance.Product is null) return component.Strength;
        var diluted = component.Strength.Scale(substance.Dilution.Lower!.Value);
        return diluted.Lower is null ? new Interval(0m, true, diluted.Upper, diluted.UpperIncluded) : diluted;
    }

    /// <summary>The axes that were left out and may keep an 'allowed' within limits.</summary>
    private static Axis[] LeftOut(Question question, Substance substance)
    {
        var axes = new List<Axis>();
        if (substance.Product is null && !substance.StrengthStated) axes.Add(Axis.Strength);
        if (question.Temperature is null) axes.Add(Axis.Temperature);
        if (question.Ph is null) axes.Add(Axis.Ph);
        return axes.ToArray();
    }

    /// <summary>A part as it is asked about, with the scenes that were needed so far.</summary>
    private sealed class Part(IReadOnlyList<PartVariant> variants)
    {
        public IReadOnlyList<PartVariant> Variants { get; } = variants;

        public ConcurrentDictionary<SceneKey, Scene> Scenes { get; } = new();
    }

    /// <summary>What a scene is made for: questions that agree in it share it.</summary>
    /// <param name="Agent">The agent.</param>
    /// <param name="Name">The component's name.</param>
    /// <param name="Unknown">Whether no class covers the component.</param>
    /// <param name="OnlyForbids">Whether only a live 'not allowed' counts.</param>
    /// <param name="Product">The product, where rules speak of it or it is not fully declared.</param>
    /// <param name="LeavesNothing">Whether the whole liquid leaves nothing.</param>
    /// <param name="WithoutEnd">Whether an exposure time without end is asked.</param>
    private readonly record struct SceneKey(int Agent, string? Name, bool Unknown, bool OnlyForbids, ProductId? Product, bool LeavesNothing, bool WithoutEnd);
}

/// <summary>Finds the worst verdict of one scene over a box of cells, without allocating. Cut only along what was looked at.</summary>
internal struct WorstVerdict(Scene scene, Axis[] leftOut) : ICutVisitor<Run, bool>
{
    private const int MostBoxes = 1_000;

    private int _boxes;

    /// <summary>The worst verdict so far; null where too many boxes would have to be looked at.</summary>
    public Verdict? Found { get; private set; } = Verdict.Allowed;

    public Next Look(in Box<Run> box, bool known, out bool inside, out Box<Run> crossing)
    {
        (inside, crossing) = (known, default);
        if (++_boxes > MostBoxes)
        {
            Found = null;
            return Next.Stop;
        }

        var at = new InBox(scene, box);
        for (var i = 0; i < scene.Variants.Count; i++)
        {
            var to = new Plainly(scene, leftOut);
            var verdict = PointDecision.Of(scene, scene.Variants[i], ref at, ref to);
            if (at.Crossing >= 0)
            {
                crossing = scene.Candidates[at.Crossing].Cells;
                return Next.Halve;
            }

            if (verdict == Verdict.Allowed && to.IsWithinLimits) verdict = Verdict.AllowedWithinLimits;
            if (verdict < Found) Found = verdict;
            if (verdict == Verdict.NotAllowed) return Next.Stop;
        }

        return Next.Done;
    }

    /// <summary>Where candidates apply in all of a box, or in none; what applies in a part of it is kept.</summary>
    private struct InBox(Scene scene, Box<Run> box) : IApplying
    {
        private readonly Box<Run> _box = box;

        /// <summary>A candidate that applies in a part only, or -1.</summary>
        public int Crossing { get; private set; } = -1;

        public bool Applies(int candidate)
        {
            var cells = scene.Candidates[candidate];
            if (!cells.Cells.Meets(_box)) return false;
            if (_box.LiesIn(cells.Cells)) return true;
            Crossing = candidate;
            return false;
        }
    }

    /// <summary>Hears only whether what permits keeps the verdict within limits.</summary>
    private struct Plainly(Scene scene, Axis[] leftOut) : IDecisionListener
    {
        public bool IsWithinLimits { get; private set; }

        public readonly bool ListensToAll => false;

        public readonly void Forbids(int candidate)
        {
        }

        public void Permits(int candidate) => IsWithinLimits |= Limits.Keeps(scene.Candidates[candidate].Rule, leftOut);

        public readonly void Accompanies(int candidate)
        {
        }

        public void IsAllowed(bool byPart, bool wellFounded) => IsWithinLimits |= !wellFounded;

        public readonly void Because(ReasonCode code, string argument)
        {
        }
    }
}
