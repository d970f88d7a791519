using System.Collections.Immutable;
using PlankFit.Geometry.Geodesics;
using PlankFit.Geometry.Strips;
using PlankFit.Geometry.Surfaces;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Regions;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Seams;

/// <summary>All seams of a layer, from the master plank outwards both ways.</summary>
internal static class SeamFamily
{
    private const int MostSeams = 5000;

    /// <summary>Lays the family about the master plank's own line, moved by so much.</summary>
    public static SeamRow Lay(
        LayerRegion region,
        PlankLayerSpec spec,
        double shiftMm,
        Tracing tracing
    )
    {
        Seam master = MasterLine.Find(region, spec, shiftMm, tracing);
        Seam forward = Beside(region, spec, master, -1, tracing),
            after = Beside(region, spec, master, 1, tracing);
        ImmutableHashSet<int>.Builder tapered = ImmutableHashSet.CreateBuilder<int>();
        (List<Seam> Seams, List<int> Tapered)[] marched = SideBySide.All(
            2,
            way =>
                way == 0
                    ? March(region, spec, forward, -1, tracing)
                    : March(region, spec, after, 1, tracing)
        );
        (List<Seam> ahead, List<int> taperedAhead) = marched[0];
        (List<Seam> behind, List<int> taperedBehind) = marched[1];
        ahead.Reverse();
        int masterIndex = ahead.Count + 1;
        foreach (int k in taperedAhead)
        {
            tapered.Add(masterIndex - k);
        }

        foreach (int k in taperedBehind)
        {
            tapered.Add(masterIndex + k);
        }

        return new(
            [.. ahead, forward, after, .. behind],
            masterIndex,
            tapered.ToImmutable(),
            shiftMm
        );
    }

    /// <summary>The geodesic midway between two seams, or half a stock width from the one there is.</summary>
    /// <param name="awayMm">So far from the one there is, in place of half a stock width.</param>
    public static Geodesic OwnLine(
        LayerRegion region,
        PlankLayerSpec spec,
        Seam? forward,
        Seam? after,
        Tracing tracing,
        double? awayMm = null
    )
    {
        if (forward is null || after is null)
        {
            Seam one = forward ?? after!;
            double half =
                (forward is null ? -1 : 1) * (awayMm ?? (0.5 * (spec.WidthMm - StockRoom.SpareMm)));
            Neighbour n = Neighbours.Fit(one.Line, one.In.S, one.Out.S, _ => half);

            // Nowhere further than half the stock: the seam is then the stock's own edge.
            double most = Neighbours.Greatest(one.Line, n, one.In.S, one.Out.S);
            return Neighbours.Trace(
                region,
                one.Line,
                Math.Abs(half) / most * n,
                one.MiddleS,
                tracing
            );
        }

        return Abreast(region, forward, after, 0.5, tracing);
    }

    /// <summary>The geodesic between two seams that has this part of the room forward of it.</summary>
    public static Geodesic Abreast(
        LayerRegion region,
        Seam forward,
        Seam after,
        double part,
        Tracing tracing
    )
    {
        // The longer seam is the base: the other lies abreast of it.
        bool ahead = forward.LengthMm >= after.LengthMm;
        (Seam from, Seam to) = ahead ? (forward, after) : (after, forward);
        Neighbour across = Measured(region, from, to, out double middle);
        return Neighbours.Trace(
            region,
            from.Line,
            (ahead ? part : 1 - part) * across,
            middle,
            tracing
        );
    }

    /// <summary>The neighbour as it was traced, by least squares over what is measured square across at a few places.</summary>
    public static Neighbour Measured(LayerRegion region, Seam seam, Seam next, out double middle)
    {
        var strip = new FermiStrip(seam.Line, NextSeam.MeasureStepMm);
        const int n = 6;
        double aa = 0,
            ab = 0,
            bb = 0,
            ay = 0,
            by = 0,
            sum = 0;
        Fermi guess = new(
            Math.Clamp(seam.MiddleS - (next.LengthMm / 2), seam.Line.From, seam.Line.To),
            0
        );
        for (int i = 0; i <= n; i++)
        {
            double at = next.In.S + (next.LengthMm * i / n);
            Uv uv = next.Line.UvAt(at);
            Fermi f = strip.Find(uv, region.PointAt(uv), guess, 1e-5);
            guess = new(f.S + (next.LengthMm / n), f.T);
            GeodesicPoint p = seam.Line.At(f.S);
            (aa, ab, bb) = (aa + (p.A * p.A), ab + (p.A * p.B), bb + (p.B * p.B));
            (ay, by) = (ay + (p.A * f.T), by + (p.B * f.T));
            sum += f.S;
        }

        middle = sum / (n + 1);
        double det = (aa * bb) - (ab * ab);
        return new(((bb * ay) - (ab * by)) / det, ((aa * by) - (ab * ay)) / det);
    }

