using Compat.Curation.Diagnostics;
using Compat.Curation.Reading;
using Compat.Curation.Schemas;
using Compat.Curation.Yaml;

namespace Compat.Curation;

/// <summary>Reads site files.</summary>
public static class SiteFile
{
    /// <summary>Reads a site file, without checking references and meaning.</summary>
    /// <param name="path">The file; it is shown by this name.</param>
    /// <param name="data">The data it is laid over: it says in which basis the strength of each agent is written.</param>
    public static SiteReadResult Read(string path, KnowledgeData data) => Read(GivenFile.Read(path), data);

    /// <summary>Reads a site file that was read already.</summary>
    internal static SiteReadResult Read(GivenFile file, KnowledgeData data) => Read(file.Bytes, file.Path, data, file.Faults.ToList());

    /// <summary>Reads a site from bytes already in memory.</summary>
    /// <param name="bytes">The bytes of the file.</param>
    /// <param name="shownAs">The name it is shown by.</param>
    /// <param name="data">The data it is laid over.</param>
    public static SiteReadResult Read(byte[] bytes, string shownAs, KnowledgeData data) => Read(bytes, shownAs, data, []);

    /// <summary>Reads site files, checks them over a knowledge base, and lays them over it, one after the other.</summary>
    /// <param name="kb">The knowledge base.</param>
    /// <param name="paths">The files; they are shown by these names.</param>
    public static ReadResult LayOver(KnowledgeBase kb, params IReadOnlyList<string> paths) => LayOver(kb, GivenFile.Read(paths));

    /// <summary>Checks site files that were read already, and lays them over a knowledge base.</summary>
    internal static ReadResult LayOver(KnowledgeBase kb, IReadOnlyList<GivenFile> files) =>
        KnowledgeLoader.LayOver(new() { Data = kb.Data, Sites = kb.Sites, Diagnostics = [], Places = new PlaceBuilder().Build(), KnowledgeBase = kb }, files);

    private static SiteReadResult Read(byte[]? bytes, string shownAs, KnowledgeData data, List<Diagnostic> faults)
    {
        var places = new PlaceBuilder();
        Site? site = null;
        if (DataFile.Read(FileKind.Site, bytes, shownAs, faults) is { } file)
        {
            var bases = new AgentBases();
            foreach (var agent in data.Agents) bases.Add(agent);
            if (file.Root is YamlMapping root)
                site = new SiteReader(new RecordReader(new BoxReader(bases), ofSite: true), places).Read(root, file.Faults);
            file.Finish(faults);
            IdHelp.Offer(faults, data);
        }

        faults.Sort();
        return new() { Site = site, Diagnostics = faults, Places = places.Build(), HasGaps = site is null || places.Gaps.Count > 0 };
    }
}
