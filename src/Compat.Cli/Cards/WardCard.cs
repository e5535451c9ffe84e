namespace Compat.Cli.Cards;

/// <summary>What a part of a card is for; it decides how large it is written.</summary>
internal enum CardPart
{
    /// <summary>What to use, and how.</summary>
    Use,

    /// <summary>What never to use, and what then happens.</summary>
    Never,

    /// <summary>What the card does not make safe.</summary>
    NotDone,

    /// <summary>Cautions and where it comes from, in small type.</summary>
    Foot,
}

/// <summary>A line of a card.</summary>
/// <param name="Lead">What it is about, in bold; empty where there is nothing.</param>
/// <param name="Text">The rest of it.</param>
/// <param name="IsDetail">Whether it belongs to the line above it.</param>
internal sealed record CardLine(string Lead, string Text, bool IsDetail = false);

/// <summary>A part of a card under its heading.</summary>
/// <param name="Part">What it is for.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Lines">Its lines; at least one.</param>
internal sealed record CardSection(CardPart Part, string Heading, IReadOnlyList<CardLine> Lines);

/// <summary>A card for the ward: one page for one device. All of it is text; how it is laid out is decided by <see cref="CardFit"/> and written by <see cref="CardHtml"/>.</summary>
/// <param name="Title">What it is for.</param>
/// <param name="Under">What stands below the title.</param>
/// <param name="Sections">Its parts, from top to bottom.</param>
internal sealed record WardCard(string Title, string Under, IReadOnlyList<CardSection> Sections);