    /// <summary>The seam on one side of the master plank, -1 forward or 1 aft of it.</summary>
    public static Seam Beside(
        LayerRegion region,
        PlankLayerSpec spec,
        Seam master,
        int side,
        Tracing tracing
    )
    {
        double from = Math.Max(master.Line.From, master.In.S - spec.WidthMm),
            to = Math.Min(master.Line.To, master.Out.S + spec.WidthMm);
        Neighbour n = Neighbours.Fit(master.Line, from, to, _ => 1);
        double half =
            side
            * ((spec.WidthMm - StockRoom.SpareMm) / 2)
            / Neighbours.Greatest(master.Line, n, from, to);
        Seam? seam = Crossings.Find(
            region,
            Neighbours.Trace(region, master.Line, half * n, master.MiddleS, tracing)
        );
        if (seam is null || (spec.Hold == Hold.Angle && seam.In.Edge != PanelEdge.Lower))
        {
            throw new JobFaultException(
                $"layer {spec.Name}",
                u =>
                    $"the stock, width = {LengthText.ForPaper(spec.WidthMm, u)}, is wider than the {region.Panel.Name} has room for beside the master plank; give narrower stock or move `master`"
            );
        }

        return seam;
    }

    /// <summary>All seams outward from one, on one side (−1 forward, +1 aft), and which of the planks between were tapered, counted from 1.</summary>
    public static (List<Seam> Seams, List<int> Tapered) March(
        LayerRegion region,
        PlankLayerSpec spec,
        Seam first,
        int side,
        Tracing tracing
    )
    {
        var next = new NextSeam(region, spec, tracing);
        var seams = new List<Seam>();
        var tapered = new List<int>();
        Seam seam = first;
        while (true)
        {
            Seam? found =
                spec.Hold == Hold.Angle
                    ? next.AtAngle(seam, side) ?? next.AtWidth(seam, side)
                    : next.AtWidth(seam, side);
            if (
                found is not null
                && spec.Hold == Hold.Width
                && Turn(region, spec, seam, found, side, tracing) is { } turn
            )
            {
                Seam? turned = next.Tapered(seam, side, turn, out _);
                if (turned is not null)
                {
                    found = turned;
                    tapered.Add(seams.Count + 1);
                }
            }

            if (found is null)
            {
                return (seams, tapered);
            }

            seams.Add(found);
            seam = found;
            if (seams.Count > MostSeams)
            {
                throw new JobFaultException(
                    $"layer {spec.Name}",
                    u =>
                        $"more than {MostSeams} planks a side: is width = {LengthText.ForPaper(spec.WidthMm, u)} what was meant?"
                );
            }
        }
    }

    /// <summary>The turn by which a taper should bring the angle back; null where the plank's own line keeps the limit or does not meet the keel.</summary>
    private static double? Turn(
        LayerRegion region,
        PlankLayerSpec spec,
        Seam seam,
        Seam found,
        int side,
        Tracing tracing
    ) =>
        DriftOf(region, spec, seam, found, side, tracing) is { } over
        && Math.Abs(over) > spec.DriftDegrees
            ? TurnBack(spec, over)
            : null;

    /// <summary>By how many degrees the own line of the plank between two seams meets the keel at more than the angle asked for; null where it does not meet it.</summary>
    public static double? DriftOf(
        LayerRegion region,
        PlankLayerSpec spec,
        Seam seam,
        Seam found,
        int side,
        Tracing tracing
    )
    {
        (Seam forward, Seam after) = side < 0 ? (found, seam) : (seam, found);
        Seam? own = Crossings.Find(region, OwnLine(region, spec, forward, after, tracing));
        if (own is null || own.In.Edge != PanelEdge.Lower)
        {
            return null;
        }

        return KeelAngle.Of(region, own.Line.At(own.In.S), spec.Heads) - spec.AngleDegrees;
    }

    /// <summary>
    /// The turn (radians, counter-clockwise) by which a taper should bring the angle back. As much is asked for as brings it to the far limit: the most a taper gives, so
    /// that the fewest serve.
    /// </summary>
    /// <param name="over">Degrees more than the angle asked for.</param>
    public static double TurnBack(PlankLayerSpec spec, double over)
    {
        double wanted = -(over + (Math.Sign(over) * spec.DriftDegrees)) * Math.PI / 180;
        return spec.Heads == Heads.Aft ? -wanted : wanted;
    }
}
