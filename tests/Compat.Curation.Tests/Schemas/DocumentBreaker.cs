using Newtonsoft.Json.Linq;

namespace Compat.Curation.Tests.Schemas;

/// <summary>Makes near misses of a document: each differs from it in one place.</summary>
internal static class DocumentBreaker
{
    public static IEnumerable<JToken> Break(JToken document)
    {
        foreach (var token in document.SelectTokens("$..*").Prepend(document).ToList())
        {
            foreach (var change in Changes(token))
            {
                var copy = document.DeepClone();
                var target = token == document ? copy : copy.SelectToken(token.Path)!;
                var changed = change(target);
                if (changed is null) yield return copy;
                else if (target.Parent is null) yield return changed;
                else
                {
                    target.Replace(changed);
                    yield return copy;
                }
            }
        }
    }

    /// <summary>Each change alters the token in place and returns null, or returns what takes its place.</summary>
    private static IEnumerable<Func<JToken, JToken?>> Changes(JToken token)
    {
        yield return _ => new JValue(7.25m);
        yield return _ => new JValue("a");
        yield return _ => new JValue("");
        yield return _ => new JArray();
        yield return _ => new JObject();
        yield return _ => new JValue(token.Type != JTokenType.Boolean || !token.Value<bool>());
        switch (token)
        {
            case JObject map:
                yield return target => Do(() => ((JObject)target)["zzz"] = 1);
                yield return target => Do(() => ((JObject)target)["one-of"] = new JArray("x", "y"));
                foreach (var key in map.Properties().Select(property => property.Name).ToList())
                    yield return target => Do(() => ((JObject)target).Remove(key));
                foreach (
                    var key in new[] { "part", "material", "device", "device-part", "agent", "product", "seen-with", "whole-class", "within", "look-for",
                    "keep-wet", "clean-first", "never-allowed", "always-with", "unknown", "edition", "composition-dated", "inspect", "wettest-from",
                    "lists-nothing" })
                    if (map[key] is null) yield return target => Do(() => ((JObject)target)[key] = Sample(key));
                break;
            case JArray list:
                if (list.Count > 0) yield return target => Do(() => ((JArray)target).Add(((JArray)target)[0].DeepClone()));
                if (list.Count > 1) yield return target => Do(() => ((JArray)target).RemoveAt(1));
                break;
            case JValue { Type: JTokenType.String } text:
                yield return _ => new JValue(text.Value<string>() + "  #");
                yield return _ => new JValue(new string('a', 5000));
                break;
            case JValue { Type: JTokenType.Integer or JTokenType.Float }:
                yield return _ => new JValue(0);
                yield return _ => new JValue(-1);
                yield return _ => new JValue(1_000_000);
                break;
        }
    }

    private static JToken Sample(string key) => key switch
    {
        "whole-class" or "keep-wet" or "clean-first" or "never-allowed" or "lists-nothing" => true,
        "seen-with" => new JArray("x"),
        "within" => "2 min",
        "composition-dated" => "2026-01-01",
        "inspect" => "after 5 uses",
        "always-with" => "dry",
        _ => "x",
    };

    private static JToken? Do(Action change)
    {
        change();
        return null;
    }
}
