using Compat.Validation;

namespace Compat.Cli.Text;

/// <summary>Keeps text of a file from moving or hiding what stands on a screen.</summary>
/// <remarks>The no-break space of the wordings is kept: <see cref="Page"/> writes it as a plain one.</remarks>
internal static class Printable
{
    /// <summary>The text with what cannot be shown replaced.</summary>
    public static string Of(string text) => string.Join('\u00a0', text.Split('\u00a0').Select(HiddenText.Shown));
}
