namespace Compat.Tests.RandomCases;

/// <summary>Names a case by its seed and question; Compat.Tests writes it as YAML too.</summary>
internal static class CaseText
{
    public static string Write(Case c) => $"\n# seed {c.Seed}\n# question: {QuestionText.Of(c.Question)}";
}
