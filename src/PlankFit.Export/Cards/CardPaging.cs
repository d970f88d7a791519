using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>A card, or the words that had no room on it, and how high it stands on its page.</summary>
/// <param name="Rest">What goes on from the page before; null for the card itself.</param>
internal sealed record PagedCard(
    CardSubject Of,
    CardLayout Layout,
    double HeightMm,
    CardNotes? Rest = null
)
{
    public void Draw(SheetCanvas pad, Box card, LengthUnit unit)
    {
        if (Rest is null)
        {
            PlankCard.Draw(pad, card, Of, Layout, unit);
        }
        else
        {
            PlankCard.DrawRest(pad, card, Of, Rest);
        }
    }
}

/// <summary>Two cards to a page while both have room, one where they have not, and a page more for words that have none on a whole one.</summary>
internal static class CardPaging
{
    /// <summary>Above and below a card, together.</summary>
    public const double AroundMm = 2;

    /// <param name="widthMm">Of a card.</param>
    /// <param name="pageMm">As high as the page's inside is.</param>
    public static IEnumerable<ImmutableArray<PagedCard>> Of(
        IEnumerable<CardSubject> subjects,
        double widthMm,
        double pageMm,
        LengthUnit unit
    )
    {
        double half = pageMm / 2;
        PagedCard? waiting = null;
        foreach (PagedCard card in subjects.SelectMany(s => Cards(s, widthMm, pageMm, unit)))
        {
            if (waiting is null)
            {
                waiting = card;
            }
            else if (waiting.HeightMm + card.HeightMm > pageMm + 1e-9)
            {
                yield return [waiting];
                waiting = card;
            }
            else
            {
                // Half each, unless one of them asks for more.
                double first = Math.Max(waiting.HeightMm, Math.Min(half, pageMm - card.HeightMm));
                yield return
                [
                    waiting with
                    {
                        HeightMm = first,
                    },
                    card with
                    {
                        HeightMm = pageMm - first,
                    },
                ];
                waiting = null;
            }
        }

        if (waiting is not null)
        {
            yield return [waiting with { HeightMm = Math.Max(half, waiting.HeightMm) }];
        }
    }

    private static IEnumerable<PagedCard> Cards(
        CardSubject of,
        double widthMm,
        double pageMm,
        LengthUnit unit
    )
    {
        var layout = CardLayout.Of(of, widthMm, (pageMm / 2) - AroundMm, unit);
        double most = pageMm - AroundMm,
            over = layout.NeededMm - most;
        ImmutableArray<string> foot = layout.Notes.Foot;
        int here =
            over <= 0
                ? foot.Length
                : Math.Min(foot.Length, CardNotes.LinesIn(layout.Notes.FootMm - over));
        layout = layout with { Notes = layout.Notes with { Foot = foot[..here] } };
        yield return new(of, layout, Math.Min(pageMm, layout.NeededMm + AroundMm));
        int lines = CardNotes.LinesIn(most - CardLayout.HeaderMm);
        for (int at = here; at < foot.Length; at += lines)
        {
            CardNotes rest = new([], foot[at..Math.Min(foot.Length, at + lines)]);
            yield return new(of, layout, CardLayout.HeaderMm + rest.FootMm + AroundMm, rest);
        }
    }
}
