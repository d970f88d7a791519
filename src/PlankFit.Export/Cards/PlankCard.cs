using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Cards;

/// <summary>All that the bench needs of one plank, in a band across the sheet: whole to scale, its two ends larger, figures and notes.</summary>
internal static class PlankCard
{
    private const double HeaderMm = 8.5;
    private const double StripMm = 37;
    private const double MostOfStripMm = 10.5;
    private const double ArrowMm = 20;

    public static void Draw(
        SheetCanvas pad,
        Box card,
        Plank plank,
        PlankLayerPlan layer,
        PlanShown shown
    )
    {
        BottomPlan plan = shown.Plan;
        LengthUnit unit = plan.Job.Units;
        Header(pad, card, plank, layer, unit);
        Box below = card with { Top = card.Top - HeaderMm };
        if (plank.IsRefused)
        {
            RefusedCard.Draw(pad, below, plank, layer, unit);
            return;
        }

        CardNotes notes = Notes(plank, layer, shown, below with { Top = below.Top - StripMm });
        double words = notes.FootMm;
        notes.DrawFoot(pad, card);

        // The words across the foot take their room from the picture, which can be smaller; the figures cannot.
        double strip = StripMm - Math.Min(words, MostOfStripMm);
        Strip(pad, below with { Bottom = below.Top - strip }, plank, unit);
        Box foot = below with { Top = below.Top - strip, Bottom = below.Bottom + words };
        Foot(pad, foot, plank, layer, notes, unit);
    }

    private static void Header(
        SheetCanvas pad,
        Box card,
        Plank plank,
        PlankLayerPlan layer,
        LengthUnit unit
    )
    {
        double y = card.Top - 6.5;
        pad.Text(card.Left, y, plank.Id.ToString(), Letters.Name, bold: true);
        double x = card.Left + Letters.Width(plank.Id.ToString(), Letters.Name, true) + 4;
        string what =
            $"{PlankWords.Of(plank.Side)}, layer {layer.Code} {layer.Spec.Name}, {PlankWords.Of(plank.Kind)}, "
            + $"{LengthText.ForPaper(layer.Spec.ThicknessMm, unit)} thick";
        string size = plank.IsRefused
            ? RefusedBend.Mark
            : $"to saw {LengthText.ForPaper(plank.CutLengthMm, unit, RoundTo.Up)}"
                + $"   net {LengthText.ForPaper(plank.NetLengthMm, unit, RoundTo.Up)}";
        double sizeAt = card.Right - Letters.Width(size, Letters.Heading, true);
        pad.Text(sizeAt, y, size, Letters.Heading, bold: true);
        pad.Text(x, y, Letters.Shortened(what, Letters.Bench, sizeAt - x - 3), Letters.Bench);
        pad.Line(card.Left, y - 2, card.Right, y - 2, Pens.Rule);
    }

    /// <summary>The whole plank to scale, with what is measured along it.</summary>
    private static void Strip(SheetCanvas pad, Box strip, Plank plank, LengthUnit unit)
    {
        Box cut = Box.Around(plank.FlatCut),
            room =
                new(
                    strip.Left + 2,
                    strip.Bottom + 11.6,
                    strip.Right - ArrowMm - 14,
                    strip.Top - 6.6
                );
        var ratio = Ratio.Fitting(cut, room.Width, room.Height, unit);
        var at = Placing.Centred(cut, room, ratio.Factor, ratio.Factor);
        BuiltShape.Draw(pad, plank, at, strip, 1.8);
        TickLabels(pad, plank, at);
        EdgeNames(pad, plank, at, room);
        Vec2 left = at[new(cut.Left, cut.Bottom)],
            right = at[new(cut.Right, cut.Bottom)];
        PlankEdge lower = plank.Side == Side.Starboard ? plank.ForwardEdge : plank.AfterEdge;
        DimensionLine.Across(
            pad,
            left.X,
            right.X,
            left.Y - (lower.Exists ? 8.6 : 4.5),
            LengthText.PaperNumber(plank.CutLengthMm, unit, RoundTo.Up)
        );
        WidthFigures.Draw(pad, plank, at, unit);
        Vec2 arrow = new(strip.Right - (ArrowMm / 2), room.Middle.Y);
        ForwardArrow.Draw(pad, arrow, BuiltShape.Paper(ForwardArrow.OnFlat(plank), at), 11);
        pad.Text(arrow - new Vec2(0, 8.5), "forward", Letters.Small, Anchor.MiddleCentre);
        pad.Text(
            new(strip.Right, strip.Top - 3),
            $"outer face up, {ratio}",
            Letters.Small,
            Anchor.MiddleRight
        );
    }

