using System.Text;

namespace Compat.Space;

/// <summary>The words a file or a command uses for the members of an enumeration: the member's name in kebab-case.</summary>
public static class Words
{
    /// <summary>The word for a member, for example <c>damp-wipe</c> for <see cref="ApplicationMethod.DampWipe"/>.</summary>
    public static string Of<TEnum>(TEnum member) where TEnum : struct, Enum => InKebabCase(member.ToString());

    internal static string InKebabCase(string name)
    {
        var text = new StringBuilder(name.Length + 4);
        for (var i = 0; i < name.Length; i++)
        {
            if (char.IsUpper(name[i]) && i > 0) text.Append('-');
            text.Append(char.ToLowerInvariant(name[i]));
        }

        return text.ToString();
    }

    /// <summary>All words of an enumeration, in the order of its members.</summary>
    public static IReadOnlyList<string> All<TEnum>() where TEnum : struct, Enum =>
        Enum.GetNames(typeof(TEnum)).Select(InKebabCase).ToArray();

    /// <summary>Finds the member for a word, matched exactly.</summary>
    /// <returns>Whether there is one.</returns>
    public static bool TryParse<TEnum>(string? word, out TEnum member) where TEnum : struct, Enum
    {
        var name = NameOf(typeof(TEnum), word);
        member = name is null ? default : (TEnum)Enum.Parse(typeof(TEnum), name);
        return name is not null;
    }

    private static string? NameOf(Type enumeration, string? word)
    {
        foreach (var name in Enum.GetNames(enumeration))
            if (InKebabCase(name) == word) return name;
        return null;
    }
}
