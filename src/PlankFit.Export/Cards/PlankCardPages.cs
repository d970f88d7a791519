using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Cards;

/// <summary>The plank cards of a whole bottom, layer by layer and side by side, two to a sheet where they have room.</summary>
public static class PlankCardPages
{
    private const double PadMm = 3;

    public static ImmutableArray<Drawing> Of(PlanShown shown) => Of(DrawnSides.Of(shown));

    public static ImmutableArray<Drawing> Of(DrawnSides drawn)
    {
        PlanShown shown = drawn.Shown;
        BottomPlan plan = shown.Plan;
        List<SheetPage> pages = [];
        foreach ((BottomPlan panel, PlankLayerPlan layer) in plan.AllPlankLayers)
        {
            foreach (Side side in Enum.GetValues<Side>())
            {
                PlanShown on = shown.On(panel);
                pages.AddRange(
                    Pages(
                        plan.Job,
                        new(
                            "Plank cards",
                            SheetWords.Of(side, layer),
                            "scale: at each drawing",
                            null,
                            Cautions.Saw
                        ),
                        $"{PlankWords.Of(side)}, {SheetWords.Of(layer)}",
                        drawn.On(layer, side).SelectMany(d => Subjects(on, layer, d))
                    )
                );
            }
        }

        return SheetPage.Numbered(plan.Job, pages);
    }

    /// <summary>One plank's card on a sheet of its own, half as high as a page of two where it has room.</summary>
    public static Drawing Single(PlanShown shown, PlankLayerPlan layer, Plank plank) =>
        Single(shown, CardSubject.Of(shown, layer, plank));

    /// <summary>The same for every plank of a side that is drawn, and each of its pieces, by name.</summary>
    public static IEnumerable<(PieceId Id, Drawing Card)> Singles(
        PlanShown shown,
        PlankLayerPlan layer,
        Side side
    ) => Singles(shown, layer, DrawnPlanks.Of(shown, layer, side));

    public static IEnumerable<(PieceId Id, Drawing Card)> Singles(
        DrawnSides drawn,
        BottomPlan panel,
        PlankLayerPlan layer,
        Side side
    ) => Singles(drawn.Shown.On(panel), layer, drawn.On(layer, side));

    private static IEnumerable<(PieceId Id, Drawing Card)> Singles(
        PlanShown shown,
        PlankLayerPlan layer,
        ImmutableArray<DrawnPlank> drawn
    ) => drawn.SelectMany(d => Subjects(shown, layer, d)).Select(s => (s.Id, Single(shown, s)));

    private static IEnumerable<CardSubject> Subjects(
        PlanShown shown,
        PlankLayerPlan layer,
        DrawnPlank drawn
    ) =>
        [
            CardSubject.Of(shown, layer, drawn.Plank, drawn.Twin),
            .. drawn.Plank.IsRefused ? [] : PieceSubject.Of(shown, layer, drawn.Plank, drawn.Twin),
        ];

    private static Drawing Single(PlanShown shown, CardSubject of)
    {
        Job job = shown.Plan.Job;
        var bench = SheetFormat.Bench(job);
        Box inside = Frame.Inside(bench);
        var layout = CardLayout.Of(
            of,
            inside.Width - (2 * PadMm),
            (inside.Height / 2) - CardPaging.AroundMm,
            job.Units
        );
        double high = Math.Max(inside.Height / 2, layout.NeededMm + CardPaging.AroundMm);
        var block = new TitleBlock(
            $"Plank card {of.Id}",
            SheetWords.Of(of.Shape.Side, of.Layer),
            "scale: at each drawing",
            null,
            Cautions.Saw
        );
        return SheetPage.Numbered(
            job,
            [
                new(
                    bench with
                    {
                        HeightMm = bench.HeightMm - inside.Height + high,
                    },
                    block,
                    (pad, on) => PlankCard.Draw(pad, Inner(on), of, layout, job.Units)
                ),
            ]
        )[0];
    }

    private static IEnumerable<SheetPage> Pages(
        Job job,
        TitleBlock block,
        string found,
        IEnumerable<CardSubject> subjects
    )
    {
        var format = SheetFormat.Bench(job);
        Box inside = Frame.Inside(format);
        return CardPaging
            .Of(subjects, inside.Width - (2 * PadMm), inside.Height, job.Units)
            .Select(cards => new SheetPage(
                format,
                block,
                (pad, on) => Cards(pad, on, cards, job.Units)
            )
            {
                FoundBy =
                [
                    found,
                    string.Join(
                        ", ",
                        cards
                            .SelectMany(c =>
                                new PieceId?[] { c.Of.Id, c.Of.Twin }.OfType<PieceId>()
                            )
                            .Distinct()
                    ),
                ],
            });
    }

    private static Box Inner(Box row) =>
        new(row.Left + PadMm, row.Bottom + 1, row.Right - PadMm, row.Top - 1);

    private static void Cards(
        SheetCanvas pad,
        Box inside,
        ImmutableArray<PagedCard> cards,
        LengthUnit unit
    )
    {
        double top = inside.Top;
        foreach (PagedCard card in cards)
        {
            if (top < inside.Top)
            {
                pad.Line(inside.Left, top, inside.Right, top, Pens.Frame);
            }

            card.Draw(pad, Inner(inside with { Top = top, Bottom = top - card.HeightMm }), unit);
            top -= card.HeightMm;
        }
    }
}
