using Compat.Cli.Wording;

namespace Compat.Cli.Text;

/// <summary>Writes a decision map for people: the cells by verdict, the worst first.</summary>
public sealed class MapText(Page page, Names names)
{
    /// <summary>The map, whole.</summary>
    public void Write(DecisionMap map, Question question)
    {
        var unit = names.Unit(map.Agent);
        var on = SubjectWording.Of(map.Part is { } part ? names.Part(part) : null, question, names);
        page.Line($"Map of {names.Agent(map.Agent.Value)} on {on}: {map.Cells.Count} boxes");
        foreach (var group in map.Cells.GroupBy(cell => cell.Verdict))
        {
            page.Heading(VerdictWording.Heading(group.Key));
            foreach (var reason in group.GroupBy(cell => ReasonWording.Of(cell.Reason, question, names)))
            {
                page.Line(reason.Key, 2);
                foreach (var cell in reason)
                {
                    var rules = cell.DecidedBy.Count == 0 ? "" : " [" + string.Join(", ", cell.DecidedBy) + "]";
                    page.Line("- " + ExposureWording.Of(cell, unit) + rules, 4, 6);
                }
            }
        }

        page.Heading("Data");
        foreach (var identity in map.Identity) page.Item(EvidenceWording.Of(identity));
    }
}
