using Compat.Validation;

namespace Compat.Curation.Reviewing;

/// <summary>Asks for everything that can touch a part, with each soil on it and with none, what is needed, on both sides.</summary>
internal static class NeedReach
{
    public static void Look(ReachSides sides, FactList found)
    {
        if (!sides.AnyEdited(RecordKind.Need)) return;
        foreach (var contact in Enum.GetValues<TouchedBy>())
        {
            var plain = "";
            foreach (var soil in Enum.GetValues<SoilKind>().Select(one => (SoilKind?)one).Prepend(null))
            {
                var question = new Question { TouchedBy = contact, Soil = soil is { } one ? [one] : [] };
                var (was, now) = (NeedMaker.Of(sides.Before, question), NeedMaker.Of(sides.After, question));
                if (was.Level == now.Level && was.KeptDry == now.KeptDry && was.CleanFirst == now.CleanFirst) continue;
                var said = $"it needs {Said(now)}, before {Said(was)}";
                if (soil is null) plain = said;
                else if (said == plain) continue;
                var loosened = now.KeptDry != was.KeptDry ? was.KeptDry || was.Level is not null : now.Level < was.Level || (was.Level is not null && now.Level is null) || (was.CleanFirst && !now.CleanFirst);
                var records = was.DecidedByRules.Concat(now.DecidedByRules).Select(id => id.Value);
                found.Add(RecordKind.Need, loosened ? ChangeKind.Loosened : ChangeKind.Tightened, $"{(soil is null ? "" : "soiled, ")}{said}",
                    new FactPlace(Words.Of(contact), soil is { } known ? Words.Of(known) : null), found.Causes(RecordKind.Need, records, []));
            }
        }
    }

    private static string Said(Need need) =>
        need.KeptDry ? "to be kept dry" : (need.Level is { } level ? Words.Of(level) : "what nobody wrote down") + (need.CleanFirst ? ", cleaned first" : "");
}
