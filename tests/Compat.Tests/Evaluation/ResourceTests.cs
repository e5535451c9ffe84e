using System.Diagnostics;
using Compat.Deciding;
using Compat.Tests.RandomCases;
using Xunit.Abstractions;

namespace Compat.Tests.Evaluation;

/// <summary>A site that is made to be hard is answered by no more boxes than it takes, or refused by name; it never hangs. Times are printed, not
/// judged.</summary>
public sealed class ResourceTests(ITestOutputHelper output)
{
    private static readonly Source Paper = new() { Id = new("hard-paper"), Kind = SourceKind.Paper, Title = "invented", Trust = Trust.NamedPublication };

    [Theory]
    [InlineData(20)]
    [InlineData(500)]
    [InlineData(900)]
    public void Ask_ProhibitionsInStairs_OneBoxAStair(int stairs)
    {
        var answer = Timed($"{stairs} stairs", () => Stairs(stairs).Ask(OnStairs));
        Assert.Equal(stairs + 1, answer.BoxCount);
    }

    [Fact]
    public void Ask_MoreStairsThanCanBeListed_IsRefusedByName() =>
        Timed("4000 stairs", () => Assert.Throws<TooManyBoxesException>(() => Stairs(4000).Ask(OnStairs)));

    [Fact]
    public void Prepare_ProhibitionsInStairs_SaysTheSame()
    {
        var kb = Stairs(500);
        var asked = OnStairs with { ExposureTime = Interval.Exactly(200), Uses = 300 };
        Assert.Equal(Timed("500 stairs, asked at a point", () => kb.Ask(asked).Verdict), Timed("500 stairs, prepared", () => kb.VerdictOf(kb.Prepare(asked))));
    }

    [Theory]
    [InlineData(10)]
    [InlineData(60)]
    public void Editions_WhoseSerialNumbersOverlap_GiveOneSetAnInterval(int editions)
    {
        var device = WithEditions(editions);
        var sets = Timed($"{editions} editions", () => Editions.Possible(device, null));
        Assert.InRange(sets.Count, editions, (2 * editions) + 1);
        var kb = KnowledgeBase.Shipped.With(new Site { Id = new("hard"), Name = "hard", Sources = [Paper], Devices = [device] });
        Timed($"{editions} editions, asked", () => kb.Ask(new Question { Device = device.Id, DevicePart = device.Parts[0].Id, Agent = new("isopropanol") }));
    }

    [Fact]
    public void With_MoreSetsOfEditionsThanCanBeJudged_IsRefusedByName()
    {
        var site = new Site { Id = new("hard"), Name = "hard", Sources = [Paper], Devices = [WithEditions(300)] };
        Timed("300 editions", () => Assert.Contains(KnowledgeBase.Shipped.TryWith(site, out _), problem => problem.Code == "too-many-editions"));
    }

    [Fact]
    public void Leaves_ThatAreNotCutFurther_SayTheSame() => RandomRun.ForAll(Shape.Region, c =>
    {
        var kb = new CompiledBase(c.Data, c.Sites);
        var substance = SubstanceResolver.Resolve(kb, c.Question);
        var all = Box<Run>.Of(MethodSet.All, axis => kb.Grid[axis].All);
        foreach (var component in substance.Components)
        {
            var scene = new Scene(kb, PartResolver.Variants(kb, c.Question), substance, component, exposureTimeWithoutEnd: false);
            foreach (var method in substance.Methods.ToArray())
            {
                var (fine, larger) = (new Leaves(scene).Of(method, all), new Leaves(scene, mostLooks: 0).Of(method, all));
                Assert.Equal(fine.Sum(Cells), larger.Sum(Cells));
                Assert.All(larger, leaf =>
                    Assert.All(fine.Where(other => leaf.Cells.Meets(other.Cells)), other => Assert.Equal(other.Decision.Verdict, leaf.Decision.Verdict)));
            }
        }
    }, share: 4);

    private static Question OnStairs => new()
    {
        Materials = [new MaterialSlot(new MaterialId("polyetherimide"))],
        Agent = new("isopropanol"),
        Strength = new Strength(Interval.Exactly(70), StrengthUnit.PercentOf(StrengthBasis.VolumePerVolume)),
        Method = ApplicationMethod.DampWipe,
        Temperature = Interval.Exactly(20),
        Ph = Interval.Exactly(7),
    };

    private static KnowledgeBase Stairs(int count)
    {
        var allows = new Rule
        {
            Id = new("hard.allowed"),
            Target = RuleTarget.On(new MaterialId("polyetherimide")),
            Agent = new("isopropanol"),
            Allows = true,
            KnownBy = KnownBy.Published,
            Why = "invented",
            Sources = [Paper.Id],
            Reviewed = new CalendarDate(2026, 1, 1),
            When = new ExposureBox
            {
                Strength = AxisLimit.Any,
                ExposureTime = AxisLimit.Any,
                Temperature = AxisLimit.Any,
                Ph = AxisLimit.Any,
                Uses = AxisLimit.Any,
                Methods = MethodLimit.Any
            },
        };
        var stairs = Enumerable.Range(0, count).Select(i => allows with
        {
            Id = new($"hard.stair-{i}"),
            Allows = false,
            KnownBy = null,
            Damage = new() { Mechanism = Mechanism.Crazing, Onset = Onset.Cumulative, Lasting = true, Consequence = Consequence.Looks },
            When = new ExposureBox { ExposureTime = AxisLimit.Within(Interval.Above(60 + i)), Uses = AxisLimit.Within(Interval.Above(10 + count - i)) },
        });
        return KnowledgeBase.Shipped.With(new Site { Id = new("hard"), Name = "hard", Sources = [Paper], Rules = [allows, .. stairs] });
    }

    private static Device WithEditions(int count) => new()
    {
        Id = new("hard-device"),
        Name = "hard",
        Parts = [new DevicePart { Id = new("keys"), OneOfTypes = [new("keypad-membrane")] }],
        Instructions = [.. Enumerable.Range(0, count).Select(i => new InstructionsEdition
        {
            Id = new($"edition-{i}"), Dated = new CalendarDate(2026, 1, 1), Serials = [new SerialRange("AB", 100 + i, 100 + count + i)], Source = Paper.Id,
        })],
    };

    private static long Cells(Leaf leaf) => Enum.GetValues<Axis>().Aggregate(1L, (all, axis) => all * leaf.Cells[axis].Length);

    private T Timed<T>(string what, Func<T> work)
    {
        var (watch, before) = (Stopwatch.StartNew(), GC.GetAllocatedBytesForCurrentThread());
        var result = work();
        output.WriteLine($"{what}: {watch.ElapsedMilliseconds} ms, {(GC.GetAllocatedBytesForCurrentThread() - before) >> 20} MB allocated");
        return result;
    }

    private void Timed(string what, Action work) => Timed(what, () =>
    {
        work();
        return 0;
    });
}
