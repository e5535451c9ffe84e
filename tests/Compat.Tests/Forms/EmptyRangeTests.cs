using Compat.Deciding;
using Compat.Tests.Evaluation;
using Compat.Tests.RandomCases;
using Compat.Tests.Reference;
using Compat.Tests.Validation;

namespace Compat.Tests.Forms;

/// <summary>A range that holds no value of its axis is refused wherever one can be written; and were it not, it would permit nothing.</summary>
public sealed class EmptyRangeTests
{
    private static readonly Interval[] Empty = [default, Interval.Closed(2m, 1m), new(1m, true, 1m, false)];

    /// <summary>The values of an axis by the name of the members that range over it.</summary>
    private static readonly Dictionary<string, Interval> Axes = new()
    {
        ["Strength"] = Interval.Closed(0m, 100m),
        ["Measured"] = Interval.Closed(0m, 100m),
        ["Stock"] = Interval.Closed(0m, 100m),
        ["Wanted"] = Interval.Closed(0m, 100m),
        ["Minimum"] = Interval.Closed(0m, 100m),
        ["Dilution"] = new(0m, false, 1m, true),
        ["Temperature"] = Interval.Closed(-40m, 200m),
        ["Ph"] = Interval.Closed(-1m, 15m),
        ["Value"] = Interval.Closed(-1m, 15m),
        ["ExposureTime"] = Interval.Above(0m),
        ["ContactTime"] = Interval.Above(0m),
        ["Time"] = Interval.Above(0m),
        ["Uses"] = Interval.AtLeast(1m),
        ["Hardness"] = Interval.Closed(0m, 10_000m),
    };

    /// <summary>What can be asked or laid over as it is: a question that states everything at once cannot be asked at all.</summary>
    public static TheoryData<string> Roots => [.. RecordGraph.Roots.Keys.Where(root => root is not ("question" or "plan"))];

    [Theory]
    [MemberData(nameof(Roots))]
    public void Range_WithoutAValueOfItsAxis_IsRefused(string root)
    {
        var (original, check) = RecordGraph.Roots[root];
        Assert.Empty(check(original));
        var whole = RecordGraph.Copy(original);
        var failures = new List<string>();
        var spoilt = 0;
        foreach (var member in RecordGraph.MembersOf(whole).ToArray())
        {
            if (Made(member) is not { } make || !Axes.TryGetValue(member.Property.Name, out var axis)) continue;
            var before = member.Get();
            foreach (var range in Empty.Concat(Beside(axis)))
            {
                member.Set(make(range));
                spoilt++;
                if (check(whole).Count == 0) failures.Add($"{member.Path} = {range}");
                member.Set(before);
            }
        }

        Assert.True(spoilt > 0);
        Assert.True(failures.Count == 0, $"{failures.Count} go unseen:\n" + string.Join("\n", failures));
    }

