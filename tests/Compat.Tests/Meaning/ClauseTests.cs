using System.Globalization;
using System.Text.RegularExpressions;
using Compat.Planning;
using Compat.Tests.Reference;
using Compat.Tests.Shipped;

namespace Compat.Tests.Meaning;

/// <summary>Runs every example of every clause of src/Compat/Meaning, and holds the numbers of the clauses and what cites them together.</summary>
public sealed partial class ClauseTests
{
    private const string Families = "RPMGNKHWL";

    public static TheoryData<string> Numbers => [.. MeaningPages.Clauses.Select(clause => clause.Number).Distinct()];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Clause_ItsExamples_ComeOutAsItSays(string number)
    {
        var clause = MeaningPages.Clauses.First(one => one.Number == number);
        var (records, asked) = (new List<Block>(), 0);
        foreach (var block in clause.Blocks)
        {
            if (block.Info.StartsWith("yaml", StringComparison.Ordinal))
            {
                // Records after a question begin a new example.
                if (asked < 0) records.Clear();
                records.Add(block);
                asked = Math.Abs(asked);
            }
            else
            {
                Run(clause, block, Workshop.With(records));
                asked = -(Math.Abs(asked) + 1);
            }
        }

        Assert.True(asked != 0, $"{Place(clause)}: the clause has no example");
    }

    [Fact]
    public void Numbers_OfEachFamily_RunFromOneWithoutGap() => Assert.All(Families, family =>
    {
        var places = MeaningPages.Clauses.Where(clause => clause.Family == family.ToString()).Select(clause => clause.Place).ToArray();
        Assert.NotEmpty(places);
        Assert.Equal(Enumerable.Range(1, places.Length), places);
    });

    [Fact]
    public void Clauses_OfAnotherFamily_AreNone() => Assert.All(MeaningPages.Clauses, clause => Assert.Contains(clause.Family, Families));

