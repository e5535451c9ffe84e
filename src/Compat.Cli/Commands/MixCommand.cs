using System.CommandLine;
using Compat.Cli.Json;

namespace Compat.Cli.Commands;

/// <summary><c>compat mix</c>: what is on record where two meet.</summary>
internal sealed class MixCommand : DataCommand
{
    private readonly Argument<string> _first;
    private readonly Argument<string> _other;
    private readonly Option<string?> _strength;
    private readonly Option<string?> _otherStrength;

    public MixCommand()
        : base(
            "mix",
            "Says what is on record where two agents, products, soils or materials meet: what forms, how bad, what separates them. Never that it is safe. "
                + "Exit code 1: a hazard; 4: nothing is on record, so nobody knows; 0: every pair is on record as harmless.",
            new("Bleach and an acid descaler", "compat mix sodium-hypochlorite citric-acid"),
            new("A weak peroxide wipe and an alcohol wipe", "compat mix hydrogen-peroxide isopropanol --strength \"0.5 % w/w\""))
    {
        _first = new Argument<string>(
            "one")
        { HelpName = "A", Description = "An agent class, a product of a site, a soil (blood, gel, urine, scale, residue …) or a material" };
        _other = new Argument<string>("other") { HelpName = "B", Description = "What it meets" };
        Arguments.Add(_first);
        Arguments.Add(_other);
        _strength = One("--strength", "FIGURE", "How strong A is, of an agent: \"0.5 % w/w\"; left out, it may be any strength. A product's is its own");
        _otherStrength = One("--other-strength", "FIGURE", "How strong B is, of an agent");
    }

    public override IReadOnlyList<string> ExitCodes { get; } = ["0 nothing is on record", "1 a hazard is on record"];

    protected override int Execute(Call call, KnowledgeBase kb)
    {
        var first = Partner(call, kb, _first, _strength);
        var other = Partner(call, kb, _other, _otherStrength);
        if (call.Problems.Count > 0 || first is null || other is null) return call.Report();
        if (!Mixture.TryJudge(kb, first, other, out var answer, out var problems)) return call.Refuse(problems);
        if (WantsJson(call)) JsonDocuments.Write(call.Stdout, json => new MixingJson(json, NamesOf(kb)).Write(answer!));
        else new MixingText(new Page(call.Stdout), NamesOf(kb)).Write(answer!);
        return answer!.Outcome switch
        {
            MixingOutcome.Hazard => ExitCode.NotAllowed,
            MixingOutcome.Harmless => ExitCode.Done,
            _ => ExitCode.NotEstablished,
        };
    }

    /// <summary>What an argument names: ids are matched exactly; one that names several kinds is refused.</summary>
    private static MixingPartner? Partner(Call call, KnowledgeBase kb, Argument<string> argument, Option<string?> strengthOption)
    {
        if (call.Parsed.GetResult(argument) is not { Tokens.Count: 1 }) return null;
        var text = call.Parsed.GetValue(argument)!;
        var products = kb.Sites.SelectMany(site => site.Products).Select(p => p.Id.Value).ToArray();
        var found = new List<(string Kind, MixingPartner Partner)>();
        var strength = call.Options.Strength(strengthOption);
        if (kb.Data.Agents.Any(a => a.Id.Value == text)) found.Add(("an agent", strength is { } stated ? MixingPartner.Of(new AgentId(text), stated)
            : MixingPartner.Of(new AgentId(text))));
        if (products.Contains(text)) found.Add(("a product", MixingPartner.Of(new ProductId(text))));
        if (Words.TryParse<SoilKind>(text, out var soil)) found.Add(("a soil", MixingPartner.Of(soil)));
        if (kb.Data.Materials.Any(m => m.Id.Value == text)) found.Add(("a material", MixingPartner.Of(new MaterialId(text))));
        if (found.Count == 1 && found[0].Partner.Agent is null && call.Parsed.GetValue(strengthOption) is not null)
            call.Note("strength-of-no-agent", $"`{text}` is {found[0].Kind}: a strength is stated of an agent", $"leave out `{strengthOption.Name}`",
                strengthOption.Name.TrimStart('-'));
        if (found.Count == 1) return found[0].Partner;
        if (found.Count > 1)
        {
            call.Note("two-meanings", $"`{text}` is {string.Join(" and ", found.Select(pair => pair.Kind))}", "give the product of the site another id");
            return null;
        }

        var known = kb.Data.Agents.Select(a => a.Id.Value).Concat(products).Concat(Enum.GetValues<SoilKind>().Select(word => Words.Of(word)))
            .Concat(kb.Data.Materials.Select(m => m.Id.Value));
        call.Note("unknown-partner", $"`{text}` is no agent, product, soil or material",
            NearestNames.Help(text, known) ?? "`compat find` knows everyday names");
        return null;
    }
}
