using System.Collections;
using Compat.Planning;
using Compat.Snapshots;
using Compat.Tests.Evaluation;
using Compat.Tests.Forms;
using Compat.Tests.Validation;

namespace Compat.Tests.Sharing;

/// <summary>What a caller does to its own lists afterwards changes no answer, and no hash comes to stand for other content.</summary>
public sealed class CallersListTests
{
    [Fact]
    public void ListOfARecord_ChangedAfterwards_StaysAsItWas()
    {
        var lists = 0;
        foreach (
            var kind in RecordGraph.Kinds(
                typeof(KnowledgeData), typeof(Site), typeof(Question), typeof(PlanQuestion), typeof(BathQuestion), typeof(DilutionQuestion)))
        {
            foreach (var property in RecordGraph.Settable(kind).Where(property => property.PropertyType.IsGenericType
                && property.PropertyType.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) && property.SetMethod is not null))
            {
                var mine = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(property.PropertyType.GetGenericArguments()))!;
                var record = System.Runtime.CompilerServices.RuntimeHelpers.GetUninitializedObject(kind);
                mine.Add(NothingOf(mine));
                property.SetValue(record, mine);
                mine.Add(NothingOf(mine));
                Assert.True(((IEnumerable)property.GetValue(record)!).Cast<object?>().Count() == 1, $"{kind.Name}.{property.Name} is the caller's own list");
                lists++;
            }
        }

        Assert.True(lists > 80);
    }

    [Fact]
    public void EveryList_ChangedBetweenLayingOverAndAsking_ChangesNoAnswer()
    {
        var owned = new List<IList>();
        var kb = EyeWorkshop.Build(RecordGraph.Copy(EveryKind.Data, owned)).With(RecordGraph.Copy(WholeSite.Site, owned));
        Change(owned);
        Assert.Equal(Answers(RecordGraph.With), Answers(kb));
        Assert.Equal(RecordGraph.With.Identity, kb.Identity);
        Assert.Equal(kb.Identity[0].Hash, Snapshot.HashOf(SnapshotWriter.Body(kb.Data)));
        Assert.Equal(kb.Identity[1].Hash, Snapshot.HashOf(SnapshotWriter.Body(kb.Sites[0])));
    }

    [Fact]
    public void EveryList_ChangedAfterAsking_ChangesNoAnswer()
    {
        var owned = new List<IList>();
        var kb = EyeWorkshop.Build(RecordGraph.Copy(EveryKind.Data, owned)).With(RecordGraph.Copy(WholeSite.Site, owned));
        var before = Answers(kb);
        Change(owned);
        Assert.Equal(before, Answers(kb));
    }

    [Fact]
    public void ListOfAQuestion_ChangedAfterwards_ChangesNeitherItsAnswerNorItsPreparedForm()
    {
        var owned = new List<IList>();
        var question = RecordGraph.Copy(
            new Question { Part = new("window"), Agent = new("alcohol"), Strength = EyeWorkshop.Percent(70m), Acts = [Act.HeatDrying] }, owned);
        var (answer, prepared) = (RecordGraph.With.Ask(question), RecordGraph.With.Prepare(question));
        Assert.Equal(Verdict.NotAllowed, answer.Verdict);
        Change(owned);
        Assert.Equal(Verdict.NotAllowed, RecordGraph.With.Ask(question).Verdict);
        Assert.Equal(Verdict.NotAllowed, RecordGraph.With.VerdictOf(prepared));
        Assert.Equal([Act.HeatDrying], answer.Question.Acts);
    }

    [Fact]
    public void QuestionsOfTheSameLists_AreEqual() =>
        Assert.Equal(RecordGraph.Copy(RecordGraph.Question), RecordGraph.Copy(RecordGraph.Question));

    /// <summary>Empties every list, and puts another item in.</summary>
    private static void Change(List<IList> owned)
    {
        Assert.True(owned.Count > 0);
        foreach (var list in owned)
        {
            if (list.IsFixedSize)
            {
                for (var i = 0; i < list.Count; i++) list[i] = null;
                continue;
            }

            list.Clear();
            list.Add(NothingOf(list));
        }
    }

    private static object? NothingOf(IList list) => list.GetType().GetGenericArguments()[0] is { IsValueType: true } value ? Activator.CreateInstance(value)
        : null;

    private static string[] Answers(KnowledgeBase kb) =>
    [
        .. from part in EveryKind.Data.Parts
           from agent in EveryKind.Data.Agents
           let answer = kb.Ask(new Question { Part = part.Id, Agent = agent.Id })
           select $"{part.Id} {agent.Id} {answer.Verdict} {answer.Decisive.Code} {string.Join(",", answer.DecidedBy.Select(rule => rule.Id))} "
               + $"{string.Join(",", answer.Duties.Select(duty => duty.Kind + ":" + duty.Ways.Count))}",
        .. from part in WholeSite.Device.Parts
           from agent in EveryKind.Data.Agents
           let answer = kb.Ask(new Question { Device = WholeSite.Device.Id, DevicePart = part.Id, Agent = agent.Id, TouchedBy = TouchedBy.Hand })
           select $"{part.Id} {agent.Id} {answer.Verdict} {answer.Kill?.Verdict} {answer.People?.Verdict} "
               + $"{string.Join(",", answer.People?.Rules.Select(rule => rule.Id) ?? [])}",
        .. from product in WholeSite.Site.Products
           let answer = kb.Ask(new Question { Device = WholeSite.Device.Id, DevicePart = WholeSite.Pane.Id, Product = product.Id, TouchedBy = TouchedBy.Hand })
           select $"{product.Id} {answer.Verdict} {answer.Kill?.Verdict} {answer.BoxCount} {kb.TryFindProduct(product.Id.Value, out _, out _)}",
    ];
}
