using System.Text;
using Compat.Curation.Reading;
using Compat.Curation.Writing;

namespace Compat.Curation;

/// <summary>
/// Writes records as the YAML that <see cref="DataFolder"/> and <see cref="SiteFile"/> read: to show a case so that it can be pasted into files.
/// </summary>
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
        var yaml = new KnowledgeYaml(Bases(data));
        var files = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["version.yaml"] = Modeline + "../schemas/version.schema.json\nversion: " + RecordText.Quoted(data.Version) + "\n",
        };
        Add("sources/sources.yaml", "sources", data.Sources, KnowledgeYaml.Source);
        Add("materials/materials.yaml", "materials", data.Materials, KnowledgeYaml.Material);
        Add("parts/parts.yaml", "parts", data.Parts, KnowledgeYaml.Part);
        Add("agents/agents.yaml", "agents", data.Agents, yaml.Agent);
        Add("rules/rules.yaml", "rules", data.Rules, yaml.Rule);
        Add("conventions.yaml", "conventions", data.Conventions, KnowledgeYaml.Convention);
        Add("standing.yaml", "standing", data.StandingRules, yaml.Standing);
        Add("organisms/organisms.yaml", "organisms", data.Organisms, KnowledgeYaml.Organism);
        Add("levels.yaml", "levels", data.Levels, KnowledgeYaml.Level);
        Add("test-standards.yaml", "test-standards", data.TestStandards, KnowledgeYaml.TestStandard);
        Add("needs.yaml", "needs", data.Needs, KnowledgeYaml.Need);
        Add("efficacy/efficacy.yaml", "efficacy", data.Claims, yaml.Claim);
        Add("mixing/mixing.yaml", "mixing", data.MixingHazards, yaml.Mixing);
        Add("mixing/harmless.yaml", "mixing", data.HarmlessMeetings, KnowledgeYaml.Harmless);
        Add("persons/persons.yaml", "persons", data.PersonRules, yaml.PersonRule);
        Add("protection/protection.yaml", "protection", data.Protections, yaml.Protection);
        Add("instruction-words.yaml", "instruction-words", data.InstructionWords, yaml.InstructionWord);
        Add("occasions.yaml", "occasions", data.Occasions, KnowledgeYaml.Occasion);
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
        var yaml = new KnowledgeYaml(bases);
        var records = new SiteYaml(bases);
        var text = new StringBuilder();
        text.Append(Modeline).Append("../../schemas/site.schema.json\n");
        text.Append("site: ").Append(RecordText.Inline([("id", site.Id.Value), ("name", RecordText.Quoted(site.Name))])).Append('\n');
        Add("sources", site.Sources, KnowledgeYaml.Source);
        text.Append(SiteYaml.Here(site.Here));
        Add("levels", site.Levels, SiteYaml.LevelDecision);
        Add("products", site.Products, records.Product);
        Add("devices", site.Devices, records.Device);
        Add("rules", site.Rules, yaml.Rule);
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
