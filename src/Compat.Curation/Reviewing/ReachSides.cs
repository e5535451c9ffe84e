using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Both knowledge bases for asking what reaches an agent or a part there, and the edits that may have changed it.</summary>
internal sealed class ReachSides
{
    private readonly Dictionary<(RecordKind Kind, string Id), RecordEdit> _edits;

    public ReachSides(CompiledBase before, CompiledBase after, EditList edits)
    {
        (Before, After, All) = (before, after, edits.All);
        _edits = edits.All.Where(edit => !edit.IsWording).ToDictionary(edit => (edit.Kind, edit.Id));
        Agents = Both(before.Agents, after.Agents, after.Data.Agents.Select(one => one.Id.Value));
        Parts = Both(before.Parts, after.Parts, after.Data.Parts.Select(one => one.Id.Value));
        Materials = Both(before.Materials, after.Materials, after.Data.Materials.Select(one => one.Id.Value));
    }

    public CompiledBase Before { get; }

    public CompiledBase After { get; }

    public IReadOnlyList<RecordEdit> All { get; }

    /// <summary>The agents that both sides have.</summary>
    public IReadOnlyList<string> Agents { get; }

    /// <summary>The part types that both sides have.</summary>
    public IReadOnlyList<string> Parts { get; }

    /// <summary>The materials that both sides have.</summary>
    public IReadOnlyList<string> Materials { get; }

    public CompiledBase Of(bool isBefore) => isBefore ? Before : After;

    /// <summary>Whether a record of one of some kinds says something else, is new or gone.</summary>
    public bool AnyEdited(params RecordKind[] kinds) => _edits.Keys.Any(key => kinds.Contains(key.Kind));

    /// <summary>Whether a record says something else, is new or gone.</summary>
    public bool IsEdited(RecordKind kind, string id) => _edits.ContainsKey((kind, id));

    /// <summary>The edit of a record that is more than wording; null where there is none.</summary>
    public RecordEdit? EditOf(RecordKind kind, string id) => _edits.GetValueOrDefault((kind, id));

    /// <summary>The ids of something and all above it.</summary>
    public static IEnumerable<string> Line<T>(Tree tree, IReadOnlyList<T> records, string id, Func<T, Id> idOf) =>
        tree.TryFind(id, out var node) ? tree.Upward(node).Select(at => idOf(records[at]).Value) : [];

    public IEnumerable<string> LineOfAgent(bool isBefore, string id) => Line(Of(isBefore).Agents, Of(isBefore).Data.Agents, id, one => one.Id);

    public IEnumerable<string> LineOfPart(bool isBefore, string id) => Line(Of(isBefore).Parts, Of(isBefore).Data.Parts, id, one => one.Id);

    public IEnumerable<string> LineOfMaterial(bool isBefore, string id) => Line(Of(isBefore).Materials, Of(isBefore).Data.Materials, id, one => one.Id);

    /// <summary>The edits that moved something, or something above it, on either side; all of these records where none moved.</summary>
    public IEnumerable<RecordEdit> EditsAbove(RecordKind kind, string id)
    {
        Func<bool, string, IEnumerable<string>> line = kind switch { RecordKind.Agent => LineOfAgent, RecordKind.Part => LineOfPart, _ => LineOfMaterial };
        return line(true, id).Concat(line(false, id)).Distinct().Select(one => EditOf(kind, one)).OfType<RecordEdit>();
    }

    /// <summary>Whether a place in a tree is another: what stands above it.</summary>
    public bool HasMovedAgent(string id) => !LineOfAgent(true, id).SequenceEqual(LineOfAgent(false, id));

    /// <summary>The units in which the strength of an agent is written on both sides.</summary>
    public UnitPair UnitsOf(string agent) => new(UnitOf(Before, agent), UnitOf(After, agent));

    /// <summary>What of some records is said of an agent on one side, by a test of the engine's; nothing where it has none.</summary>
    public T[] Saying<T>(bool isBefore, string agent, Func<CompiledBase, int, IEnumerable<T>> reach) =>
        Of(isBefore) is var kb && kb.Agents.TryFind(agent, out var node) ? reach(kb, node).ToArray() : [];

    /// <summary>Whether what is said of some part types is said of one, on one side; none stand for all.</summary>
    public bool IsFor(bool isBefore, IReadOnlyList<PartId> types, string? part) =>
        Reach.IsFor(Of(isBefore), types, part is not null && Of(isBefore).Parts.TryFind(part, out var node) ? node : -1);

    private static StrengthUnit? UnitOf(CompiledBase kb, string agent) => kb.Agents.TryFind(agent, out var node) ? kb.Agent(node).Basis : null;

    private static string[] Both(Tree before, Tree after, IEnumerable<string> ids) =>
        ids.Where(id => before.TryFind(id, out _) && after.TryFind(id, out _)).Order(StringComparer.Ordinal).ToArray();
}

/// <summary>
/// The unit of an agent's strength on both sides; null where it has none. Rules on a class without a unit are compared with rules on a member in that of the
/// member.
/// </summary>
internal readonly record struct UnitPair(StrengthUnit? Before, StrengthUnit? After)
{
    /// <summary>Whether strengths of both sides can be compared.</summary>
    public bool IsOne => Before?.Basis == After?.Basis;

    public StrengthUnit? Of(bool isBefore) => isBefore ? Before : After;
}
