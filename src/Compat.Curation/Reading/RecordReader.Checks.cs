using Compat.Validation;

namespace Compat.Curation.Reading;

/// <content>What the keys of a record must hold to together. The schemas say the same without words of their own.</content>
internal sealed partial class RecordReader
{
    private static readonly string[] Demands = ["never-allowed", "always-with", "never-above", "bound-by", "mixing-with", "mixing-with-soil"];
    private static readonly string[] HazardKeys = ["only-where", "when", "rests-on", "effects", "forms", "severity", "separated-by", "how", "why"];

    private void CheckRule(RecordFields fields)
    {
        fields.ExactlyOne("a rule", ofSite ? ["part", "material", "device"] : ["part", "material"]);
        if (ofSite) fields.ExactlyOne("a rule", "agent", "product");
        var verdict = fields.Text("verdict");
        if (verdict == "allowed" && !fields.Has("when"))
        {
            fields.ReportKey("verdict", "rule", "`when` is missing: a rule that allows names every axis",
                "write `any` or `unstated` where that is what the source says");
        }
        else if (verdict == "allowed" && !fields.Has("known-by"))
        {
            fields.ReportKey("verdict", "rule", "`known-by` is missing: a rule that allows says how it is known",
                "write `test`, `instructions`, `published` or `practice`");
        }

        if (verdict == "allowed" && fields.Has("seen-with") && fields.Has("whole-class"))
            fields.ReportKey("whole-class", "rule", "`seen-with` and `whole-class` exclude each other", "write one of the two");
        if (verdict == "not-allowed" && !fields.Has("damage"))
            fields.ReportKey("verdict", "rule", "`damage` is missing: a rule that does not allow says what it prevents");
        if (!ofSite) return;
        fields.OnlyBeside("rule", "device-part", "device");
        fields.OnlyBeside("rule", "edition", "device");
        fields.OnlyBeside("rule", "composition-dated", "product");
    }

    private static void CheckAgentClass(RecordFields fields)
    {
        foreach (var cas in fields.Items("cas"))
        {
            // The last digit of a CAS number is the sum of the others, each times its place from the right, modulo 10.
            var digits = cas.Text.Where(char.IsAsciiDigit).Select(digit => digit - '0').Reverse().ToArray();
            if (digits.Length < 5 || digits.Skip(1).Select((digit, place) => digit * (place + 1)).Sum() % 10 is var expected && expected == digits[0]) continue;
            fields.Report(cas, "cas", $"`{cas.Text}` is no CAS number: its check digit would be {expected}", "compare it with the source");
        }

        foreach (var ec in fields.Items("ec").Where(ec => EcNumber.HasShape(ec.Text) && !EcNumber.IsValid(ec.Text)))
            fields.Report(ec, "ec", $"`{ec.Text}` is no EC number: its check digit does not hold", "compare it with the source");
    }

    private static void CheckClaim(RecordFields fields)
    {
        if (!fields.Has("reaches") && !fields.Has("kills"))
            fields.ReportRecord("claim", "a claim names the level it `reaches`, what it `kills`, or both");
    }

    private static void CheckLabelClaim(RecordFields fields) => CheckClaim(fields);

    private static void CheckInstructedLevel(RecordFields fields)
    {
        fields.ExactlyOne("a level that is reached", "agent", "product");
        if (!fields.Has("level") && !fields.Has("kills"))
            fields.ReportRecord("claim", "what is reached names its `level`, what it `kills`, or both");
    }

    private static void CheckDevicePart(RecordFields fields) => fields.OnlyBeside("device-part", "wettest-from", "wettest");

    private static void CheckIngredient(RecordFields fields) => fields.ExactlyOne("an ingredient", "agent", "unknown");

    private static void CheckNeedRule(RecordFields fields) => fields.ExactlyOne("a need", "level", "dry");

    private static void CheckInstructionWord(RecordFields fields)
    {
        if (fields.Has("permits") && fields.Has("lists-nothing"))
            fields.ReportKey("lists-nothing", "instruction-word", "`lists-nothing` and `permits` exclude each other", "write one of the two");
        if (!fields.Has("permits") && !fields.Has("forbids") && !fields.Has("act") && !fields.Has("lists-nothing"))
            fields.ReportRecord("instruction-word", "the word has no reading", "write `permits`, `forbids`, `act` or `lists-nothing: true`");
    }

    private static void CheckMixingHazard(RecordFields fields)
    {
        fields.ExactlyOne("a record of mixing", "with-agent", "with-soil", "with-material");
        if (!fields.Has("effects") || !fields.Has("severity") || !fields.Has("why"))
        {
            fields.ReportRecord("mixing", "a hazard of mixing names its `effects`, its `severity` and `why`; what is harmless says so",
                "write all three, or `harmless:` with the reason");
        }
    }

    private static void CheckHarmlessMeeting(RecordFields fields)
    {
        foreach (var key in HazardKeys.Where(fields.Has))
            fields.ReportKey(key, "harmless", $"a record that is `harmless` has no `{key}`", "leave one of the two out");
        fields.ExactlyOne("a record of mixing", "with-agent", "with-soil", "with-material");
    }

    private static void CheckPersonRule(RecordFields fields)
    {
        if (!fields.Has("patients") && !fields.Has("occupied"))
            fields.ReportRecord("person-rule", "a person rule names its `patients`; only one on an `occupied` device may leave them out");
        if (fields.Text("verdict") == "with-duties" && !fields.Has("duties"))
            fields.ReportKey("verdict", "person-rule", "`duties` is missing: a rule with duties says which");
    }

    /// <summary>A part or a material for what it demands of rules, a patient and perhaps a part for a person rule, nothing else.</summary>
    private static void CheckStandingRule(RecordFields fields)
    {
        var demand = fields.ExactlyOne("a standing rule", Demands);
        var ofRules = demand is null or "never-allowed" or "always-with";
        var ofPatient = demand == "never-allowed" && fields.Has("patient");
        foreach (var key in new[] { "part", "material", "patient" })
        {
            var fits = key switch { "patient" => demand == "never-allowed" || demand is null, "part" => ofRules, _ => ofRules && !ofPatient };
            if (!fits && fields.Has(key)) fields.ReportKey(key, "one-of-keys", $"`{key}` does not go with `{(ofPatient ? "patient" : demand)}`");
        }

        if (ofRules && !ofPatient) fields.ExactlyOne("a standing rule", "part", "material");
    }
}
