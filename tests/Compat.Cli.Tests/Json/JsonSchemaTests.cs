using System.Text.Json;

namespace Compat.Cli.Tests.Json;

/// <summary>Real output is held against the schemas by two validators.</summary>
public sealed class JsonSchemaTests
{
    public static TheoryData<string, string[]> Outputs => new()
    {
        { "answer", ["ask", "--part", "display-coated", "--agent", "isopropanol", "--strength", "70 % v/v", "--method", "damp-wipe"] },
        { "answer", ["ask", "--part", "keypad-membrane", "--agent", "ethanol", "--strength", "60..75 % v/v", "--act", "soft-cloth"] },
        { "answer", ["ask", "--part", "housing-plastic", "--agent", "ethanol", "--exposure-time", "without end", "--uses", "10", "--only", "part"] },
        { "answer", ["ask", "--material", "anodised-aluminium", "--material", "polycarbonate|abs", "--agent", "sodium-hypochlorite"] },
        { "answer",
            ["ask", "--part", "probe-lens", "--agent", "glutaraldehyde", "--strength", "2.4 % w/v", "--method", "immerse", "--temperature", "22 °C", "--ph",
            "8"] },
        { "answer", ["ask", "--site", Repository.Demo, "--part", "display-coated", "--product", "two-spirit-wipe"] },
        { "answer", ["ask", "--site", Repository.Demo, "--part", "trolley-frame", "--product", "chlorine-concentrate", "--dilution", "1 in 50"] },
        { "answer", ["ask", "--site", Repository.Demo, "--device", "fundus-camera", "--part", "housing", "--agent", "isopropanol", "--serial", "AB12"] },
        { "answer", ["ask", "--site", Repository.Demo, "--device", "autorefractor", "--agent", "ethanol", "--strength", "70 % v/v"] },
        { "answer",
            ["ask", "--part", "trolley-frame", "--agent", "benzalkonium-chloride", "--touched-by", "mucous-membrane", "--patient", "airway", "--cloth",
            "cotton"] },
        { "answer", ["ask", "--part", "keypad-membrane", "--agent", "isopropanol", "--strength", "70 % v/v", "--touched-by", "hand", "--soil", "none"] },
        { "answer", ["ask", "--part", "trolley-frame", "--agent", "isopropanol", "--strength", "70 % v/v", "--soil", "none"] },
        { "answer", ["ask", "--part", "cable-jacket", "--agent", "sodium-hypochlorite", "--soil", "none", "--occupied", "--level", "low"] },
        { "answer", ["ask", "--part", "handle", "--agent", "isopropanol", "--against", "prions", "--against", "HIV"] },
        { "answer", ["ask", "--site", Repository.Demo, "--device", "tonometer", "--product", "plain-spirit-wipe", "--soil", "blood", "--soil", "mucus"] },
        { "map", ["map", "--part", "keypad-membrane", "--agent", "ethanol"] },
        { "map", ["map", "--material", "polycarbonate", "--agent", "isopropanol"] },
        { "mixing-answer", ["mix", "sodium-hypochlorite", "acid"] },
        { "mixing-answer", ["mix", "glutaraldehyde", "blood"] },
        { "mixing-answer", ["mix", "chlorine-concentrate", "ethanol", "--site", Repository.Demo] },
        { "mixing-answer", ["mix", "ethanol", "quaternary-ammonium"] },
        { "mixing-answer", ["mix", "coupling-gel", "defoamer"] },
        { "mixing-answer", ["mix", "hydrogen-peroxide", "isopropanol", "--strength", "0.5 % w/w"] },
        { "mixing-answer", ["mix", "hydrogen-peroxide", "isopropanol", "--strength", "10 % w/w"] },
        { "plan", ["plan", "--site", Repository.Demo, "--device", "slit-lamp", "--uses-per-day", "20"] },
        { "plan", ["plan", "--site", Repository.Demo, "--device", "tonometer", "--occasion", "before-repair", "--serial", "AB12"] },
        { "plan",
            ["plan", "--site", Repository.Demo, "--device", "vision-monitor", "--occasion", "after-outbreak", "--against", "non-enveloped-viruses", "--accept",
            "looks"] },
        { "plan", ["plan", "--site", Repository.Demo, "--device", "autorefractor", "--occasion", "incident-hold"] },
        { "plan", ["plan", "--site", Repository.Demo, "--device", "tonometer", "--against", "prions"] },
        { "shelf", ["shelf", "--site", Repository.Demo] },
        { "shelf", ["shelf", "--site", Repository.Demo, "--replace", "peroxide-wipe", "plain-quat-wipe"] },
        { "dilution", ["dilute", "--agent", "ethanol", "--from", "96 % v/v", "--to", "70 % v/v", "--volume", "1 L"] },
        { "dilution", ["dilute", "--agent", "quaternary-ammonium", "--from", "10 % w/w", "--to", "0.25 % w/w", "--mass", "2 kg"] },
        { "dilution", ["dilute", "--site", Repository.Demo, "--product", "chlorine-concentrate", "--volume", "5 L"] },
    };

    [Theory]
    [MemberData(nameof(Outputs))]
    public async Task Output_IsAsTheSchemaSays(string schema, string[] args)
    {
        var run = CliRun.Of([.. args, "--json"]);
        Assert.NotEqual(2, run.Code);
        Assert.Equal("", await SchemaFiles.Refusals(schema, run.Output));
    }

    [Theory]
    [InlineData("answer", "{}")]
    [InlineData("answer", """{"device":"x","parts":[],"cautions":["y"],"identity":[]}""")]
    [InlineData("mixing-answer", """{"first":"a","other":"b","hazardOnRecord":true,"hazards":[{}],"notFullyKnown":[],"cautions":["y"],"identity":[]}""")]
    [InlineData("dilution", """{"product":"x","litres":-1,"stockLitres":{"unit":"L"},"ingredients":[],"cautions":["y"],"identity":[]}""")]
    [InlineData("shelf", """{"products":["a"],"rows":[{"device":"d","part":"p","types":["t"],"keptDry":false,"unserved":true,"cells":[{"product":"a","word":"good","more":[]}]}],"cautions":["y"],"identity":[]}""")]
    [InlineData("map", """{"materials":[],"agent":"Ethanol","cells":[],"identity":[{"name":"a","version":"b","hash":"c"}]}""")]
    public async Task Schema_WrongDocument_IsRefusedByBothValidators(string schema, string document)
    {
        using var parsed = JsonDocument.Parse(document);
        Assert.False(SchemaFiles.ForEditors(schema).Evaluate(parsed.RootElement).IsValid);
        Assert.NotEmpty((await SchemaFiles.Enforced(schema)).Validate(document));
    }

    [Fact]
    public void Output_CarriesTheIdentityOfTheData()
    {
        using var answer = JsonDocument.Parse(CliRun.Of("ask", "--part", "socket", "--agent", "water", "--json", "--site", Repository.Demo).Output);
        var names = answer.RootElement.GetProperty("identity").EnumerateArray().Select(state => state.GetProperty("name").GetString());
        Assert.Equal(["shipped", "eye-screening-clinic"], names);
    }
}
