using System.Runtime.CompilerServices;

namespace Compat.Snapshots;

/// <content>The sections: each a number, its length in bytes and its records, left out where it has none.</content>
internal sealed partial class SnapshotWriter
{
    private void Sections(KnowledgeData data)
    {
        Section(SectionTag.Materials, data.Materials, x => x.Id, Write);
        Section(SectionTag.Parts, data.Parts, x => x.Id, Write);
        Section(SectionTag.Agents, data.Agents, x => x.Id, Write);
        Section(SectionTag.Sources, data.Sources, x => x.Id, Write);
        Section(SectionTag.Rules, data.Rules, x => x.Id, Write, () => Cuts(data));
        Section(SectionTag.Conventions, data.Conventions, x => x.Key, Write);
        Section(SectionTag.StandingRules, data.StandingRules, x => x.Id, Write);
        Section(SectionTag.Organisms, data.Organisms, x => x.Id, Write);
        Section(SectionTag.Levels, data.Levels, x => x.Level, Write);
        Section(SectionTag.Needs, data.Needs, x => x.Id, Write);
        Section(SectionTag.Claims, data.Claims, x => x.Id, Write);
        Section(SectionTag.MixingHazards, data.MixingHazards, x => x.Id, Write);
        Section(SectionTag.PersonRules, data.PersonRules, x => x.Id, Write);
        Section(SectionTag.Protections, data.Protections, x => x.Id, Write);
        Section(SectionTag.InstructionWords, data.InstructionWords, x => x.Id, Write);
        Section(SectionTag.Occasions, data.Occasions, x => x.Id, Write);
        Section(SectionTag.HarmlessMeetings, data.HarmlessMeetings, x => x.Id, Write);
        Section(SectionTag.TestStandards, data.TestStandards, x => x.Code, Write);
    }

    /// <summary>The boundaries of all rules, axis by axis: with them a reader numbers the cells of an axis before it reads a rule.</summary>
    private void Cuts(KnowledgeData data)
    {
        var agentsOnly = new CompiledBase(data with { Materials = [], Parts = [], Rules = [] }, []);
        var boxes = data.Rules.Select(rule => RuleCompiler.BoxOf(rule, agentsOnly)).ToArray();
        for (var axis = Axis.Strength; axis <= Axis.Uses; axis++)
        {
            List(new CutTable([], boxes.Select(box => box[axis])).Cuts, cut =>
            {
                Figure(cut.Numerator);
                Flag(cut.After);
            });
        }
    }

    private void Section<T,
        TKey>(SectionTag tag, IReadOnlyList<T> records, Func<T, TKey> key, Action<T> write, Action? before = null,
        [CallerArgumentExpression(nameof(records))] string what = "")
        where T : class
    {
        var array = Sorted(records, key, what);
        if (array.Length == 0) return;
        var body = Taken(() =>
        {
            if (_faults is null) before?.Invoke();
            Pieces(array.Select(record => Taken(() => write(record))).ToArray());
        });
        Number((int)tag);
        Number(body.Length);
        _bytes.AddRange(body);
    }

    private void Records<T, TKey>(IReadOnlyList<T> records, Func<T, TKey> key, Action<T> write, [CallerArgumentExpression(nameof(records))] string what = "")
        where T : class =>
        List(Sorted(records, key, what), write, what);

    /// <summary>Records in the order of their keys, so that the order of files changes nothing.</summary>
    private T[] Sorted<T, TKey>(IReadOnlyList<T> records, Func<T, TKey> key, [CallerArgumentExpression(nameof(records))] string what = "") where T : class
    {
        if (_faults is not null && (records is null || records.Contains(null!))) Missing(what);
        return records is null ? [] : [.. records.Where(record => record is not null).OrderBy(key)];
    }

    /// <summary>What something writes, taken off again.</summary>
    private byte[] Taken(Action write)
    {
        var start = _bytes.Count;
        write();
        var taken = _bytes.GetRange(start, _bytes.Count - start).ToArray();
        _bytes.RemoveRange(start, taken.Length);
        return taken;
    }

    /// <summary>A published claim has no dilution, and no place for one: validation refuses it.</summary>
    private void WriteClaimBox(ClaimBox box)
    {
        if (_faults is not null) Limit(box.Dilution);
        Limit(box.Strength);
        Limit(box.ContactTime);
        Limit(box.Temperature);
        Limit(box.Ph);
        Methods(box.Methods);
    }
}
