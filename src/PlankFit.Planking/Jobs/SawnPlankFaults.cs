using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Jobs;

/// <summary>What a recorded plank has that no sawn plank can have: figures that are none or beyond all reason, shapes that do not agree with one another.</summary>
public static class SawnPlankFaults
{
    /// <summary>No bottom reaches so far, mm: our own bound of what is plausible, wide, no source.</summary>
    private const double FarMm = 100_000;

    /// <summary>A corner of the outline and the end of an edge are one point, mm.</summary>
    private const double SameMm = 0.05;

    /// <summary>A plank is never pressed flat by more than this, part of a length.</summary>
    private const double MostStrain = 0.02;

    /// <summary>The first thing that is amiss, in words; null where nothing is.</summary>
    /// <param name="shown">What lengths are told in.</param>
    public static string? Of(SawnPlank plank, LengthUnit shown) =>
        Figures(plank, shown)
        ?? Counts(plank)
        ?? plank.Form.Ends.Select(End).FirstOrDefault(f => f is not null)
        ?? Agreement(plank, shown);

    private static string? Figures(SawnPlank plank, LengthUnit shown)
    {
        PlankSizes s = plank.Form.Sizes;
        Bend bend = plank.Form.Bend;
        PlankEdge[] edges = [plank.Shape.Forward, plank.Shape.After];
        (string Name, double? Value, double Least, double Most)[] figures =
        [
            ("its length", s.NetLengthMm, 1e-6, FarMm),
            ("its length to saw", s.CutLengthMm, 1e-6, FarMm),
            ("its greatest width", s.WidestMm, 1e-6, FarMm),
            ("its least width", s.NarrowestMm, 0, FarMm),
            ("its widest gap", s.Straight.WidestGapMm, 0, FarMm),
            ("its widest overlap", s.Straight.WidestOverlapMm, 0, FarMm),
            ("its angle at the keel", s.KeelAngleDegrees, 0, 180),
            ("its area", s.AreaMm2, 1e-6, FarMm * FarMm),
            ("its strain", s.StrainMm, 0, FarMm),
            ("its least radius", bend.LeastRadiusMm, 0, double.MaxValue / 1e10),
            ("its strain in the bend", bend.StrainPercent, 0, 100),
            ("its twist", bend.TwistDegreesPerMetre, 0, 1e5),
            ("its strain at the edges", bend.EdgeStrainPercent, 0, 100),
            ("the place where it is bent hardest", bend.WorstAtMm, -FarMm, FarMm),
            ("its strain along the grain", bend.GrainStrainPercent, 0, 200),
            ("its curvature", bend.MostGaussPerMm2, 0, 1),
            ("the thickness of its layer", plank.SawnFor?.ThicknessMm, 1e-9, FarMm),
            .. edges
                .Where(IsTold)
                .SelectMany(e =>
                    new (string, double?, double, double)[]
                    {
                        ("the length of an edge", e.SeamLengthMm, 1e-6, FarMm),
                        ("the round of an edge", e.RoundMm, 0, FarMm),
                        ("the hollow of an edge", e.HollowMm, 0, FarMm),
                    }
                ),
        ];
        foreach ((string name, double? value, double least, double most) in figures)
        {
            if (value is { } v && !(v >= least && v <= most))
            {
                return $"{name} is given as {Told(v, most, shown)}, which no plank has";
            }
        }

        bool far =
            plank
                .Shape.Outline.Concat(edges.SelectMany(e => e.Seam))
                .Any(p => !(Math.Abs(p.X) + Math.Abs(p.Y) + Math.Abs(p.Z) < 3 * FarMm))
            || plank
                .Shape.FlatNet.Concat(plank.Shape.FlatCut)
                .Concat(edges.SelectMany(e => e.Flat))
                .Concat(plank.Form.Marks.SelectMany(m => new[] { m.At, m.Inward }))
                .Any(Far);
        return far ? "a point of its shapes lies beyond any boat" : null;
    }

    private static string? Counts(SawnPlank plank)
    {
        PlankShape shape = plank.Shape;
        PlankEdge[] edges = [shape.Forward, shape.After];
        return shape.Outline.Length < 3 || shape.FlatCut.Length < 3
                ? "an outline of it has fewer than three corners"
            : shape.Outline.Length != shape.FlatNet.Length
                ? "its outline on the hull and laid flat have different numbers of points"
            : edges.Any(e =>
                e.Seam.Length != e.Flat.Length || e.Seam.Length == 1 || e.Exists != IsTold(e)
            )
                ? "an edge of it is not whole"
            : !edges.Any(IsTold) ? "it has no edge at all"
            : plank.Form.Ends.IsEmpty ? "it has no ends"
            : null;
    }

