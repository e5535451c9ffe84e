using System.Text.RegularExpressions;

namespace Compat.Cli.Tests;

/// <summary>Whole outputs, as a person sees them, on the frozen base: they change only where words do. <c>COMPAT_WRITE_GOLDEN=1</c> writes them anew.</summary>
public sealed class GoldenTests
{
    public static TheoryData<string, string[]> Outputs => new()
    {
        { "ask-display-isopropanol", ["ask", "--part", "display-coated", "--agent", "isopropanol", "--strength", "70 % v/v", "--method", "damp-wipe"] },
        { "ask-keypad-ethanol", ["ask", "--part", "keypad-membrane", "--agent", "ethanol", "--strength", "75 % v/v", "--method", "damp-wipe"] },
        { "ask-housing-ethanol", ["ask", "--part", "housing-plastic", "--agent", "ethanol", "--strength", "70 % v/v", "--method", "damp-wipe"] },
        { "ask-anodised-hypochlorite", ["ask", "--material", "anodised-aluminium", "--agent", "sodium-hypochlorite", "--strength",
            "1000 ppm w/v available chlorine"] },
        { "ask-bad-input", ["ask", "--part", "dispay-coated", "--agent", "isopropanol", "--strength", "70 %", "--method", "wipe", "--ph", "20", "--dilution",
            "1:50"] },
        { "map-display-isopropanol", ["map", "--part", "display-coated", "--agent", "isopropanol"] },
        { "find-cas", ["find", "67-63-0"] },
        { "find-bleach", ["find", "bleach"] },
        { "ask-filter-cover-quat", ["ask", "--part", "filter-cover", "--agent", "quaternary-ammonium", "--strength", "0.25 % w/w", "--exposure-time", "2 min",
            "--method", "damp-wipe"] },
        { "ask-device-isopropanol", ["ask", "--device", "autorefractor", "--agent", "isopropanol", "--strength", "70 % v/v", "--method", "damp-wipe", "--site",
            Repository.Clinic] },
        { "ask-two-spirit-wipe", ["ask", "--part", "display-coated", "--product", "two-spirit-wipe", "--method", "damp-wipe", "--site", Repository.Clinic] },
        { "ask-quat-on-mucous-membrane", ["ask", "--part", "trolley-frame", "--agent", "benzalkonium-chloride", "--touched-by", "mucous-membrane"] },
        { "ask-incubator-hood-phenolic", ["ask", "--part", "incubator-hood", "--agent", "ortho-phenylphenol", "--soil", "none"] },
        { "ask-housing-data-sheet-only", ["ask", "--part", "housing-plastic", "--material", "abs", "--materials-known", "fully", "--product",
            "large-white-wipe", "--method", "damp-wipe", "--touched-by", "hand", "--site", Repository.Clinic] },
        { "ask-window-open", ["ask", "--part", "trolley-frame", "--agent", "isopropanol", "--strength", "70 % v/v", "--touched-by", "hand", "--soil", "none"] },
        { "ask-window-closed", ["ask", "--part", "cable-jacket", "--agent", "sodium-hypochlorite", "--strength", "5000 ppm w/v available chlorine", "--soil",
            "none", "--against", "C. diff"] },
        { "ask-window-too-narrow", ["ask", "--part", "cable-jacket", "--agent", "sodium-hypochlorite", "--soil", "none"] },
        { "ask-prions", ["ask", "--part", "handle", "--agent", "isopropanol", "--against", "cjd"] },
        { "ask-against-everyday-name", ["ask", "--part", "trolley-frame", "--agent", "sodium-hypochlorite", "--strength", "5000 ppm w/v available chlorine",
            "--against", "C. diff", "--against", "Flu"] },
        { "ask-against-misspelt", ["ask", "--part", "trolley-frame", "--agent", "ethanol", "--against", "norovirs", "--against", "spore", "--soil", "bloud",
            "--level", "hi", "--patient", "newbrn"] },
        { "ask-device-with-blood", ["ask", "--device", "tonometer", "--product", "plain-spirit-wipe", "--method", "damp-wipe", "--soil", "blood", "--site",
            Repository.Clinic] },
        { "dilute-hypochlorite", ["dilute", "--agent", "sodium-hypochlorite", "--from", "5..6 % w/w", "--density", "1.07 kg/L", "--to",
            "1000..1300 ppm w/v available chlorine", "--volume", "5 L"] },
        { "dilute-ethanol", ["dilute", "--agent", "ethanol", "--from", "96 % v/v", "--to", "70 % v/v", "--volume", "1 L"] },
        { "dilute-by-label", ["dilute", "--product", "chlorine-concentrate", "--volume", "5 L", "--site", Repository.Clinic] },
        { "dilute-bad-input", ["dilute", "--agent", "sodium-hypochlorite", "--from", "500 ppm", "--to", "1:50", "--volume", "5", "--density", "1.07"] },
        { "mix-bleach-descaler", ["mix", "sodium-hypochlorite", "citric-acid"] },
        { "mix-nothing-on-record", ["mix", "coupling-gel", "defoamer"] },
        { "mix-on-record-as-harmless", ["mix", "ethanol", "quaternary-ammonium"] },
        { "mix-only-at-other-strengths", ["mix", "hydrogen-peroxide", "isopropanol", "--strength", "0.5 % w/w"] },
        { "mix-bad-input", ["mix", "sodium-hypochlorit", "blod"] },
        { "bath-still-good", ["bath", "--claim", "glutaraldehyde.high.45-min", "--activated", "10 days ago", "--measured", "1.8 % w/v", "--expires",
            "2030-01-31", "--today", "2026-11-25"] },
        { "bath-too-weak-and-old", ["bath", "--claim", "ortho-phthalaldehyde.high.12-min", "--opened", "2026-11-10", "--measured", "0.29 % w/v", "--expires",
            "2026-10-31", "--today", "2026-11-25"] },
        { "bath-bad-input", ["bath", "--claim", "glutaraldehyde.high.45-mins", "--activated", "tomorrow", "--measured", "1.8 %", "--passed", "--failed"] },
        { "plan-tip-high-by-guideline", ["plan", "--site", Repository.Clinic, "--device", "tonometer", "--uses-per-day", "30"] },
        { "plan-shelf-lacks-what-is-listed", ["plan", "--site", Repository.Clinic, "--device", "pachymeter"] },
        { "plan-harm-to-looks-accepted", ["plan", "--site", Repository.Clinic, "--device", "vision-monitor", "--occasion", "after-outbreak", "--against",
            "non-enveloped-viruses", "--accept", "looks"] },
        { "plan-hinge-once-taken-apart", ["plan", "--site", Repository.Clinic, "--device", "slit-lamp", "--level", "intermediate", "--soil", "none"] },
        { "plan-nothing-does-it", ["plan", "--site", Repository.Clinic, "--device", "autorefractor", "--occasion", "between-patients"] },
        { "plan-instructions-list-only", ["plan", "--site", Repository.Clinic, "--device", "fundus-camera", "--occasion", "before-repair"] },
        { "plan-kills-longer-than-stood", ["plan", "--site", Repository.Clinic, "--device", "autorefractor", "--occasion", "after-outbreak", "--against",
            "fungi", "--soil", "none"] },
        { "plan-gap-not-shown", ["plan", "--site", Repository.Clinic, "--device", "vision-monitor", "--level", "intermediate", "--soil", "none"] },
        { "plan-hidden-ingredient-named", ["plan", "--site", Repository.Clinic, "--device", "autorefractor", "--level", "intermediate", "--soil", "none",
            "--soil", "chin-rest=grease"] },
        { "plan-held", ["plan", "--site", Repository.Clinic, "--device", "autorefractor", "--occasion", "incident-hold"] },
        { "plan-sheet-for-the-ward", ["plan", "--site", Repository.Clinic, "--device", "tonometer", "--markdown"] },
        { "plan-bad-input", ["plan", "--site", Repository.Clinic, "--device", "tonometr", "--occasion", "between-patient", "--level", "hi", "--accept",
            "patient", "--max-products", "0"] },
        { "shelf-replace", ["shelf", "--replace", "plain-quat-wipe", "peroxide-wipe", "--site", Repository.Clinic] },
        { "shelf-bad-input", ["shelf", "--replace", "peroxide-wip", "quat", "--format", "html", "--site", Repository.Clinic] },
        { "find-misspelt", ["find", "policarbonate"] },
        { "find-wheel", ["find", "wheel", "--site", Repository.Clinic] },
        { "site-bad-input", ["site", "new", "--out", ".", "--id", "My Site"] },
        { "ask-letter", ["ask", "--letter", "--device", "slit-lamp", "--part", "lamp-housing", "--product", "large-white-wipe", "--method", "damp-wipe",
            "--exposure-time", "1 min", "--site", Repository.Clinic] },
        { "dossier-of-a-tonometer", ["dossier", "--site", Repository.Clinic, "--device", "tonometer", "--markdown"] },
        { "help-ask", ["ask", "--help"] },
    };

