namespace Compat.Curation.Reviewing;

/// <summary>Compares records that hold for people and for the whole base. What is not proved to ask at least as much as before counts as loosened.</summary>
internal static class RecordReview
{
    public static IEnumerable<FactChange> Of(HarmlessMeeting? before, HarmlessMeeting? after)
    {
        if (after is not null) yield return new(ChangeKind.Loosened, $"`{after.Id}`: it is on record that nothing harmful happens where `{after.Agent}` meets `{With(after)}`");
        else yield return new(ChangeKind.Tightened, $"`{before!.Id}`: it is no longer on record that nothing harmful happens where `{before.Agent}` meets `{With(before)}`");
    }

    public static IEnumerable<FactChange> Of(StandingRule? before, StandingRule? after)
    {
        if (before is null) yield return new(ChangeKind.Tightened, $"`{after!.Id}` stands now");
        else if (after is null) yield return new(ChangeKind.Loosened, $"`{before.Id}` no longer stands: {before.Reason}");
        else if (RecordDifference.Fields(before, after).All(field => RecordSet.For(Validation.RecordKind.StandingRule).IsWording(field) || field.StartsWith("when.", StringComparison.Ordinal)) && BoxSpans.Holds(after.When, before.When))
            yield return new(ChangeKind.Tightened, $"`{after.Id}` stands for more exposures");
        else yield return new(ChangeKind.Loosened, $"`{after.Id}` stands otherwise: it may demand less");
    }

    public static IEnumerable<FactChange> Of(InstructionWord? before, InstructionWord? after)
    {
        var loosened = before is null ? after!.Permits is not null : before.Forbids is not null || before.ListsNothing || !RecordDifference.AreSame(before.Permits, after?.Permits) || !RecordDifference.AreSame(before.Act, after?.Act);
        yield return new(loosened ? ChangeKind.Loosened : ChangeKind.Tightened, $"the words of `{(after ?? before)!.Id}` are read otherwise");
    }

    public static IEnumerable<FactChange> Of(Occasion? before, Occasion? after)
    {
        yield return before is null ? new(ChangeKind.Tightened, $"the occasion `{after!.Id}` is on record")
            : new(ChangeKind.Loosened, $"the occasion `{before.Id}` {(after is null ? "is gone" : "asks something else")}");
    }

    public static IEnumerable<FactChange> Of(LevelMeaning? before, LevelMeaning? after)
    {
        var more = (after?.Includes ?? []).Except(before?.Includes ?? []).ToArray();
        var less = (before?.Includes ?? []).Except(after?.Includes ?? []).ToArray();
        var level = Words.Of((after ?? before)!.Level);
        if (more.Length > 0) yield return new(ChangeKind.EfficacyLoosened, $"{level} includes {string.Join(", ", more.Select(Words.Of))}: what reaches it is taken to kill these too");
        if (less.Length > 0) yield return new(ChangeKind.Loosened, $"{level} no longer includes {string.Join(", ", less.Select(Words.Of))}: what needs it no longer needs these killed");
    }

    public static IEnumerable<FactChange> Of(TestStandard? before, TestStandard? after)
    {
        var reach = Reach(after).Except(Reach(before)).ToArray();
        var lost = Reach(before).Except(Reach(after)).ToArray();
        var code = (after ?? before)!.Code;
        if (reach.Length > 0) yield return new(ChangeKind.EfficacyLoosened, $"the test `{code}` shows more on devices: {string.Join(", ", reach)}");
        if (lost.Length > 0) yield return new(ChangeKind.Tightened, $"the test `{code}` shows less on devices: {string.Join(", ", lost)}");

        static string[] Reach(TestStandard? test) => test is null ? [] :
            [.. from method in Enum.GetValues<ApplicationMethod>() where test.SpeaksOf(method) from target in test.Shows select $"{target} by {Words.Of(method)}{(test.Step == TestStep.Practical ? ", on what is disinfected" : "")}"];
    }

    public static IEnumerable<FactChange> Of(Organism before, Organism after)
    {
        if (before.OwnClaim && !after.OwnClaim) yield return new(ChangeKind.EfficacyLoosened, $"a claim for its group suffices for `{after.Id}`");
        if (!before.OwnClaim && after.OwnClaim) yield return new(ChangeKind.Tightened, $"`{after.Id}` needs a claim of its own");
        if (before.Group != after.Group) yield return new(ChangeKind.EfficacyLoosened, $"`{after.Id}` is one of {Words.Of(after.Group)}, before of {Words.Of(before.Group)}");
    }

    private static string With(HarmlessMeeting one) => one.WithAgent?.Value ?? one.WithMaterial?.Value ?? Words.Of(one.WithSoil!.Value);
}
