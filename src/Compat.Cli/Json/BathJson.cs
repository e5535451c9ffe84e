using System.Text.Json;

namespace Compat.Cli.Json;

/// <summary>Writes whether a bath or tub is still good, as <c>schemas/bath.schema.json</c> describes.</summary>
internal sealed class BathJson(Utf8JsonWriter json)
{
    /// <summary>The whole answer.</summary>
    public void Write(BathAnswer answer)
    {
        var question = answer.Question;
        json.WriteStartObject();
        json.WriteString("verdict", Words.Of(answer.Verdict));
        Text("product", question.Product?.Value);
        Text("claim", question.Claim?.Value);
        json.WriteString("today", question.Today.ToString());
        Text("activated", question.Activated?.ToString());
        Text("diluted", question.Diluted?.ToString());
        Text("opened", question.Opened?.ToString());
        Text("expires", question.Expires?.ToString());
        json.WriteBoolean("refilled", question.Refilled);
        json.WriteBoolean("tub", question.Tub);
        Text("measured", question.Measured?.ToString());
        json.WriteList("reasons", answer.Reasons, reason =>
        {
            json.WriteStartObject();
            json.WriteString("code", Words.Of(reason.Code));
            json.WriteStringList("arguments", reason.Arguments);
            json.WriteString("text", BathWording.Of(reason));
            json.WriteEndObject();
        });
        Text("lastDay", answer.LastDay?.ToString());
        Text("agent", answer.Agent?.Value);
        Text("least", answer.Least?.ToString());
        Text("test", answer.Test);
        json.WriteStringList("sources", answer.Sources.Select(source => source.Value));
        json.WriteStringList("cautions", VerdictWording.Cautions);
        json.WriteIdentity(answer.Identity);
        json.WriteEndObject();
    }

    private void Text(string name, string? value)
    {
        if (value is not null) json.WriteString(name, value);
    }
}
