using FsCheck;
using FsCheck.Fluent;
using Microsoft.FSharp.Core;

namespace Compat.Tests.RandomCases;

/// <summary>Runs a property over random cases, as many as <see cref="RandomSize"/> says.</summary>
internal static class RandomRun
{
    /// <summary>Cases of a shape, small enough to read once they have shrunk.</summary>
    public static Arbitrary<Case> Cases(Shape shape) =>
        Arb.From(Gen.Choose(0, int.MaxValue - 1).Select(seed => Valid(seed, shape)), CaseShrinker.Shrink);

    /// <summary>Holds the property against every case; it fails by throwing. A share of the count where the property is slow.</summary>
    public static void ForAll(Shape shape, Action<Case> holds, int share = 1)
    {
        var config = Config.QuickThrowOnFailure.WithMaxTest(RandomSize.Cases(share)).WithQuietOnSuccess(true)
            .WithReplay(FSharpOption<Replay>.Some(new Replay(new Rnd(RandomSize.Seed()), FSharpOption<int>.None)));
        Check.One(config, Prop.ForAll(Cases(shape), holds));
    }

    /// <summary>The first valid case from a seed on: validation may refuse one, and a question on too many boxes is none.</summary>
    private static Case Valid(int seed, Shape shape)
    {
        for (var at = seed; ; at = (at + 1) & int.MaxValue)
        {
            var made = CaseMaker.Make(at, shape);
            if (made.Build(out _) is not null) return made;
        }
    }
}
