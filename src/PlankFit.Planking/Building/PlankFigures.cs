using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Splines;
using PlankFit.Geometry.Strips;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Seams;

namespace PlankFit.Planking.Building;

/// <summary>The parts of a plank's record, from what was worked out: its widths, edges and ends.</summary>
internal static class PlankFigures
{
    public static (double Widest, double Narrowest, Func<double, double> At) Widths(
        BuiltShape shape,
        PlankSide? ahead,
        PlankSide? behind,
        Geodesic own
    )
    {
        if (ahead is null || behind is null)
        {
            double most = shape.Net.Max(p => p.Y) - shape.Net.Min(p => p.Y);
            return (most, 0, _ => most);
        }

        CubicSpline a = AcrossOf(ahead, own),
            b = AcrossOf(behind, own);
        double Width(double s) =>
            Math.Abs(b.At(Math.Clamp(s, b.From, b.To)) - a.At(Math.Clamp(s, a.From, a.To)));

        // Where the seams are abreast; on a short plank whose ends lean so much that they nowhere are, between their nearest ends.
        double from = Math.Max(a.From, b.From),
            to = Math.Min(a.To, b.To),
            widest = 0,
            narrowest = double.PositiveInfinity;
        for (int i = 0; i <= 40; i++)
        {
            double w = Width(from + ((to - from) * i / 40));
            (widest, narrowest) = (Math.Max(widest, w), Math.Min(narrowest, w));
        }

        return (widest, narrowest, Width);
    }

    /// <summary>Distance from the plank's own line along an edge, as a function of s.</summary>
    private static CubicSpline AcrossOf(PlankSide side, Geodesic own)
    {
        const int n = 16;
        double[] s = new double[n + 1],
            t = new double[n + 1];
        for (int i = 0; i <= n; i++)
        {
            Fermi f = side.Track.At(side.Seam.In.S + (side.Seam.LengthMm * i / n));
            (s[i], t[i]) = (f.S, f.T);
        }

        return AcrossAlong.Through(own, s, t);
    }

    public static PlankEdge Edge(PlankSide? side, int outward, PlankId? neighbour)
    {
        if (side is null)
        {
            return PlankEdge.None;
        }

        double[] d = side.DeparturesFromChord(outward);
        double round = Math.Max(0, d.Max()),
            hollow = Math.Max(0, -d.Min());
        return new(
            [.. side.Space],
            [.. side.Flat],
            side.Seam.LengthMm,
            round,
            hollow,
            round >= hollow ? "round" : "hollow",
            neighbour
        );
    }

    public static PlankEnd End(EndPiece e, double allowance, Panel panel)
    {
        bool rising = e.Net[^1].Y >= e.Net[0].Y;
        Vec2[] net = Ordered(e.Net, rising);
        Vec2 chord = net[^1] - net[0];
        return new(
            e.Piece.Edge,
            e.Rule.Cut,
            new(
                Math.Atan2(chord.Y, chord.X) * 180 / Math.PI,
                e.Bevels[1],
                rising ? e.Bevels[0] : e.Bevels[2],
                rising ? e.Bevels[2] : e.Bevels[0]
            ),
            e.Rule.Cut == EndCut.LeftLong ? e.Rule.ByMm : null,
            e.Rule.Cut == EndCut.Fit ? allowance : 0,
            new(
                [.. net],
                [.. Ordered(e.Space, rising)],
                [.. Ordered(e.Outer, rising)],
                [.. Ordered(e.Inner, rising)]
            )
        )
        {
            Word = panel.WordOf(e.Piece.Edge),
        };
    }

    private static T[] Ordered<T>(T[] line, bool rising) => rising ? line : [.. line.Reverse()];

    public static Vec2 Middle(ImmutableArray<Vec2> line) => 0.5 * (line[0] + line[^1]);
}
