namespace Compat.Deciding;

/// <summary>A reason with all the pieces in which it holds.</summary>
internal sealed class ReasonGroup(Reason reason)
{
    public static IComparer<ReasonGroup> MostTellingFirst { get; } = new Order();

    public Reason Reason { get; } = reason;

    public List<Piece> Pieces { get; } = [];

    /// <summary>Whether it forbids every choice by itself.</summary>
    public bool ForbidsAll { get; set; }

    /// <summary>The reasons of some pieces, each once, in the order in which they are first met.</summary>
    public static List<ReasonGroup> Of(IReadOnlyList<Piece> pieces)
    {
        var groups = new List<ReasonGroup>();
        var byText = new Dictionary<string, ReasonGroup>(StringComparer.Ordinal);
        foreach (var piece in pieces)
        {
            foreach (var reason in piece.Decision.Reasons)
            {
                var text = Text(reason);
                if (!byText.TryGetValue(text, out var group))
                {
                    byText[text] = group = new ReasonGroup(reason);
                    groups.Add(group);
                }

                group.Pieces.Add(piece);
            }
        }

        return groups;
    }

    private static string Text(Reason reason) =>
        ((int)reason.Code).ToString(System.Globalization.CultureInfo.InvariantCulture) + "|" + reason.Component + "|" + reason.Member + "|" + string.Join("|", reason.Arguments);

    private sealed class Order : IComparer<ReasonGroup>
    {
        public int Compare(ReasonGroup? x, ReasonGroup? y)
        {
            if (x!.ForbidsAll != y!.ForbidsAll) return x.ForbidsAll ? -1 : 1;
            var byCode = x.Reason.Code - y.Reason.Code;
            return byCode != 0 ? byCode : y.Pieces.Count - x.Pieces.Count;
        }
    }
}
