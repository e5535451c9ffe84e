using System.CommandLine;
using Compat.Validation;

namespace Compat.Cli.Input;

/// <summary>Reads options of a call and notes everything that is wrong with them.</summary>
public sealed class OptionReader(ParseResult parsed, List<Problem> problems)
{
    /// <summary>The text of an option; null where it was not given once.</summary>
    public string? Text(Option<string?>? option) => option is null || parsed.GetResult(option) is not { Tokens.Count: 1 } ? null : parsed.GetValue(option);

    /// <summary>The texts of an option that may be repeated; empty where it was not given.</summary>
    public IReadOnlyList<string> Texts(Option<string[]>? option) => option is null ? [] : parsed.GetValue(option) ?? [];

    /// <summary>Whether an option was given.</summary>
    public bool Given(Option<string?>? option) => option is not null && parsed.GetResult(option) is not null;

    /// <summary>The member a word names; null where none was given, or where it is wrong, which is noted.</summary>
    public TEnum? Word<TEnum>(Option<string?>? option) where TEnum : struct, Enum
    {
        if (Text(option) is not { } text) return null;
        if (Words.TryParse<TEnum>(text, out var member)) return member;
        NoteWord<TEnum>(option!, text);
        return null;
    }

    /// <summary>The members that words name, without those that are wrong, which are noted.</summary>
    public TEnum[] WordsOf<TEnum>(Option<string[]>? option) where TEnum : struct, Enum
    {
        var members = new List<TEnum>();
        foreach (var text in Texts(option))
        {
            if (Words.TryParse<TEnum>(text, out var member)) members.Add(member);
            else NoteWord<TEnum>(option!, text);
        }

        return members.ToArray();
    }

    /// <summary>Notes a word that is no member, with the nearest ones.</summary>
    public void NoteWord<TEnum>(Option option, string text, params string[] further) where TEnum : struct, Enum
    {
        var known = Words.All<TEnum>().Concat(further).ToArray();
        Note(option, "unknown-word", $"`{text}` is not known here", NearestNames.Help(text, known) ?? $"the words are: {string.Join(", ", known)}");
    }

    /// <summary>Notes what is wrong with an option.</summary>
    public void Note(Option option, string code, string message, string? help) =>
        problems.Add(BadInput.Of(code, message, help, option.Name.TrimStart('-')));
}