    private static void TickLabels(SheetCanvas pad, Plank plank, Placing at)
    {
        double last = double.NegativeInfinity;
        bool lastUpper = false;
        foreach (PlankMark mark in plank.Marks.OrderBy(m => m.Inward.Y < 0).ThenBy(m => m.At.X))
        {
            Vec2 place = at[mark.At] - (2.35 * BuiltShape.Paper(mark.Inward, at));
            bool upper = mark.Inward.Y < 0;
            double half = Letters.Width(mark.Label, Letters.Small) / 2;
            // Labels that would run into each other are left to the full-size pattern.
            if (upper == lastUpper && place.X - half < last + 0.8)
            {
                continue;
            }

            pad.Text(place, mark.Label, Letters.Small, Anchor.MiddleCentre);
            (last, lastUpper) = (place.X + half, upper);
        }
    }

    private static void EdgeNames(SheetCanvas pad, Plank plank, Placing at, Box room)
    {
        Name(plank.ForwardEdge, "forward edge", plank.Side == Side.Port);
        Name(plank.AfterEdge, "after edge", plank.Side == Side.Starboard);

        void Name(PlankEdge edge, string name, bool upper)
        {
            if (!edge.Exists)
            {
                return;
            }

            string text = edge.Neighbour is null ? name : $"{name}, against {edge.Neighbour}";
            double half = Letters.Width(text, Letters.Small) / 2,
                x = Math.Clamp(
                    at[0.5 * (edge.Flat[0] + edge.Flat[^1])].X,
                    room.Left + half,
                    room.Right - half
                ),
                y = upper ? edge.Flat.Max(p => at[p].Y) + 5.3 : edge.Flat.Min(p => at[p].Y) - 5.3;
            pad.Text(new(x, y), text, Letters.Small, Anchor.MiddleCentre);
        }
    }

    private static void Foot(
        SheetCanvas pad,
        Box foot,
        Plank plank,
        PlankLayerPlan layer,
        CardNotes notes,
        LengthUnit unit
    )
    {
        double thickness = layer.Spec.ThicknessMm;
        (double detail, double column) = Columns(plank);
        EndDetail.Draw(
            pad,
            foot with
            {
                Right = foot.Left + detail,
            },
            plank,
            false,
            thickness,
            unit
        );
        EndDetail.Draw(pad, foot with { Left = foot.Right - detail }, plank, true, thickness, unit);
        double x = foot.Left + detail + 3;
        foreach (PlankEnd end in plank.Ends)
        {
            double here = column + (plank.Ends.Length > 2 ? Wider(plank, end) : 0);
            EndFigures.Draw(
                pad,
                foot with
                {
                    Left = x,
                    Right = x + here - 3,
                },
                plank,
                end,
                thickness,
                unit
            );
            x += here;
        }

        notes.DrawColumn(pad, foot with { Left = x, Right = foot.Right - detail - 3 });
    }

    /// <summary>Widths of the picture of an end and of the figures of one: where a plank has more than two ends their figures need the room more, mm.</summary>
    private static (double Detail, double Column) Columns(Plank plank) =>
        plank.Ends.Length switch
        {
            <= 2 => (58.0, 52.0),
            3 => (46.0, 46.0),
            _ => (42.0, 39.0),
        };

    private static CardNotes Notes(Plank plank, PlankLayerPlan layer, PlanShown shown, Box foot)
    {
        BottomPlan plan = shown.Plan;
        (double detail, double column) = Columns(plank);
        return CardNotes.Of(
            [.. PlankNotes.Of(layer, plank, plan.Job.Units), .. EdgeLines(plank, plan.Job.Units)],
            PartNotes.OnCard(shown, plank),
            foot.Width - (2 * (detail + 3)) - (column * plank.Ends.Length),
            foot.Height,
            foot.Width
        );
    }

    /// <summary>A bevelled end has more to say than one without: it takes room from those, mm.</summary>
    private static double Wider(Plank plank, PlankEnd end)
    {
        const double MostMm = 10;
        int bevelled = plank.Ends.Count(IsBevelled),
            plain = plank.Ends.Length - bevelled;
        double each = Math.Min(MostMm, bevelled == 0 ? 0 : 5.0 * plain / bevelled);
        return IsBevelled(end) ? each
            : plain == 0 ? 0
            : -each * bevelled / plain;
    }

    private static bool IsBevelled(PlankEnd end) =>
        Math.Abs(end.BevelDegrees) >= EndReading.SquareWithinDegrees;

    /// <summary>How far out an edge stands that is not straight, for both.</summary>
    private static IEnumerable<string> EdgeLines(Plank plank, LengthUnit unit)
    {
        string every = LengthText.ForPaper(EdgeOffset.SpacingMm(unit), unit);
        (string Name, PlankEdge Edge)[] edges =
        [
            ("forward edge", plank.ForwardEdge),
            ("after edge", plank.AfterEdge),
        ];
        return edges
            .Where(e => !plank.StraightEdges && e.Edge.Exists)
            .Select(e =>
                $"{e.Name}, out from the line every {every}: {string.Join("; ", EdgeOffset.Of(plank, e.Edge, unit).Select(o => LengthText.PaperNumber(o.OutMm, unit)))}"
            );
    }
}