    [Theory]
    [InlineData("> 100 % w/w")]
    [InlineData("> 1000000 ppm w/w")]
    [InlineData("> 100 % v/v")]
    [InlineData("< 0 % v/v")]
    public void Message_SaysWhatWasReadAndWhatTheAxisIs(string written)
    {
        var number = decimal.Parse(written.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        var strength =
            new Strength(written[0] == '>' ? Interval.Above(number) : Interval.Below(number), EyeWorkshop.Unit(written[(written.IndexOf(' ', 2) + 1)..]));
        var problem = Assert.Single(EyeWorkshop.Base.TryWith(Shelf(strength), out _));
        Assert.Equal(("outside-axis", "ingredients.0.strength"), (problem.Code, problem.Place.Field));
        Assert.Contains("holds no value of the axis of strength (%)", problem.Message, StringComparison.Ordinal);
        Assert.Equal("expected 0..100", problem.Help);
    }

    [Fact]
    public void Nothing_PermitsNothing_InTheEngineTheReferenceAndTheWindow() => RandomRun.ForAll(Shape.Region, c =>
    {
        var random = new Random(c.Seed);
        if (Emptied(c, random) is not { } changed) return;
        var kb = new CompiledBase(changed.Data, changed.Sites, c.Build().InstructionRules);
        var engine = new RegionAnswer(kb, changed.Question, []).Make();
        Assert.True(engine.Verdict == Verdict.NotEstablished && !engine.MayUse, $"{engine.Verdict} of nothing with\n{changed}");
        Assert.Equal(Answers.ReasonCode.NoValue, engine.Decisive.Code);
        Assert.Equal(engine.Verdict, new ReferenceEvaluator(changed.Data, changed.Sites, changed.Question).Region());
        Assert.False(new QuestionPreparer(kb).Prepare(changed.Question).IsLookedUp);

        var need = new Need { Level = Level.Low, TouchedBy = TouchedBy.Hand };
        var ground = new WindowGround(kb, changed.Question, need, measured: true);
        Assert.False(new WindowMaker(kb, changed.Question, ground).Make([]).IsOpen);
    }, share: 4);

    [Fact]
    public void Component_WithoutAPiece_IsNotEstablished()
    {
        var product = EyeWorkshop.Mixture("wipe", StrengthOf.Liquid, ("soap", 1m, 2m), ("alcohol", 1m, 2m));
        var nothing = product with
        {
            Ingredients = [product.Ingredients[0], product.Ingredients[1] with { Strength = new Strength(Interval.Above(100m), EyeWorkshop.Unit("% v/v")) }],
        };
        var question = new Question
        {
            Part = new("window"),
            Product = new("wipe"),
            Method = ApplicationMethod.DampWipe,
            ExposureTime = Interval.Exactly(30m),
            Temperature = Interval.Exactly(20m),
            Ph = Interval.Exactly(7m),
            Uses = 1
        };
        Assert.True(Of(product) >= Verdict.AllowedWithinLimits);
        Assert.Equal(Verdict.NotEstablished, Of(nothing));
        Assert.Equal(Verdict.NotEstablished, Of(product with { Ingredients = [] }));

        Verdict Of(Product one) =>
            new RegionAnswer(new CompiledBase(EyeWorkshop.Data, [new Site { Id = new("s"), Name = "s", Products = [one] }]), question, []).Make().Verdict;
    }

    [Fact]
    public void KillAndPeople_OfNothing_AreNotAllowed()
    {
        var site = WholeSite.With(WholeSite.Stock with { Dilution = Interval.Above(1m) }) with { Levels = [] };
        var kb = new CompiledBase(EveryKind.Data, [site]);
        var question = new Question { Device = new("viewer"), DevicePart = new("pane"), Product = new("stock"), TouchedBy = TouchedBy.Hand };
        var region = new RegionAnswer(kb, question, []);
        var part = region.Make();
        var whole = new WholeJudgement(kb, question, [], region.Asked!).Of(part);
        Assert.Equal(Verdict.NotEstablished, part.Verdict);
        Assert.InRange(whole.Verdict, Verdict.NotAllowed, Verdict.NotEstablished);
        Assert.InRange(whole.Kill!.Verdict, Verdict.NotAllowed, Verdict.NotEstablished);
        Assert.InRange(whole.People!.Verdict, Verdict.NotAllowed, Verdict.NotEstablished);
        Assert.False(whole.Window!.IsOpen);
    }

    private static Site Shelf(Strength strength) => new()
    {
        Id = new("shelf"),
        Name = "shelf",
        Products = [EyeWorkshop.Mixture("wipe", StrengthOf.Liquid, ("soap", 1m, 2m)) with
        {
            Ingredients = [new() { Agent = new("soap"), Strength = strength }],
        }],
    };

    /// <summary>Ranges that only touch an axis from outside, and such as lie far from it.</summary>
    private static IEnumerable<Interval> Beside(Interval axis)
    {
        if (axis.Lower is { } least)
        {
            yield return Interval.Below(least);
            yield return Interval.AtMost(least - 1m);
            if (!axis.LowerIncluded) yield return Interval.AtMost(least);
        }

        if (axis.Upper is { } most)
        {
            yield return Interval.Above(most);
            yield return Interval.AtLeast(most + 1m);
        }
    }

    /// <summary>Makes of a range what a member holds; null where it holds no range.</summary>
    private static Func<Interval, object>? Made(RecordMember member)
    {
        var type = Nullable.GetUnderlyingType(member.Property.PropertyType) ?? member.Property.PropertyType;
        if (type == typeof(AxisLimit)) return range => AxisLimit.Within(range);
        if (type == typeof(Strength)) return range => new Strength(range, member.Get() is Strength strength ? strength.Unit : EyeWorkshop.Unit("% v/v"));
        return type == typeof(Interval) && member.Property.DeclaringType is { } of && of != typeof(AxisLimit) && of != typeof(Strength)
            && of != typeof(Convention) ? range => range : null;
    }

    /// <summary>The case with no value on one axis.</summary>
    private static Case? Emptied(Case c, Random random)
    {
        var q = c.Question;
        Interval None(Interval axis) => random.Next(3) == 0 ? Empty[random.Next(Empty.Length)] : Beside(axis).ToArray() is var beside
            ? beside[random.Next(beside.Length)] : default;
        switch (random.Next(5))
        {
            case 0: return c with { Question = q with { ExposureTime = None(Axes["ExposureTime"]) } };
            case 1: return c with { Question = q with { Temperature = None(Axes["Temperature"]) } };
            case 2: return c with { Question = q with { Ph = None(Axes["Ph"]) } };
            case 3 when q.Product is not null: return c with { Question = q with { Dilution = None(Axes["Dilution"]) } };
            default:
                if (c.Site?.Products.FirstOrDefault(p => p.Id == q.Product) is not { } product) return null;
                var at = product.Ingredients.ToList()
                    .FindIndex(
                        i => i.Agent is { } agent && new ReferenceTrees(c.Data, []).Basis(agent) is StrengthBasis.VolumePerVolume or StrengthBasis.MassPerMass);
                if (at < 0) return null;
                var basis = new ReferenceTrees(c.Data, []).Basis(product.Ingredients[at].Agent!)!.Value;
                var strength = new Strength(None(Axes["Strength"]), StrengthUnit.PercentOf(basis));
                var nothing = product with
                {
                    StrengthOf = product.StrengthOf == StrengthOf.WholeWipe ? StrengthOf.Liquid : product.StrengthOf,
                    LiquidShare = null,
                    Ingredients = [.. product.Ingredients.Select((one, i) => i == at ? one with { Strength = strength } : one)],
                };
                return c with { Site = c.Site with { Products = [.. c.Site.Products.Select(p => p != product ? p : nothing)] } };
        }
    }
}
