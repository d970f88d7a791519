using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Cards;

/// <summary>The whole plank to scale, with what is measured along it, its joints, and the twin that it serves as a mirrored sketch.</summary>
internal static class CardStrip
{
    private const double ArrowMm = 20;
    private const double TwinMm = 46;

    /// <summary>Between the plank and what stands to its right.</summary>
    private const double GapMm = 14;

    public static void Draw(SheetCanvas pad, Box strip, CardSubject of, LengthUnit unit)
    {
        Plank plank = of.Shape;
        ImmutableArray<Vec2>[] joints =
        [
            .. of.Joints.SelectMany(j => new[] { j.OuterLine, j.InnerLine }),
        ];
        var cut = Box.Around(plank.FlatCut);
        double end = strip.Right - ArrowMm - (of.Twin is null ? 0 : TwinMm),
            gap = GapMm,
            from = strip.Left + 1;
        (Box Room, Ratio Ratio, Placing At) Placed()
        {
            Box room = new(strip.Left + 2, strip.Bottom + 11.6, end - gap, strip.Top - 6.6);
            var ratio = Ratio.Fitting(cut, room.Width, room.Height, unit);
            return (room, ratio, Placing.Centred(cut, room, ratio.Factor, ratio.Factor));
        }

        // Widths that find no place on the plank stand beside it, and must not come upon its twin or the arrow: written to nowhere first, to see how far they reach.
        (Box room, Ratio ratio, Placing at) = Placed();
        for (
            int tries = 0;
            tries < 4
                && WidthFigures.Draw(new SheetCanvas(), plank, joints, at, from, unit) + 1 - end
                    is > 0
                        and var over;
            tries++
        )
        {
            gap += 2 * over;
            (room, ratio, at) = Placed();
        }

        BuiltShape.Draw(pad, plank, at, strip, 1.8);
        Joints(pad, of.Joints, at);
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
        _ = WidthFigures.Draw(pad, plank, joints, at, from, unit);
        Vec2 arrow = new(strip.Right - (ArrowMm / 2), room.Middle.Y);
        ForwardArrow.Draw(pad, arrow, BuiltShape.Paper(of.Forward, at), 11);
        pad.Text(arrow - new Vec2(0, 8.5), "forward", Letters.Small, Anchor.MiddleCentre);
        if (of.Twin is { } twin)
        {
            Twin(pad, new(end, room.Bottom, end + TwinMm - 8, room.Top), of, twin);
        }

        pad.Text(
            new(strip.Right, strip.Top - 3),
            $"outer face up, {ratio}",
            Letters.Small,
            Anchor.MiddleRight
        );
    }

    private static void Joints(SheetCanvas pad, ImmutableArray<PlankJoint> joints, Placing at)
    {
        foreach (PlankJoint joint in joints)
        {
            pad.Open(at.Of(joint.OuterLine), Pens.Cut, Layers.Joints);
            if (joint.Kind == JointKind.Scarf)
            {
                pad.Open(at.Of(joint.InnerLine), Pens.Inner, Layers.Joints);
            }
        }
    }

    /// <summary>The port plank, seen on its own outer face: the starboard one turned over.</summary>
    private static void Twin(SheetCanvas pad, Box on, CardSubject of, PieceId twin)
    {
        const double NameMm = 5;
        Box cut = Box.Around(of.Shape.FlatCut),
            drawing = on with { Bottom = on.Bottom + NameMm, Right = on.Right - 8 };
        double factor = Math.Min(drawing.Width / cut.Width, drawing.Height / cut.Height);
        var at = Placing.Centred(cut, drawing, factor, -factor);
        pad.Closed(at.Of(Thinning.Closed(of.Shape.FlatCut, 0.05 / factor)), Pens.Outer, Layers.Cut);
        Joints(pad, of.Joints, at);
        ForwardArrow.Draw(
            pad,
            new(on.Right - 3, drawing.Middle.Y),
            BuiltShape.Paper(of.Forward, at),
            6
        );
        pad.Text(
            new(drawing.Middle.X, on.Bottom),
            twin.ToString(),
            Letters.Small,
            Anchor.BaselineCentre,
            true
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
}
