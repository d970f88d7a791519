using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Planks;

namespace PlankFit.Export.Cards;

/// <summary>A plank's outlines and pencil lines at any scale, outer face up, s to the right.</summary>
internal static class BuiltShape
{
    /// <summary>The finest that paper shows: vertices that lie closer than this to a chord are left out, mm on paper.</summary>
    private const double PaperMm = 0.02;

    /// <param name="clip">On the sheet; what is outside is left out.</param>
    public static void Draw(SheetCanvas pad, Plank plank, Placing at, Box clip, double tickMm)
    {
        double tolerance = PaperMm / Math.Abs(at.X);
        Chain(plank.FlatNet, Pens.Net, Layers.Net, true);
        foreach (PlankEnd end in plank.Ends)
        {
            Chain(end.OuterLine, Pens.Outer, Layers.Marks, false);
            Chain(end.InnerLine, Pens.Inner, Layers.Marks, false);
        }

        Chain(plank.FlatCut, Pens.Cut, Layers.Cut, true);
        foreach (PlankMark mark in plank.Marks)
        {
            Vec2 foot = at[mark.At],
                tip = foot + (tickMm * Paper(mark.Inward, at));
            if (clip.Holds(foot) && clip.Holds(tip))
            {
                pad.Line(foot, tip, Pens.Tick);
            }
        }

        void Chain(IReadOnlyList<Vec2> points, Pen pen, string layer, bool closed)
        {
            if (points.Count < 2)
            {
                return;
            }

            ImmutableArray<Vec2> paper = at.Of(
                closed ? Thinning.Closed(points, tolerance) : Thinning.Open(points, tolerance)
            );
            if (paper.All(clip.Holds))
            {
                if (closed)
                {
                    pad.Closed(paper, pen, layer);
                }
                else
                {
                    pad.Open(paper, pen, layer);
                }

                return;
            }

            foreach (List<Vec2> piece in Segments.Clip(paper, clip, closed))
            {
                pad.Open(piece, pen, layer);
            }
        }
    }

    /// <summary>A direction on the plank as it lies on the sheet.</summary>
    public static Vec2 Paper(Vec2 direction, Placing at) =>
        new Vec2(direction.X * Math.Sign(at.X), direction.Y * Math.Sign(at.Y)).Unit();
}
