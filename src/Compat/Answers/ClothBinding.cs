namespace Compat.Answers;

/// <summary>Reads off the records whether a cloth binds what is wiped with it: clause K18.</summary>
internal static class ClothBinding
{
    /// <summary>Whether a cloth is on record as binding the product or one of its agents, or what these belong to.</summary>
    public static bool Binds(CompiledBase kb, Substance substance, string cloth) =>
        (substance.Product?.BoundByCloths.Any(bound => Names(bound, cloth)) ?? false)
        || substance.Components.Any(c => !c.Unknown && kb.Agents.Upward(c.Agent).Any(node => kb.Data.Agents[node].BoundBy.Any(bound => Names(bound, cloth))));

    private static bool Names(string bound, string cloth) => WordsIn(bound).Intersect(WordsIn(cloth), StringComparer.OrdinalIgnoreCase).Any();

    private static string[] WordsIn(string text) => text.Split([' ', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
}
