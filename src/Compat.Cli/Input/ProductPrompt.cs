using System.Text;
using Compat.Curation.Diagnostics;
using Compat.Curation.Editing;

namespace Compat.Cli.Input;

/// <summary>Asks for a product line by line, section by section as a safety data sheet has it. What is wrong is said at once and asked again; what a line
/// changes on the devices is said behind it.</summary>
internal sealed class ProductPrompt(TextReader input, Page page, KnowledgeBase kb, ProductEffects effects)
{
    private readonly AgentPrompt _agents = new(input, page, kb);
    private readonly KnowledgeData _data = kb.Data;
    private readonly Dictionary<string, List<string>> _written = new() { ["section-1"] = [], ["section-3"] = [], ["section-9"] = [], ["label"] = [] };
    private readonly List<string> _ingredients = [];
    private readonly List<string> _claims = [];

    /// <summary>The answers as <see cref="ProductAnswers"/> reads them; null where the input ended before they were whole.</summary>
    public string? Ask()
    {
        page.Line("Section 1, identification");
        if (!Needed("section-1", "id", "id, lower-case words joined by hyphens") || !Needed("section-1", "name", "name")) return null;
        page.Line("Section 3, composition");
        if (!Needed("section-3", "composition", $"how much of it is known: {string.Join(", ", Words.All<Composition>())}")) return null;
        Optional("section-3", "composition-dated", "date of that formulation");
        while (Ingredient()) { }
        page.Line("Section 9, properties");
        if (!Needed("section-9", "strength-of", $"what the strengths are a share of: {string.Join(", ", Words.All<StrengthOf>())}")) return null;
        if (_written["section-9"][0].Contains("whole-wipe", StringComparison.Ordinal)) Optional(
            "section-9", "liquid-share", "share of the wipe that is liquid, as 70 %");
        Optional("section-9", "ph", "pH as it is used, as 6..8", figure => $"[{{ value: {Quoted(figure)}, of: in-use }}]");
        Optional("section-9", "density", "density, as 1.02 kg/L");
        page.Line("Label");
        if (_written["section-9"][0].Contains("concentrate", StringComparison.Ordinal)) Optional("label", "dilution", "dilution in use, as 1..2 % v/v");
        Optional("label", "methods", $"methods it is made for: {string.Join(", ", Words.All<ApplicationMethod>())}", Listed);
        while (Claim()) { }
        return Text();
    }

    private bool Needed(string section, string key, string question)
    {
        while (Line(question) is { } answer)
        {
            if (answer.Length == 0 || !Takes(section, $"{key}: {Quoted(answer)}")) continue;
            if (_ingredients.Count > 0) Say($"{key} {answer}");
            return true;
        }

        return false;
    }

    private void Optional(string section, string key, string question, Func<string, string>? write = null)
    {
        while (Line(question + "; empty where not stated") is { Length: > 0 } answer)
        {
            if (!Takes(section, $"{key}: {(write ?? Quoted)(answer)}")) continue;
            if (_ingredients.Count > 0) Say($"{key} {answer}");
            return;
        }
    }

    /// <summary>One ingredient; false once there are no more.</summary>
    private bool Ingredient()
    {
        while (Line("ingredient: CAS number, agent or name, then its strength, as 67-63-0 30..60 % w/w; empty ends") is { Length: > 0 } answer)
        {
            var words = answer.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            var cut = Array.FindIndex(words, 1, word => char.IsAsciiDigit(word[0]) || word[0] is '<' or '>' or '=');
            var name = string.Join(' ', cut < 0 ? words : words[..cut]);
            var agent = RegistryNumbers.LooksLikeCas(name) ? null : _agents.Of(name);
            var key = RegistryNumbers.LooksLikeCas(name) ? "cas" : agent is null ? "unknown" : "agent";
            name = agent?.Id.Value ?? name;
            var strength = cut < 0 ? "" : $", strength: {Quoted(string.Join(' ', words[cut..]))}";
            if (!Takes(_ingredients, $"{{ {key}: {Quoted(name)}{strength} }}")) continue;
            Say($"{name}{(cut < 0 ? ", no figure" : " " + string.Join(' ', words[cut..]))}");
            return true;
        }

        return false;
    }

    private bool Claim()
    {
        while (Line($"level the label claims: {string.Join(", ", Words.All<Compat.Model.Level>())}; empty ends") is { Length: > 0 } level)
        {
            var wet = Line("contact time it takes, as 1 min") ?? "";
            var methods = Line("by which methods, as damp-wipe wet-wipe") ?? "";
            var temperature = Line("at which temperatures, as 15..30 °C") ?? "";
            var shown = Tests() ?? "";
            var registered = shown.Length > 0 ? "" : Line("its registration where it names no test: authority, then number behind a comma, as environment "
                + "agency, 123-45; empty where there is none") ?? "";
            var id = _claims.Count == 0 ? "claim" : $"claim-{_claims.Count + 1}";
            var when = $"{{ contact-time: {Quoted(wet.StartsWith('>') ? wet : ">= " + wet)}, temperature: {Quoted(temperature)}, methods: {Listed(methods)} }}";
            var rests = shown.Length > 0 ? ", shown-by: " + shown : registered.Length > 0 ? ", registration: " + Registration(registered) : "";
            if (!Takes(_claims, $"{{ id: {id}, when: {when}, reaches: {Quoted(level)}{rests} }}")) continue;
            Say($"label claim {level}");
            return true;
        }

        return false;
    }

