using System.Collections.Immutable;
using PlankFit.Export.Cards;
using PlankFit.Export.Framing;
using PlankFit.Export.Joints;
using PlankFit.Export.Sheets;
using PlankFit.Export.Shown;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Bending;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Patterns;

/// <summary>
/// A plank in true size on one long page, outer face up: outlines, the lines where each face ends, witness ticks, a check square, and what to mind. One plank a
/// page, to be plotted on a roll or cut up into tiles.
/// </summary>
public static class FullSizePattern
{
    private const double MarginMm = 12;
    private const double FootMm = 34;
    private const double LeastPageMm = 170;

    /// <summary>One page a plank for a layer and side, or a pair of planks to starboard; none for a port plank that its starboard twin's serves.</summary>
    public static ImmutableArray<Drawing> Of(PlanShown shown, PlankLayerPlan layer, Side side) =>
        [.. DrawnPlanks.Of(shown, layer, side).Select(d => Page(shown, layer, d.Plank, d.Twin))];

    /// <summary>The same planks for cutting up into pages.</summary>
    public static ImmutableArray<Drawing> AllBare(
        PlanShown shown,
        PlankLayerPlan layer,
        Side side
    ) => [.. DrawnPlanks.Of(shown, layer, side).Select(d => Bare(shown, layer, d.Plank, d.Twin))];

    /// <summary>The same of what is drawn.</summary>
    public static ImmutableArray<Drawing> Of(
        DrawnSides drawn,
        BottomPlan panel,
        PlankLayerPlan layer,
        Side side
    ) =>
        [.. drawn.On(layer, side).Select(d => Page(drawn.Shown.On(panel), layer, d.Plank, d.Twin))];

    /// <summary>For cutting up into pages.</summary>
    public static ImmutableArray<Drawing> AllBare(
        DrawnSides drawn,
        BottomPlan panel,
        PlankLayerPlan layer,
        Side side
    ) =>
        [.. drawn.On(layer, side).Select(d => Bare(drawn.Shown.On(panel), layer, d.Plank, d.Twin))];

    /// <summary>One plank in true size with its name and marks alone, for cutting up into pages that bring their own check squares and notes.</summary>
    public static Drawing Bare(
        PlanShown shown,
        PlankLayerPlan layer,
        Plank plank,
        PlankId? twin = null
    )
    {
        BottomPlan plan = shown.Plan;
        var box = Box.Around(plank.FlatCut);
        var pad = new SheetCanvas();
        var at = new Placing(1, 1, new Vec2(MarginMm - box.Left, MarginMm - box.Bottom));
        // Room for the words of a piece too small to hold them.
        double width = Math.Max(box.Width + (2 * MarginMm), LeastPageMm),
            height = box.Height + (2 * MarginMm);
        Shape(pad, shown, plank, at, width, height);
        return WithLongDashes(
            pad.Done(
                $"{PlanWords.Headed(plan.Job)}: {plank.Id}{Turned(twin)}, {SheetWords.Of(plank.Side, layer)}, full size",
                width,
                height
            )
        );
    }

    /// <summary>One plank's page.</summary>
    public static Drawing Page(
        PlanShown shown,
        PlankLayerPlan layer,
        Plank plank,
        PlankId? twin = null
    )
    {
        BottomPlan plan = shown.Plan;
        bool metric = LengthUnits.IsMetric(plan.Job.Units);
        var box = Box.Around(plank.FlatCut);
        double square = PatternSquares.MetricMm + (metric ? 0 : 110);
        double width = Math.Max(box.Width + (2 * MarginMm), square + 150),
            left = MarginMm;
        double beside = left + square + 8;

        // Written to nowhere first, to know how much room the words ask for: none may be left out.
        double written = -Words(
            new SheetCanvas(),
            shown,
            layer,
            plank,
            beside,
            0,
            width - MarginMm - beside
        );
        double band = Math.Max(PatternSquares.MetricMm, written);
        double height = box.Height + (2 * MarginMm) + FootMm + band + 10;
        var pad = new SheetCanvas();
        pad.Rectangle(new(4, 4, width - 4, height - 4), Pens.Rule);
        var at = new Placing(
            1,
            1,
            new Vec2(left - box.Left, MarginMm + FootMm + band + 10 - box.Bottom)
        );
        Shape(pad, shown, plank, at, width, height);
        PatternSquares.Draw(pad, metric, left, MarginMm + FootMm);
        Words(
            pad,
            shown,
            layer,
            plank,
            beside,
            MarginMm + FootMm + band,
            width - MarginMm - beside
        );
        pad.Paragraph(
            left,
            MarginMm + FootMm - 6,
            width - (2 * MarginMm),
            Cautions.Pattern,
            Letters.Bench
        );
        if (twin is { } other)
        {
            TwinSketch(pad, new(left, 6, left + 90, MarginMm + FootMm - 22), plank, other);
        }

        Drawing page = pad.Done(
            $"{plan.Job.Name}: pattern of {plank.Id}{Turned(twin)}, full size",
            width,
            height
        );
        return WithLongDashes(
            page with
            {
                Shapes = SettledWords.Of(page.Shapes, [new(4, 4, width - 4, height - 4)]),
            }
        );
    }

    private static string Turned(PlankId? twin) =>
        twin is { } other ? $", and of {other} turned over" : "";

