// A web service around the library, and parallel clients that load it. Prints what came of it; the exit code is 0 where all is well.
using Compat;
using Compat.Space;
using Compat.Serialization;

const int Clients = 8;
const int Rounds = 25;
string[] parts = ["display-coated", "keypad-membrane", "housing-plastic"];
string[] agents = ["isopropanol", "ethanol", "sodium-hypochlorite", "hydrogen-peroxide"];

var builder = WebApplication.CreateSlimBuilder(args);
builder.Logging.ClearProviders();
var app = builder.Build();
app.MapGet("/ask", (string part, string agent) =>
    PartId.TryParse(part, out var partId) && AgentId.TryParse(agent, out var agentId)
    && KnowledgeBase.Shipped.TryAsk(new Question { Part = partId, Agent = agentId, Method = ApplicationMethod.DampWipe }, out var answer, out _)
        ? Results.Text(AnswerJson.Of(KnowledgeBase.Shipped, answer), "application/json") : Results.BadRequest());
app.Urls.Add("http://127.0.0.1:0");
await app.StartAsync();

using var client = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
var paths = parts.SelectMany(part => agents.Select(agent => $"/ask?part={part}&agent={agent}")).ToArray();
var alone = new Dictionary<string, string>();
foreach (var path in paths) alone[path] = await client.GetStringAsync(path);
var wrong = 0;
await Task.WhenAll(Enumerable.Range(0, Clients).Select(number => Task.Run(async () =>
{
    for (var i = 0; i < Rounds * paths.Length; i++)
    {
        var path = paths[(i + number) % paths.Length];
        if (await client.GetStringAsync(path) != alone[path]) Interlocked.Increment(ref wrong);
    }
})));
var unknown = await client.GetAsync("/ask?part=no-such-part&agent=isopropanol");
var first = alone[paths[0]];
await app.StopAsync();

var holds = first.Contains("\"verdict\":\"not-allowed\"", StringComparison.Ordinal) && first.Contains("\"code\":\"rule-forbids\"", StringComparison.Ordinal)
    && first.Contains(KnowledgeBase.Shipped.Identity[0].Hash, StringComparison.Ordinal);
Console.WriteLine($"{Clients} clients, {Clients * Rounds * paths.Length} answers, {wrong} differ from those of one client; an unknown part: "
    + $"{(int)unknown.StatusCode}; {first.Length} characters an answer");
return wrong == 0 && holds && (int)unknown.StatusCode == 400 ? 0 : 1;
