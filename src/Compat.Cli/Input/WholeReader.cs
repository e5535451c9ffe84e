using Compat.Validation;

namespace Compat.Cli.Input;

/// <summary>Adds to a question what kill and people are judged by.</summary>
public sealed class WholeReader(OptionReader reader, WholeOptions options)
{
    /// <summary>The word that says that nothing was on the part.</summary>
    public const string NoSoil = "none";

    /// <summary>The question with what the options say.</summary>
    public Question AddTo(Question question, KnowledgeBase kb) => question with
    {
        TouchedBy = reader.Word<TouchedBy>(options.TouchedBy),
        Patients = reader.WordsOf<PatientGroup>(options.Patients).Distinct().ToArray(),
        Occupied = reader.Given(options.Occupied),
        Soil = Soil([.. reader.Texts(options.Soil).Where(text => !IsOfAPart(text))]),
        Level = reader.Word<Level>(options.Level),
        Against = Against(kb),
        Cloth = Cloth(),
    };

    /// <summary>What is on single parts of a device, written <c>PART=SOIL</c>; what the command does not take is read as no soil at all.</summary>
    public IReadOnlyDictionary<DevicePartId, IReadOnlyList<SoilKind>> SoilOn()
    {
        var found = new Dictionary<DevicePartId, IReadOnlyList<SoilKind>>();
        foreach (var part in reader.Texts(options.Soil).Where(IsOfAPart).Select(text => text.Split('=', 2)).GroupBy(pair => pair[0].Trim(), pair => pair[1].Trim()))
        {
            if (Compat.Id.IsWellFormed(part.Key)) found[new DevicePartId(part.Key)] = Soil([.. part]) ?? [];
            else reader.Note(options.Soil!, "unknown-id", $"no part is called `{part.Key}`", "write `PART=SOIL`, the part by its id");
        }

        return found;
    }

    private bool IsOfAPart(string text) => options.SoilOnParts && text.Contains('=', StringComparison.Ordinal);

    /// <summary>The soils; none at all where the word for nothing is given, null where nothing is.</summary>
    private SoilKind[]? Soil(IReadOnlyList<string> texts)
    {
        if (texts.Count == 0) return null;
        var soils = new List<SoilKind>();
        foreach (var text in texts.Where(text => text != NoSoil))
        {
            if (Words.TryParse<SoilKind>(text, out var soil)) soils.Add(soil);
            else reader.NoteWord<SoilKind>(options.Soil!, text, NoSoil);
        }

        if (texts.Contains(NoSoil) && texts.Any(text => text != NoSoil))
            reader.Note(options.Soil!, "two-soils", $"`{NoSoil}` and another soil are both given", $"`{NoSoil}` says that nothing was on the part");
        return soils.Distinct().ToArray();
    }

    private OrganismTarget[] Against(KnowledgeBase kb)
    {
        var targets = new List<OrganismTarget>();
        foreach (var text in reader.Texts(options.Against))
        {
            var word = text.Trim();
            if (Words.TryParse<OrganismGroup>(word.ToLowerInvariant().Replace(' ', '-'), out var group))
            {
                targets.Add(OrganismTarget.Of(group));
                continue;
            }

            var called = kb.Data.Organisms.Where(organism => NamesOf(organism).Contains(word, StringComparer.OrdinalIgnoreCase)).ToArray();
            if (called.Length == 1) targets.Add(OrganismTarget.Of(called[0].Id));
            else NoteOrganism(kb, word, called);
        }

        return targets.Distinct().ToArray();
    }

    private void NoteOrganism(KnowledgeBase kb, string word, Organism[] called)
    {
        if (called.Length > 1)
        {
            reader.Note(options.Against!, "several-organisms", $"`{word}` is the name of several organisms", "name one of them: " + string.Join(", ", called.Select(organism => $"`{organism.Id}`")));
            return;
        }

        var known = kb.Data.Organisms.SelectMany(NamesOf).Concat(Words.All<OrganismGroup>()).DistinctBy(name => name.ToLowerInvariant()).ToDictionary(name => name.ToLowerInvariant());
        var near = NearestNames.Of(word.ToLowerInvariant(), known.Keys).Select(name => $"`{known[name]}`").ToArray();
        var help = near.Length > 0 ? "did you mean " + string.Join(" or ", near) + "?" : $"name an organism or one of the groups: {string.Join(", ", Words.All<OrganismGroup>())}";
        reader.Note(options.Against!, "unknown-organism", $"no organism is called `{word}`", help);
    }

    private string? Cloth()
    {
        if (reader.Text(options.Cloth) is not { } text) return null;
        var word = text.Trim();
        if (word.Length > 0 && !word.Contains(' ')) return word.ToLowerInvariant();
        reader.Note(options.Cloth!, "bad-cloth", $"`{text}` is no word for a cloth", "name what it is made of in one word: `cotton`, `cellulose`, `polyester`");
        return null;
    }

    private static IEnumerable<string> NamesOf(Organism organism) => organism.AlsoCalled.Append(organism.Name).Append(organism.Id.Value).Distinct(StringComparer.OrdinalIgnoreCase);
}