    /// <summary>The port plank on its own outer face, which is the sheet's other side.</summary>
    private static void TwinSketch(SheetCanvas pad, Box on, Plank plank, PlankId twin)
    {
        var cut = Box.Around(plank.FlatCut);
        Box room = on with { Right = on.Left + 60 };
        double factor = Math.Min(room.Width / cut.Width, room.Height / cut.Height);
        var at = Placing.Centred(cut, room, factor, -factor);
        pad.Closed(at.Of(Thinning.Closed(plank.FlatCut, 0.05 / factor)), Pens.Outer, Layers.Marks);
        ForwardArrow.Draw(
            pad,
            new(room.Right + 6, room.Middle.Y),
            BuiltShape.Paper(ForwardArrow.OnFlat(plank), at),
            8
        );
        pad.Text(
            new(room.Right + 14, room.Middle.Y),
            $"{twin}: turn the sheet over; prick the corners and lines through",
            Letters.Bench,
            Anchor.MiddleLeft,
            true
        );
    }

    /// <summary>Lines a plank long are dashed thrice as long as on a card: they read better so, and a page has a third of the strokes.</summary>
    private static Drawing WithLongDashes(Drawing page) =>
        page with
        {
            Shapes =
            [
                .. page.Shapes.Select(s =>
                    s.Pen.IsDashed
                        ? s with
                        {
                            Pen = s.Pen with { DashesMm = [.. s.Pen.DashesMm.Select(d => 3 * d)] },
                        }
                        : s
                ),
            ],
        };

    private static void Shape(
        SheetCanvas pad,
        PlanShown shown,
        Plank plank,
        Placing at,
        double width,
        double height
    )
    {
        BottomPlan plan = shown.Plan;
        BuiltShape.Draw(pad, plank, at, new(0, 0, width, height), 12);
        pad.Add(JointMarks.Of(plan, plank, at.Origin));
        foreach (PlankMark mark in plank.Marks)
        {
            pad.Text(
                at[JointMarks.Clear(plan, plank, mark.At + (16 * mark.Inward))],
                mark.Label,
                Letters.Heading,
                Anchor.MiddleCentre
            );
        }

        Name(pad, shown, plank, at);
        pad.Add(shown.Added.SelectMany(a => a.Signs(plank, at.Origin)));
        pad.Add(FramingMarks.Of(plan, plank, at.Origin, pad.Shapes));
        pad.Add(EndLineNames.Of(plank, at.Origin, pad.Shapes));
    }

    private static void Name(SheetCanvas pad, PlanShown shown, Plank plank, Placing at)
    {
        PlankPiece? piece = JointMarks.Longest(shown.Plan, plank);
        string name =
            (piece?.Id ?? PieceId.Whole(plank.Id)).ToString()
            + (plank.IsRefused ? $": {RefusedBend.Mark}" : "");
        Vec2 middle = Interior.DeepestPoint(piece?.Net ?? plank.FlatNet, out double room);
        double height = plank.IsRefused
            ? Math.Clamp(room / 2.5, 4, 25)
            : Math.Clamp(room / 4, 2.5, 12);
        middle = ClearPlace.Of(
            plank,
            shown.Added,
            middle,
            new(Letters.Width(name, height, true) / 2, height / 2)
        );
        pad.Text(at[middle], name, height, Anchor.MiddleCentre, bold: true);
        PatternArrow.Draw(
            pad,
            plank,
            piece?.Cut ?? plank.FlatCut,
            at,
            middle,
            Letters.Width(name, height, true)
        );
    }

    /// <summary>All that is said of the plank, from a top down; returns where the words end.</summary>
    private static double Words(
        SheetCanvas pad,
        PlanShown shown,
        PlankLayerPlan layer,
        Plank plank,
        double left,
        double top,
        double width
    )
    {
        BottomPlan plan = shown.Plan;
        LengthUnit unit = plan.Job.Units;
        top = pad.Paragraph(left, top, width, PlanWords.Headed(plan.Job), Letters.Heading, true);
        top =
            pad.Paragraph(
                left,
                top,
                width,
                $"{plank.Id}: {SheetWords.Of(plank.Side, layer)}. True size.",
                Letters.Heading,
                true
            ) - 2;
        if (plank.IsRefused)
        {
            top = pad.Paragraph(left, top, width, RefusedBend.ToDo + ".", Letters.Heading, true);
        }

        string[] said =
        [
            LengthText.PaperToleranceText(unit)
                + $" Outlines are drawn within {(LengthUnits.IsMetric(unit) ? "0.02 mm" : "a thousandth of an inch")}.",
            $"Overall {LengthText.ForPaper(plank.CutLengthMm, unit, RoundTo.Up)}; net {LengthText.ForPaper(plank.NetLengthMm, unit, RoundTo.Up)} along its middle.",
            .. plank.Ends.Select(e =>
                EndWords.Sentence(plank, e, layer.Planks.ThicknessMm, unit) + "."
            ),
            .. JointWords.Sentences(plan, plank),
            PlankWords.Edges(plank, unit),
            .. FramingWords.OnPattern(plan, plank),
            .. shown.Added.SelectMany(a => a.OnPattern(plank)),
            $"Thick line: saw. Long dashes: net outline, the edge of the {layer.Panel.Name}. At a bevelled end the full thin line is where the outer face ends, the short-dashed one the inner.",
        ];
        foreach (string line in said)
        {
            top = pad.Paragraph(left, top, width, line, Letters.Bench);
        }

        return top;
    }
}
