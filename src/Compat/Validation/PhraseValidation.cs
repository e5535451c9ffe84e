using Compat.Instructions;

namespace Compat.Validation;

/// <summary>Checks the words that a site's devices carry of their instructions. Words that the table does not know are no fault: they are shown.</summary>
internal static class PhraseValidation
{
    public static void Check(Scope scope, Site site)
    {
        foreach (var device in site.Devices)
        {
            var place = new ProblemPlace(RecordKind.Device, device.Id.Value);
            for (var i = 0; i < device.Instructions.Count; i++)
            {
                for (var s = 0; s < device.Instructions[i].Says.Count; s++)
                    Phrase(scope, device, device.Instructions[i].Says[s], place, $"instructions.{i}.says.{s}");
            }
        }

        var read = PhraseRules.Of(scope.Data, [site]);
        foreach (var rule in read.Rules.Where(r => scope.Rules.ContainsKey(r.Id)))
            scope.Add("duplicate-id", new ProblemPlace(RecordKind.Rule, rule.Id.Value, "id"), $"`{rule.Id}` is the id of a rule that words of the instructions become", "give it another name");
        foreach (var (device, edition) in read.WithoutId)
            scope.Add("id-too-long", new ProblemPlace(RecordKind.Device, device.Value, "id"), $"the ids of `{device}`, its edition `{edition}` and its parts are together too long for the id of a rule", $"a rule's id has at most {DottedId.MaximumLength} characters");
    }

    private static void Phrase(Scope scope, Device device, InstructionPhrase phrase, ProblemPlace place, string field)
    {
        if (phrase.Words.Trim().Length == 0) scope.Add("empty-text", place with { Field = field + ".words" }, "no words are given");
        RecordFacts.Texts(scope, place, field + ".how", phrase.How);
        RecordFacts.DeviceParts(scope, place, phrase.Parts, device, p => $"{field}.parts.{p}");
    }
}
