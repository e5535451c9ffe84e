using System.Text;
using Compat.Curation.Reading;
using Compat.Curation.Writing;

namespace Compat.Tests.RandomCases;

/// <summary>Writes records as the YAML that the readers of files take: to show a case so that it can be pasted into files.</summary>
internal static class KnowledgeText
{
    private const string Modeline = "# yaml-language-server: $schema=";

    /// <summary>All records in one text, each file under a comment with its path.</summary>
    public static string Write(KnowledgeData data)
    {
        var text = new StringBuilder();
        foreach (var (path, content) in WriteFiles(data)) text.Append("# ").Append(path).Append('\n').Append(content).Append('\n');
        return text.ToString();
    }

    /// <summary>The files of a data folder by their path in it; a kind without records has no file.</summary>
    public static IReadOnlyDictionary<string, string> WriteFiles(KnowledgeData data)
    {
        var yaml = new RecordWriter(Bases(data));
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["version.yaml"] = Modeline + "../schemas/version.schema.json\nversion: " + RecordText.Quoted(data.Version) + "\n",
        };
        Add("sources/sources.yaml", "sources", data.Sources, (to, one) => yaml.WriteSource(to, one));
        Add("materials/materials.yaml", "materials", data.Materials, (to, one) => yaml.WriteMaterial(to, one));
        Add("parts/parts.yaml", "parts", data.Parts, (to, one) => yaml.WritePartType(to, one));
        Add("agents/agents.yaml", "agents", data.Agents, (to, one) => yaml.WriteAgentClass(to, one));
        Add("rules/rules.yaml", "rules", data.Rules, (to, one) => yaml.WriteRule(to, one));
        Add("conventions.yaml", "conventions", data.Conventions, (to, one) => RecordWriter.WriteConvention(to, one));
        Add("standing.yaml", "standing", data.StandingRules, (to, one) => yaml.WriteStandingRule(to, one));
        Add("organisms/organisms.yaml", "organisms", data.Organisms, (to, one) => yaml.WriteOrganism(to, one));
        Add("levels.yaml", "levels", data.Levels, (to, one) => yaml.WriteLevelMeaning(to, one));
        Add("test-standards.yaml", "test-standards", data.TestStandards, (to, one) => yaml.WriteTestStandard(to, one));
        Add("needs.yaml", "needs", data.Needs, (to, one) => yaml.WriteNeedRule(to, one));
        Add("efficacy/efficacy.yaml", "efficacy", data.Claims, (to, one) => yaml.WriteClaim(to, one));
        Add("mixing/mixing.yaml", "mixing", data.MixingHazards, (to, one) => yaml.WriteMixingHazard(to, one));
        Add("mixing/harmless.yaml", "mixing", data.HarmlessMeetings, (to, one) => yaml.WriteHarmlessMeeting(to, one));
        Add("persons/persons.yaml", "persons", data.PersonRules, (to, one) => yaml.WritePersonRule(to, one));
        Add("protection/protection.yaml", "protection", data.Protections, (to, one) => yaml.WriteProtection(to, one));
        Add("instruction-words.yaml", "instruction-words", data.InstructionWords, (to, one) => yaml.WriteInstructionWord(to, one));
        Add("occasions.yaml", "occasions", data.Occasions, (to, one) => yaml.WriteOccasion(to, one));
        return files;

        void Add<TRecord>(string path, string kind, IReadOnlyList<TRecord> records, Action<RecordText, TRecord> write)
        {
            if (records.Count == 0) return;
            var up = path.Contains('/', StringComparison.Ordinal) ? "../../" : "../";
            files[path] = $"{Modeline}{up}schemas/{kind}.schema.json\n" + string.Concat(records.Select(one => RecordText.Item(0, text => write(text, one))));
        }
    }

    /// <summary>A site file.</summary>
    /// <param name="site">The site.</param>
    /// <param name="data">The data it is laid over: it says in which basis the strength of each agent is written.</param>
    public static string Write(Site site, KnowledgeData data)
    {
        var bases = Bases(data);
        var yaml = new RecordWriter(bases);
        var text = new StringBuilder();
        text.Append(Modeline).Append("../../schemas/site.schema.json\n");
        text.Append("site: ").Append(RecordText.Inline([("id", site.Id.Value), ("name", RecordText.Quoted(site.Name))])).Append('\n');
        Add("sources", site.Sources, (to, one) => yaml.WriteSource(to, one));
        if (RecordText.Braced(to => yaml.WriteSiteConditions(to, site.Here)) is { } here) text.Append("here: ").Append(here).Append('\n');
        Add("levels", site.Levels, (to, one) => yaml.WriteLevelDecision(to, one));
        Add("products", site.Products, (to, one) => yaml.WriteProduct(to, one));
        Add("devices", site.Devices, (to, one) => yaml.WriteDevice(to, one));
        Add("rules", site.Rules, (to, one) => yaml.WriteRule(to, one));
        return text.ToString();

        void Add<TRecord>(string key, IReadOnlyList<TRecord> records, Action<RecordText, TRecord> write)
        {
            if (records.Count == 0) return;
            text.Append(key).Append(":\n").Append(string.Concat(records.Select(one => RecordText.Item(1, to => write(to, one)))));
        }
    }

    private static AgentBases Bases(KnowledgeData data)
    {
        var bases = new AgentBases();
        foreach (var agent in data.Agents) bases.Add(agent);
        return bases;
    }
}
