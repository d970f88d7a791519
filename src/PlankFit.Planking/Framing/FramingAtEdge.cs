using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Framing;

/// <summary>Where the centre of a thing behind meets one edge of a plank.</summary>
/// <param name="Edge">A long edge, or the edge of the bottom that an end meets; null where the thing itself ends inside the plank.</param>
/// <param name="Mm">Along that edge: a long edge from its inboard end, an end from its forward corner; where the thing ends inside the plank, 0. On the net shape at mid-thickness.</param>
public sealed record FramingAtEdge(string? Edge, double Mm)
{
    /// <summary>An end of a run further than this from every edge is the thing's own end, mm.</summary>
    private const double OnEdgeMm = 0.1;

    /// <summary>First and last place of a crossing's centre; nothing where the centre misses the plank.</summary>
    public static ImmutableArray<FramingAtEdge> Of(Plank plank, FramingCrossing crossing) =>
        crossing.Centre.IsEmpty
            ? []
            : [At(plank, crossing.Centre[0]), At(plank, crossing.Centre[^1])];

    private static FramingAtEdge At(Plank plank, Vec2 place)
    {
        FramingAtEdge best = new(null, 0);
        double least = OnEdgeMm;
        Try("forward edge", plank.ForwardEdge.Flat, false);
        Try("after edge", plank.AfterEdge.Flat, false);
        foreach (PlankEnd end in plank.Ends)
        {
            // To starboard lesser n is forward, to port the other way.
            Try(Name(end.At), end.NetLine, plank.Side == Side.Port);
        }

        return best;

        void Try(string name, ImmutableArray<Vec2> line, bool fromLast)
        {
            double run = 0,
                at = 0;
            bool found = false;
            for (int i = 0; i + 1 < line.Length; i++)
            {
                Vec2 side = line[i + 1] - line[i];
                double length = side.Norm,
                    part = length > 0
                        ? Math.Clamp((place - line[i]).Dot(side) / (length * length), 0, 1)
                        : 0,
                    off = place.ChordTo(line[i] + (part * side));
                if (off < least)
                {
                    (least, at, found) = (off, run + (part * length), true);
                }

                run += length;
            }

            if (found)
            {
                best = new(name, fromLast ? run - at : at);
            }
        }
    }

    private static string Name(PanelEdge edge) =>
        edge switch
        {
            PanelEdge.Lower => "keel",
            PanelEdge.Upper => "chine",
            PanelEdge.Transom => "transom",
            _ => "stem",
        };
}
