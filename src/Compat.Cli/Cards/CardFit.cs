namespace Compat.Cli.Cards;

/// <summary>Finds the largest type in which a card fits one A4 page. Lengths are in points, 1/72 inch.</summary>
internal static class CardFit
{
    /// <summary>The largest type of the lines.</summary>
    public const double Largest = 15;

    /// <summary>The smallest type of the lines that is still read at arm's length; a card that does not fit in it is none.</summary>
    public const double Smallest = 9;

    /// <summary>The smallest type of the foot.</summary>
    public const double SmallestFoot = 8;

    /// <summary>The margin of the page on every side, in millimetres.</summary>
    public const int MarginMillimetres = 10;

    /// <summary>The height of a line, as a multiple of its type.</summary>
    public const double LineHeight = 1.2;

    /// <summary>The type of the title, as a multiple of that of the lines.</summary>
    public const double Title = 1.6;

    /// <summary>The type of a heading.</summary>
    public const double Heading = 1.2;

    /// <summary>The space before a section.</summary>
    public const double SectionSpace = 0.4;

    /// <summary>The space within the frame of a section, on every side.</summary>
    public const double Padding = 0.3;

    /// <summary>The frame of a section, in points; that of what is never done is what one sees first.</summary>
    public const double Frame = 1, NeverFrame = 4;

    /// <summary>The space before a line.</summary>
    public const double LineSpace = 0.18;

    /// <summary>How far a line is set in, a detail twice that.</summary>
    public const double Indent = 1.4;

    private const double PointsPerMillimetre = 72 / 25.4;
    private const double Width = (210 - (2 * MarginMillimetres)) * PointsPerMillimetre;

    /// <summary>The height of the page, less a line for what browsers round.</summary>
    private const double Height = ((297 - (2 * MarginMillimetres)) * PointsPerMillimetre) - 9;

    /// <summary>The type in which it fits; null where it does not in the smallest.</summary>
    public static double? Of(WardCard card)
    {
        for (var size = Largest; size >= Smallest; size -= 0.25)
            if (HeightOf(card, size) <= Height) return size;
        return null;
    }

    /// <summary>The type of the foot beside lines of a type.</summary>
    public static double Foot(double size) => Math.Max(SmallestFoot, size * 0.7);

    /// <summary>How much too high a card is in the smallest type, as a share of the page.</summary>
    public static double Over(WardCard card) => (HeightOf(card, Smallest) / Height) - 1;

    private static double HeightOf(WardCard card, double size) =>
        LinesOf(card.Title, "", size * Title, 0) + LinesOf("", card.Under, size, 0) + card.Sections.Sum(section => HeightOf(section, size));

    private static double HeightOf(CardSection section, double size)
    {
        var foot = section.Part == CardPart.Foot;
        var type = foot ? Foot(size) : size;
        var frame = foot ? 0 : 2 * (section.Part == CardPart.Never ? NeverFrame : Frame);
        var inner = foot ? 0 : 2 * Padding * type;
        return (SectionSpace * type) + inner + frame + LinesOf(section.Heading, "", type * (foot ? 1 : Heading), inner + frame)
            + section.Lines.Sum(line => (LineSpace * type) + LinesOf(line.Lead, line.Text, type, inner + frame + ((line.IsDetail ? 2 : 1) * Indent * type)));
    }

    /// <summary>The height of text in a type on a page less what is taken off its width.</summary>
    private static double LinesOf(string lead, string text, double type, double less) =>
        lead.Length + text.Length == 0 ? 0 : TextWidth.Lines(lead, text, (Width - less) / type) * type * LineHeight;
}
