using System.Globalization;

namespace Compat.Tests.RandomCases;

/// <summary>Writes a case as YAML that can be pasted into files.</summary>
internal static class CaseText
{
    public static string Write(Case c) => string.Create(CultureInfo.InvariantCulture,
        $"\n# seed {c.Seed}\n# question: {QuestionText.Of(c.Question)}\n"
            + $"{KnowledgeText.Write(c.Data)}{(c.Site is null ? "" : KnowledgeText.Write(c.Site, c.Data))}");
}
