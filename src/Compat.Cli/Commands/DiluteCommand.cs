using System.CommandLine;
using Compat.Cli.Json;
using Compat.Curation.Text;
using DilutionText = Compat.Cli.Say.DilutionText;

namespace Compat.Cli.Commands;

/// <summary><c>compat dilute</c>: how much stock and water make a strength.</summary>
internal sealed class DiluteCommand : DataCommand
{
    private readonly Option<string?> _agent;
    private readonly Option<string?> _product;
    private readonly Option<string?> _from;
    private readonly Option<string?> _to;
    private readonly Option<string?> _volume;
    private readonly Option<string?> _mass;
    private readonly Option<string?> _density;
    private readonly Option<string?> _temperature;
    private readonly Option<string?> _powder;

    public DiluteCommand()
        : base(
            "dilute",
            "Says how much stock and how much water make a strength; of a product without --to, how much its label asks.",
            new("Bleach to 1000 ppm of available chlorine",
                "compat dilute --agent sodium-hypochlorite --from \"5.25 % w/v\" --to \"1000 ppm w/v available chlorine\" --volume \"5 L\""),
            new("Ethanol from 96 % to 70 %, contraction reckoned in", "compat dilute --agent ethanol --from \"96 % v/v\" --to \"70 % v/v\" --volume \"1 L\""))
    {
        _agent = One("--agent", "ID", "The agent class whose strength is meant; of a product with one ingredient it may be left out");
        _product = One("--product", "ID", "A product of a site, in place of --from: its strength and density are taken");
        _from = One("--from", "FIGURE", "The strength of the stock: \"5.25 % w/v\", or its label's range");
        _to = One("--to", "FIGURE", "The strength wanted: \"1000 ppm w/v available chlorine\", or a range that will do");
        _volume = One("--volume", "AMOUNT", "How much finished liquid: \"5 L\", \"500 mL\"");
        _mass = One("--mass", "AMOUNT", "How much finished liquid by mass: \"2 kg\", for strengths by mass");
        _density = One("--density", "FIGURE", "The density of the stock, \"1.07 kg/L\", where its strength is by mass");
        _temperature = One("--temperature", "FIGURE", "Of ethanol: the temperature at which volumes are measured; 20 °C where left out");
        _powder = Flag("--powder", "The stock is a powder or granules: it is weighed");
    }

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var product = Product(call, kb);
        if (call.Parsed.GetValue(_product) is not null && call.Parsed.GetValue(_to) is null) return ByLabel(call, kb, product);
        var agent = Agent(call, product);
        var stock = product?.Ingredients.FirstOrDefault(i => i.Agent == agent)?.Strength ?? Strength(call, _from);
        var wanted = Strength(call, _to);
        if (product is not null && call.Parsed.GetValue(_from) is not null) call.Note(
            "stock-twice", "the product states its strength", "leave out `--from` or `--product`", "from");
        var volume = Figure(call, _volume, ExposureText.TryParseVolume);
        var mass = Figure(call, _mass, ExposureText.TryParseMass);
        var density = Figure(call, _density, ExposureText.TryParseDensity) ?? product?.Density;
        var temperature = Temperature(call);
        if (call.Problems.Count > 0) return call.Report();
        var question = new DilutionQuestion
        {
            Agent = agent!,
            Stock = stock!.Value,
            Wanted = wanted!.Value,
            Litres = volume,
            Kilograms = mass,
            IsPowder = call.Has(_powder),
            StockDensity = density,
            Temperature = temperature,
        };
        if (!Dilution.TryMake(kb, question, out var recipe, out var problems)) return call.Refuse(problems);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new DilutionJson(json).Write(recipe!));
        else new DilutionText(new Page(call.Stdout), NamesOf(kb)).Write(recipe!);
        return ExitCode.Done;
    }

    private int ByLabel(Call call, KnowledgeBase kb, Product? product)
    {
        if (call.Parsed.GetValue(_from) is not null) call.Note("stock-twice", "the product states its strength",
            "leave out `--from`, or say what is wanted by `--to`", "from");
        if (Figure(call, _volume, ExposureText.TryParseVolume) is not { } litres)
        {
            if (call.Parsed.GetValue(_volume) is null) call.Note("no-volume", "how much finished liquid is wanted?", "write `--volume \"5 L\"`", "volume");
            return call.Report();
        }

        if (call.Problems.Count > 0 || product is null) return call.Report();
        if (!LabelDilution.TryMake(kb, product.Id, litres, out var dilution, out var problems)) return call.Refuse(problems);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new DilutionJson(json).Write(dilution!));
        else new DilutionText(new Page(call.Stdout), NamesOf(kb)).Write(dilution!);
        return ExitCode.Done;
    }

    private Product? Product(Call call, KnowledgeBase kb)
    {
        var products = kb.Sites.SelectMany(site => site.Products).ToArray();
        return Known(call, _product, products.Select(p => p.Id), "product") is { } id ? products.First(p => p.Id == id) : null;
    }

    private AgentId? Agent(Call call, Product? product)
    {
        if (call.Parsed.GetValue(_agent) is { } id)
        {
            if (Id.IsWellFormed(id))
            {
                if (product is null || product.Ingredients.Any(i => i.Agent?.Value == id && i.Strength is not null)) return new(id);
                call.Note("not-in-product", $"`{product.Id}` states no strength of `{id}`",
                    "it states: " + string.Join(", ", Stated(product).Select(a => $"`{a}`")), "agent");
            }
            else
            {
                call.Note("no-id", $"`{id}` is no id", "see `compat list agents`", "agent");
            }

            return null;
        }

        var stated = product is null ? [] : Stated(product);
        if (stated.Length == 1) return stated[0];
        call.Problems.Add(product is null
            ? BadInput.Of("no-agent", "whose strength is meant?", "write `--agent ID`; see `compat list agents`", "agent")
            : BadInput.Of("which-agent", $"`{product.Id}` states {stated.Length} strengths: whose is meant?",
                "write `--agent` with one of: " + string.Join(", ", stated.Select(a => $"`{a}`")), "agent"));
        return null;
    }

    private static AgentId[] Stated(Product product) => [.. product.Ingredients.Where(i => i is { Agent: not null, Strength: not null }).Select(i => i.Agent!)];

    private static Strength? Strength(Call call, Option<string?> option)
    {
        var name = option.Name[2..];
        if (call.Parsed.GetValue(option) is not { } text) call.Note("no-" + name, name == "from" ? "how strong is the stock?"
            : "how strong is it to be?", $"write `{option.Name} \"5 % w/v\"`", name);
        else if (ExposureText.TryParseStrength(text, out var strength, out var problem)) return strength;
        else if (text.Contains(':', StringComparison.Ordinal)) call.Note("bad-strength",
            $"`{text}` is no strength, and as a ratio it is read two ways (1 in 50, or 1 and 50)", "write the strength: `1000 ppm w/v`, `0.1 % w/v`", name);
        else call.Note("bad-strength", problem!, null, name);
        return null;
    }

    private delegate bool Reader(string text, out decimal value, out string? problem);

    private static decimal? Figure(Call call, Option<string?> option, Reader reader)
    {
        if (call.Parsed.GetValue(option) is not { } text) return null;
        if (reader(text, out var value, out var problem)) return value;
        call.Note("bad-figure", problem!, null, option.Name[2..]);
        return null;
    }

    private decimal Temperature(Call call)
    {
        if (call.Parsed.GetValue(_temperature) is not { } text) return 20m;
        if (!ExposureText.TryParseInterval(text, Axis.Temperature, out var range, out var problem)) call.Note("bad-figure", problem!, null, "temperature");
        else if (!range.IsPoint) call.Note("bad-figure", $"one temperature is expected, read `{text}`", null, "temperature");
        else return range.Lower!.Value;
        return 20m;
    }
}
