using Compat.Instructions;

namespace Compat.Validation;

/// <summary>Checks the words that a site's devices carry of their instructions. Words that the table does not know are no fault: they are shown.</summary>
internal static class PhraseValidation
{
    public static void Check(Scope scope, Site site)
    {
        foreach (var device in site.Devices)
        {
            var at = new Field(scope, RecordKind.Device, device.Id.Value)["instructions"];
            for (var i = 0; i < device.Instructions.Count; i++)
            {
                var says = device.Instructions[i].Says;
                for (var s = 0; s < says.Count; s++) Phrase(device, says[s], at[i]["says"][s]);
            }
        }

        var read = PhraseRules.Of(scope.Data, [site]);
        foreach (var rule in read.Rules.Where(r => scope.Rules.ContainsKey(r.Id)))
            scope.Add("duplicate-id", new ProblemPlace(RecordKind.Rule, rule.Id.Value, "id"),
                $"`{rule.Id}` is the id of a rule that words of the instructions become", "give it another name");
        foreach (var (device, edition) in read.WithoutId)
            scope.Add("id-too-long", new ProblemPlace(RecordKind.Device, device.Value, "id"),
                $"the ids of `{device}`, its edition `{edition}` and its parts are together too long for the id of a rule",
                $"a rule's id has at most {DottedId.MaximumLength} characters");
    }

    private static void Phrase(Device device, InstructionPhrase phrase, Field at)
    {
        at["words"].Said(phrase.Words, "empty-text", "no words are given");
        at["how"].Texts(phrase.How);
        at["parts"].DeviceParts(device, phrase.Parts);
    }
}
