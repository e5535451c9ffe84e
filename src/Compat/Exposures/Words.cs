using System.Text;

namespace Compat.Exposures;

/// <summary>The words a file or a command uses for the members of an enumeration: the member's name in kebab-case.</summary>
public static class Words
{
    /// <summary>The word for a member, for example <c>damp-wipe</c> for <see cref="ApplicationMethod.DampWipe"/>.</summary>
    public static string Of<TEnum>(TEnum member) where TEnum : struct, Enum
    {
        var name = member.ToString();
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
        ((TEnum[])Enum.GetValues(typeof(TEnum))).Select(Of).ToArray();

    /// <summary>Finds the member for a word, matched exactly.</summary>
    /// <returns>Whether there is one.</returns>
    public static bool TryParse<TEnum>(string? word, out TEnum member) where TEnum : struct, Enum
    {
        foreach (var candidate in (TEnum[])Enum.GetValues(typeof(TEnum)))
        {
            if (Of(candidate) != word) continue;
            member = candidate;
            return true;
        }

        member = default;
        return false;
    }
}
