using Compat.Instructions;
using Compat.Tests.Evaluation;
using Compat.Tests.Validation;

namespace Compat.Tests.Instructions;

/// <summary>Words of instructions become rules of the device: a permission narrow, a prohibition wide, what nobody can read no permission.</summary>
public class PhraseRulesTests
{
    private static readonly InstructionWord[] Words =
    [
        Word("mild-soap", ["Mild soap"]) with
        {
            Permits = Reads("soap", new()
            {
                Strength = AxisLimit.Within(Interval.AtMost(2m)),
                Methods = MethodLimit.Within(ApplicationMethod.DampWipe, ApplicationMethod.WetWipe),
            }),
        },
        Word("spirit", ["spirit"]) with { Permits = Reads("alcohol", ExposureBox.Unbounded), Forbids = Reads("alcohol", ExposureBox.Unbounded) },
        Word("strong-only", ["no strong things"]) with { Forbids = Reads("alcohol", new() { Strength = AxisLimit.Within(Interval.AtLeast(50m)) }) },
        Word("wipe-and-let-dry", ["wipe and let dry"]) with
        {
            Act = new()
            {
                Methods = MethodSet.Of(ApplicationMethod.DampWipe),
                ExposureTime = AxisLimit.Any,
                Duties = [new() { Kind = DutyKind.WipeDry, Ways = [DutyWay.Air] }],
            },
        },
        Word("switch-off", ["switch off first"]) with { Act = new() { Duties = [new() { Kind = DutyKind.PowerOff }] } },
        Word("soak", ["soak"]) with { Act = new() { Methods = MethodSet.Of(ApplicationMethod.Immerse) } },
        Word("no-pools", ["do not pour"]) with
        {
            Forbids = Reads("any-agent", new() { Methods = MethodLimit.Within(ApplicationMethod.Spray) }),
            Act = new() { Duties = [new() { Kind = DutyKind.NoPooling }] },
        },
        Word("hospital-grade", ["hospital grade"]) with { ListsNothing = true },
    ];