    /// <summary>In the pages every number counts; in code and its texts what stands behind the word 'clause'.</summary>
    [Fact]
    public void Citations_OfAClause_FindIt()
    {
        var known = MeaningPages.Clauses.Select(clause => clause.Number).ToHashSet();
        var pages = MeaningPages.All.SelectMany(page => page.Value.SelectMany(line => Number().Matches(line)).Select(match => (page.Key, match.Value)));
        var code = new[] { "src", "tests" }.SelectMany(folder => Directory.EnumerateFiles(RepositoryFile.Of(folder), "*.cs", SearchOption.AllDirectories))
            .Where(path => !path.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(path => Citation().Matches(File.ReadAllText(path)).SelectMany(match => Number().Matches(match.Value))
                .Select(match => (Path.GetFileName(path), match.Value)));
        Assert.All(pages.Concat(code), cited => Assert.True(known.Contains(cited.Value), $"{cited.Item1} cites {cited.Value}, which is no clause"));
    }

    /// <summary>A term that a definition needs stands above it.</summary>
    [Fact]
    public void Glossary_ATerm_IsDefinedOnceAndBeforeItIsUsed()
    {
        var terms = MeaningPages.Glossary;
        Assert.True(terms.Count > 20);
        Assert.Equal(terms.Select(one => one.Term).Distinct(), terms.Select(one => one.Term));
        for (var at = 0; at < terms.Count; at++)
        {
            Assert.All(terms.Skip(at + 1), later => Assert.False(Regex.IsMatch(terms[at].Line, $@"\b{Regex.Escape(later.Term)}s?\b"),
                $"`{terms[at].Term}` uses `{later.Term}`, which is defined below it"));
        }
    }

    [Fact]
    public void Lines_OfThePages_AreNotLong() =>
        Assert.All(MeaningPages.All.SelectMany(page => page.Value), line => Assert.InRange(line.Length, 0, 160));

    private static void Run(Clause clause, Block block, Workshop workshop)
    {
        if (block.Info == "refused")
        {
            Assert.True(block.Lines.All(workshop.Refused.Contains), $"{Place(clause, block)}: expected {string.Join(", ", block.Lines)}\n{workshop.Faults}");
            return;
        }

        Assert.True(workshop.Base is not null, $"{Place(clause, block)}: the records are refused\n{workshop.Faults}");
        Assert.Contains(block.Info, (string[])["ask", "ask engine", "need", "window", "mix", "plan"]);
        Facts? facts = null;
        foreach (var line in block.Lines)
        {
            if (line.StartsWith("-> ", StringComparison.Ordinal)) Hold(line[3..], facts!, $"{Place(clause, block)}\n{line}");
            else facts = Answer(block.Info, line, workshop, Place(clause, block) + "\n" + line);
        }

        Assert.StartsWith("-> ", block.Lines[^1], StringComparison.Ordinal);
    }

    private static Facts Answer(string verb, string line, Workshop workshop, string place)
    {
        var options = new Options(line);
        var kb = workshop.Base!;
        switch (verb)
        {
            case "ask" or "ask engine":
                Assert.Empty(options.Words);
                if (!options.TryQuestion(out var question)) return Facts.Refused(["bad-figure"]);
                if (!kb.TryAsk(question, out var answer, out var wrong)) return Facts.Refused(wrong.Select(problem => problem.Code));
                if (verb == "ask") AskOthers(question, answer, workshop, place);
                return Facts.Of(answer);
            case "need":
                var need = kb.NeedOf(options.Question());
                HoldNeed(need, options.Question(), workshop, place);
                return Facts.Of(need);
            case "window":
                return Facts.Of(kb.WindowOf(options.Question()));
            case "mix":
                var (one, other) = (Partner(options, 0, kb), Partner(options, 1, kb));
                Assert.True(Mixture.TryJudge(kb, one, other, out var mixture, out var problems), string.Join("\n", problems));
                var expected = new MeetingReference(workshop.Data, workshop.Sites).Of(one, other);
                Assert.True(expected.Outcome == mixture.Outcome, $"{place}: the reference says {expected.Outcome}");
                return Facts.Of(mixture);
            default:
                Assert.True(kb.TryPlan(PlanQuestion(options), out var plan, out var faults), string.Join("\n", faults));
                return Facts.Of(plan!);
        }
    }

    /// <summary>The same question, asked of the reference evaluator and looked up as a prepared question.</summary>
    private static void AskOthers(Question question, Answer answer, Workshop workshop, string place)
    {
        Assert.True(workshop.Base!.TryPrepare(question, out var prepared, out _));
        Assert.True(answer.Verdict == workshop.Base.VerdictOf(prepared), $"{place}: prepared, it is {workshop.Base.VerdictOf(prepared)}");
        var part = new ReferenceEvaluator(workshop.Data, workshop.Sites, question).Region();
        Assert.True(part == answer.PartVerdict, $"{place}: of the part the reference says {part}, the engine {answer.PartVerdict}");
        if (!question.JudgesKillAndPeople || (question.Agent is not null && question.Ph is null)) return;
        if (question is not { Method: { } method, ExposureTime: { } time, Temperature: { } temperature, Uses: { } uses }) return;
        var at = new WholePoint(method, question.Dilution?.Lower ?? 1, time, temperature, question.Ph, uses, 1);
        var whole = new ReferenceWhole(workshop.Data, workshop.Sites, question).AtStatedPoint(at);
        Assert.True(whole == Plainly(answer.Verdict), $"{place}: of the whole the reference says {whole}, the engine {answer.Verdict}");
    }

    /// <summary>The reference asks of an agent always; a need is the same for all.</summary>
    private static void HoldNeed(Need need, Question question, Workshop workshop, string place)
    {
        var expected = new ReferenceWhole(workshop.Data, workshop.Sites, question with { Agent = AgentClass.Root }).Need;
        Assert.True(expected.Dry == need.KeptDry && (need.KeptDry || expected.Level == need.Level), $"{place}: the reference says {expected}");
        Assert.Equal(expected.Patients.Order(), need.Patients.Order());
    }

    private static Verdict Plainly(Verdict verdict) => verdict == Verdict.AllowedWithinLimits ? Verdict.Allowed : verdict;

    private static MixingPartner Partner(Options options, int place, KnowledgeBase kb)
    {
        var word = options.Words[place];
        if (Words.TryParse<SoilKind>(word, out var soil)) return MixingPartner.Of(soil);
        if (kb.Data.Materials.Any(material => material.Id.Value == word)) return MixingPartner.Of(new MaterialId(word));
        if (kb.Data.Agents.All(agent => agent.Id.Value != word)) return MixingPartner.Of(new ProductId(word));
        var strength = Options.Strength(options.Last(place == 0 ? "strength" : "other-strength"));
        return strength is { } at ? MixingPartner.Of(new AgentId(word), at) : MixingPartner.Of(new AgentId(word));
    }

    private static PlanQuestion PlanQuestion(Options options)
    {
        var question = options.Question();
        return new()
        {
            Device = question.Device!,
            Serial = question.Serial,
            Occasion = Options.Id(options.Last("occasion"), text => new OccasionId(text)),
            Level = question.Level,
            Against = question.Against,
            Soil = question.Soil,
            Occupied = question.Occupied,
            Cloth = question.Cloth,
            MaxProducts = options.Last("max-products") is { } most ? int.Parse(most, CultureInfo.InvariantCulture) : null,
            Accept = options.Word<Consequence>("accept") is { } consequence ? [consequence] : [],
        };
    }

    /// <summary>Holds what a line says against an answer: its head, what decides behind a colon, then `key: value`, parted by semicolons.</summary>
    private static void Hold(string line, Facts facts, string place)
    {
        var parts = line.Split("; ");
        var head = parts[0].Split(": ", 2);
        var rest = parts.AsEnumerable();
        if (facts[head[0]] is null)
        {
            Assert.True(head[0] == facts.Head, $"{place}: it is `{facts.Head}`, because of {string.Join(", ", facts.Deciding)}");
            foreach (var reason in head.Skip(1).SelectMany(all => all.Split(", ")))
                Assert.True(facts.Deciding.Contains(reason), $"{place}: not `{reason}` but {string.Join(", ", facts.Deciding)}");
            rest = rest.Skip(1);
        }

        foreach (var pair in rest.Select(part => part.Split(": ", 2)))
            Assert.True(facts[pair[0]] == pair[1], $"{place}: {pair[0]} is `{facts[pair[0]] ?? "nothing that can be said here"}`");
    }

    private static string Place(Clause clause, Block? block = null) =>
        $"{MeaningPages.Folder}/{clause.Page}:{(block?.Line ?? clause.Line - 1) + 1} ({clause.Number})";

    [GeneratedRegex(@"\b[RPMGNKHWL]\d{1,2}\b")]
    private static partial Regex Number();

    [GeneratedRegex(@"[Cc]lauses? [A-Z]\d+(?:(?:,| to| and|, and) [A-Z]\d+)*")]
    private static partial Regex Citation();
}