    /// <summary>The tests that a label names, as a list of known codes; empty where it names none, null where the input ended.</summary>
    private string? Tests()
    {
        while (Line("the tests that the label names, by their codes, as EN 13727, EN 16615; empty where it names none") is { } answer)
        {
            var codes = answer.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            var known = _data.TestStandards.Select(test => test.Code.Value).ToArray();
            var wrong = codes.Where(code => !known.Contains(code)).ToArray();
            foreach (var code in wrong) page.Line(
                $"unknown test `{code}`; {NearestNames.Help(code, known) ?? "`compat list tests` lists those that are known"}", 2, 4);
            if (wrong.Length == 0) return codes.Length == 0 ? "" : "[" + string.Join(", ", codes.Select(Quoted)) + "]";
        }

        return null;
    }

    private static string Registration(string answer)
    {
        var cut = answer.LastIndexOf(',');
        return $"{{ authority: {Quoted(cut < 0 ? answer : answer[..cut].Trim())}, number: {Quoted(cut < 0 ? "" : answer[(cut + 1)..].Trim())} }}";
    }

    /// <summary>Says that a line is noted, and what it changed; until it is said what the strengths are a share of, they are taken for those of the
    /// liquid.</summary>
    private void Say(string fact)
    {
        var text = _written["section-9"].Count > 0 ? Text() : Text().Replace("section-9:\n", "section-9:\n  strength-of: liquid\n", StringComparison.Ordinal);
        var said = ProductAnswers.Read(text, "answers", _data).Product is { } product ? effects.After(fact, product) : null;
        page.Line("noted" + (said is null ? "" : ": " + said), 4, 6);
    }

    private bool Takes(string section, string line) => Takes(_written[section], line);

    private bool Takes(List<string> list, string line)
    {
        list.Add(line);
        var faults = ProductAnswers.Read(Text(), "answers", _data).Diagnostics.Where(fault => Concerns(fault, line)).ToArray();
        if (faults.Length == 0) return true;
        list.RemoveAt(list.Count - 1);
        foreach (var fault in faults) page.Line($"{fault.Message}{(fault.Help is null ? "" : "; " + fault.Help)}", 2, 4);
        return false;
    }

    /// <summary>Whether a fault stands in the line just answered: what is still to come is not missing yet.</summary>
    private static bool Concerns(Diagnostic fault, string line) =>
        fault.Code != "missing-key" && fault.Place is { } place && place.Source.Text[place.Source.Lines.LineSpan(place.Position.Line).Start..]
            .TrimStart(' ', '-').StartsWith(line, StringComparison.Ordinal);

    private string? Line(string question)
    {
        page.Line(question + ":", 2, 4);
        return input.ReadLine()?.Trim();
    }

    private string Text()
    {
        var text = new StringBuilder();
        foreach (var (section, lines) in _written)
        {
            text.Append(section).Append(":\n");
            foreach (var line in lines) text.Append("  ").Append(line).Append('\n');
            var list = section switch { "section-3" => ("ingredients", _ingredients), "label" => ("label-claims", _claims), _ => ("", []) };
            if (list.Item2.Count == 0) continue;
            text.Append("  ").Append(list.Item1).Append(":\n");
            foreach (var line in list.Item2) text.Append("    - ").Append(line).Append('\n');
        }

        return text.ToString();
    }

    private static string Listed(string words) => "[" + string.Join(", ", words.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(Quoted)) + "]";

    private static string Quoted(string text) => "\"" + Printable.Of(text).Replace("\\", "\\\\", StringComparison.Ordinal)
        .Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}

/// <summary>Finds the agent class that a person means by a name, an EC number, the beginning of a name or a slip: what is not exact is offered by
/// number.</summary>
internal sealed class AgentPrompt(TextReader input, Page page, KnowledgeBase kb)
{
    private const int MostOffered = 9;
    private readonly Finder _finder = new(kb);

