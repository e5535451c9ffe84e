using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Compat.Cli.Json;

/// <summary>How every JSON output of the command is laid out.</summary>
internal static class JsonDocuments
{
    /// <summary>Writes one indented JSON document, ended by a line feed.</summary>
    public static void Write(TextWriter output, Action<Utf8JsonWriter> content)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(
            stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            content(json);
        output.Write(Escaped(Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length)) + "\n");
    }

    /// <summary>A document in which nothing hides and nothing is a command to the runner of a workflow; its values are the same.</summary>
    private static string Escaped(string json)
    {
        json = json.Replace("##[", "##\\u005B", StringComparison.Ordinal).Replace("##vso[", "##vso\\u005B", StringComparison.Ordinal);
        StringBuilder? escaped = null;
        for (int i = 0, length; i < json.Length; i += length)
        {
            if (!HiddenText.IsHidden(json, i, out length) || json[i] == '\n')
            {
                escaped?.Append(json, i, length);
                continue;
            }

            escaped ??= new StringBuilder(json, 0, i, json.Length + 100);
            for (var unit = i; unit < i + length; unit++) escaped.Append(CultureInfo.InvariantCulture, $"\\u{(int)json[unit]:X4}");
        }

        return escaped?.ToString() ?? json;
    }
}