    [Fact]
    public void A_permission_names_every_axis_and_leaves_unstated_what_the_words_leave_out()
    {
        var rule = Assert.Single(Base(new InstructionPhrase { Words = " MILD SOAP " }).InstructionRules);
        Assert.Equal("viewer.first.mild-soap.permits.soap", rule.Id.Value);
        Assert.True(rule is { Allows: true, WholeClass: false, KnownBy: KnownBy.Instructions });
        Assert.Equal(Interval.AtMost(2m), rule.When.Strength.Range);
        Assert.All(
            new[] { Axis.ExposureTime, Axis.Temperature, Axis.Ph, Axis.Uses }, axis => Assert.Equal(AxisStatement.Unstated, rule.When.On(axis).Statement));
        Assert.Contains("` MILD SOAP `", rule.Why, StringComparison.Ordinal);
        Assert.Contains("read narrow", rule.Why, StringComparison.Ordinal);
        Assert.Contains("because of mild-soap", rule.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_words_become_are_rules_that_a_site_could_have_written()
    {
        InstructionPhrase[] said =
        [
            new() { Words = "mild soap", How = ["wipe and let dry"], Parts = [new("pane")] }, new() { Words = "spirit" }, new()
            {
                Words = "spirit",
                Forbids = true,
                Parts = [new("pane")],
            },
            new() { Words = "switch off first" }, new() { Words = "do not pour" }, new() { Words = "no such words", Forbids = true },
        ];
        var kb = Base(said);
        Assert.Equal(5, kb.InstructionRules.Count);
        var scope = new Compat.Validation.Scope(kb.Data, kb.Sites);
        foreach (var rule in kb.InstructionRules) Compat.Validation.RuleValidation.Check(scope, rule, inSite: true);
        Assert.All(scope.Problems, problem => Assert.Equal("no-damage", problem.Code)); // the maker does not say which damage it fears
    }

    [Fact]
    public void A_class_that_the_words_name_is_meant_whole() =>
        Assert.True(Assert.Single(Base(new InstructionPhrase { Words = "spirit" }).InstructionRules).WholeClass);

    [Fact]
    public void Let_dry_is_an_exposure_time_without_limit_and_narrows_the_method()
    {
        var rule = Assert.Single(Base(new InstructionPhrase { Words = "mild soap", How = ["Wipe and let dry"] }).InstructionRules);
        Assert.Equal(AxisStatement.Any, rule.When.ExposureTime.Statement);
        Assert.Equal(MethodSet.Of(ApplicationMethod.DampWipe), rule.When.Methods.Methods);
        Assert.Equal(DutyKind.WipeDry, Assert.Single(rule.Duties).Kind);
    }

    [Fact]
    public void What_stands_by_itself_goes_with_every_permission_of_its_parts()
    {
        var kb = Base(
            new InstructionPhrase { Words = "mild soap" },
            new InstructionPhrase { Words = "switch off first", Parts = [new("socket")] });
        Assert.Equal(["viewer/pane", "viewer/socket"], kb.InstructionRules.Select(rule => rule.Target.ToString()));
        Assert.Equal([0, 1], kb.InstructionRules.Select(rule => rule.Duties.Count));
        Assert.Equal([ReadingOutcome.Permits, ReadingOutcome.SaysHow], kb.InstructionReadings.Select(reading => reading.Outcome));
    }

    [Fact]
    public void A_way_of_doing_that_contradicts_the_words_leaves_no_permission()
    {
        var kb = Base(new InstructionPhrase { Words = "mild soap", How = ["soak"] });
        Assert.Empty(kb.InstructionRules);
        Assert.Equal(ReadingOutcome.NoMethodLeft, kb.InstructionReadings[0].Outcome);
    }

    [Theory]
    [InlineData("wipe and let drip")]
    [InlineData("hospital grade")]
    public void A_way_of_doing_that_nobody_can_read_leaves_no_permission(string how)
    {
        var kb = Base(new InstructionPhrase { Words = "mild soap", How = [how] });
        Assert.Empty(kb.InstructionRules);
        Assert.Equal(ReadingOutcome.HowNotRead, kb.InstructionReadings[0].Outcome);
        Assert.Equal("mild soap", kb.InstructionReadings[1].HowOf);
    }

    [Fact]
    public void A_prohibition_is_wide_whatever_is_said_beside_it()
    {
        var rule = Assert.Single(Base(new InstructionPhrase { Words = "spirit", Forbids = true, How = ["wipe and let dry"] }).InstructionRules);
        Assert.Equal((false, "alcohol", ExposureBox.Unbounded), (rule.Allows, rule.Agent!.Value, rule.When));
    }

    [Fact]
    public void Words_that_only_forbid_forbid_unmarked_too_and_what_they_say_of_how_stays()
    {
        var kb = Base(new InstructionPhrase { Words = "mild soap" }, new InstructionPhrase { Words = "do not pour" });
        Assert.Equal([true, false], kb.InstructionRules.Select(rule => rule.Allows));
        Assert.Equal(DutyKind.NoPooling, Assert.Single(kb.InstructionRules[0].Duties).Kind);
    }

    [Fact]
    public void Words_without_a_reading_list_nothing_and_are_shown_with_the_nearest_phrase()
    {
        var kb = Base(new InstructionPhrase { Words = "hospital grade" }, new InstructionPhrase { Words = "milt soap" });
        Assert.Empty(kb.InstructionRules);
        Assert.Equal([ReadingOutcome.ListsNothing, ReadingOutcome.NotInTable], kb.InstructionReadings.Select(reading => reading.Outcome));
        Assert.Equal(["mild soap"], kb.InstructionReadings[1].Nearest);
    }

    [Theory]
    [InlineData("no such words")]
    [InlineData("hospital grade")]
    [InlineData("soak")]
    public void A_prohibition_that_nobody_can_read_forbids_everything(string words)
    {
        var kb = Base(new InstructionPhrase { Words = words, Forbids = true });
        Assert.Equal(AgentClass.Root, Assert.Single(kb.InstructionRules).Agent);
        Assert.Equal(ReadingOutcome.ForbidsUnread, kb.InstructionReadings[0].Outcome);
        Assert.Equal(Verdict.NotAllowed, kb.Ask(Ask("soap")).Verdict);
    }

    [Fact]
    public void Answers_rest_on_the_words()
    {
        var kb = Base(onlyListed: true, new InstructionPhrase { Words = "mild soap", How = ["wipe and let dry"] }, new InstructionPhrase
        {
            Words = "no strong things",
        });
        var soap = kb.Ask(Ask("soap") with { Strength = EyeWorkshop.Percent(1m, "% w/w"), ExposureTime = Interval.Exactly(30m), Ph = Interval.Exactly(7m) });
        Assert.Equal(Verdict.AllowedWithinLimits, soap.Verdict);
        Assert.Contains(soap.DecidedBy, rule => rule.Id.Value == "viewer.first.mild-soap.permits.soap");
        Assert.Equal(Verdict.NotAllowed, kb.Ask(Ask("soap") with { Strength = EyeWorkshop.Percent(5m, "% w/w") }).Verdict);
        var spirit = kb.Ask(Ask("ethanol") with { Strength = EyeWorkshop.Percent(70m) });
        Assert.Contains(spirit.DecidedBy, rule => rule.Id.Value == "viewer.first.strong-only.forbids.alcohol");
        Assert.Contains(kb.Ask(Ask("ethanol") with { Strength = EyeWorkshop.Percent(10m) }).Decisive.Code.ToString(), "NotListed", StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_words_twice_are_two_permissions_with_ids_of_their_own() =>
        Assert.Equal(
            ["viewer.first.mild-soap.permits.soap", "viewer.first.mild-soap.permits.soap.2"],
            Base(new InstructionPhrase { Words = "mild soap" },
                new InstructionPhrase { Words = "mild soap", How = ["wipe and let dry"] }).InstructionRules.Select(rule => rule.Id.Value));

    [Fact]
    public void A_rule_of_the_site_cannot_have_the_id_of_one_that_words_become()
    {
        var site = Site(false, new InstructionPhrase { Words = "mild soap" });
        var rule = EyeWorkshop.Allowed("viewer.first.mild-soap.permits.soap", RuleTarget.On(new PartId("window")), "soap", EyeWorkshop.Wipe(AxisLimit.Any));
        Assert.Equal("duplicate-id", Assert.Single(Data().TryWith(site with { Rules = [rule] }, out _)).Code);
    }

    [Fact]
    public void Ids_that_are_too_long_together_are_refused()
    {
        var site = Site(false, new InstructionPhrase { Words = "mild soap" });
        var device = site.Devices[0] with
        {
            Id = new(new string('a', 100)),
            Instructions = [site.Devices[0].Instructions[0] with { Id = new(new string('b', 100)) }],
        };
        Assert.Equal("id-too-long", Assert.Single(Data().TryWith(site with { Devices = [device] }, out _)).Code);
    }

    private static Question Ask(string agent) =>
        new() { Device = new("viewer"), DevicePart = new("pane"), Agent = new(agent), Method = ApplicationMethod.DampWipe, OnlyPart = true };

    private static KnowledgeBase Data() => EyeWorkshop.Build(EyeWorkshop.Data with { InstructionWords = Words });

    private static KnowledgeBase Base(params InstructionPhrase[] said) => Base(false, said);

    private static KnowledgeBase Base(bool onlyListed, params InstructionPhrase[] said) => Data().With(Site(onlyListed, said));

    private static Site Site(bool onlyListed, params InstructionPhrase[] said) => new()
    {
        Id = new("workshop"),
        Name = "workshop",
        Sources = WholeSite.Site.Sources,
        Devices =
        [
            new()
            {
                Id = new("viewer"),
                Name = "viewer",
                Parts = [new() { Id = new("pane"), OneOfTypes = [new("window")] }, new() { Id = new("socket"), OneOfTypes = [new("socket")] }],
                Instructions = [new() { Id = new("first"), Source = new("manual"), OnlyListed = onlyListed, Says = said }],
            },
        ],
    };

    private static WordReading Reads(string agent, ExposureBox when) => new() { Agents = [new(agent)], When = when };

    private static InstructionWord Word(string id, string[] phrases) =>
        new() { Id = new(id), Phrases = phrases, Reason = "Read so because of " + id + ".", Sources = [new("habit")] };
}