    /// <summary>The record says how long the edge is and how it runs, whether it has points or not.</summary>
    private static bool IsTold(PlankEdge edge) => edge.ShapeWord != PlankEdge.None.ShapeWord;

    private static string? End(PlankEnd end) =>
        !(end.CutDegrees > 0 && end.CutDegrees < 180)
        || !(Math.Abs(end.BevelDegrees) < 90)
        || !(Math.Abs(end.BevelAtLeastN) < 90)
        || !(Math.Abs(end.BevelAtGreatestN) < 90)
            ? $"the angle or a bevel of its end at the {end.Word} is none"
        : !(end.AllowanceMm >= 0 && end.AllowanceMm < FarMm)
        || end.OverhangMm is { } by && !(by >= 0 && by < FarMm)
        || end.Cut == EndCut.LeftLong && end.OverhangMm is null
            ? $"what its end at the {end.Word} was left long by is none"
        : end.NetLine.Length < 2
        || end.Outline.Length != end.NetLine.Length
        || end.OuterLine.Length < 2
        || end.InnerLine.Length < 2
            ? $"a line of its end at the {end.Word} is not whole"
        : end.NetLine.Concat(end.OuterLine).Concat(end.InnerLine).Any(Far)
        || end.Outline.Any(p => !(Math.Abs(p.X) + Math.Abs(p.Y) + Math.Abs(p.Z) < 3 * FarMm))
            ? "a point of its ends lies beyond any boat"
        : null;

    /// <summary>Edges and ends are stretches of the outline, and the flat outline is as long from point to point as that on the hull.</summary>
    private static string? Agreement(SawnPlank plank, LengthUnit shown)
    {
        PlankShape shape = plank.Shape;
        ImmutableArray<PlankEnd> plankEnds = plank.Form.Ends;
        bool On(Vec3 p) => shape.Outline.Min(q => q.ChordTo(p)) < SameMm;
        bool OnFlat(Vec2 p) => shape.FlatNet.Min(q => q.ChordTo(p)) < SameMm;
        IEnumerable<Vec3> ends = new[] { shape.Forward.Seam, shape.After.Seam }
            .Concat(plankEnds.Select(e => e.Outline))
            .Where(l => !l.IsEmpty)
            .SelectMany(l => new[] { l[0], l[^1] });
        IEnumerable<Vec2> flatEnds = new[] { shape.Forward.Flat, shape.After.Flat }
            .Concat(plankEnds.Select(e => e.NetLine))
            .Where(l => !l.IsEmpty)
            .SelectMany(l => new[] { l[0], l[^1] });
        if (!ends.All(On) || !flatEnds.All(OnFlat))
        {
            return "its outline, its edges and its ends do not meet";
        }

        int n = shape.Outline.Length;
        for (int i = 0; i < n; i++)
        {
            double hull = shape.Outline[i].ChordTo(shape.Outline[(i + 1) % n]),
                flat = shape.FlatNet[i].ChordTo(shape.FlatNet[(i + 1) % n]);
            if (Math.Abs(hull - flat) > SameMm + (MostStrain * hull))
            {
                return $"a side of its outline is {LengthText.FormatExact(hull, shown)} long on the hull and {LengthText.FormatExact(flat, shown)} laid flat";
            }
        }

        double area = FlatPolygon.Area([.. shape.FlatNet]);
        return !(Math.Abs(area - plank.Form.Sizes.AreaMm2) <= 1 + (1e-4 * area))
                ? "its area is not that of its outline"
            : !(
                Math.Abs(
                    shape.FlatCut.Max(p => p.X)
                        - shape.FlatCut.Min(p => p.X)
                        - plank.Form.Sizes.CutLengthMm
                ) < SameMm
            )
                ? "its length to saw is not that of its shape to saw"
            : !PlanarShapes.IsSimple(shape.FlatNet) || !PlanarShapes.IsSimple(shape.FlatCut)
                ? "an outline of it crosses itself"
            : null;
    }

    /// <summary>Lengths, which are those that may reach as far as a bottom does, as the job shows them; what is far beyond is told by its figure, which shows the slip.</summary>
    private static string Told(double value, double most, LengthUnit shown) =>
        most == FarMm && Math.Abs(value) < 10 * FarMm
            ? LengthText.FormatExact(value, shown)
            : value.ToString("G6", CultureInfo.InvariantCulture);

    private static bool Far(Vec2 p) => !(Math.Abs(p.X) + Math.Abs(p.Y) < 3 * FarMm);
}
