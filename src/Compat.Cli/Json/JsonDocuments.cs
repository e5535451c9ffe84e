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
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            content(json);
        output.Write(System.Text.Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length));
        output.Write('\n');
    }
}