    [Theory]
    [MemberData(nameof(Outputs))]
    public void Output_IsAsRecorded(string name, string[] args)
    {
        var text = AsRecorded(name, CliRun.OnBase(args));
        if (!args.Contains("--markdown")) Assert.All(text.Split('\n'), line => Assert.True(
            line.Length <= 80 || !line.Trim().Contains(' '), line)); // an address is never broken
    }

    /// <summary>The tips turn out to be of cellulose: what the file says of them holds no more, the rest does.</summary>
    [Fact]
    public void DossierOfAnotherSite_IsAsRecorded()
    {
        var folder = Directory.CreateTempSubdirectory("compat-golden-");
        try
        {
            var (file, site) = (Path.Combine(folder.FullName, "dossier.json"), Path.Combine(folder.FullName, "site.yaml"));
            Assert.Equal(0, CliRun.OnBase("dossier", "--site", Repository.Clinic, "--device", "tonometer", "--out", file).Code);
            File.WriteAllText(site, File.ReadAllText(Repository.Clinic).Replace("{ id: tip, type: tonometer-tip }",
                "{ id: tip, type: tonometer-tip, materials: [paper-and-cellulose], materials-known: fully }", StringComparison.Ordinal));
            AsRecorded("dossier-verify-other-tip", CliRun.OnBase("dossier", "--site", site, "--verify", file));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string AsRecorded(string name, CliRun run)
    {
        var text = $"exit code {run.Code}\n--- stdout\n{WithoutIdentity(run.Output)}--- stderr\n{run.Notes}";
        var file = Repository.File("tests", "Compat.Cli.Tests", "Golden", name + ".txt");
        if (Environment.GetEnvironmentVariable("COMPAT_WRITE_GOLDEN") == "1") File.WriteAllText(file, text);
        Assert.Equal(File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal), text);
        return text;
    }

    /// <summary>The content hash changes with the form of snapshots, the version with the data; whether they are right is another test's business.</summary>
    private static string WithoutIdentity(string text) => Regex.Replace(
        Regex.Replace(text, @"content\s+[0-9a-f]{16,64}", "content (hash)"), @"version\s+[0-9]{4}-[0-9]{2}-[0-9]{2}", "version (version)");
}
