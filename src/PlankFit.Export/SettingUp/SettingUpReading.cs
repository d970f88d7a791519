using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.SettingUp;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.SettingUp;

/// <summary>The first page: what bevels, deductions and the corner are, in sketches.</summary>
internal static class SettingUpReading
{
    private const double TopMm = 8;

    public static SheetPage Page(Job job, SettingUpPlan plan) =>
        new(
            SheetFormat.Bench(job),
            new(
                "Setting up",
                "how to read these sheets, and the full-size sections",
                "sketches, not to scale",
                null,
                Cautions.SettingUp
            ),
            (pad, inside) => Draw(pad, inside.Within(4), job, plan)
        );

    private static void Draw(SheetCanvas pad, Box box, Job job, SettingUpPlan plan)
    {
        double third = (box.Width - 16) / 3;
        Box Column(int i) =>
            new(
                box.Left + (i * (third + 8)),
                box.Bottom,
                box.Left + (i * (third + 8)) + third,
                box.Top
            );
        Bevel(
            pad,
            Column(0),
            true,
            "Under bevel (shut)",
            "The angle between the marked face and the edge is less than square. Saw to the mould line, then plane from it to the fall at the other face. Frames set with this face on the line waste nothing and want nothing."
        );
        Bevel(
            pad,
            Column(1),
            false,
            "Standing bevel (open)",
            "The angle is more than square: wood must stand beyond the mould line at the other face. Saw the frame full by the fall, then plane. A mould that is not bevelled at all stands so: planking bears on the marked corner only, which is on the line."
        );
        Corner(pad, Column(2), job, plan);
    }

    /// <summary>A frame's edge cut across: its two faces upright, planking below.</summary>
    private static void Bevel(SheetCanvas pad, Box box, bool under, string head, string words)
    {
        pad.Text(box.Left, box.Top - Letters.Heading, head, Letters.Heading, bold: true);
        double top = box.Top - TopMm - 8,
            left = box.Left + 24,
            right = left + 32,
            foot = top - 62,
            fall = under ? 11 : -11;

        // The marked face is the left one; the edge runs to the other face, up where wood comes off.
        Vec2 marked = new(left, foot),
            other = new(right, foot + fall);
        pad.Closed([new(left, top), marked, other, new(right, top)], Pens.Tick, fill: 0.93);
        pad.Line(left, top + 3, left, foot - 18, Pens.Station);
        Vec2 run = (other - marked).Unit(),
            skin = -1 * run.Left();
        pad.Closed(
            [
                marked - (20 * run),
                other + (20 * run),
                other + (20 * run) + (6 * skin),
                marked - (20 * run) + (6 * skin),
            ],
            Pens.Outer
        );
        pad.Line(left, foot, right + 6, foot, Pens.Inner);
        DimensionLine.Up(pad, right + 4, Math.Min(foot, foot + fall), Math.Max(foot, foot + fall));
        pad.Text(new(right + 7, foot + (fall / 2)), "fall", Letters.Bench, Anchor.MiddleLeft, true);
        pad.Dot(marked, 0.9);
        pad.Text(new(left - 2, top - 8), "marked face,", Letters.Small, Anchor.BaselineRight);
        pad.Text(new(left - 2, top - 12), "on the line", Letters.Small, Anchor.BaselineRight);
        pad.Text(new(right + 2, top - 8), "other face", Letters.Small);
        pad.Text(
            new(left - 3, foot + (under ? 4 : 7)),
            "mould line",
            Letters.Small,
            Anchor.BaselineRight
        );
        pad.Text(new((left + right) / 2, top - 20), "frame", Letters.Bench, Anchor.BaselineCentre);
        double below = pad.Paragraph(box.Left, foot - 34, box.Width, words, Letters.Bench);
        if (under)
        {
            pad.Paragraph(
                box.Left,
                below - 4,
                box.Width,
                "\"By bevel\" chooses at each station the face from which the hull narrows, at half its girth. A bevel that changes from under to standing along one frame is as the hull has it.",
                Letters.Bench
            );
        }
        else
        {
            pad.Paragraph(
                box.Left,
                below - 4,
                box.Width,
                "Bevels and falls are measured square to the mould line. The words under and standing, shut and open, are the trade's (from memory).",
                Letters.Bench
            );
        }
    }

    private static void Corner(SheetCanvas pad, Box box, Job job, SettingUpPlan plan)
    {
        pad.Text(
            box.Left,
            box.Top - Letters.Heading,
            "The corner at the chine",
            Letters.Heading,
            bold: true
        );
        if (plan.Chine.IsEmpty)
        {
            pad.Paragraph(
                box.Left,
                box.Top - TopMm - 4,
                box.Width,
                "No topside is named in the job, so there is no corner. Give [setting-up] topside with its thickness, which skin laps which, and how it stands: a line of the offsets, or its flare.",
                Letters.Bench
            );
            return;
        }

        ChinePlace place = plan.Chine[plan.Chine.Length / 2];
        ChineCorner c = place.Corner;
        double bottom = c.BottomMm,
            reach = 3.2 * Math.Max(bottom, c.TopsideMm),
            along = Math.Max(reach, 1.5 * (plan.Spec.ChinePiece?.WidthMm ?? 0)),
            above = Math.Max(reach, 1.5 * (plan.Spec.ChinePiece?.UpMm ?? 0));

        // Down is out of the hull: z turned over.
        (double sin, double cos) = Math.SinCos(c.CornerDegrees * Math.PI / 180);
        Vec2 up = new(-cos, -sin);
        ImmutableArray<Vec2> lower =
        [
            c.Edge.Outer - new Vec2(along, 0),
            c.Edge.Outer,
            c.Edge.Outer + (above * up),
        ];
        ImmutableArray<Vec2> upper =
        [
            c.Edge.Inner - new Vec2(along - (c.Edge.Outer.X - c.Edge.Inner.X), 0),
            c.Edge.Inner,
            c.Edge.Inner + ((above - ((c.Edge.Inner - c.Edge.Outer).Dot(up))) * up),
        ];
        Box thing = Box.Around([.. lower, .. upper]),
            on = new(box.Left + 2, box.Top - 108, box.Right - 2, box.Top - TopMm - 6);
        double scale = Math.Min(on.Width / thing.Width, on.Height / thing.Height);
        var at = Placing.Centred(thing, on, scale, -scale);
        pad.Open(at.Of(lower), Pens.HullEdge);
        pad.Open(at.Of(upper), Pens.Outer);
        pad.Open(at.Of(c.Joint), Pens.Tick);
        if (!c.Piece.IsEmpty && c.PieceHolds)
        {
            pad.Closed(at.Of(c.Piece), Pens.Tick, fill: 0.9);
        }

        pad.Open(at.Of(c.Round(plan.Spec.ClothRadiusMm)), Pens.Tick);
        double top = pad.Paragraph(
            box.Left,
            on.Bottom - 6,
            box.Width,
            $"Section {place.Section}, square to the chine: {SettingUpWords.Meeting(plan.Spec, place)}, corner {AngleText.ForPaper(c.CornerDegrees)}, rounded for cloth. The thick line is the outside; the table's chine is its {(job.Hull.OffsetsAreTo == OffsetsAreTo.Outside ? "outer" : "inner")} corner.",
            Letters.Bench
        );
        pad.Paragraph(
            box.Left,
            top - 3,
            box.Width,
            "The full-size sections show the same corner as it is cut by the frame's plane, which is not square to the chine where the chine sweeps.",
            Letters.Bench
        );
    }
}
