using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;

namespace PlankFit.Tests.Planking;

/// <summary>
/// An end left long reaches past its net line by what was asked, wherever there is wood: on the line along which it is sawn, as much as lies between the plank's
/// two edges carried straight on, the stock's own edges and the cuts of the plank's other ends.
/// </summary>
internal static class OverhangLaws
{
    /// <summary>Less of the line than this between all these is a corner: a tip of a tenth of a millimetre is lost in any saw's kerf, mm.</summary>
    private const double CornerMm = 0.1;

    public static void Check(PlankLayerPlan layer, Plank plank, PlankEnd end, List<string> broken)
    {
        if (end.Cut != EndCut.LeftLong || end.NetLine[0].ChordTo(end.NetLine[^1]) < 1)
        {
            return;
        }

        (Vec2 middle, Vec2 outward) = Stands(plank, end);
        double reached = plank.FlatCut.Max(q => outward.Dot(q - middle));
        if (
            !(reached >= end.OverhangMm!.Value - 1e-6)
            && WoodMm(layer, plank, end, middle, outward) is var wood
            && wood > CornerMm
        )
        {
            broken.Add(
                $"{plank.Id}: left long by {reached} mm at the {end.At}, {end.OverhangMm} were asked for, and {wood} mm of it would be wood"
            );
        }
    }

    private static (Vec2 Middle, Vec2 Outward) Stands(Plank plank, PlankEnd end)
    {
        Vec2 across = (end.NetLine[^1] - end.NetLine[0]).Unit().Left(),
            middle = 0.5 * (end.NetLine[0] + end.NetLine[^1]);
        return (middle, across.Dot(middle - Centre(plank)) > 0 ? across : -1 * across);
    }

    /// <summary>How much of the line along which an end is sawn lies in wood, mm.</summary>
    private static double WoodMm(
        PlankLayerPlan layer,
        Plank plank,
        PlankEnd end,
        Vec2 middle,
        Vec2 outward
    )
    {
        Vec2 on = middle + (end.OverhangMm!.Value * outward),
            run = outward.Left();
        double from = double.NegativeInfinity,
            to = double.PositiveInfinity;

        // What lies on the side of a line that a normal points away from, as far out as it says.
        void Keep(Vec2 normal, double reach)
        {
            double rate = normal.Dot(run),
                room = reach - normal.Dot(on);
            if (rate > 1e-12)
            {
                to = Math.Min(to, room / rate);
            }
            else if (rate < -1e-12)
            {
                from = Math.Max(from, room / rate);
            }
            else if (room < 0)
            {
                to = double.NegativeInfinity;
            }
        }

        foreach (
            PlankEdge edge in new[] { plank.ForwardEdge, plank.AfterEdge }.Where(e => e.Exists)
        )
        {
            bool first = edge.Flat[0].ChordTo(middle) < edge.Flat[^1].ChordTo(middle);
            (Vec2 a, Vec2 b) = first
                ? (edge.Flat[0], edge.Flat[1])
                : (edge.Flat[^1], edge.Flat[^2]);
            Vec2 off = (b - a).Unit().Left();
            off = off.Dot(Centre(plank) - a) > 0 ? -1 * off : off;
            Keep(off, off.Dot(a));
        }

        // The stock lies about the plank's own line, and is moved where the net shape reaches past it: beside planks that are sawn it need not lie midway.
        double half = layer.Planks.WidthMm / 2,
            moved =
                Math.Max(0, plank.FlatNet.Max(q => q.Y) - half)
                - Math.Max(0, -half - plank.FlatNet.Min(q => q.Y));
        Keep(new(0, 1), half + moved);
        Keep(new(0, -1), half - moved);
        foreach (
            PlankEnd other in plank.Ends.Where(e =>
                e != end && e.NetLine[0].ChordTo(e.NetLine[^1]) > 1e-9
            )
        )
        {
            (Vec2 _, Vec2 past) = Stands(plank, other);
            double lines = new[] { other.NetLine, other.OuterLine, other.InnerLine }
                .SelectMany(l => l)
                .Max(past.Dot);
            Keep(
                past,
                other.OverhangMm is { } by
                    ? Math.Max(lines, other.NetLine.Max(past.Dot) + by)
                    : lines + other.AllowanceMm
            );
        }

        return Math.Max(0, to - from);
    }

    private static Vec2 Centre(Plank plank) =>
        (1.0 / plank.FlatNet.Length) * plank.FlatNet.Aggregate(new Vec2(0, 0), (a, b) => a + b);
}