    /// <summary>The agent class; null where none is meant.</summary>
    public AgentClass? Of(string name)
    {
        if (kb.Data.Agents.FirstOrDefault(agent => agent.Id.Value == name || Same(agent.Name, name)) is { } exact) return exact;
        if (kb.Data.Agents.Where(agent => agent.AlsoCalled.Any(called => Same(called, name))).ToArray() is [var only]) return only;
        var near = _finder.Of(name).Where(one => one.Entry.Kind == "agents").Take(MostOffered).ToArray();
        if (near.Length == 0) return null;
        for (var i = 0; i < near.Length; i++) page.Line($"{i + 1}  {near[i].Entry.Id}: {Printable.Of(near[i].Why)}", 4, 8);
        while (Line() is { Length: > 0 } answer)
            if (answer.Length == 1 && answer[0] - '1' is >= 0 and var number && number < near.Length) return kb.Data.Agents.First(
                agent => agent.Id.Value == near[number].Entry.Id);
        return null;
    }

    private string? Line()
    {
        page.Line("which of these by its number; empty where none is meant:", 4, 6);
        return input.ReadLine()?.Trim();
    }

    private static bool Same(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}

/// <summary>Says what each fact about a new product opens or closes on the devices of the site so far.</summary>
internal sealed class ProductEffects(KnowledgeBase below, Site site)
{
    private readonly (Device Device, DevicePart Part)[] _parts = site.Devices
        .SelectMany(device => device.Parts.Select(part => (device, part)))
        .DistinctBy(pair => (pair.device.Instructions.Count > 0 ? pair.device.Id.Value
            : "", string.Join('|', pair.part.OneOfTypes), pair.part.Materials is null ? "" : pair.device.Id.Value + pair.part.Id.Value))
        .ToArray();

    private enum State
    {
        Closed,
        NotKnown,
        Spared,
        Reached,
    }

    private State[]? _before;

    public bool HasDevices => _parts.Length > 0;

    /// <summary>What a fact changed: held against the states after the fact before. Null where there are no devices, or nothing can be said of the product so
    /// far.</summary>
    public string? After(string fact, Product sofar)
    {
        if (!HasDevices || StatesOf(sofar) is not { } after) return null;
        var text = $"{fact}: {Change(_before, after)}";
        _before = after;
        return text;
    }

    /// <summary>One line a fact, in the order of a safety data sheet: what it is, and what it changed.</summary>
    public IEnumerable<string> Of(Product product)
    {
        if (!HasDevices)
        {
            yield return "there are no devices yet: what it may be used on shows once there are";
            yield break;
        }

        foreach (var (fact, step) in Steps(product))
            if (After(fact, step) is { } said) yield return said;
    }

    private static IEnumerable<(string Fact, Product Step)> Steps(Product product)
    {
        var bare = product with { Ph = [], LabelClaims = [], ContactTimes = [], Density = null };
        for (var i = 1; i <= product.Ingredients.Count; i++)
        {
            var last = product.Ingredients[i - 1];
            yield return ($"{last.Agent?.Value ?? last.Unknown}{(last.Strength is { } strength ? " " + strength : ", no figure")}",
                bare with { Ingredients = product.Ingredients.Take(i).ToArray() });
        }

        if (product.Density is not null) yield return ("density", bare = bare with { Density = product.Density });
        if (product.Ph.Count > 0) yield return ("pH " + string.Join(", ", product.Ph.Select(ph => $"{ph.Value} ({Words.Of(ph.Of)})")),
            bare = bare with { Ph = product.Ph });
        for (var i = 1; i <= product.LabelClaims.Count; i++)
            yield return ($"label claim {product.LabelClaims[i - 1].Id}", bare with
            {
                LabelClaims = product.LabelClaims.Take(i).ToArray(),
                ContactTimes = product.ContactTimes
            });
    }

    private State[]? StatesOf(Product step)
    {
        below.TryWith(site with { Products = [.. site.Products, step] }, out var kb);
        return kb is null ? null : _parts.Select(pair => StateOf(kb, step, pair.Device, pair.Part)).ToArray();
    }

    private static State StateOf(KnowledgeBase kb, Product product, Device device, DevicePart part)
    {
        var question = new Question { Device = device.Id, DevicePart = part.Id, Product = product.Id };
        if (!kb.TryAsk(question, out var answer, out _)) return State.NotKnown;
        return answer.PartVerdict == Verdict.NotAllowed ? State.Closed
            : answer.Window is { IsOpen: true } ? State.Reached
            : answer.PartVerdict == Verdict.NotEstablished ? State.NotKnown
            : State.Spared;
    }

    private string Change(State[]? before, State[] after)
    {
        var pieces = new List<string>();
        foreach (var (state, words) in new[] { (State.Closed, "closed"), (State.NotKnown, "not known"), (State.Spared, "spared"),
            (State.Reached, "level reached") })
        {
            var changed = _parts.Where((_, i) => after[i] == state && (before is null || before[i] != state)).ToArray();
            if (changed.Length == 0) continue;
            var names = changed.Select(pair => string.Join(" or ", pair.Part.OneOfTypes)).Distinct().ToArray();
            pieces.Add($"{words}: {string.Join(", ", names.Take(8))}{(names.Length > 8 ? $" and {names.Length - 8} more" : "")}");
        }

        return pieces.Count == 0 ? "changes nothing" : string.Join("; ", pieces);
    }
}
