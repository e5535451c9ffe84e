namespace Compat.Cli.Wording;

/// <summary>Names tests that claims of labels rest on, and says how far they reach.</summary>
public static class TestWording
{
    /// <summary>What a claim rests on: its tests, each with what it shows, or its registration.</summary>
    public static string Of(KillClaim claim, Names names) =>
        claim.Registration is { } registration ? Of(registration) : string.Join(", ", claim.ShownBy.Select(test => $"{test.Code} ({Shows(test, names)})"));

    /// <summary>A registration.</summary>
    public static string Of(Registration registration) => $"registered: {registration.Authority} {registration.Number}, tests not known";

    /// <summary>What a test shows and how it was made, or why it shows nothing on a device.</summary>
    public static string Shows(TestStandard test, Names names) =>
        test.Field is TestField.Medical or TestField.AnySurface && test.On.Any(on => on is TestedOn.Surfaces or TestedOn.Instruments)
            ? $"{string.Join(", ", test.Shows.Select(names.Target))}; {How(test)}"
            : $"a test {For(test)}";

    /// <summary>What a test is for, as the end of a sentence.</summary>
    public static string For(TestStandard test) => test.Field switch
    {
        TestField.FoodAndHousehold => "for food, industrial, domestic and institutional areas",
        TestField.Veterinary => "for animals and where they are kept",
        TestField.WaterSystems => "for water in pipes, towers and pools",
        TestField.Development => "of products under development, which says nothing of a use",
        _ when test.On.All(on => on == TestedOn.Skin) => "on hands",
        TestField.Medical => "for the medical area",
        _ => "of hard surfaces",
    };

    private static string How(TestStandard test) => test.Step != TestStep.Practical ? "in suspension"
        : test.On.Contains(TestedOn.Surfaces) ? test.Wiping ? "on surfaces, wiped" : "on surfaces, without wiping"
        : "on instruments, immersed";
}
